#include <doctest/doctest.h>

#include "core/lesson/dial.hpp"

using namespace overwater;

namespace {

/// A thermometer with a line each degree and a number each ten.
Dial thermometer(double position) {
    Dial dial;
    dial.field = Field::temperature;
    dial.kind = DialKind::thermometer;
    dial.unit = UnitId::celsius;
    dial.low = -10;
    dial.high = 50;
    dial.division = 1;
    dial.position = position;
    dial.decimals = 1;
    return dial;
}

}  // namespace

TEST_CASE("an eye finds the numbers on both sides, whole divisions and tenths") {
    const EyePlace place = eye_place(thermometer(21.4));
    CHECK(place.below == 20);
    CHECK(place.above == 30);
    CHECK(place.divisions == 1);
    CHECK(place.tenths == 4);
    // At the last number nothing stands above it.
    CHECK(eye_place(thermometer(50)).below == 40);
    CHECK(eye_place(thermometer(50)).divisions == 10);
    CHECK(numbers_of(thermometer(0)) == std::vector<double>{-10, 0, 10, 20, 30, 40, 50});
}

TEST_CASE("a reading is right within half a division, in any unit") {
    const Dial dial = thermometer(21.4);
    CHECK(perfect_reading(dial) == "21.4");
    const auto right = [&](const char* text) {
        Entry typed;
        typed.text = text;
        return is_read_right(dial, typed);
    };
    for (const char* text : {"21.4", "20.9", "21.9", "70.5 °F", "294.55 K"}) CHECK(right(text));
    for (const char* text : {"20.8", "22.0", "71.5 °F", "", "x"}) CHECK_FALSE(right(text));
}

TEST_CASE("each kind of dial is described in words of its own, a display by its digits") {
    Dial dial = thermometer(21.4);
    std::vector<std::string_view> keys;
    for (std::size_t i = 0; i < dial_kind_names.size(); ++i) {
        dial.kind = static_cast<DialKind>(i);
        keys.push_back(eye_words(dial).key);
    }
    CHECK(keys == std::vector<std::string_view>{"practice.eye.meniscus", "practice.eye.thermometer",
                                                "practice.eye.needle", "practice.eye.mercury", "practice.eye.ruler",
                                                "practice.eye.display", "practice.eye.report"});
    const Message display = eye_words(dial);
    REQUIRE(display.arguments.size() == 1);
    CHECK(display.arguments[0].base == doctest::Approx(21.4));
    CHECK(numbers_of(dial).empty());
}
