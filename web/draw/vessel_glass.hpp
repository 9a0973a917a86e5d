#pragma once

#include <cstdint>
#include <initializer_list>
#include <span>
#include <vector>

#include "web/draw/picture.hpp"

/// Pieces from which the vessels are put together. They stand in tables, which weigh less than code.

namespace overwater {

/// A line that goes up or down first, then across, and so on: to each coordinate in turn. Its corners are cut round, by
/// `radius` where there is room.
std::vector<Point> turning(float x, float y, std::initializer_list<float> turns, float radius);

void fill_with_gas(Picture& picture, const std::vector<Point>& outline, float spacing);

/// A line in two pens, the second one (none if it is of no width) over the first, where none of the boxes is.
void line_around(Picture& picture, const std::vector<Point>& line, const std::vector<Rect>& boxes, float width,
                 Ink inside, float inside_width);

/// Numbers in a row, x to the right and y upwards from the foot of a vessel. Of a wall: x, y, x, y, ... Of pieces: the kind
/// of a piece (below), its ink, how many points, x, y, x, y, ..., the next piece.
using Table = std::span<const std::int16_t>;
namespace piece {
inline constexpr std::int16_t area = 0, line = 1;
inline constexpr std::int16_t hose = 2;    ///< its ink is that of what flows in it
inline constexpr std::int16_t casing = 3;  ///< of an instrument, from corner to corner
inline constexpr std::int16_t bubble = 4;  ///< its middle and a point at its right
}  // namespace piece

/// A place where a vessel stands, and how many px its tables' units are across and up.
class Glass {
public:
    /// `unit`: px of a picture of 300 px, for tubing.
    Glass(Picture& picture, float x, float foot, float across, float up, float unit)
        : picture_(picture), x_(x), foot_(foot), across_(across), up_(up), unit_(unit) {}

    float x(float units) const;
    float y(float units) const;
    /// Liquid up to `level`, which is in px, between walls that are open at the top; gas above it if they are stoppered.
    void contents(Table wall, float level, bool stoppered);
    void draw(Table pieces);
    /// A stoppered conical flask, 100 wide and 100 high, with metal in acid up to `flask_level`.
    void flask();

    static constexpr float flask_level = 30;

private:
    std::vector<Point> points(Table table) const;

    Picture& picture_;
    float x_, foot_, across_, up_, unit_;
};

}  // namespace overwater
