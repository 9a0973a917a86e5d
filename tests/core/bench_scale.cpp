#include <doctest/doctest.h>

#include "core/bench/scale.hpp"

using namespace overwater;

namespace {

/// Millimetres of tube for a millilitre, from what is typed.
std::optional<ScaleLength> by(const char* capacity, const char* length) {
    Entries entries;
    entries.edit(Field::tube_capacity).text = capacity;
    entries.edit(Field::length_of_scale).text = length;
    auto scale = scale_length(read_all([&](Field field) -> const Entry& { return entries.at(field); }));
    if (scale) scale->per_volume *= 1e-3;  // m/m³ to mm/mL
    return scale;
}

}  // namespace

TEST_CASE("a scale is as long as it was measured, else as is usual") {
    // method.md, section 1: 11 mm per mL for 50 mL tubes, 6 mm for 100 mL tubes, marked assumed.
    CHECK(by("50", "")->per_volume == doctest::Approx(11));
    CHECK(by("100", "")->per_volume == doctest::Approx(6));
    CHECK(by("50", "")->assumed);
    CHECK(by("50", "600")->per_volume == doctest::Approx(12));  // 600 mm for 50 mL
    CHECK_FALSE(by("50", "600")->assumed);
    CHECK(by("50", "60 cm")->per_volume == doctest::Approx(12));
    CHECK(by("50", "-600")->assumed);  // no length at all
    CHECK(by("50", "60000")->assumed);
    CHECK_FALSE(by("", "600").has_value());
    CHECK_FALSE(by("0", "600").has_value());
}
