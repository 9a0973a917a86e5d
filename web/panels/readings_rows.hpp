#pragma once

#include <string>
#include <string_view>

#include "core/bench/field.hpp"
#include "web/ui/ui.hpp"

namespace overwater {

class App;
struct ReadingDoubt;

/// The rows of the readings, one below the other.
class ReadingsRows {
public:
    ReadingsRows(App& app, Ui& ui, Rect area, bool hints);

    /// A typed reading: name, field, unit, doubt; below it what is said about it.
    void typed(Field field);
    /// A choice from a list.
    void listed(Field field);
    /// A choice of a few: name and radio buttons in one row where they fit, else the buttons in rows of their own.
    void radios(Field field);
    /// A row of words alone.
    void line(std::string_view key, std::string_view words);
    void skip(float height) { y_ += height; }

    /// Where the next row begins.
    float y() const { return y_; }
    void go_to(float y) { y_ = y; }

private:
    std::string name(Field field) const;
    float label(Field field, float below);
    void unit(Field field, Rect box);
    void doubt(Field field, const ReadingDoubt& words, Rect box, float tall);
    void remarks(Field field);
    std::string remark_keys(Field field) const;
    bool refused(Field field) const;
    /// Whether the instrument shown is that of the reading, in a practice run.
    bool dial_of(Field field) const;
    float width_of_radio(Field field, std::string_view value) const;
    /// Whether the doubt of a reading has room behind its unit.
    bool beside(std::string_view words) const;

    App& app_;
    Ui& ui_;
    Rect area_;
    bool hints_;
    float y_;
    float row_;
    float field_height_;
    float label_width_ = 100;
    float field_width_ = 104;
    float unit_width_ = 76;
};

}  // namespace overwater
