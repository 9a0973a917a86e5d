#pragma once

#include <algorithm>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/explain/gap.hpp"
#include "core/explain/working.hpp"
#include "core/record/course_json.hpp"
#include "core/record/record.hpp"
#include "core/result/assess.hpp"
#include "web/app/answers_desk.hpp"
#include "web/app/certainty.hpp"
#include "web/app/equations_desk.hpp"
#include "web/app/language.hpp"
#include "web/app/marking_desk.hpp"
#include "web/app/plan_desk.hpp"
#include "web/app/pool_desk.hpp"
#include "web/app/practice_desk.hpp"
#include "web/app/second_part.hpp"
#include "web/app/shelf.hpp"
#include "web/app/undo.hpp"
#include "web/browser/event.hpp"
#include "web/draw/theme.hpp"
#include "web/ui/mirror.hpp"
#include "web/ui/ui.hpp"

namespace overwater {

enum class PageName : std::uint8_t {
    bench,
    working,
    how_sure,
    gap,
    records,
    cautions,
    conventions,
    projector,
    practice,
    codes,
    answers,
    marking,
    plan,
    pool,
    equations,
    count
};
inline constexpr std::array<std::string_view, 15> page_names{
    "bench",     "working",  "how_sure", "gap",     "records", "cautions", "conventions",
    "projector", "practice", "codes",    "answers", "marking", "plan",     "pool",    "equations"};

/// The invented record with which a new person begins.
inline constexpr std::string_view example_id = "example";

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
    /// The reading below which its doubt can be changed; Field::count for none.
    Field open_doubt() const { return open_doubt_; }
    const Working& working() const { return *working_; }
    /// Of the result of the run at hand.
    const Certainty& certainty() const { return certainty_; }
    /// Of the output chosen on the page `How sure`, which is the result unless another was chosen.
    const Certainty& looked_at() const { return looked_at_output_ ? looked_at_ : certainty_; }
    Output output_looked_at() const;
    /// The last line that is sought in the run at hand.
    Output sought() const { return sought_output(record_.conventions, assessment().readings.target); }
    void look_at(Output output);
    /// What would explain the result's difference from the accepted value; worked out once for each change.
    const std::optional<Gap>& gap();
    /// The cause tried on the page `The gap`, and its size in its base unit.
    Cause tried_cause() const;
    double tried_size() const;
    void try_cause(std::string_view name);
    void try_size(const std::string& text);
    const Language& language() const { return language_; }
    Shelf& shelf() { return shelf_; }
    /// Most keys are literals, which are less to pass than views.
    std::string say(const char* key) const;
    std::string say(const TextView& key) const { return language_.say(key); }
    std::string say(const Message& message) const { return language_.say(message); }
    /// The unit of a reading as it is shown: the one typed or chosen, else its usual one as the conventions name it.
    UnitId unit_of(const Entry& entry, UnitId read, bool typed = false) const {
        return typed || entry.unit != UnitId::none ? read : language_.named(read);
    }
    UnitId unit_of(const Entry& entry, Field field) const {
        return unit_of(entry, entry.unit != UnitId::none ? entry.unit : info(field).usual_unit);
    }
    PageName page() const { return page_; }
    const Entry& entry(Field field) const { return entry_for(record_, run_, field); }
    /// Speaks this language from now on, and in the visits to come, as soon as its text is here.
    void choose_language(const std::string& tag);
    // The program's second part (second_part.cpp)
    /// Leave to call it where it is there; else nothing, and it is asked for if it was not before.
    std::optional<SecondPartThere> second_part();
    /// It was asked for and could not be loaded.
    bool second_part_missing() const { return second_part_ == SecondPart::missing; }
    void ask_for_second_part();
    /// Its keys and English sentences, which stand in itself.
    void learn_second_part(std::string_view keys, std::string_view english) { language_.learn_more(keys, english); }

