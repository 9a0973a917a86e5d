// The doubt of one reading: what of it is open on the bench page, and what a person puts down for it.

#include "web/app/app.hpp"
#include "web/app/control_key.hpp"
#include "web/browser/platform.hpp"

namespace overwater {

namespace {

void put_repeat(std::vector<std::string>& repeats, std::size_t number, const std::string& text) {
    if (repeats.size() <= number) repeats.resize(number + 1);
    repeats[number] = text;
    while (!repeats.empty() && repeats.back().empty()) repeats.pop_back();
}

void put(Entry& entry, const ControlField& control, const std::string& text) {
    switch (control.part) {
        case ControlPart::instrument: entry.instrument = text; break;
        case ControlPart::plus_minus: entry.plus_minus = text; break;
        case ControlPart::shape: entry.shape = text; break;
        case ControlPart::repeat: put_repeat(entry.repeats, control.repeat, text); break;
        case ControlPart::text:
        case ControlPart::unit:
        case ControlPart::doubt: break;
    }
}

}  // namespace

void App::toggle_doubt(Field field) {
    open_doubt_ = open_doubt_ == field ? Field::count : field;
    platform::wake(2);
}

void App::close_doubt() {
    platform::focus(key_of_control(open_doubt_, ControlPart::doubt), -1);
    open_doubt_ = Field::count;
    platform::wake(2);
}

/// What undo changes has to be seen.
void App::show_doubt_of(const std::string& key) {
    const ControlField control = field_of_control(key);
    if (!control.is_doubt()) return;
    open_doubt_ = control.field;
}

bool App::doubt_changed(const std::string& key, const std::string& text) {
    const ControlField control = field_of_control(key);
    if (control.field == Field::count || !control.is_doubt()) return false;
    if (control.part == ControlPart::repeat && control.repeat >= most_repeats) return true;
    if (refused()) return true;
    before_change(key);
    Run& run = record_.runs[run_];
    const Field field = control.part == ControlPart::instrument ? chooses_instrument(control.field) : control.field;
    const bool shared = info(field).shared;
    const bool had_own = !run.entries.at(field).blank();
    const bool own = !shared || own_room_ || had_own;
    Entries& sheet = own ? run.entries : record_.shared;
    Entry& entry = sheet.edit(field);
    // An entry of the run's own hides the shared one, so it begins as a copy of it.
    if (shared && own && !had_own) entry = record_.shared.at(field);
    put(entry, control, text);
    sheet.tidy(field);
    after_change(key);
    return true;
}

}  // namespace overwater
