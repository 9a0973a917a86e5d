// Keeping records: writing at once, saying whether it worked, duplicating, deleting, leaving a computer clean.

#include <algorithm>

#include "web/app/app.hpp"
#include "web/app/record_title.hpp"
#include "web/browser/platform.hpp"
#include "web/panels/wording.hpp"

namespace overwater {

void App::keep_now() {
    Shelf::Kept kept = shelf_.keep(record_);
    if (kept == Shelf::Kept::conflict) {
        part_from_other_window();
        kept = shelf_.keep(record_);
    }
    state_keeping(kept);
    shelf_.set_setting("record", record_.id);
}

void App::state_keeping(Shelf::Kept kept) {
    switch (kept) {
    case Shelf::Kept::nothing_yet: keeping_ = "keep.nothing_yet"; break;
    case Shelf::Kept::kept: keeping_ = "keep.kept"; break;
    case Shelf::Kept::full: keeping_ = "keep.full"; break;
    case Shelf::Kept::not_kept: keeping_ = "keep.not_kept"; break;
    case Shelf::Kept::deleted_elsewhere: keeping_ = "keep.deleted_elsewhere"; break;
    case Shelf::Kept::denied:
    case Shelf::Kept::conflict: keeping_ = "keep.refused"; break;
    }
    if (read_only_ && kept == Shelf::Kept::kept) keeping_ = "keep.read_only";
}

bool App::unsaved() const {
    const Shelf::Kept kept = shelf_.state_of(record_.id);
    return kept != Shelf::Kept::kept && kept != Shelf::Kept::nothing_yet;
}

void App::tell(std::string words, bool warning) {
    // What is said about many files stays together; what was said a while ago makes room.
    if (platform::now_ms() - notice_ms_ > 2000) notices_.clear();
    notice_ms_ = platform::now_ms();
    constexpr std::size_t most_notices = 8;
    if (notices_.size() == most_notices) notices_.erase(notices_.begin());
    status_ = words;
    notices_.push_back({std::move(words), warning});
    platform::wake(3);
}

void App::next_action(const std::string& key) {
    if (key != "notice.undo" && key != "header.undo") deleted_.reset();
}

bool App::refused() {
    if (!read_only_) return false;
    tell(say("record.read_only"), true);
    // What was typed or chosen into a control gives way to what the record holds: every control is written again.
    ++interaction_.write;
    mirror_.forget();
    return true;
}

void App::open_first() {
    if (shelf_.cards().empty()) {
        open_example();
    } else if (auto loaded = shelf_.load(shelf_.cards().front().id)) {
        take(std::move(loaded->record), loaded->newer);
    } else {
        open_example();
    }
    shelf_.set_setting("record", record_.id);
}

void App::duplicate_record(const std::string& id) {
    auto loaded = id == record_.id ? std::optional<Shelf::Loaded>(Shelf::Loaded{record_, read_only_}) : shelf_.load(id);
    if (!loaded || loaded->newer) return;
    Record copy = std::move(loaded->record);
    copy.name = copy_title(language_, copy.name);
    copy.id = Shelf::new_id();
    copy.created = platform::iso_time();
    take(std::move(copy));
    keep_now();
    platform::focus("records.name", -1);
}

void App::delete_record(const std::string& id) {
    Shelf::Removed removed = shelf_.remove(id);
    if (!removed.text && !removed.held) return;
    removed.was_shown = id == record_.id;
    if (removed.was_shown) open_first();
    removed.name = record_title(language_, removed.name);
    status_ = say(Message{"records.deleted"}.text("name", removed.name));
    deleted_ = std::move(removed);
    platform::focus("notice.undo", -1);
    platform::wake(3);
}

void App::delete_damaged(const std::string& key) {
    Shelf::Removed removed = shelf_.remove_damaged(key);
    removed.name = key;
    status_ = say(Message{"records.deleted"}.text("name", key));
    deleted_ = std::move(removed);
    platform::focus("notice.undo", -1);
    platform::wake(3);
}

void App::undo_delete() {
    if (!deleted_) return;
    const Shelf::Removed removed = *std::move(deleted_);
    deleted_.reset();
    const std::string id = shelf_.put_back(removed);
    if (removed.was_shown) {
        if (auto loaded = shelf_.load(id)) take(std::move(loaded->record), loaded->newer);
        shelf_.set_setting("record", id);
    }
    status_ = say(Message{"records.undeleted"}.text("name", removed.name));
    platform::focus(id.empty() ? "records.new" : "records.open." + id, -1);
    platform::wake(3);
}

void App::set_keeping(bool on) {
    shelf_.set_keeping(on);
    if (!on) {
        // What is on the screen goes on in memory; what lies in storage is left until the person says otherwise.
        if (shelf_.state_of(record_.id) != Shelf::Kept::nothing_yet) state_keeping(Shelf::Kept::not_kept);
        if (!read_only_) shelf_.hold(record_, Shelf::Kept::not_kept);
        state_keeping(shelf_.state_of(record_.id));
    } else {
        if (unsaved() && !read_only_) keep_now();
        shelf_.write_held();
        state_keeping(shelf_.state_of(record_.id));
    }
    platform::wake(3);
}

void App::remove_stored() {
    shelf_.remove_stored(record_.id);
    tell(say(Message{"records.stored_removed"}.text("name", record_.name)));
    platform::focus("records.not_kept", -1);
}

void App::ask_finish(bool asked) {
    finish_asked_ = asked;
    platform::focus(asked ? "records.finish_export" : "records.finish", -1);
    platform::wake(3);
}

void App::finish() {
    shelf_.finish();
    platform::forget_offline();
    finish_asked_ = false;
    deleted_.reset();
    pool_ = {};
    own_courses_.clear();
    open_course_ = no_course;
    course_name_.clear();
    offered_.reset();
    equations_ = {};
    theme_choice_ = "system";
    open_example();
    tell(say("records.finished"));
    platform::scroll_to(0);
    platform::focus("records.new", -1);
}

std::string App::result_of(const Shelf::Card& card) {
    // The list is drawn with each frame; a record is parsed and computed once after each change.
    if (card.id == record_.id) return result_words(record_, assessments_);
    if (card.counted) return card.result;
    std::string words;
    if (const auto loaded = shelf_.load(card.id)) {
        const Record& record = loaded->record;
        std::vector<Assessment> assessments;
        for (std::size_t run = 0; run < record.runs.size(); ++run) {
            assessments.push_back(assess(readings_of(record, run), record.conventions));
        }
        words = result_words(record, assessments);
    }
    shelf_.set_result(card.id, words);
    return words;
}

std::string App::result_words(const Record& record, const std::vector<Assessment>& assessments) {
    const Output wanted = sought_output(record);
    double sum = 0;
    int runs = 0;
    int decimals = 0;
    UnitId unit = UnitId::none;
    const Assessment* waits = nullptr;
    for (std::size_t run = 0; run < assessments.size(); ++run) {
        if (!record.runs[run].left_out.empty()) continue;
        // A result that the bench withholds is not told here either.
        if (!may_be_shown(record, run)) continue;
        const Working working(assessments[run], record.conventions);
        const WorkingStep* step = assessments[run].has(wanted) ? working.step(wanted) : nullptr;
        if (step == nullptr) {
            if (waits == nullptr) waits = &assessments[run];
            continue;
        }
        sum += in_unit(wanted, step->value, step->unit);
        decimals = runs == 0 ? step->shown_decimals : std::min(decimals, step->shown_decimals);
        unit = step->unit;
        ++runs;
    }
    if (runs > 0) {
        const std::string number = format_fixed(sum / runs, decimals, language_.decimal_sign());
        const std::string words = language_.with_unit(number, unit);
        return runs == 1 ? words : say(Message{"records.mean"}.text("value", words).count("number", runs));
    }
    if (waits == nullptr) return {};
    const OutputState& state = waits->state(wanted);
    if (state.kind == OutputState::Kind::waiting) return waiting_words(state.waiting_for, 1);
    return state.kind == OutputState::Kind::not_possible ? say("records.not_possible") : std::string();
}

}  // namespace overwater
