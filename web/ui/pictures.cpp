// Pictures and formulas: painted on the canvas, described in the mirror, and shown there where there is no canvas.

#include <algorithm>
#include <cmath>
#include <utility>

#include "web/draw/mathml.hpp"
#include "web/draw/svg_painter.hpp"
#include "web/draw/typeset.hpp"
#include "web/ui/ui.hpp"

namespace overwater {

void Ui::picture(const TextView& key, const Point& at, const Picture& picture) {
    draw_picture(at, picture);
    Node& node = add(key, Role::image, {at.x, at.y, picture.width, picture.height});
    node.name = picture.description;
    node.look = "picture";
    if (!interaction_.painting) node.content.push_back(svg_of(picture, *theme_));
}

const Ui::SetFormula& Ui::set(const Formula& formula, float size, Ink ink) {
    const float scale = input_.pixel_scale;
    for (const auto& one : kept_) {
        if (one->size == size && one->ink == ink && one->pixel_scale == scale && one->formula == formula) return *one;
    }
    auto fresh = std::make_unique<SetFormula>();
    fresh->formula = formula;
    fresh->size = size;
    fresh->ink = ink;
    fresh->pixel_scale = scale;
    fresh->picture = typeset(formula, size, ink, measure_, &fresh->baseline);
    fresh->content = mathml_of(formula).children;
    if (kept_.size() < most_kept) return *kept_.emplace_back(std::move(fresh));
    const std::size_t place = std::exchange(oldest_kept_, (oldest_kept_ + 1) % most_kept);
    kept_[place] = std::move(fresh);
    return *kept_[place];
}

const Ui::SetFormula& Ui::set_within(const Formula& formula, float size, Ink ink, float room, float smallest) {
    const SetFormula& whole = set(formula, size, ink);
    const float wide = whole.picture.width;
    if (wide <= room) return whole;
    return set(formula, std::max(smallest, std::floor(size * room / wide * 2) / 2), ink);
}

float Ui::formula(const TextView& key, const Point& at, const Formula& formula, std::string spoken, float size,
                  Ink ink) {
    const SetFormula& shown = set(formula, size, ink);
    const Picture& picture = shown.picture;
    const Rect rect{at.x, at.y - shown.baseline, picture.width, picture.height};
    if (visible(rect)) draw_picture({rect.x, rect.y}, picture);
    Node& node = add(key, Role::math, rect);
    node.name = std::move(spoken);
    node.content = shown.content;
    return picture.width;
}

void Ui::table(const TextView& key, const Rect& rect, Element table) {
    Node& node = add(key, Role::table, rect);
    node.content = std::move(table.children);
}

}  // namespace overwater