    bool can_undo() const {
        if (page_ == PageName::equations) return !equations_.done.empty();
        return page_ == PageName::pool ? !pool_.done.empty() : undo_.can_undo() || deleted_;
    }
    bool can_redo() const {
        if (page_ == PageName::equations) return !equations_.undone.empty();
        return page_ == PageName::pool ? !pool_.undone.empty() : undo_.can_redo();
    }
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
    void toggle_doubt(Field field);

    // Keeping of records (keeping.cpp, files.cpp, tabs.cpp)
    /// Something that happened and is said until the next press of a button.
    struct Notice {
        std::string words;
        bool warning = false;
    };
    const std::vector<Notice>& notices() const { return notices_; }
    /// The record shown was made by a newer program: it can be read, not changed.
    bool read_only() const { return read_only_; }
    /// What is typed now is not in storage, so a file of it should be offered.
    bool unsaved() const;
    const std::optional<Shelf::Removed>& deleted() const { return deleted_; }
    bool finish_asked() const { return finish_asked_; }
    /// The molar volume of a listed record, or what it waits for.
    std::string result_of(const Shelf::Card& card);
    void duplicate_record(const std::string& id);
    void delete_record(const std::string& id);
    void delete_damaged(const std::string& key);
    void undo_delete();
    void set_keeping(bool on);
    void remove_stored();
    void ask_finish(bool asked);
    void finish();
    void export_record(const std::string& id);
    void export_all();
    /// Puts a link that holds the record at hand into the clipboard.
    void copy_record_link();
    void export_damaged(const std::string& key);

    // Projector
    std::size_t projector_step() const { return projector_step_; }
    bool projector_shows() const { return projector_shows_; }
    /// The working before readings were changed on the projector; nothing where none was.
    const Working* projector_before() const { return projector_before_working_.get(); }
    /// The readings can be changed there.
    bool projector_changes() const { return projector_changes_; }
    Field projector_field() const { return projector_field_; }
    void projector_toggle_changes();
    /// What was changed is the new beginning: no marks.
    void projector_forget_marks();
    void enter_projector();
    void leave_projector();
    void projector_show();
    void projector_go(int by);

    // Courses (courses.cpp)
    static constexpr std::size_t most_courses = 20;
    static constexpr std::size_t no_course = most_courses;
    const std::vector<OwnCourse>& own_courses() const { return own_courses_; }
    /// The one whose name can be changed and that can be shared; `no_course` for none.
    std::size_t open_course() const { return open_course_; }
    void open_own_course(std::size_t place);
    const std::string& course_name() const { return course_name_; }  ///< as typed, of the one to be kept
    const std::string& own_name() const { return own_name_; }        ///< as typed, of the one that is open
    void keep_course(const OwnCourse& course);
    void forget_course();
    void copy_course_link();
    void save_course();
    /// What came by link or file and was neither taken nor left yet.
    const std::optional<OwnCourse>& offered_course() const { return offered_; }
    void use_offered();
    /// Puts down what the class compares with, as typed.
    void compare_with(const std::string& number);
    void leave_offered() { offered_.reset(); }
    /// The text shown for a number of the conventions: as typed, else the number that holds.
    std::string typed_convention(std::string_view name) const;

    /// Whether results are shown: always, after an answer of one's own, or never, as the conventions say, or for a
    /// practice run its code.
    bool reveals() const { return reveals(run_); }
    bool reveals(std::size_t run) const { return may_be_shown(record_, run); }
    const std::string& own_answer_draft() const { return answer_draft_; }
    void give_answer();
    /// What a run comes to: its molar volume, or that readings are missing.
    std::string run_result(std::size_t run) const;
    /// Mean and range of the runs that have a value; empty where fewer than two have.
    std::string mean_words() const;
    /// What is odd between the runs.
    std::vector<std::string> run_remarks() const;

    /// The message text of an output: its number with unit, or what it waits for, or why it is not possible.
    std::string shown(Output output) const;
    std::string shown_number(Output output) const;
    /// As `shown`, but a long list of missing readings is cut to the first two.
    std::string shown_briefly(Output output) const;

