#include <cmath>

#include "web/draw/side_label.hpp"
#include "web/draw/tube.hpp"
#include "web/draw/tube_shape.hpp"

namespace overwater {

Picture draw_scale_choice(bool largest_at_closed_end, const std::string& largest, const std::string& description,
                          float width, float height, const TextMeasure& measure) {
    constexpr int marks = 10;
    Picture picture;
    picture.width = width;
    picture.height = height;
    picture.description = description;
    const float size = std::round(height / 8);

    TubeShape tube;
    tube.half_width = std::round(height * 0.105f);
    const float numbers = std::fmax(measure.width(largest, Face::semibold, size), size);
    tube.centre = std::round((width - numbers - 8) / 2);
    tube.top = std::round(height * 0.08f);
    tube.mouth = std::round(height * 0.95f);
    const float wall = tube.centre + tube.half_width;
    const float left = std::round(tube.centre - 2.2f * tube.half_width);
    const float right = width - std::round(0.05f * width);

    // A scale that counts from the closed end begins there; the other one leaves the end uncounted.
    const float first = largest_at_closed_end ? tube.top + 1.15f * tube.half_width : tube.top;
    const float last = tube.mouth - height * 0.14f;
    const float meniscus = std::round(first + (last - first) * 0.55f);
    const float level = tube.mouth - height * 0.09f;

    picture.filled_box({left, level}, {right, height - 1}, Ink::bucket);
    const std::vector<Point> surface = tube.surface(meniscus, tube.half_width / 4);
    const std::vector<Point> gas = tube.above(surface);
    picture.area(tube.below(surface), Ink::liquid);
    picture.area(gas, Ink::gas);
    picture.hatched(gas, Ink::gas_hatch, 5);
    for (int i = 0; i <= marks; ++i) {
        const float y = first + (last - first) * static_cast<float>(i) / marks;
        const float end = tube.centre + tube.half_width_at(y);
        const float begin = wall - tube.half_width * (i % 5 == 0 ? 0.9f : 0.5f);
        if (end - begin > 2) picture.line({begin, y}, {end, y}, Ink::text);
    }
    picture.polyline(tube.wall(), Ink::text, 1.5f);
    picture.polyline(surface, Ink::liquid_edge, 1.5f);
    picture.line({left, level}, {tube.centre - tube.half_width, level}, Ink::liquid_edge);
    picture.line({wall, level}, {right, level}, Ink::liquid_edge);

    const std::string zero = "0";
    const float x = wall + 8;
    const float down = digit_half_height * size;
    picture.text({x, first + (largest_at_closed_end ? 0 : 0.2f * size) + down}, largest_at_closed_end ? largest : zero,
                 Ink::text, Face::semibold, size);
    picture.text({x, last + down - 0.2f * size}, largest_at_closed_end ? zero : largest, Ink::soft, Face::regular,
                 size);
    return picture;
}

}  // namespace overwater
