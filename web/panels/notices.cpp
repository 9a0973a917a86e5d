// What happened and should be known on whatever page: below the header, until the next press.

#include <algorithm>
#include <cmath>

#include "web/app/app.hpp"
#include "web/panels/panels.hpp"

namespace overwater {

namespace {

/// One line of words on a ground of its own, with a press beside or below; returns the height taken.
class Strip {
public:
    Strip(Ui& ui, float top) : ui_(ui), margin_(page_margin(ui)), top_(top) {}

    /// True where the press was pressed.
    bool line(const std::string& key, const std::string& words, bool warning, const std::string& press_key = {},
              const std::string& press = {}) {
        const Type type{Face::regular, 15, warning ? Ink::warning : Ink::text};
        const float width = ui_.width() - 2 * margin_;
        const float press_width = press.empty() ? 0 : std::ceil(ui_.text_width(press, Type{})) + 28;
        const float press_height = ui_.touch() ? 44.0f : 28.0f;
        const bool beside = press.empty() || ui_.text_width(words, type) + press_width + 20 < width;
        const float text_width = std::min(beside ? width - press_width : width, 900.0f);
        const float tall = Ui::line_height(type) * static_cast<float>(ui_.lines(words, type, text_width).size());
        float height = tall + 12;
        if (!press.empty()) height = beside ? std::max(height, press_height + 8) : height + press_height + 6;
        ui_.fill({0, top_, ui_.width(), height}, warning ? Ink::warning_paper : Ink::copper_soft);
        const float text_top = beside ? top_ + (height - tall) / 2 : top_ + 6;
        ui_.text(key, {margin_, text_top, text_width, 0}, words, type);
        bool pressed = false;
        if (!press.empty()) {
            const Rect rect = beside ? Rect{margin_ + ui_.text_width(words, type) + 18,
                                            top_ + (height - press_height) / 2, press_width, press_height}
                                     : Rect{margin_, top_ + tall + 10, press_width, press_height};
            pressed = ui_.button(press_key, rect, press, Ui::ButtonLook::framed);
        }
        top_ += height + 1;
        return pressed;
    }
    float top() const { return top_; }

private:
    Ui& ui_;
    float margin_;
    float top_;
};

}  // namespace

float draw_notices(App& app, Ui& ui, float top) {
    Strip strip(ui, top);
    if (app.read_only()) strip.line("notice.read_only", app.say("record.read_only"), true);
    if (app.deleted()) {
        const std::string words = app.say(Message{"records.deleted"}.text("name", app.deleted()->name));
        if (strip.line("notice.deleted", words, false, "notice.undo", app.say("header.undo"))) app.undo_delete();
    }
    int number = 0;
    for (const App::Notice& notice : app.notices()) {
        strip.line("notice." + std::to_string(number++), notice.words, notice.warning);
    }
    return strip.top() - top;
}

}  // namespace overwater
