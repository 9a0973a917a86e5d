#pragma once

#include <cstdint>
#include <string>

#include "core/lesson/dial.hpp"
#include "core/quantity/number_format.hpp"
#include "web/draw/picture.hpp"

/// Instruments of a practice run, drawn large enough to be read.

namespace overwater {

/// How much of a scale is drawn.
enum class DialZoom : std::uint8_t {
    whole,       ///< all of it
    around,      ///< the two numbered marks around the position, and as far again on each side
    between      ///< the two numbered marks around the position
};
inline constexpr int dial_zooms = 3;

struct DialLook {
    DialZoom zoom = DialZoom::around;
    /// Of a tube: the largest number is at its closed end, which is up; else the numbers grow downwards.
    bool grows_upwards = true;
    DecimalSign decimal_sign = DecimalSign::point;
    std::string unit;         ///< as written on the instrument
    std::string title;        ///< what is printed above the digits of a display or a report
    std::string description;  ///< for those who do not see it
};

/// The part of the scale that is drawn, in the dial's unit; it may go beyond its first and last numbers.
struct DialWindow {
    double low = 0;
    double high = 1;
};
DialWindow dial_window(const Dial& dial, DialZoom zoom);

/// How many lines are passed from one that is drawn to the next, and from one numbered line to the next.
struct DialSteps {
    int line = 1;
    int number = 10;
};
/// `px` a division: lines at least 4 px apart, numbers at least `number_px`.
DialSteps dial_steps(const Dial& dial, double px, double number_px);

/// The height at which `value` stands in a picture with an upright scale of `height` px.
float dial_height_of(const Dial& dial, const DialLook& look, double value, float height);

/// A round scale: its arc, and the direction to a value in radians (0 to the right, growing clockwise).
struct DialArc {
    Point centre;
    float radius = 0;
    double low_angle = 0;  ///< at the window's low end
    double high_angle = 0;
};
DialArc dial_arc(DialZoom zoom, float width, float height);
double dial_angle_of(const Dial& dial, const DialLook& look, double value, float width, float height);

/// The instrument with its position: a meniscus at its lowest point, a needle, the end of a column, digits. For 200 px
/// by 160 px and more.
Picture draw_dial(const Dial& dial, const DialLook& look, float width, float height, const TextMeasure& measure);

}  // namespace overwater
