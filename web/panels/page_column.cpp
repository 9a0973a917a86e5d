#include "web/panels/page_column.hpp"

#include <algorithm>
#include <cmath>

namespace overwater {

void run_buttons(App& app, Ui& ui, Flow& flow, const std::string& prefix, float room) {
    for (std::size_t run = 0; run < app.record().runs.size(); ++run) {
        const std::string words = app.say(Message{"runs.run"}.count("number", static_cast<long long>(run) + 1));
        const float wide = std::ceil(ui.text_width(words, {Face::semibold, 16, Ink::text})) + room;
        if (ui.button(prefix + std::to_string(run), flow.next(wide), words, Ui::ButtonLook::page, run == app.run())) {
            app.go_to_run(run);
        }
    }
}

std::string fitted(const Ui& ui, std::string words, const Type& type, float room) {
    if (ui.text_width(words, type) <= room) return words;
    while (!words.empty() && ui.text_width(words + "…", type) > room) {
        while (words.size() > 1 && (static_cast<unsigned char>(words.back()) & 0xc0) == 0x80) words.pop_back();
        words.pop_back();
    }
    return words + "…";
}

PageColumn::PageColumn(App& app, Ui& ui, float top, float widest, float widest_text)
    : app_(app),
      ui_(ui),
      margin_(page_margin(ui)),
      width_(std::min(ui.width() - 2 * margin_, widest)),
      text_width_(std::min(width_, widest_text)),
      row_(ui.touch() ? 44.0f : 32.0f),
      y_(top + 18) {}

void PageColumn::begin(const std::string& key, const std::string& words) {
    ui_.open(key, Role::region, {margin_, y_, width_, 0}, words);
    y_ += ui_.heading(key + ".heading", 2, {margin_, y_, width_, 0}, words, {Face::semibold, 22, Ink::text});
}

void PageColumn::end() {
    ui_.close();
    ui_.reach(y_ + 28);
}

void PageColumn::paragraph(const std::string& key, const std::string& words, Type type, float gap) {
    y_ += ui_.text(key, {margin_, y_ + 2, text_width_, 0}, words, type) + gap;
}

float PageColumn::press_width(std::string_view words) const {
    return std::ceil(ui_.text_width(app_.say(words), Type{})) + 28;
}

bool PageColumn::press_in(Flow& flow, const std::string& key, std::string_view words) {
    Rect rect = flow.next(press_width(words));
    rect.h = row_;
    return ui_.button(key, rect, app_.say(words), Ui::ButtonLook::framed);
}

void PageColumn::run_switch(const std::string& key, float gap) {
    if (app_.record().runs.size() < 2) return;
    Flow flow(margin_, y_, width_, row_, 6);
    ui_.open(key, Role::group, {margin_, y_, width_, row_}, app_.say("runs.name"));
    run_buttons(app_, ui_, flow, key.substr(0, key.size() - 1) + '.', 22);
    ui_.close();
    y_ = flow.bottom() + gap;
}

}  // namespace overwater
