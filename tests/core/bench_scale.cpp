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

TEST_CASE("a tube of up to 75 mL has the scale of the smaller ones, and 2 to 40 mm a mL can be") {
    CHECK(by("75", "")->per_volume == doctest::Approx(11));
    CHECK(by("75.1", "")->per_volume == doctest::Approx(6));
    CHECK(usual_scale(0.010e-3) == doctest::Approx(11e3));  // m/m³
    // From memory of the tubes that are sold; 50 mL are 100 mm and 2 m then.
    CHECK_FALSE(by("50", "100")->assumed);
    CHECK(by("50", "100")->per_volume == doctest::Approx(2));
    CHECK(by("50", "99.9")->assumed);
    CHECK_FALSE(by("50", "2000")->assumed);
    CHECK(by("50", "2000")->per_volume == doctest::Approx(40));
    CHECK(by("50", "2001")->assumed);
    CHECK_FALSE(by("-50", "600").has_value());
    // In m/m³, without what typed numbers round to.
    CHECK(is_possible_scale(2000.0));
    CHECK(is_possible_scale(40000.0));
    CHECK_FALSE(is_possible_scale(1999.9));
    CHECK_FALSE(is_possible_scale(40000.1));
}
