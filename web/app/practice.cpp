// Practice runs: from the code to the record, what is shown when, and the teacher's choices.

#include <algorithm>

#include "web/app/app.hpp"
#include "web/app/control_key.hpp"
#include "web/app/fragment.hpp"
#include "web/app/record_link.hpp"
#include "web/browser/platform.hpp"

namespace overwater {

namespace {

/// Answers to the whole record by which the page knows what may be shown (record.md).
constexpr std::string_view word_step = "release_word";
constexpr std::string_view compared_step = "compared";
constexpr std::string_view mishap_step = "mishap";
constexpr std::string_view molar_volume_step = "molar_volume";
constexpr std::string_view class_setting = "practice_class";
constexpr std::string_view link_prefix = "practice=";

template <class Enum, std::size_t n>
void choose_by_name(Enum& into, const std::array<std::string_view, n>& names, std::string_view name) {
    const auto found = std::find(names.begin(), names.end(), name);
    if (found != names.end()) into = static_cast<Enum>(found - names.begin());
}

}  // namespace

std::optional<int> whole_number(std::string_view text, int low, int high) {
    int value = 0;
    if (text.empty() || text.size() > 5) return std::nullopt;
    for (const char c : text) {
        if (c < '0' || c > '9') return std::nullopt;
        value = 10 * value + (c - '0');
    }
    if (value < low || value > high) return std::nullopt;
    return value;
}

/// The run that the record's code means, made once.
void App::find_practice() {
    const auto settings = practice_settings_of(record_);
    if (!settings) {
        practice_.reset();
    } else if (!practice_ || practice_->settings != *settings) {
        practice_ = practice_run(*settings);
    }
}

bool may_be_shown(const Record& record, std::size_t run) {
    using Answers = Conventions::Answers;
    const auto settings = practice_settings_of(record);
    const Answers answers = settings ? conventions_of(*settings).answers : record.conventions.answers;
    if (answers == Answers::live) return true;
    if (answers == Answers::after_attempt) return overwater::answer_to(record.runs[run].answers, molar_volume_step) != nullptr;
    const Answer* word = overwater::answer_to(record.answers, word_step);
    return settings && word != nullptr && is_release_word(*settings, word->text);
}

bool App::truth_open(std::size_t run) const {
    if (!practice_ || run >= practice_->truth.runs.size() || !reveals(run)) return false;
    return practice_->settings.release != Release::at_once || overwater::answer_to(record_.answers, compared_step) != nullptr;
}

bool App::all_truth_open() const {
    for (std::size_t run = 0; run < record_.runs.size(); ++run) {
        if (!truth_open(run)) return false;
    }
    return practice_.has_value();
}

std::vector<Field> App::unread_dials() const {
    std::vector<Field> unread;
    if (!practice_) return unread;
    for (const Dial& dial : practice_->dials) {
        const bool here = dial.run < 0 || dial.run == static_cast<int>(run_);
        if (here && entry(dial.field).text.empty()) unread.push_back(dial.field);
    }
    return unread;
}

const Dial* App::dial_at_hand() const {
    if (!practice_) return nullptr;
    if (const Dial* dial = dial_for(*practice_, run_, practice_desk_.looked_at)) return dial;
    // The room comes first in the list, and last on the bench.
    for (const Dial& dial : practice_->dials) {
        if (dial.run == static_cast<int>(run_)) return &dial;
    }
    return practice_->dials.empty() ? nullptr : &practice_->dials.front();
}

void App::look_at_dial(const std::string& key) {
    const ControlField control = field_of_control(key);
    // The text field alone: the page must not move below a button that is being pressed.
    const bool text = control.part == ControlPart::text && !is_choice(control.field);
    if (!text || !practice_ || !dial_for(*practice_, run_, control.field)) return;
    practice_desk_.looked_at = control.field;
    practice_desk_.to_be_seen = true;
}

void App::dial_is_at(float top) {
    if (practice_desk_.to_be_seen && top < scroll_y_) platform::scroll_to(static_cast<double>(top) - 8);
    practice_desk_.to_be_seen = false;
}

void App::zoom_dial(int by) {
    const int zoom = std::clamp(static_cast<int>(practice_desk_.zoom) + by, 0, dial_zooms - 1);
    practice_desk_.zoom = static_cast<DialZoom>(zoom);
    platform::wake(2);
}

void App::start_practice() {
    const DecodedPractice decoded = decode_practice(practice_desk_.code);
    practice_desk_.problem = decoded.reason;
    platform::wake(2);
    if (!decoded.settings) {
        status_ = say(decoded.reason);
        platform::focus("practice.code", -1);
        return;
    }
    // A run that was begun is gone on with.
    const std::string code = code_of(*decoded.settings);
    for (const Shelf::Card& card : shelf_.cards()) {
        auto begun = shelf_.load(card.id);
        if (!begun || begun->newer || begun->record.practice_code != code) continue;
        practice_desk_.code.clear();
        take(std::move(begun->record));
        shelf_.set_setting("record", record_.id);
        go(PageName::bench);
        tell(say(Message{"practice.begun"}.text("code", code)));
        return;
    }
    Record record = practice_run(*decoded.settings).record;
    record.id = Shelf::new_id();
    record.created = platform::iso_time();
    record.name = say(Message{"practice.record_name"}.text("code", record.practice_code));
    record.conventions.decimal_sign = new_decimal_sign();
    take(std::move(record));
    keep_now();
    practice_desk_.code.clear();
    practice_desk_.looked_at = Field::count;
    go(PageName::bench);
    if (const Dial* dial = dial_at_hand()) platform::focus(key_of_control(dial->field), -1);
}

void App::put_answer(std::string_view step, const std::string& text) {
    if (refused()) return;
    const std::string key = "practice." + std::string(step);
    before_change(key);
    std::erase_if(record_.answers, [&](const Answer& answer) { return answer.step == step; });
    Answer answer;
    answer.step = step;
    answer.text = text;
    record_.answers.push_back(std::move(answer));
    ++interaction_.write;
    after_change(key);
}

void App::compare_with_truth() {
    if (unread_dials().empty()) put_answer(compared_step, "yes");
}

void App::give_word() {
    if (!practice_) return;
    practice_desk_.word_refused = !is_release_word(practice_->settings, practice_desk_.word);
    if (practice_desk_.word_refused) {
        status_ = say("practice.word_wrong");
        platform::wake(2);
        return;
    }
    put_answer(word_step, std::string(practice_desk_.word));
    practice_desk_.word.clear();
}

std::string App::guessed_mishap() const {
    const Answer* guess = overwater::answer_to(record_.answers, mishap_step);
    return guess == nullptr ? std::string() : guess->text;
}

void App::show_mishap() { put_answer(mishap_step, "shown"); }

bool App::practice_typed(const std::string& key, const std::string& text) {
    PracticeDesk& desk = practice_desk_;
    if (key == "practice.code") {
        desk.code = text;
        desk.problem = Message{""};
    } else if (key.starts_with("answers.word")) {
        desk.word = text;
        desk.word_refused = false;
    } else if (key == "codes.seed") {
        desk.seed = text;
        if (const auto seed = whole_number(text, 0, practice_seeds - 1)) desk.made.seed = *seed;
        keep_class();
    } else if (key == "codes.students") {
        desk.students = text;
    } else {
        return false;
    }
    platform::wake(2);
    return true;
}

bool App::practice_chosen(const std::string& key, const std::string& value) {
    PracticeSettings& made = practice_desk_.made;
    if (key == "practice.mishap") {
        if (all_truth_open()) put_answer(mishap_step, value);
        return true;
    }
    if (!key.starts_with("codes.")) return false;
    if (key == "codes.difficulty") choose_by_name(made.difficulty, difficulty_names, value);
    if (key == "codes.release") choose_by_name(made.release, release_names, value);
    if (key == "codes.vapour") choose_by_name(made.vapour, practice_vapour_names, value);
    if (key == "codes.standard") choose_by_name(made.standard, standard_conditions_names, value);
    if (key == "codes.mishap") made.mishap = !made.mishap;
    keep_class();
    return true;
}

void App::other_seed() {
    practice_desk_.made.seed = static_cast<int>(platform::random_bits() % practice_seeds);
    practice_desk_.seed = std::to_string(practice_desk_.made.seed);
    ++interaction_.write;
    keep_class();
}

void App::keep_class() {
    shelf_.set_setting(class_setting, code_of(practice_desk_.made));
    platform::wake(2);
}

/// What was chosen for a class last, and the code of the address.
void App::begin_practice(const std::string& fragment) {
    const auto settings = decode_practice(shelf_.setting(class_setting)).settings;
    if (settings) {
        practice_desk_.made = *settings;
    } else {
        // Not the same class for everybody, and the sums are the student's.
        practice_desk_.made.seed = static_cast<int>(platform::random_bits() % practice_seeds);
        practice_desk_.made.release = Release::after_attempt;
    }
    practice_desk_.seed = std::to_string(practice_desk_.made.seed);
    follow_link(fragment);
}

void App::follow_link(const std::string& fragment) {
    if (const auto record = record_text_in(fragment)) {
        // Taken once: loaded again, the page would bring a second copy of a record that has been worked on since.
        platform::forget_fragment();
        import_file(say("import.link"), *record);
        return go(PageName::bench);
    }
    if (const auto course = text_in_fragment(course_link, fragment)) {
        platform::forget_fragment();
        return offer_course(*course, say("import.link"));
    }
    if (follow_plan_link(fragment)) return;
    const std::size_t at = fragment.find(link_prefix);
    if (at == std::string::npos) return;
    const std::size_t begin = at + link_prefix.size();
    practice_desk_.code = fragment.substr(begin, std::min(fragment.find('&', begin) - begin, std::size_t{40}));
    practice_desk_.problem = Message{""};
    ++interaction_.write;
    go(PageName::practice);
}

}  // namespace overwater
