// Half-widths of the instruments that no standard has, and of those from memory: each as its row's source says.

#include <doctest/doctest.h>

#include <string>

#include "core/bench/instrument.hpp"

using namespace overwater;

namespace {

struct Row {
    Field field;
    const char* key;
    double half_width;  ///< in the base of the measure: kg, m, m³, °C, Pa, kg/m
    const char* source;
};

constexpr const char* practice = "common practice, no source";

const Row rows[] = {
    {Field::end_space, "poured_into_cylinder", 0.10e-6, "method.md, section 6"},
    {Field::end_space, "weighed_water", 0.02e-6, practice},
    {Field::end_space, "estimated_with_ruler", 0.5e-6, practice},
    {Field::level_difference, "ruler", 1e-3, "method.md, section 6"},
    {Field::level_difference, "tape_by_hand", 3e-3, practice},
    {Field::ribbon_length, "ruler", 0.5e-3, "half a division of a millimetre"},
    {Field::tube_bore, "caliper", 0.1e-3, practice},
    {Field::tube_bore, "ruler", 0.5e-3, "half a division of a millimetre"},
    {Field::temperature, "thermometer_1", 0.5, "method.md, section 6"},
    {Field::temperature, "thermometer_01", 0.2, practice},
    {Field::temperature, "temperature_probe", 0.5, practice},
    {Field::temperature, "temperature_probe_lab", 0.2, practice},
    {Field::temperature, "temperature_probe_cheap", 1.0, practice},
    {Field::barometer, "aneroid_barometer", 100, "method.md, section 6: 1 hPa"},
    {Field::barometer, "pressure_sensor", 100, practice},
    {Field::barometer, "mercury_barometer", 50, practice},
    {Field::barometer, "weather_report", 100, practice},
    {Field::barometer, "telephone_sensor", 100, "from memory"},
    {Field::height_above_sea_level, "map", 20, "method.md, section 2"},
    {Field::height_above_sea_level, "survey", 5, practice},
    {Field::acid_volume, "cylinder_10", 0.2e-6, "ISO 4788:2005, 10 mL, class B: 0.20 mL"},
    {Field::acid_volume, "pipette_or_burette", 0.05e-6, "ISO 385:2005, Table 1, 10 mL, class B: 0.05 mL"},
    {Field::mass_per_metre, "one_metre_weighed", 0.01e-3, practice},
    {Field::mass_per_metre, "label", 0.1e-3, practice},
    {Field::starting_bubble, "read_on_scale", 0.1e-6, practice},
    {Field::starting_bubble, "guessed", 0.3e-6, practice},
};

}  // namespace

TEST_CASE("the half-widths of what a class reads with are those of their sources") {
    for (const Row& row : rows) {
        INFO(row.key);
        INFO(row.source);
        const Instrument* found = instrument_by_key(row.field, row.key);
        REQUIRE(found != nullptr);
        CHECK(found->reading == doctest::Approx(row.half_width).epsilon(1e-12));
        CHECK(found->reading_shape == Shape::rectangular);
        CHECK(found->limit == 0);     // it is in the reading
        CHECK(found->capacity == 0);  // no vessel of a size
    }
}

TEST_CASE("gas measuring tubes and the syringe have the limits of usual ones") {
    // From memory: divisions of 0.1 mL and 0.2 mL, limits of one division; the syringe by common practice, a division of 1 mL.
    const struct {
        const char* key;
        double capacity, division, limit;  // mL
    } tubes[] = {{"gas_tube_50", 50, 0.1, 0.10}, {"gas_tube_100", 100, 0.2, 0.20}, {"gas_syringe_100", 100, 1, 1.0}};
    for (const auto& row : tubes) {
        INFO(row.key);
        const Instrument* found = instrument_by_key(Field::scale_reading, row.key);
        REQUIRE(found != nullptr);
        CHECK(found->capacity == doctest::Approx(row.capacity * 1e-6).epsilon(1e-12));
        CHECK(found->reading == doctest::Approx(row.division / 2 * 1e-6).epsilon(1e-12));
        CHECK(found->limit == doctest::Approx(row.limit * 1e-6).epsilon(1e-12));
    }
}
