#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/explain/working.hpp"
#include "core/record/record.hpp"
#include "core/result/assess.hpp"
#include "web/app/language.hpp"
#include "web/app/shelf.hpp"
#include "web/app/undo.hpp"
#include "web/browser/event.hpp"
#include "web/draw/theme.hpp"
#include "web/ui/mirror.hpp"
#include "web/ui/ui.hpp"

namespace overwater {

enum class PageName : std::uint8_t { bench, working, records, cautions, conventions, count };
inline constexpr std::array<std::string_view, 5> page_names{"bench", "working", "records", "cautions", "conventions"};

/// All decisions of the page: what a typed text changes, what is kept when, what is said, which page is shown.
class App final : public PageHandler {
public:
    App();

    // PageHandler
    bool handle(const Event& event) override;
    int frame(float width, float height) override;
    void clear_color(float rgb[3]) const override;
    void load_fonts() override;

    // What panels show
    const Record& record() const { return record_; }
    /// Of the run at hand.
    const Assessment& assessment() const { return assessments_[run_]; }
    const std::vector<Assessment>& assessments() const { return assessments_; }
    std::size_t run() const { return run_; }
    /// Whether what is typed for room and tube holds for the run at hand alone.
    bool own_room() const { return own_room_; }
    bool details_open(std::string_view group) const;
    const Working& working() const { return *working_; }
    const Language& language() const { return language_; }
    Shelf& shelf() { return shelf_; }
    std::string say(std::string_view key) const { return language_.say(key); }
    std::string say(const Message& message) const { return language_.say(message); }
    PageName page() const { return page_; }
    const Entry& entry(Field field) const { return entry_for(record_, run_, field); }
    bool can_undo() const { return undo_.can_undo(); }
    bool can_redo() const { return undo_.can_redo(); }
    std::string_view theme_choice() const { return theme_choice_; }
    /// Key of the sentence about keeping: kept, not yet typed, refused.
    std::string_view keeping() const { return keeping_; }
    /// The field whose control has the focus or had it last; Field::count for none.
    Field attended() const { return attended_; }
    const Interaction& interaction() const { return interaction_; }
    /// The semantic tree of the last frame.
    const std::vector<Node>& nodes() const { return ui_->nodes(); }

    // What panels ask for
    void go(PageName page);
    void new_record();
    void open_record(const std::string& id);
    void undo();
    void redo();
    void add_run();
    void remove_run();
    void go_to_run(std::size_t run);
    void set_own_room(bool own) { own_room_ = own; }
    void toggle_details(std::string_view group);

    // Sets of conventions of one's own
    const std::vector<std::pair<std::string, std::string>>& sets() const { return sets_; }  ///< id and name
    const std::string& set_name() const { return set_name_; }
    void keep_set();
    void use_set(const std::string& id);
    void forget_set(const std::string& id);
    /// The text shown for a number of the conventions: as typed, else the number that holds.
    std::string typed_convention(std::string_view name) const;

    /// The message text of an output: its number with unit, or what it waits for, or why it is not possible.
    std::string shown(Output output) const;
    std::string shown_number(Output output) const;
    /// As `shown`, but a long list of missing readings is cut to the first two.
    std::string shown_briefly(Output output) const;

private:
    std::string waiting_words(FieldSet missing, std::size_t most) const;
    void start();
    void open_example();
    void take(Record record);
    void typed(const std::string& key, const std::string& text);
    void chosen(const std::string& key, const std::string& value);
    void choose_convention(std::string_view name, const std::string& value);
    void type_convention(std::string_view name, const std::string& text);
    void read_sets();
    void change_entry(Field field, const std::string& key, const std::string& text, bool unit);
    void before_change(const std::string& key);
    void after_change(const std::string& key);
    void recompute();
    void restore(std::optional<Undo::Place> place);
    void announce();
    void draw();
    const Theme& current_theme() const;

    Record record_;
    std::vector<Assessment> assessments_;
    std::size_t run_ = 0;
    bool own_room_ = false;
    std::vector<std::string> open_details_;
    std::unique_ptr<Working> working_;
    Language language_;
    Shelf shelf_;
    Undo undo_;
    Mirror mirror_;
    Interaction interaction_;
    Fonts fonts_;
    std::unique_ptr<Ui> ui_;
    PageName page_ = PageName::bench;
    Field attended_ = Field::count;
    std::string theme_choice_ = "system";
    std::string_view keeping_ = "keep.nothing_yet";
    std::vector<std::pair<std::string, std::string>> sets_;
    std::string set_name_;
    std::string own_celsius_text_;
    std::string own_pressure_text_;
    std::string announced_;
    std::string status_;
    float scroll_y_ = 0;
    float pixel_scale_ = 1;
    bool touch_ = false;
    bool started_ = false;
};

}  // namespace overwater
