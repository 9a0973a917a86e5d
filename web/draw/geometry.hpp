#pragma once

#include <vector>

#include "web/draw/picture.hpp"

/// Geometry that both painters share, so that the canvas and the SVG show the same strokes.

namespace overwater {

struct Segment {
    Point a;
    Point b;
};

/// Strokes rising to the right at 45 degrees, `spacing` apart, clipped to a closed outline of any shape (even-odd
/// rule). They lie on lines x + y = k * spacing * sqrt(2), so neighbouring areas continue each other's strokes.
/// No strokes where the spacing is below 1 px or the outline has fewer than three points.
std::vector<Segment> hatch_segments(const std::vector<Point>& outline, float spacing);

/// Lengths of a dash and of the gap after it, for a line of this width.
float dash_length(float width);
float gap_length(float width);

/// The strokes of a dashed line along `points`, beginning with a dash.
std::vector<Segment> dash_segments(const std::vector<Point>& points, float dash, float gap);

/// `count` + 1 points of an ellipse's arc; angles in radians, 0 to the right, growing clockwise (y downwards).
std::vector<Point> arc(Point centre, float radius_x, float radius_y, float from, float to, int count);

/// Moves the centres of labels apart so that none of them overlap: each has a half-height; the order of `centres` is
/// kept as given (ascending), all stay between `low` and `high` while there is room. Moves as little as a simple sweep
/// down and up can.
void push_apart(std::vector<float>& centres, const std::vector<float>& half_sizes, float low, float high);

/// A round step and the decimals its multiples need.
struct AxisStep {
    double step;
    int decimals;
};
/// The smallest of 1, 2, 5 times a power of ten that is not below `least`, which is above zero.
AxisStep round_step(double least);

}  // namespace overwater
