// Several windows on one storage: neither loses a word.
//
// Each window writes every input at once, so a window never holds anything that storage has not had. Before it writes, it
// looks whether storage still holds what it last read or wrote. If not, two windows have gone different ways from the
// same state, and the one that finds out goes on under a new id: no window ever sees its text replaced while it types,
// and nothing is written over. A window that only looks on takes over what the other wrote.

#include "web/app/app.hpp"
#include "web/app/record_title.hpp"
#include "web/browser/platform.hpp"

namespace overwater {

void App::stored_elsewhere(const std::string& key, const std::string& text) {
    const std::string id = Shelf::id_of(key);
    if (id.empty()) {
        // Someone has finished on this computer: nothing may be written again by a mere look at another page.
        if (key == "overwater.settings" && text.empty()) shelf_.be_quiet();
        if (key == "overwater.settings" && shelf_.look_at_settings()) read_courses();
        return;
    }
    if (id != record_.id) {
        shelf_.look_again(id);
        platform::wake(2);
        return;
    }
    // What the event tells may be old already; what storage holds counts. Where that is this window's own text, the other
    // one lost the race and looks after itself.
    const auto now = platform::store_get(key);
    if (now && shelf_.knows(id, *now)) return;
    if (!now) {
        if (!shelf_.has_stored(id)) return;
        // What is shown stays: it is not in storage any more, but the next input puts it back.
        if (!read_only_) shelf_.hold(record_, Shelf::Kept::deleted_elsewhere);
        state_keeping(Shelf::Kept::deleted_elsewhere);
        tell(say(Message{"tabs.deleted"}.text("name", record_.name)), true);
        return;
    }
    // Put back where it had been deleted: nothing has been typed here since, or it would lie in storage again.
    if (shelf_.state_of(id) == Shelf::Kept::deleted_elsewhere) shelf_.let_go(id);
    // Revisions count up by one from a common state. One that is not above this window's own comes from another branch.
    const auto told = stored_to(text);
    const bool branched = told && told->revision <= shelf_.revision(id);
    const bool only_here = unsaved() && !read_only_;
    if (branched || only_here) {
        part_from_other_window();
        keep_now();
        return;
    }
    if (auto loaded = shelf_.load(id)) reload(std::move(*loaded));
}

void App::look_at_storage() {
    const auto now = platform::store_get(Shelf::key_of(record_.id));
    if (now && !shelf_.knows(record_.id, *now)) stored_elsewhere(Shelf::key_of(record_.id), *now);
}

void App::reload(Shelf::Loaded loaded) {
    record_ = std::move(loaded.record);
    read_only_ = loaded.newer;
    // A step back from here would take away what the other window wrote.
    undo_.forget();
    own_celsius_text_.reset();
    own_pressure_text_.reset();
    answers_desk_ = {};
    ++interaction_.write;
    state_keeping(shelf_.state_of(record_.id));
    shelf_.look_again(record_.id);
    recompute();
    tell(say("tabs.reloaded"));
}

void App::part_from_other_window() {
    const std::string old_id = record_.id;
    const std::string old_name = record_title(language_, record_.name);
    record_.id = Shelf::new_id();
    record_.name = say(Message{"tabs.other_name"}.text("name", old_name));
    shelf_.let_go(old_id);
    ++interaction_.write;
    recompute();
    tell(say(Message{"tabs.parted"}.text("name", old_name).text("other", record_.name)), true);
}

}  // namespace overwater
