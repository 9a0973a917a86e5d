#include "web/app/app.hpp"

#include <algorithm>

#include "core/record/json.hpp"
#include "generated/demo_records.hpp"
#include "web/app/control_key.hpp"
#include "web/app/without_numbers.hpp"
#include "web/browser/platform.hpp"
#include "web/draw/outline_loader.hpp"
#include "web/panels/bench_order.hpp"
#include "web/panels/panels.hpp"
#include "web/panels/wording.hpp"

namespace overwater {

namespace {

constexpr int announce_after_ms = 700;

/// The order in which the bench page asks.

}  // namespace

PageHandler& page_handler() {
    static App app;
    return app;
}

App::App() = default;

void App::start(bool may_wait) {
    if (started_) return;
    const std::string fragment = platform::address_fragment();
    if (!shelf_open_) {
        shelf_open_ = true;
        touch_ = platform::media().coarse_pointer;
        shelf_.open();
        begin_language(fragment);
    }
    if (may_wait && awaits_text()) return;
    started_ = true;
    read_courses();
    if (const std::string theme = shelf_.setting("theme"); !theme.empty()) theme_choice_ = theme;
    for (std::size_t i = 0; i < page_names.size(); ++i) {
        if (shelf_.setting("page") == page_names[i]) page_ = static_cast<PageName>(i);
    }
    const std::string current = shelf_.setting("record");
    std::optional<Shelf::Loaded> last;
    if (!current.empty()) last = shelf_.load(current);
    if (!last && current.empty() && !shelf_.cards().empty()) last = shelf_.load(shelf_.cards().front().id);
    if (last) {
        take(std::move(last->record), last->newer);
    } else {
        open_example();
    }
    begin_marking();
    begin_pool();
    begin_plan();
    begin_equations();
    begin_practice(fragment);
}

void App::open_example() {
    auto loaded = record_from_json(demo_records[0].json);
    Record example = loaded.record ? std::move(*loaded.record) : Record{};
    example.id = example_id;
    example.invented = true;
    example.name = say("example.name");
    example.conventions.decimal_sign = new_decimal_sign();
    take(std::move(example));
}

void App::take(Record record, bool newer) {
    record_ = std::move(record);
    read_only_ = newer;
    undo_.forget();
    ++interaction_.write;
    run_ = 0;
    own_room_ = false;
    open_details_.clear();
    open_doubt_ = Field::count;
    restart_projector();
    own_celsius_text_.reset();
    own_pressure_text_.reset();
    state_keeping(shelf_.state_of(record_.id));
    attended_ = Field::count;
    answers_desk_ = {};
    recompute();
}

void App::new_record() {
    Record fresh;
    fresh.conventions = record_.conventions;
    // Results of a practice run are withheld by its code, those of one's own by nobody.
    if (practice_) fresh.conventions.answers = Conventions::Answers::live;
    // Magnesium and hydrochloric acid are what nearly every class takes; both can be changed in place.
    fresh.shared.edit(Field::metal).text = "magnesium";
    fresh.shared.edit(Field::acid).text = "hydrochloric";
    begin_record(std::move(fresh));
}

void App::begin_record(Record fresh) {
    fresh.conventions.decimal_sign = new_decimal_sign();
    fresh.id = Shelf::new_id();
    fresh.created = platform::iso_time();
    fresh.name = say(Message{"record.new_name"}.count("number", static_cast<long long>(shelf_.cards().size()) + 1));
    take(std::move(fresh));
    keep_now();
    go(PageName::bench);
    focus_mass();
}

/// The first reading of a run.
void App::focus_mass() {
    const MassFrom from = assessment().readings.mass_from;
    platform::focus(key_of_control(from == MassFrom::ribbon          ? Field::ribbon_length
                                   : from == MassFrom::by_difference ? Field::mass_before
                                                                     : Field::mass_of_metal),
                    -1);
}

void App::add_run() {
    if (record_.runs.size() >= most_runs || refused()) return;
    before_change("runs.add");
    // The next run is read with the same instruments: units and side stay, numbers do not.
    Run next;
    for (const auto& [field, entry] : record_.runs[run_].entries.all()) {
        if (is_choice(field)) {
            next.entries.edit(field).text = entry.text;
        } else if (Entry kept = without_numbers(entry); !kept.blank()) {
            next.entries.edit(field) = std::move(kept);
        }
    }
    record_.runs.push_back(std::move(next));
    run_ = record_.runs.size() - 1;
    own_room_ = false;
    restart_projector();
    ++interaction_.write;
    after_change("runs.add");
    platform::scroll_to(0);
    focus_mass();
}

void App::remove_run() {
    if (record_.runs.size() < 2 || refused()) return;
    before_change("runs.remove");
    record_.runs.erase(record_.runs.begin() + static_cast<std::ptrdiff_t>(run_));
    ++interaction_.write;
    after_change("runs.remove");
}

void App::go_to_run(std::size_t run) {
    run_ = std::min(run, record_.runs.size() - 1);
    own_room_ = false;
    restart_projector();
    ++interaction_.write;
    recompute();
    platform::wake(2);
}

void App::toggle_details(std::string_view group) {
    const auto place = std::find(open_details_.begin(), open_details_.end(), group);
    if (place != open_details_.end()) {
        open_details_.erase(place);
    } else {
        open_details_.emplace_back(group);
    }
    platform::wake(2);
}

bool App::details_open(std::string_view group) const {
    return std::find(open_details_.begin(), open_details_.end(), group) != open_details_.end();
}

void App::open_record(const std::string& id) {
    if (auto loaded = shelf_.load(id)) {
        take(std::move(loaded->record), loaded->newer);
    } else if (id == example_id) {
        open_example();
    } else {
        return;
    }
    shelf_.set_setting("record", id);
    go(PageName::bench);
}

void App::go(PageName page) {
    page_ = page;
    shelf_.set_setting("page", page_names[static_cast<std::size_t>(page)]);
    platform::scroll_to(0);
    if (page == PageName::how_sure) ask_trials();
    // A plan of one's own stays; else it is that of the record as it is now.
    if (page == PageName::plan && !plan_.own) plan_.known = false;
    platform::wake(2);
}

void App::recompute() {
    language_.set_decimal_sign(record_.conventions.decimal_sign);
    language_.set_volume_unit(record_.conventions.volume_unit);
    find_practice();
    run_ = std::min(run_, record_.runs.size() - 1);
    assessments_.clear();
    for (std::size_t run = 0; run < record_.runs.size(); ++run) {
        assessments_.push_back(assess(readings_of(record_, run), record_.conventions));
    }
    working_ = std::make_unique<Working>(assessment(), record_.conventions);
    settle_certainty();
}

void App::before_change(const std::string& key) { undo_.before_change(record_, key, platform::now_ms()); }

void App::after_change(const std::string& key) {
    answers_desk_ = {};
    recompute();
    // Synchronously, inside the handler of the input: what was typed survives the death of the tab.
    keep_now();
    attended_ = field_of_control(key).field;
    platform::start_timer("announce", announce_after_ms);
    platform::wake(2);
}

void App::typed(const std::string& key, const std::string& text) {
    if (key == "records.name") {
        if (refused()) return;
        before_change(key);
        record_.name = text;
        after_change(key);
        return;
    }
    if (key.starts_with("answers.molar_volume")) {
        answer_draft_ = text;
        platform::wake(2);
        return;
    }
    if (key == "gap.size") return try_size(text);
    if (sheet_typed(key, text) || marking_typed(key, text) || practice_typed(key, text)) return;
    if (plan_changed(key, text) || pool_typed(key, text) || equation_typed(key, text)) return;
    constexpr std::string_view conventions = "conventions.";
    if (key.starts_with(conventions)) {
        type_convention(std::string_view(key).substr(conventions.size()), text);
        return;
    }
    if (doubt_changed(key, text)) return;
    const ControlField control = field_of_control(key);
    if (control.field != Field::count) change_entry(control.field, key, text, false);
}

void App::chosen(const std::string& key, const std::string& value) {
    constexpr std::string_view conventions = "conventions.";
    if (key.starts_with(conventions)) {
        choose_convention(std::string_view(key).substr(conventions.size()), value);
        return;
    }
    if (sheet_typed(key, value) || practice_chosen(key, value) || plan_changed(key, value)) return;
    if (equation_typed(key, value)) return;
    if (key == "gap.cause") return try_cause(value);
    if (key == "projector.field") {
        if (const Field field = field_of_control("bench." + value).field; field != Field::count)
            projector_field_ = field;
        ++interaction_.write;
        platform::wake(2);
        return;
    }
    if (key == "gap.size") return try_size(value);
    if (key == "sure.of") {
        for (std::size_t i = 0; i < output_count; ++i) {
            if (name_of(static_cast<Output>(i)) == value) look_at(static_cast<Output>(i));
        }
        return;
    }
    if (key == "header.language" || key == "records.language") return choose_language(value);
    if (doubt_changed(key, value)) return;
    const ControlField control = field_of_control(key);
    if (control.field != Field::count) change_entry(control.field, key, value, control.is_unit);
}

void App::remember(int run, std::string field, const std::string& text) {
    auto& history = record_.history;
    history.push_back({platform::iso_time(), run, std::move(field), text, {}});
    // Typing letter by letter is one change of a text, not many.
    const std::size_t n = history.size();
    if (n >= 2 && history[n - 2].field == history[n - 1].field && undo_.continuing()) history.erase(history.end() - 2);
}

/// Whether what is put down for a reading now holds for the run at hand alone.
bool App::belongs_to_run(Field field) const {
    return !info(field).shared || own_room_ || !record_.runs[run_].entries.at(field).blank();
}

void App::change_entry(Field field, const std::string& key, const std::string& text, bool unit) {
    if (refused()) return;
    projector_note_change();
    before_change(key);
    Run& run = record_.runs[run_];
    const bool had_own = !run.entries.at(field).blank();
    const bool own = belongs_to_run(field);
    Entries& sheet = own ? run.entries : record_.shared;
    // Another room is read with the same instruments.
    if (own && !had_own && info(field).shared && !is_choice(field)) {
        sheet.edit(field) = without_numbers(record_.shared.at(field));
        if (unit) sheet.edit(field).text = record_.shared.at(field).text;
    }
    if (unit) {
        // Another unit re-reads the same text; it never converts what was typed.
        sheet.edit(field).unit = unit_by_key(text).value_or(UnitId::none);
        // A unit typed with the number counts before the one chosen: the list has to show it again.
        ++interaction_.write;
    } else {
        sheet.edit(field).text = text;
        remember(own ? static_cast<int>(run_) : -1, std::string(name_of(field)), text);
    }
    // What is cleared again hides the other room no longer.
    if (own && info(field).shared && sheet.at(field) == without_numbers(record_.shared.at(field))) {
        sheet.edit(field) = Entry{};
    }
    sheet.tidy(field);
    after_change(key);
}

void App::restore(std::optional<Undo::Place> place) {
    if (!place) return;
    const std::string id = record_.id;
    record_ = std::move(place->record);
    record_.id = id;
    ++interaction_.write;
    const ControlField control = field_of_control(place->key);
    const bool answer = place->key.starts_with("sheet.");
    if (control.field != Field::count || place->key == "records.name" || answer) {
        show_doubt_of(place->key);
        if (answer && page_ != PageName::answers) go(PageName::answers);
        if (place->key == "records.name") go(PageName::records);
        // A class watches the projector: what is taken back there is seen in the working, and it stays.
        const bool projected = page_ == PageName::projector && control.field != Field::count;
        if (projected && !is_choice(control.field) && !entry(control.field).text.empty())
            projector_field_ = control.field;
        if (page_ != PageName::bench && control.field != Field::count && !projected) go(PageName::bench);
        if (!projected || (projector_changes_ && projector_field_ == control.field)) platform::focus(place->key, -1);
    }
    after_change(place->key);
}

void App::undo() {
    if (page_ == PageName::pool) return undo_pool();
    if (page_ == PageName::equations) return equation_step(equations_.done, equations_.undone);
    if (deleted_) return undo_delete();
    restore(undo_.undo(record_));
}
void App::redo() {
    if (page_ == PageName::pool) return redo_pool();
    if (page_ == PageName::equations) return equation_step(equations_.undone, equations_.done);
    restore(undo_.redo(record_));
}

std::string App::say(const char* key) const { return language_.say(key); }

std::string App::shown_number(Output output) const {
    const WorkingStep* step = working_->step(output);
    if (step == nullptr) return {};
    return format_fixed(in_unit(output, step->value, step->unit), step->shown_decimals, language_.decimal_sign(),
                        record_.conventions.rounding);
}

std::string App::shown(Output output) const {
    const OutputState& state = assessment().state(output);
    switch (state.kind) {
    case OutputState::Kind::value: {
        const WorkingStep* step = working_->step(output);
        return step == nullptr ? std::string() : language_.with_unit(shown_number(output), step->unit);
    }
    case OutputState::Kind::waiting: return waiting_words(state.waiting_for, field_count);
    case OutputState::Kind::not_asked: return {};
    case OutputState::Kind::not_possible: break;
    }
    return say(Message{"state.not_possible"}.text("reason", say(state.reason)));
}

std::string App::shown_briefly(Output output) const {
    const OutputState& state = assessment().state(output);
    return state.kind == OutputState::Kind::waiting ? waiting_words(state.waiting_for, 2) : shown(output);
}

std::string App::waiting_words(FieldSet missing, std::size_t most) const {
    std::vector<std::string> names;
    for (const Field field : bench_order) {
        if (missing.has(field)) names.push_back(field_name(*this, field));
    }
    if (names.size() > most + 1) {
        const auto left = static_cast<long long>(names.size() - most);
        names.resize(most);
        names.push_back(say(Message{"state.and_more"}.count("number", left)));
    }
    return say(Message{"state.waiting"}.text("readings", language_.list(names)));
}

void App::announce() {
    if (!reveals()) return;
    const Output output = sought();
    const std::string words = say(Message{"announce.result"}
                                      .text("name", output_name(*this, output))
                                      .text("value", shown(output)));
    if (words == announced_) return;
    announced_ = words;
    status_ = words;
    platform::wake(2);
}

void App::clear_color(float rgb[3]) const {
    const std::uint32_t paper = current_theme().of(Ink::paper);
    for (int i = 0; i < 3; ++i) rgb[i] = static_cast<float>((paper >> (24 - 8 * i)) & 0xffu) / 255.0f;
}

const Theme& App::current_theme() const {
    if (theme_choice_ == "light") return overwater::theme(ThemeName::light);
    if (theme_choice_ == "dark") return overwater::theme(ThemeName::dark);
    if (theme_choice_ == "contrast") return overwater::theme(ThemeName::high_contrast);
    const platform::Media media = platform::media();
    if (media.more_contrast || media.forced_colors) return overwater::theme(ThemeName::high_contrast);
    return overwater::theme(media.dark ? ThemeName::dark : ThemeName::light);
}

void App::load_fonts() {
    fonts_.regular = add_font(0);
    fonts_.semibold = add_font(1);
    ui_ = std::make_unique<Ui>(interaction_, fonts_);
}

int App::frame(float width, float height) {
    start(false);
    FrameInput input;
    input.width = width;
    input.height = height;
    input.scroll_y = scroll_y_;
    input.pixel_scale = pixel_scale_;
    input.touch = touch_;
    ui_->begin(input, current_theme());
    const float dock = draw_page(*this, *ui_);
    ui_->status("status", status_);
    PageInfo page;
    page.height = ui_->lowest();
    page.language = language_.tag();
    page.title = say("page.title");
    page.theme = &current_theme() == &overwater::theme(ThemeName::light)  ? "light"
                 : &current_theme() == &overwater::theme(ThemeName::dark) ? "dark"
                                                                          : "contrast";
    page.dock = dock;
    const std::string patch = mirror_.patch(ui_->end(), page);
    if (!patch.empty()) platform::patch_mirror(patch);
    // Trials of this frame are seen in the next.
    const bool marks = run_marking();
    return run_trials() || marks ? 1 : 0;
}

}  // namespace overwater
