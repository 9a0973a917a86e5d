#include "web/draw/coverage.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace overwater {

Coverage::Coverage(int width, int height)
    : width_(width),
      height_(height),
      change_(std::make_unique<float[]>(static_cast<std::size_t>((width + 1) * height + 1))) {}

void Coverage::line(float x0, float y0, float x1, float y1) {
    if (y0 == y1) return;
    // Rounding may have put an end next to the raster.
    x0 = std::clamp(x0, 0.0F, static_cast<float>(width_));
    x1 = std::clamp(x1, 0.0F, static_cast<float>(width_));
    // Everything to the right of an edge that goes down is inside, to the right of one that goes up outside again.
    float sign = 1;
    if (y0 > y1) {
        std::swap(x0, x1);
        std::swap(y0, y1);
        sign = -1;
    }
    const float slope = (x1 - x0) / (y1 - y0);
    float x = x0;
    for (int row = static_cast<int>(y0); row < height_ && static_cast<float>(row) < y1; ++row) {
        const float height = std::min(y1, static_cast<float>(row + 1)) - std::max(y0, static_cast<float>(row));
        const float next = std::clamp(x + slope * height, std::min(x0, x1), std::max(x0, x1));
        const float left = std::min(x, next);
        const float right = std::max(x, next);
        x = next;
        for (int column = static_cast<int>(left); column <= width_ - 1 && static_cast<float>(column) <= right;
             ++column) {
            const auto edge = static_cast<float>(column);
            const float from = std::max(left, edge);
            const float to = std::min(right, edge + 1);
            // The part of the edge within this pixel, and how much of the pixel is to the left of its middle.
            const float part = sign * height * (right > left ? (to - from) / (right - left) : 1);
            const float before = (from + to) / 2 - edge;
            float* change = &change_[static_cast<std::size_t>(row * (width_ + 1) + column)];
            change[0] += part * (1 - before);
            change[1] += part * before;
        }
    }
}

void Coverage::curve(float x0, float y0, float x1, float y1, float x2, float y2) {
    // Chords of n equal steps are off by a fourth of this over n squared.
    constexpr float most_off = 0.02F;
    const float bend = std::hypot(x0 - 2 * x1 + x2, y0 - 2 * y1 + y2);
    const int steps = 1 + static_cast<int>(std::sqrt(bend / (4 * most_off)));
    float x = x0;
    float y = y0;
    for (int i = 1; i <= steps; ++i) {
        const float t = static_cast<float>(i) / static_cast<float>(steps);
        const float s = 1 - t;
        const float next_x = s * s * x0 + 2 * s * t * x1 + t * t * x2;
        const float next_y = s * s * y0 + 2 * s * t * y1 + t * t * y2;
        line(x, y, next_x, next_y);
        x = next_x;
        y = next_y;
    }
}

void Coverage::outline(std::span<const OutlinePoint> points, float x_scale, float y_scale, float left, float top) {
    struct Place {
        float x;
        float y;
    };
    const auto place = [&](const OutlinePoint& p) {
        return Place{static_cast<float>(p.x) * x_scale + left, static_cast<float>(p.y) * y_scale + top};
    };
    const auto middle = [](Place a, Place b) { return Place{(a.x + b.x) / 2, (a.y + b.y) / 2}; };
    for (const OutlinePoint* begin = points.data(); begin != points.data() + points.size();) {
        const OutlinePoint* last = begin;
        while (!last->last) ++last;
        // Between two points off the curve there is one on it, halfway.
        const Place start = begin->on_curve  ? place(*begin)
                            : last->on_curve ? place(*last)
                                             : middle(place(*begin), place(*last));
        Place now = start;
        Place control = start;
        bool bent = false;
        for (const OutlinePoint* p = begin; p <= last + 1; ++p) {
            const bool on_curve = p > last || p->on_curve;
            Place next = p > last ? start : place(*p);
            const Place ahead = next;
            if (!on_curve && bent) next = middle(control, next);
            if (bent) curve(now.x, now.y, control.x, control.y, next.x, next.y);
            if (!bent && on_curve) line(now.x, now.y, next.x, next.y);
            if (bent || on_curve) now = next;
            control = ahead;
            bent = !on_curve;
        }
        begin = last + 1;
    }
}

void Coverage::write(unsigned char* pixels, int blur) {
    const float share = 255 / static_cast<float>(blur);
    for (int row = 0; row < height_; ++row) {
        float* covered = &change_[static_cast<std::size_t>(row * (width_ + 1))];
        float sum = 0;
        for (int column = 0; column < width_; ++column) {
            sum += covered[column];
            covered[column] = std::min(std::abs(sum), 1.0F);
        }
        for (int column = 0; column < width_ + blur - 1; ++column) {
            float ink = 0.5F;  // so that cutting off rounds
            for (int k = std::max(0, column - width_ + 1); k < blur && k <= column; ++k)
                ink += share * covered[column - k];
            *pixels++ = static_cast<unsigned char>(ink);
        }
    }
}

}  // namespace overwater
