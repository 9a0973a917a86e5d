// Pictures and formulas: painted on the canvas, described in the mirror, and shown there where there is no canvas.

#include <utility>

#include "core/explain/formula.hpp"
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

float Ui::formula(const TextView& key, const Point& at, const Formula& formula, std::string spoken, float size,
                  Ink ink) {
    float baseline = 0;
    const Picture picture = typeset(formula, size, ink, measure_, &baseline);
    const Rect rect{at.x, at.y - baseline, picture.width, picture.height};
    if (visible(rect)) draw_picture({rect.x, rect.y}, picture);
    Node& node = add(key, Role::math, rect);
    node.name = std::move(spoken);
    node.content = mathml_of(formula).children;
    return picture.width;
}

void Ui::table(const TextView& key, const Rect& rect, Element table) {
    Node& node = add(key, Role::table, rect);
    node.content = std::move(table.children);
}

}  // namespace overwater
