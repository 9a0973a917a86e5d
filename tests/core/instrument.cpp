#include <doctest/doctest.h>

#include <cmath>
#include <set>

#include "core/bench/instrument.hpp"

using namespace overwater;

namespace {

constexpr double ml = 1e-6;

struct Vessel {
    const char* key;
    double capacity, division, limit;  ///< mL
};

// ISO 385:2005, Table 1, from a second-hand copy.
const Vessel iso_385[] = {
    {"burette_10_002_a", 10, 0.02, 0.02}, {"burette_10_002_b", 10, 0.02, 0.05}, {"burette_10_005_a", 10, 0.05, 0.03},
    {"burette_10_005_b", 10, 0.05, 0.05}, {"burette_25_005_a", 25, 0.05, 0.03}, {"burette_25_005_b", 25, 0.05, 0.05},
    {"burette_25_01_a", 25, 0.1, 0.05},   {"burette_25_01_b", 25, 0.1, 0.10},   {"burette_50_a", 50, 0.1, 0.05},
    {"burette_50_b", 50, 0.1, 0.10},      {"burette_100_a", 100, 0.2, 0.10},    {"burette_100_b", 100, 0.2, 0.20}};

// ASTM E1272-02 (2012), Table 1, where ISO 4788 has the same limits.
const Vessel astm_e1272[] = {{"cylinder_10_a", 10, 0.2, 0.10}, {"cylinder_10_b", 10, 0.2, 0.20},
                             {"cylinder_100_a", 100, 1, 0.50}, {"cylinder_100_b", 100, 1, 1.00},
                             {"cylinder_250_a", 250, 2, 1.00}, {"cylinder_250_b", 250, 2, 2.00}};
// ISO 4788:2005, from memory.
const Vessel iso_4788[] = {{"cylinder_25_a", 25, 0.5, 0.25},
                           {"cylinder_25_b", 25, 0.5, 0.50},
                           {"cylinder_50_a", 50, 1, 0.5},
                           {"cylinder_50_b", 50, 1, 1.0}};

void check_vessel(const Vessel& row) {
    INFO(row.key);
    for (const Field field : {Field::scale_reading, Field::start_reading}) {
        const Instrument* found = instrument_by_key(field, row.key);
        REQUIRE(found != nullptr);
        CHECK(found->capacity == doctest::Approx(row.capacity * ml));
        CHECK(found->reading == doctest::Approx(row.division / 2 * ml));
        CHECK(found->limit == doctest::Approx(row.limit * ml));
        CHECK(found->reading_shape == Shape::rectangular);
        CHECK(found->limit_shape == Shape::rectangular);
    }
}

double assumed(Field field) {
    const Instrument* found = assumed_instrument(field, 0);
    return found == nullptr ? 0 : found->reading;
}

std::string_view assumed_tube(double capacity) { return assumed_instrument(Field::scale_reading, capacity * ml)->key; }

}  // namespace

TEST_CASE("vessels have the limits of their standards") {
    for (const Vessel& row : iso_385) check_vessel(row);
    for (const Vessel& row : astm_e1272) check_vessel(row);
    for (const Vessel& row : iso_4788) check_vessel(row);
}

TEST_CASE("a balance that shows steps of d is off by a triangle of half-width d") {
    // method.md, section 6; u = d/sqrt 6 = 0.41 d (standards.md, section 9).
    const struct {
        const char* key;
        double gram;
    } rows[] = {{"balance_100mg", 0.1}, {"balance_10mg", 0.01}, {"balance_1mg", 0.001}, {"balance_100ug", 0.0001}};
    for (const Field field : {Field::mass_of_metal, Field::mass_before, Field::mass_after}) {
        CHECK(assumed_instrument(field, 0) == nullptr);  // the last digit typed says which
        for (const auto& row : rows) {
            const Instrument* found = instrument_by_key(field, row.key);
            REQUIRE(found != nullptr);
            CHECK(found->reading == doctest::Approx(row.gram * 1e-3));
            CHECK(found->reading_shape == Shape::triangular);
            CHECK(found->limit == 0);
        }
    }
}

