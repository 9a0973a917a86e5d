// What each event changes.

#include "web/app/app.hpp"
#include "web/app/control_key.hpp"
#include "web/browser/platform.hpp"

namespace overwater {

bool App::handle(const Event& event) {
    using Kind = Event::Kind;
    if (event.kind == Kind::text) text_came(event.key, event.text);
    start(event.kind == Kind::painting || event.kind == Kind::media);
    switch (event.kind) {
    case Kind::input:
        next_action(event.key);
        typed(event.key, event.text);
        return true;
    case Kind::change:
        next_action(event.key);
        chosen(event.key, event.text);
        // A check box answers to its widget call, like a button.
        interaction_.clicked.push_back(event.key);
        platform::wake(3);
        return true;
    case Kind::click:
        next_action(event.key);
        notices_.clear();
        interaction_.clicked.push_back(event.key);
        platform::wake(3);
        return true;
    case Kind::focus:
        interaction_.focused = event.key;
        if (const ControlField control = field_of_control(event.key); control.field != Field::count) {
            attended_ = control.field;
            look_at_dial(event.key);
        }
        break;
    case Kind::blur:
        interaction_.focused.clear();
        undo_.leave();
        equations_.open_step.clear();
        break;
    case Kind::undo: undo(); return true;
    case Kind::redo: redo(); return true;
    case Kind::key:
        if (page_ == PageName::projector && reveals() && field_of_control(event.key).field != Field::count) {
            // A reading being changed keeps its arrows and its spaces.
            if (event.text != "Escape" && event.text != "Enter") return false;
            platform::focus("projector.done", -1);
            return true;
        }
        if (page_ == PageName::projector && reveals()) {
            // Space on a focused button presses that button.
            const bool on_button = event.text == "Space" && event.key.starts_with("projector.");
            return !on_button && projector_key(event.text);
        }
        if (const ControlField control = field_of_control(event.key);
            event.text == "Enter" && control.field != Field::count && control.part != ControlPart::doubt) {
            // From reading to reading, past units and further choices.
            const std::string next = ui_->next_field(event.key);
            if (!next.empty()) platform::focus(next, -1);
            return !next.empty();
        }
        if (event.text == "Enter" && event.key == "practice.code") {
            start_practice();
            return true;
        }
        if (event.text == "Escape" && page_ == PageName::bench && open_doubt_ != Field::count) {
            close_doubt();
            return true;
        }
        if (event.text == "Escape" && page_ != PageName::bench) {
            go(PageName::bench);
            return true;
        }
        return false;
    case Kind::pointer_move:
        interaction_.pointer_x = static_cast<float>(event.a);
        interaction_.pointer_y = static_cast<float>(event.b);
        break;
    case Kind::pointer_leave: interaction_.pointer_x = interaction_.pointer_y = -1; break;
    case Kind::resize: pixel_scale_ = static_cast<float>(event.c); break;
    case Kind::scroll: scroll_y_ = static_cast<float>(event.a); break;
    case Kind::media: touch_ = platform::media().coarse_pointer; break;
    case Kind::painting: interaction_.painting = event.a != 0; break;
    case Kind::storage: stored_elsewhere(event.key, event.text); return true;
    case Kind::part: second_part_came(event.a != 0); break;
    case Kind::fragment: follow_link(event.text); break;
    case Kind::file:
        if (page_ == PageName::pool) {
            pool_file(event.key, event.text);
        } else if (page_ == PageName::marking) {
            marking_file(event.key, event.text);
        } else {
            import_file(event.key, event.text);
        }
        return true;
    case Kind::visibility:
        // A page that slept heard nothing of what other windows wrote.
        if (event.a != 0) look_at_storage();
        break;
    case Kind::timer:
        if (event.key == "announce") announce();
        if (event.key == "class") write_pool();
        if (event.key == "trials") ask_trials();
        return true;
    default: break;
    }
    platform::wake(2);
    return false;
}

}  // namespace overwater