    // The student's own answers to each step (answers.cpp)
    /// Steps of the run at hand, then those of the whole sheet.
    std::vector<SheetStep> steps_at_hand() const;
    const Answer* answer_to(const SheetStep& step) const;
    /// Nothing where the step was not checked.
    const CheckedStep* checked(const SheetStep& step) const;
    Conventions::Answers answers_pace() const;
    /// What the next press shows; `none`: it checks again.
    Help next_help(const CheckedStep& checked) const;
    void help_with(const SheetStep& step);
    void check_all();

    // Marking a class (marking.cpp)
    const MarkingDesk& marking_desk() const { return marking_; }
    void read_class();
    void clear_class();
    /// Puts the names of all columns into the clipboard, for the first line of a spreadsheet.
    void copy_columns();
    /// The columns that most classes' tables have.
    void copy_class_columns();
    /// Shows the steps of a row, or no longer.
    void open_sheet(std::size_t row);
    void save_marks();
    void print_marks();

    // The plan of a run (plan.cpp)
    /// With the plan worked out.
    const PlanDesk& plan_desk();
    /// Takes setup and conventions of the open record; the plan shown goes to where `plan_before` finds it.
    void plan_from_record();
    bool has_plan_before() const;
    /// Shows the plan that was kept before this one, and keeps this one in its place.
    void plan_before();
    void copy_plan_link();
    /// A new record with the setup of the plan and without the readings that are to be taken.
    void begin_planned_run();
    void print_cards();

    // Formulas and equations (equations.cpp)
    const EquationsDesk& equations_desk() const { return equations_; }
    /// Puts a reaction down at the bench, in one step, and goes there.
    void take_reaction(const std::vector<std::pair<Field, std::string>>& entries);
    /// The reactants whose fields are drawn in this frame, in their order.
    void set_reactants(std::vector<std::string> formulas) { equations_.reactants = std::move(formulas); }
    /// Another formula or equation; `another`: what was typed beside the one before goes with it.
    void put_equation(const std::string& text, bool another);

    // A class's runs together (pool.cpp)
    const PoolDesk& pool_desk() const { return pool_; }
    /// Reads the pasted table again, in place of what it gave before.
    void read_pool();
    void add_group();
    /// Shows the readings of a group, or no longer.
    void open_group(std::size_t place);
    void leave_group_out(std::size_t place);
    void add_run_to_group(std::size_t place);
    void remove_group(std::size_t place);
    void clear_pool();
    /// The last step on the class set is taken back.
    void undo_pool();
    void redo_pool();
    /// All groups by the conventions of the open record.
    void pool_by_own_conventions();
    /// A copy of a group's record at the bench.
    void group_to_bench(std::size_t place);
    /// The groups' sheets beside those that are marked.
    void pool_to_marking();
    /// Every record that is kept here.
    void pool_from_records();
    void save_pool_json();
    void save_pool_table();
    void print_class_report();

