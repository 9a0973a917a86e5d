#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "web/draw/picture.hpp"

namespace overwater {

/// The inside of an upside-down tube: upright walls under a round closed end.
struct TubeShape {
    float centre = 0;
    float half_width = 0;
    float top = 0;  ///< of the closed end
    float mouth = 0;

    float dome_bottom() const { return top + half_width; }
    float half_width_at(float y) const;
    /// From the left end of the mouth over the closed end to the right end of the mouth.
    std::vector<Point> wall() const;
    /// A liquid surface from wall to wall, lowest in the middle, at `y`; higher by `rise` at the walls.
    std::vector<Point> surface(float y, float rise) const;
    /// What lies above and below a surface.
    std::vector<Point> above(const std::vector<Point>& surface) const;
    std::vector<Point> below(const std::vector<Point>& surface) const;
    /// All of the inside.
    std::vector<Point> inside() const { return wall(); }
};

/// Marks of a scale and which of them carry numbers.
struct ScaleSteps {
    double step = 1;          ///< between marks, from 1, 2, 5 times a power of ten
    double number_step = 10;  ///< between numbers
};

/// Steps so that marks are at least `least_px` and numbers at least `least_number_px` apart.
ScaleSteps scale_steps(double px_per_unit, double least_px, double least_number_px);

/// A mark's number without trailing zeros.
std::string scale_number(double value, std::string_view decimal_sign);

}  // namespace overwater
