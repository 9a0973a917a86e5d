#include "tests/cases/case_record.hpp"

using namespace overwater;
using namespace overwater::cases;

// Metals other than magnesium, and sources that leave the metal out. Values named "recomputed" were computed from the
// source's readings without any code of the product.

TEST_CASE("case al-vp-kPa-as-mmHg: a table in kilopascals beside a barometer in millimetres of mercury") {
    // Determining the atomic mass of aluminium (2007), university student lab, trial 1.
    const CaseRecord record("Atomic mass of aluminium (2007)", at_one_atmosphere(),
                            {{Field::metal, "aluminium"},
                             {Field::acid, "hydrochloric"},
                             {Field::mass_of_metal, "0.30 g"},
                             {Field::number_at_closed_end, "zero"},
                             {Field::scale_reading, "0.419 L"},
                             {Field::liquid_stands, "level"},
                             {Field::temperature, "24.9 °C"},
                             {Field::barometer, "749.6 mmHg"},
                             {Field::own_vapour_pressure, "3.169 mmHg"},
                             {Field::accepted_value, "22.414 L/mol"}});

    SUBCASE("what the readings give") {
        const Assessment run = record.run();
        CHECK(in_mmhg(run, Output::water_vapour_pressure) == printed("23.63"));
        CHECK(value(run, Output::dry_gas_pressure, UnitId::atmosphere) == printed("0.9552"));
        CHECK(amount_by_gas_law(run) == printed("0.01636"));
        CHECK(molar_mass_by_gas_law(run) == printed("27.5"));
        // Two moles of aluminium give three of hydrogen.
        CHECK(in_mole(run, Output::amount_of_gas) == doctest::Approx(1.5 * in_mole(run, Output::amount_of_metal)));
    }
    SUBCASE("the source's numbers, by 3.169 mmHg") {
        const Assessment run = record.by(with_own_vapour()).run();
        // Its 0.98213 atm is 0.9863 - 0.00417: the barometer at four figures.
        const double vapour = value(run, Output::water_vapour_pressure, UnitId::atmosphere);
        CHECK(vapour == printed("0.00417"));
        CHECK(value(run, Output::dry_gas_pressure, UnitId::atmosphere) + vapour == printed("0.9863"));
        CHECK(0.9863 - 0.00417 == printed("0.98213"));
        CHECK(value(run, Output::dry_gas_pressure, UnitId::atmosphere) == printed("0.9821"));
        CHECK(amount_by_gas_law(run) == printed("0.017"));
        // Its 0.01123 mol and 26.71 g/mol are by R = 0.082 L atm/(mol K) and 273 K for 0 °C.
        const double coarse = 0.082 / (gas_constant.si() / 101.325) * (24.9 + 273) / (24.9 + 273.15);
        CHECK(amount_by_gas_law(run) / coarse / 1.5 == printed("0.01123"));
        CHECK(molar_mass_by_gas_law(run) * coarse == printed("26.71"));
        CHECK(says(run, Field::own_vapour_pressure, "check.vapour_unit"));
    }
    SUBCASE("3.169 kPa is the vapour pressure") {
        const Assessment run =
            record.by(with_own_vapour()).with({{Field::own_vapour_pressure, "3.169 kPa"}}).run();
        CHECK(molar_mass_by_gas_law(run) == printed("27.5"));
        CHECK_FALSE(says(run, Field::own_vapour_pressure, "check.vapour_unit"));
    }
}

TEST_CASE("case zn-textbook-7.80L: the zinc that gives 7.80 L") {
    // General chemistry textbook, end-of-chapter problem; it asks for the mass. Levels are not spoken of.
    const CaseRecord record("Textbook problem on zinc", with_own_vapour(),
                            {{Field::metal, "zinc"},
                             {Field::acid, "hydrochloric"},
                             {Field::number_at_closed_end, "zero"},
                             {Field::scale_reading, "7.80 L"},
                             {Field::liquid_stands, "level"},
                             {Field::temperature, "25.0 °C"},
                             {Field::barometer, "0.980 atm"},
                             {Field::own_vapour_pressure, "23.8 mmHg"},
                             {Field::accepted_value, "22.41397 L/mol"}});
    CHECK(record.run().state(Output::amount_of_metal).waiting_for.has(Field::mass_of_metal));
    // With the mass recomputed there is no gap, to its last digit (0.005 g in 19.77 g are 0.025 %).
    const Assessment run = record.with({{Field::mass_of_metal, "19.77 g"}}).run();
    CHECK(amount_by_gas_law(run) == printed("0.3025"));
    CHECK(std::fabs(percent_error(run)) < 0.026);
}

