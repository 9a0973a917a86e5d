#pragma once

#include <string>
#include <string_view>

#include "web/app/app.hpp"
#include "web/panels/panels.hpp"

namespace overwater {

/// Buttons for the runs of a record, the one at hand marked; keys are `prefix` and the index. `room` is what a button is
/// wider than its words.
void run_buttons(App& app, Ui& ui, Flow& flow, const std::string& prefix, float room);

/// As much of the words as there is room for.
std::string fitted(const Ui& ui, std::string words, const Type& type, float room);

/// A page of one column: its heading, paragraphs and presses, one below the other.
class PageColumn {
protected:
    PageColumn(App& app, Ui& ui, float top, float widest, float widest_text);

    /// `key` is the page's region, `words` its name.
    void begin(const std::string& key, const std::string& words);
    void end();

    void paragraph(const std::string& key, const std::string& words, Type type, float gap);
    float press_width(std::string_view words) const;
    bool press_in(Flow& flow, const std::string& key, std::string_view words);
    /// Which run is at hand, where there are several: `key` ends in "runs". `gap` below it.
    void run_switch(const std::string& key, float gap);

    App& app_;
    Ui& ui_;
    float margin_;
    float width_;
    float text_width_;
    float row_;
    float y_;
};

}  // namespace overwater
