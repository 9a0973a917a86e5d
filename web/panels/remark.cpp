#include "web/panels/remark.hpp"

namespace overwater {

float draw_remark(Ui& ui, const Rect& area, const TextView& key, const TextView& words, bool loud, float size) {
    const Type type{Face::regular, size, loud ? Ink::warning : Ink::soft};
    if (!loud) return ui.text(key, {area.x, area.y, area.w, 0}, words, type) + 4;
    const float tall = Ui::line_height(type) * static_cast<float>(ui.lines(words, type, area.w - 16).size());
    ui.fill({area.x, area.y, area.w, tall + 6}, Ink::warning_paper, 3);
    ui.text(key, {area.x + 8, area.y + 3, area.w - 16, 0}, words, type);
    return tall + 10;
}

}  // namespace overwater