TEST_CASE("what is assumed where nothing was chosen") {
    // method.md, sections 2 and 6.
    CHECK(assumed(Field::end_space) == doctest::Approx(0.10 * ml));
    CHECK(assumed(Field::temperature) == 0.5);
    CHECK(assumed(Field::barometer) == doctest::Approx(100));
    CHECK(assumed(Field::level_difference) == doctest::Approx(1e-3));
    CHECK(assumed(Field::start_level_difference) == doctest::Approx(1e-3));
    CHECK(assumed(Field::height_above_sea_level) == 20);
    CHECK(assumed_tube(0) == "burette_50_b");
    CHECK(assumed_tube(50) == "burette_50_b");
    CHECK(assumed_tube(10) == "burette_10_005_b");
    CHECK(assumed_tube(25) == "burette_25_01_b");
    CHECK(assumed_tube(100) == "burette_100_b");
    for (const Field field : {Field::outdoor_temperature, Field::acid_concentration, Field::purity,
                              Field::own_vapour_pressure, Field::accepted_value, Field::tube_capacity}) {
        CHECK(assumed_instrument(field, 50 * ml) == nullptr);
        CHECK(instruments_for(field).empty());
    }
}

TEST_CASE("the assumed instruments give the shares of record A") {
    // method.md, section 6, computed independently: temperature 28 %, end space 24 %, class limit 24 %, mass 13 % of the
    // variance; section 2: -0.502 %/K. The other slopes follow from the table of record A.
    const Instrument& tube = *assumed_instrument(Field::scale_reading, 50 * ml);
    const double volume = 43.20 * ml;
    const double dry = 95974.0;
    const auto rectangular = [](double relative) { return relative * relative / 3; };
    const double temperature = rectangular(0.00502 * assumed(Field::temperature));
    const double end_space = rectangular(assumed(Field::end_space) / volume);
    const double limit = rectangular(tube.limit / volume);
    const double reading = rectangular(tube.reading / volume);
    const double balance = instrument_by_key(Field::mass_of_metal, "balance_100ug")->reading / 0.0412e-3;
    const double mass = balance * balance / 6;
    const double barometer = rectangular(assumed(Field::barometer) / dry);
    const double level = rectangular(assumed(Field::level_difference) / 0.112 * 1096.05 / dry);
    const double all = temperature + end_space + limit + reading + mass + barometer + level;
    CHECK(std::round(100 * temperature / all) == 28);
    CHECK(std::round(100 * end_space / all) == 24);
    CHECK(std::round(100 * limit / all) == 24);
    CHECK(std::round(100 * mass / all) == 13);
    CHECK(1.96 * std::sqrt(all) * 22.6818 == doctest::Approx(0.12).epsilon(0.04));  // about 0.12 L/mol
}

TEST_CASE("the tube assumed is the nearest one that is sold") {
    // method.md, section 6, has the burettes of 10, 25, 50 and 100 mL; between two a tube counts with the smaller up to 15, 30
    // and 75 mL (common practice, no source).
    CHECK(assumed_tube(1) == "burette_10_005_b");
    CHECK(assumed_tube(15) == "burette_10_005_b");
    CHECK(assumed_tube(15.1) == "burette_25_01_b");
    CHECK(assumed_tube(30) == "burette_25_01_b");
    CHECK(assumed_tube(30.1) == "burette_50_b");
    CHECK(assumed_tube(75) == "burette_50_b");
    CHECK(assumed_tube(75.1) == "burette_100_b");
    CHECK(assumed_tube(-1) == "burette_50_b");
    for (const double capacity : {0.0, 10.0, 50.0, 100.0}) {
        CHECK(assumed_instrument(Field::scale_reading, capacity * ml, Apparatus::gas_syringe)->key ==
              "gas_syringe_100");
    }
}

TEST_CASE("each instrument of a field has its own key and a half-width") {
    for (std::size_t i = 0; i < field_count; ++i) {
        const auto field = static_cast<Field>(i);
        std::set<std::string_view> keys;
        for (const Instrument& instrument : instruments_for(field)) {
            INFO(instrument.key);
            CHECK(keys.insert(instrument.key).second);
            CHECK(instrument.reading > 0);
            CHECK(instrument.limit >= 0);
            CHECK(instrument_by_key(field, instrument.key) == &instrument);
        }
        CHECK(instrument_by_key(field, "") == nullptr);
        CHECK(instrument_by_key(field, "none") == nullptr);
    }
}

TEST_CASE("shapes by name") {
    CHECK(shape_by_name("rectangular") == Shape::rectangular);
    CHECK(shape_by_name("triangular") == Shape::triangular);
    CHECK(shape_by_name("normal") == Shape::normal);
    CHECK_FALSE(shape_by_name("student").has_value());  // comes from repeated readings alone
    CHECK_FALSE(shape_by_name("").has_value());
}
