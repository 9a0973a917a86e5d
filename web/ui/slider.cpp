#include <algorithm>
#include <cmath>

#include "core/quantity/decimal.hpp"
#include "web/draw/slider.hpp"
#include "web/ui/ui.hpp"

namespace overwater {

namespace {

/// As the browser writes it, so that a value that came back from it is the same text.
std::string plain_number(double value) { return std::isfinite(value) ? machine_number(value, 12) : "0"; }

}  // namespace

bool Ui::slider(const TextView& key, const Rect& place, const Slider& about) {
    Rect rect = place;
    if (touch() && rect.h < 44) rect = {rect.x, rect.y - (44 - rect.h) / 2, rect.w, 44};
    const double span = about.high > about.low ? about.high - about.low : 1;
    const double value = about.value > about.low ? std::min(about.value, std::max(about.low, about.high)) : about.low;
    SliderLook look;
    look.share = (value - about.low) / span;
    look.origin = (std::clamp(0.0, about.low, about.low + span) - about.low) / span;
    for (const double mark : about.marks) look.marks.push_back((mark - about.low) / span);
    look.hot = hovered(rect) || focused(key);
    draw_picture({rect.x, rect.y}, draw_slider(look, rect.w, rect.h));
    focus_ring(key, rect, 5);
    Node& node = add(key, Role::slider, rect);
    node.name = about.name;
    node.value = plain_number(value);
    node.low = plain_number(about.low);
    node.high = plain_number(about.high);
    node.step = about.step > 0 ? plain_number(about.step) : "any";
    node.spoken = about.spoken;
    node.described_by = about.described_by;
    node.look = "slider";
    node.write = interaction_.write;
    return pressed(key);
}

}  // namespace overwater
