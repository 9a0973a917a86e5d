#pragma once

#include <memory>
#include <span>

#include "web/draw/packed_font.hpp"

namespace overwater {

/// How much of each pixel of a raster a figure covers, from the exact areas of its edges.
class Coverage {
public:
    /// A raster of `width` times `height` pixels, both 1 or more. y goes down.
    Coverage(int width, int height);

    /// A straight edge. Edges of a figure form closed lines within the raster; inside is where they go round, either way.
    void line(float x0, float y0, float x1, float y1);
    /// An outline of a font: its contours times the scales, in pixels a unit, moved by `left` and `top` pixels.
    void outline(std::span<const OutlinePoint> points, float x_scale, float y_scale, float left, float top);

    /// Writes `width` + `blur` - 1 pixels a row, each the mean of itself and the `blur` - 1 to its left, from 0 to 255. Once,
    /// after the last line. `blur` is 1 or more.
    void write(unsigned char* pixels, int blur);

private:
    void curve(float x0, float y0, float x1, float y1, float x2, float y2);

    int width_;
    int height_;
    // By how much each pixel is covered more than that to its left; one column more than the raster has.
    std::unique_ptr<float[]> change_;
};

}  // namespace overwater