TEST_CASE("case mg-qa-backward-mass: the mass that was forgotten") {
    // Question: work backwards to a forgotten magnesium mass. 13.27 mmHg are 180.8 mm of the water of 22.06 °C
    // (13.27 x 133.3224 Pa over 997.76 kg/m³ x 9.80665 m/s²).
    const CaseRecord record("Forgotten mass", at_one_atmosphere(),
                            {{Field::metal, "magnesium"},
                             {Field::acid, "hydrochloric"},
                             {Field::number_at_closed_end, "zero"},
                             {Field::scale_reading, "42.54 mL"},
                             {Field::liquid_stands, "higher_inside"},
                             {Field::level_difference, "180.8 mm"},
                             {Field::temperature, "22.06 °C"},
                             {Field::barometer, "767.11 mmHg"}});
    CHECK(in_mmhg(record.run(), Output::column_pressure) == printed("13.27"));
    CHECK(in_mmhg(record.run(), Output::dry_gas_pressure) == printed("733.93"));  // recomputed
    CHECK(record.run().state(Output::amount_of_metal).waiting_for.has(Field::mass_of_metal));
    const Assessment run = record.with({{Field::mass_of_metal, "0.04122 g"}}).run();  // recomputed
    CHECK(in_mole(run, Output::amount_of_metal) == printed("0.001696"));
    CHECK(amount_by_gas_law(run) == printed("0.001696"));
    CHECK(std::fabs(percent_error(run)) < 0.012 + 0.003);  // half of the last digit of the mass, and of the column
}

TEST_CASE("case mg-college-level-28cm: a column of 28 cm, and a slip between two rows of a table") {
    // University report on a measurement of R, steps 1 to 4; mass and volume are not in the copy.
    const CaseRecord record("Measurement of R, column of 280 mm", at_one_atmosphere(),
                            {{Field::metal, "magnesium"},
                             {Field::acid, "hydrochloric"},
                             {Field::liquid_stands, "higher_inside"},
                             {Field::level_difference, "280 mm"},
                             {Field::temperature, "24.1 °C"},
                             {Field::barometer, "99803.4 Pa"}});
    const Assessment run = record.run();
    CHECK(in_kilopascal(run, Output::column_pressure) == printed("2.738"));        // recomputed
    CHECK(in_kilopascal(run, Output::water_vapour_pressure) == printed("3.004"));  // recomputed
    Conventions wet = at_one_atmosphere();
    wet.vapour = Conventions::Vapour::not_subtracted;
    CHECK(in_kilopascal(record.by(wet).run(), Output::dry_gas_pressure) == printed("97.065"));  // recomputed
    // The source's 93.99 kPa, by its interpolated 3.07 kPa in place of 3.01; its column is of water of 4 °C.
    const Assessment own =
        record.by(with_own_vapour()).with({{Field::own_vapour_pressure, "3.07 kPa"}}).run();
    const double lighter = value(own, Output::water_density, UnitId::kilogram_per_cubic_metre) / 999.97;
    const double column = in_kilopascal(own, Output::column_pressure);
    CHECK(in_kilopascal(own, Output::dry_gas_pressure) + column - column / lighter == printed("93.99"));
}

TEST_CASE("case h2-qa-vp-100mmHg: a vapour pressure that is not water's") {
    // Homework answer using a vapour pressure of 100 mmHg at 27 °C; reduced to 760 mmHg at the same temperature.
    const CaseRecord record("Vapour pressure of 100 mmHg", with_own_vapour(),
                            {{Field::number_at_closed_end, "zero"},
                             {Field::scale_reading, "30 cm3"},
                             {Field::liquid_stands, "level"},
                             {Field::temperature, "27 °C"},
                             {Field::barometer, "750 mmHg"},
                             {Field::own_vapour_pressure, "100 mmHg"}});
    const auto reduced = [](const Assessment& run) {
        return in_millilitre(run, Output::gas_volume) * in_mmhg(run, Output::dry_gas_pressure) / 760;
    };
    CHECK(in_mmhg(record.run(), Output::dry_gas_pressure) == printed("650"));
    CHECK(reduced(record.run()) == printed("25.66"));  // recomputed
    CHECK(says(record.run(), Field::own_vapour_pressure, "check.vapour_of_other_temperature"));
    const Assessment water = record.by(at_one_atmosphere()).run();
    CHECK(in_mmhg(water, Output::water_vapour_pressure) == printed("26.76"));  // recomputed
    CHECK(reduced(water) == printed("28.55"));                                 // recomputed
}

TEST_CASE("case mg-weather-app: what 100 m make of a pressure at sea level") {
    // R lab post-lab (2023), pressure taken from a phone weather app, student report; its numbers are cut.
    const CaseRecord record("Pressure from a weather app", at_one_atmosphere(),
                            {{Field::metal, "magnesium"},
                             {Field::pressure_kind, "reduced_to_sea_level"},
                             {Field::height_above_sea_level, "100 m"},
                             {Field::barometer, "1013.25 hPa"}});
    const double bench = value(record.run(), Output::pressure_at_bench, UnitId::hectopascal);
    CHECK(100 * (1 - bench / 1013.25) == printed("1.18"));  // recomputed
}