    // Practice runs (practice.cpp, practice_codes.cpp)
    /// What the code of the record at hand means; nothing where it has none.
    const PracticeRun* practice() const { return practice_ ? &*practice_ : nullptr; }
    const PracticeDesk& practice_desk() const { return practice_desk_; }
    /// The instrument shown on the bench: of the reading at hand, or of the one before.
    const Dial* dial_at_hand() const;
    void zoom_dial(int by);
    /// Where that instrument is drawn on a narrow page: it is brought into view when another reading was gone to.
    void dial_is_at(float top);
    /// How far a column whose top is at `top` has to move down to stay in sight.
    float follow(float top) const { return practice_ ? std::max(0.0f, scroll_y_ - top) : 0; }
    void start_practice();
    /// Readings of the run at hand that have an instrument and no text.
    std::vector<Field> unread_dials() const;
    /// Whether what is true may be seen.
    bool truth_open(std::size_t run) const;
    bool all_truth_open() const;
    void compare_with_truth();
    void give_word();
    /// The name of the cause that was guessed, or "shown"; empty before.
    std::string guessed_mishap() const;
    void show_mishap();
    void other_seed();
    /// How many codes are asked for; 0: none that is a number.
    int practice_students() const;
    void copy_codes();
    void print_key();

private:
    bool attempted(const SheetStep& step) const;
    bool may_show_step(const SheetStep& step) const;
    void check_steps(const std::vector<SheetStep>& steps);
    void take_as_own_answer(const SheetStep& step);
    template <class Mark>
    void keep_answers_desk(const std::string& key, Mark mark);
    /// A text or a unit of an answer. False where the key is of none.
    bool sheet_typed(const std::string& key, const std::string& text);
    void begin_marking();
    bool marking_typed(const std::string& key, const std::string& text);
    void begin_plan();
    std::optional<Message> take_plan(const std::string& json);
    void plan_like_record();
    void keep_plan();
    void set_plan_before();
    /// A text, a choice or a unit of the plan. False where the key is of none.
    bool plan_changed(const std::string& key, const std::string& text);
    bool follow_plan_link(const std::string& fragment);
    void begin_equations();
    void before_equation_step(const std::string& key);
    void keep_equations();
    /// A text or a choice of the page of equations. False where the key is of none.
    bool equation_typed(const std::string& key, const std::string& text);
    void equation_step(std::vector<EquationsDesk::Texts>& from, std::vector<EquationsDesk::Texts>& to);
    /// Names a record that was made just now, keeps it and goes to its bench.
    void begin_record(Record fresh);
    void focus_mass();
    void assess_group(PoolGroup& group);
    void before_pool_step(const std::string& field);
    void pool_step(std::vector<std::vector<PoolGroup>>& from, std::vector<std::vector<PoolGroup>>& to);
    void pool_again();
    void find_pool_fields();
    void class_changed();
    std::string pool_json() const;
    void keep_pool();
    void write_pool();
    void begin_pool();
    bool take_group(PoolGroup group, bool from_outside);
    void take_groups(const std::string& text, const std::string& file, bool from_outside);
    void take_class_table(const std::string& text, bool pasted);
    bool pool_typed(const std::string& key, const std::string& text);
    void pool_file(const std::string& name, const std::string& text);
    void marking_file(const std::string& name, const std::string& text);
    void add_table(const std::string& text, bool pasted);
    void add_sheet(std::size_t at, Record record, std::string group, std::vector<std::string_view> asked = {});
    void begin_to_mark();
    /// A slice of the sheets that have to be marked; true where there were any.
    bool run_marking();
    std::vector<std::vector<std::string>> marks_table() const;
    /// Puts a change down in the record's history; typing letter by letter is one.
    void remember(int run, std::string field, const std::string& text);
    void find_practice();
    void look_at_dial(const std::string& key);
    void put_answer(std::string_view step, const std::string& text);
    bool practice_typed(const std::string& key, const std::string& text);
    bool practice_chosen(const std::string& key, const std::string& value);
    void keep_class();
    void second_part_came(bool there);
    void begin_practice(const std::string& fragment);
    void follow_link(const std::string& fragment);
    // spoken_language.cpp
    void begin_language(const std::string& fragment);
    void ask_language(const std::string& tag);
    bool awaits_text() const { return !wanted_language_.empty(); }
    void text_came(const std::string& tag, const std::string& packed);
    void language_changed();
    /// Of a new record: the one last chosen by hand, else the language's.
    DecimalSign new_decimal_sign() const;
    /// The record's decimal sign was chosen by hand.
    void keep_decimal_sign();
    std::string waiting_words(FieldSet missing, std::size_t most) const;
    /// Opens what was open last. Waits where `may_wait` for the text of the language that is wanted, so that nothing is
    /// first said in another.
    void start(bool may_wait);
    void open_example();
    void take(Record record, bool newer = false);
    void keep_now();
    void state_keeping(Shelf::Kept kept);
    void open_first();
    void part_from_other_window();
    void stored_elsewhere(const std::string& key, const std::string& text);
    void look_at_storage();
    void reload(Shelf::Loaded loaded);
    void import_file(const std::string& name, const std::string& text);
    void tell(std::string words, bool warning = false);
    void next_action(const std::string& key);
    /// Says that the record shown cannot be changed, where that is so.
    bool refused();
    std::string result_words(const Record& record, const std::vector<Assessment>& assessments);
    void typed(const std::string& key, const std::string& text);
    void chosen(const std::string& key, const std::string& value);
    void choose_convention(std::string_view name, const std::string& value);
    void type_convention(std::string_view name, const std::string& text);
    void choose_course(std::string_view value);
    void use_course(const OwnCourse& course);
    void read_courses();
    bool put_course(const OwnCourse& course);
    bool keep_courses(const std::vector<OwnCourse>& all);
    void rename_course(const std::string& text);
    void offer_course(const std::string& text, const std::string& file);
    bool projector_key(const std::string& key);
    void projector_note_change();
    void restart_projector();
    /// Puts down a part of a reading's doubt. False where the control holds none.
    bool doubt_changed(const std::string& key, const std::string& text);
    void show_doubt_of(const std::string& key);
    void close_doubt();
    bool belongs_to_run(Field field) const;
    void change_entry(Field field, const std::string& key, const std::string& text, bool unit);
    void before_change(const std::string& key);
    void after_change(const std::string& key);
    void recompute();
    void settle_certainty();
    /// Trials are made where they are looked at, and where they decide.
    void ask_trials();
    /// A slice of the trials that are wanted; true where more are.
    bool run_trials();
    void restore(std::optional<Undo::Place> place);
    void announce();
    void draw();
    const Theme& current_theme() const;

