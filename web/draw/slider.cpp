#include "web/draw/slider.hpp"

#include <algorithm>
#include <cmath>

#include "web/draw/geometry.hpp"

namespace overwater {

float slider_place(double share, float width) {
    const double held = share > 0 ? std::min(share, 1.0) : 0.0;
    return slider_thumb / 2 + static_cast<float>(held) * std::max(0.0f, width - slider_thumb);
}

Picture draw_slider(const SliderLook& look, float width, float height) {
    constexpr float turn = 6.28318531f;
    constexpr float half_track = 2;
    constexpr float radius = 10;
    Picture picture;
    picture.width = width;
    picture.height = height;
    const float y = std::round(height / 2);
    const float thumb = slider_place(look.share, width);
    const float origin = slider_place(look.origin, width);
    const float end = slider_thumb / 2 - radius + 1;
    picture.filled_box({end, y - half_track}, {width - end, y + half_track}, Ink::field_edge, half_track);
    const float from = look.origin > 0 ? std::min(origin, thumb) : end;
    picture.filled_box({from, y - half_track}, {std::max(origin, thumb), y + half_track}, Ink::copper,
                       look.origin > 0 ? 0 : half_track);
    for (const double mark : look.marks) {
        if (!(mark >= 0 && mark <= 1)) continue;
        const float x = std::round(slider_place(mark, width));
        picture.line({x, y + 5}, {x, y + 10}, Ink::soft);
    }
    picture.area(arc({thumb, y}, radius, radius, 0, turn, 40), Ink::copper);
    if (!look.hot) picture.area(arc({thumb, y}, radius - 2, radius - 2, 0, turn, 36), Ink::card);
    return picture;
}

}  // namespace overwater
