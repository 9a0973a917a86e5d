#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "web/draw/picture.hpp"

/// Pieces from which the vessels are put together. Their corners are tables, which weigh less than code.

namespace overwater {

/// A line whose corners are cut round, by `radius` where there is room.
std::vector<Point> rounded(const std::vector<Point>& corners, float radius);

/// What of the inside of a wall, open at the top, lies below a level (`way` 1) or above it (`way` -1).
std::vector<Point> cut_at(const std::vector<Point>& wall, float level, float way);

/// x, y, x, y, ... from the foot of a vessel: x to the right, y upwards.
using Corners = std::span<const std::int16_t>;

/// A place where a vessel stands, and how many px its tables' units are across and up.
class Glass {
public:
    /// `unit`: px of a picture of 300 px, for tubing and lines.
    Glass(Picture& picture, Point foot, float across, float up, float unit)
        : picture_(picture), foot_(foot), across_(across), up_(up), unit_(unit) {}

    Point at(float x, float y) const;
    std::vector<Point> points(Corners corners) const;
    void area(Corners corners, Ink ink);
    void line(Corners corners, Ink ink, float width = 2);
    /// Gas above `level`, which is in px, liquid below it.
    void contents(const std::vector<Point>& wall, float level);
    /// A stoppered conical flask, 100 wide and 100 high, with metal in acid up to `flask_level`.
    void flask();
    /// Tubing along rounded corners, `inside` what flows in it. It passes behind the boxes.
    void hose(const std::vector<Point>& corners, Ink inside, const std::vector<Rect>& boxes = {});
    /// Of an instrument.
    void casing(Point a, Point b);

    static constexpr float flask_level = 30;

private:
    Picture& picture_;
    Point foot_;
    float across_, up_, unit_;
};

void fill_with_gas(Picture& picture, const std::vector<Point>& outline, float spacing);

/// A line in one or two pens, the second one over the first, where none of the boxes is.
void line_around(Picture& picture, const std::vector<Point>& line, const std::vector<Rect>& boxes, float width,
                 Ink inside = Ink::text, float inside_width = 0);

}  // namespace overwater