    Record record_;
    std::vector<Assessment> assessments_;
    std::size_t run_ = 0;
    bool own_room_ = false;
    std::vector<std::string> open_details_;
    Field open_doubt_ = Field::count;
    std::unique_ptr<Working> working_;
    Certainty certainty_;
    Certainty looked_at_;
    std::optional<Output> looked_at_output_;
    std::optional<Gap> gap_;
    bool gap_is_known_ = false;
    Cause tried_cause_ = Cause::count;
    double tried_size_ = 0;
    Language language_;
    std::string wanted_language_;  ///< whose text is awaited; else empty
    bool language_by_hand_ = false;
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
    bool read_only_ = false;
    bool finish_asked_ = false;
    std::vector<Notice> notices_;
    double notice_ms_ = 0;
    std::optional<Shelf::Removed> deleted_;
    std::vector<OwnCourse> own_courses_;
    std::size_t open_course_ = no_course;
    std::string course_name_;
    std::string own_name_;
    std::optional<OwnCourse> offered_;
    std::optional<std::string> own_celsius_text_;
    std::optional<std::string> own_pressure_text_;
    std::size_t projector_step_ = 0;
    bool projector_shows_ = false;
    bool projector_changes_ = false;
    Field projector_field_ = Field::scale_reading;
    std::unique_ptr<Working> projector_before_working_;
    PageName before_projector_ = PageName::bench;
    std::string answer_draft_;
    AnswersDesk answers_desk_;
    MarkingDesk marking_;
    PlanDesk plan_;
    EquationsDesk equations_;
    PoolDesk pool_;
    std::optional<PracticeRun> practice_;
    PracticeDesk practice_desk_;
    SecondPart second_part_ = SecondPart::not_asked;
    std::string announced_;
    std::string status_;
    float scroll_y_ = 0;
    float pixel_scale_ = 1;
    bool touch_ = false;
    bool shelf_open_ = false;
    bool started_ = false;
};

}  // namespace overwater
