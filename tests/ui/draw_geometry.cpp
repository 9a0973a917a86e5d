#include "web/draw/geometry.hpp"

#include <doctest/doctest.h>

#include <cmath>

using namespace overwater;

namespace {

float total_length(const std::vector<Segment>& segments) {
    float sum = 0;
    for (const Segment& s : segments) sum += std::hypot(s.b.x - s.a.x, s.b.y - s.a.y);
    return sum;
}

}  // namespace

TEST_CASE("hatching covers an area as densely as its spacing says") {
    // Cavalieri: parallel strokes `d` apart have the total length area / d, whatever the shape.
    const std::vector<Point> square{{0, 0}, {200, 0}, {200, 200}, {0, 200}};
    CHECK(total_length(hatch_segments(square, 4)) == doctest::Approx(200 * 200 / 4.0).epsilon(0.01));
    // An L, to see that hollows stay empty: 200 x 200 without its upper right quarter.
    const std::vector<Point> hollow{{0, 0}, {100, 0}, {100, 100}, {200, 100}, {200, 200}, {0, 200}};
    const std::vector<Segment> strokes = hatch_segments(hollow, 4);
    CHECK(total_length(strokes) == doctest::Approx(30000 / 4.0).epsilon(0.01));
    for (const Segment& s : strokes) {
        CHECK(s.a.x + s.a.y == doctest::Approx(s.b.x + s.b.y));  // rising to the right at 45 degrees
        const float x = (s.a.x + s.b.x) / 2;
        const float y = (s.a.y + s.b.y) / 2;
        CHECK_FALSE((x > 100.5F && y < 99.5F));
    }
}

TEST_CASE("hatching of nothing, of too little and of too much is nothing") {
    CHECK(hatch_segments({}, 4).empty());
    CHECK(hatch_segments({{0, 0}, {1, 1}}, 4).empty());
    CHECK(hatch_segments({{0, 0}, {9, 0}, {9, 9}}, 0).empty());
    CHECK(hatch_segments({{0, 0}, {9, 0}, {9, 9}}, NAN).empty());
    CHECK(hatch_segments({{0, 0}, {1e9F, 0}, {1e9F, 9}}, 2).empty());
    CHECK(hatch_segments({{0, 0}, {NAN, 0}, {5, 9}}, 2).empty());
}

TEST_CASE("dashes fill dash / (dash + gap) of a line and run around corners") {
    const std::vector<Segment> dashes = dash_segments({{0, 0}, {70, 0}, {70, 70}}, 4, 3);
    CHECK(total_length(dashes) == doctest::Approx(140.0 * 4 / 7));
    CHECK(dashes.front().a.x == 0);
    CHECK(dash_segments({{0, 0}, {9, 0}}, 0, 3).empty());
    CHECK(dash_segments({{5, 5}, {5, 5}}, 4, 3).empty());
}

TEST_CASE("labels are pushed apart, but no further than they have to") {
    std::vector<float> far{20, 60};
    push_apart(far, {10, 10}, 0, 100);
    CHECK(far == std::vector<float>{20, 60});

    std::vector<float> same{50, 50};
    push_apart(same, {10, 10}, 0, 100);
    CHECK(same == std::vector<float>{40, 60});

    std::vector<float> at_the_edge{2, 4, 90};
    push_apart(at_the_edge, {10, 10, 10}, 0, 100);
    CHECK(at_the_edge == std::vector<float>{10, 30, 90});

    std::vector<float> crowded{95, 96, 97};
    push_apart(crowded, {10, 10, 10}, 0, 100);
    CHECK(crowded == std::vector<float>{50, 70, 90});

    std::vector<float> too_many{1, 2};
    push_apart(too_many, {40, 40}, 0, 100);  // no room: they begin at the low end and stay apart
    CHECK(too_many[1] - too_many[0] == doctest::Approx(80));
}
