#include "tests/cases/case_record.hpp"

using namespace overwater;
using namespace overwater::cases;

// A column of liquid under the gas, or levels made equal. Values named "recomputed" were computed from the source's
// readings without any code of the product.

TEST_CASE("case mg-ib-molar-mass-0.033: levels equalised") {
    // IB: molar mass of magnesium with a levelled eudiometer, student report; the result is not in the public copy.
    const CaseRecord record("Molar mass with a levelled eudiometer", at_one_atmosphere(),
                            {{Field::metal, "magnesium"},
                             {Field::acid, "hydrochloric"},
                             {Field::mass_of_metal, "0.033 g ± 0.001"},
                             {Field::number_at_closed_end, "zero"},
                             {Field::scale_reading, "34.6 mL ± 0.05"},
                             {Field::liquid_stands, "level"},
                             {Field::temperature, "24 °C ± 0.5"},
                             {Field::barometer, "753 mmHg ± 0.5"}});
    check_recomputed(record, {"0.001358", "22.39", "0.0", "730.61", "97.406", "30.58", "22.52", "0.469", "22.82",
                              "0.001364", "0.08244", "24.19"});
}

TEST_CASE("case mg-es-hPa-column-10cm: hectopascals, decimal commas, 10 cm of water") {
    // Molar mass of magnesium (in Spanish), case 1, student report. 0 °C, 1 atm, 22.4 L.
    Conventions course = with_own_vapour();
    course.decimal_sign = DecimalSign::comma;
    const CaseRecord record("Molar mass of magnesium, case 1", course,
                            {{Field::metal, "magnesium"},
                             {Field::acid, "hydrochloric"},
                             {Field::mass_of_metal, "0,044 g"},
                             {Field::number_at_closed_end, "zero"},
                             {Field::scale_reading, "42 ml"},
                             {Field::liquid_stands, "higher_inside"},
                             {Field::level_difference, "10 cm"},
                             {Field::temperature, "17 °C"},
                             {Field::barometer, "1025 hPa"},
                             {Field::own_vapour_pressure, "14,530 mmHg"},
                             {Field::accepted_value, "22,4 L/mol"}});
    check_recomputed(record, {"0.001810", "14.53", "7.35", "746.94", "99.583", "38.86", "21.47", "-4.23", "21.75",
                              "0.001734", "0.07859", "25.38"});
    CHECK(amount_by_gas_law(record.run()) == printed("1.73e-3"));  // source
    // The source went on with 769 mmHg.
    const Assessment rounded = record.with({{Field::barometer, "769 mmHg"}}).run();
    CHECK(in_mmhg(rounded, Output::dry_gas_pressure) == printed("747.12"));
    CHECK(value(rounded, Output::dry_gas_pressure, UnitId::atmosphere) == printed("0.98"));
}

TEST_CASE("case mg-pt-g-in-wrong-units: a column a hundred times too small") {
    // Molar mass of magnesium (in Portuguese), student report, g in m/s² put into a formula for cm/s². 0 °C, 22.414 L.
    // The source gives the volume at 0 °C and 1 atm alone, 58.65 mL: 71.2 mL in the tube by its own pressure
    // (recomputed).
    Conventions course = with_own_vapour();
    course.decimal_sign = DecimalSign::comma;
    const CaseRecord record("Molar mass of magnesium, formula with g", course,
                            {{Field::metal, "magnesium"},
                             {Field::acid, "hydrochloric"},
                             {Field::mass_of_metal, "55 mg"},
                             {Field::number_at_closed_end, "zero"},
                             {Field::scale_reading, "71,2 mL"},
                             {Field::liquid_stands, "higher_inside"},
                             {Field::level_difference, "10,3 cm"},
                             {Field::temperature, "301,15 K"},
                             {Field::barometer, "720 mmHg"},
                             {Field::own_vapour_pressure, "29,70 mmHg"},
                             {Field::accepted_value, "22,414 L/mol"}});

    SUBCASE("what the readings give") {
        const Assessment run = record.by(at_one_atmosphere()).run();
        CHECK(in_mmhg(run, Output::water_vapour_pressure) == printed("28.37"));  // recomputed
        CHECK(molar_mass_by_gas_law(run) == printed("21.21"));                   // recomputed
        // Recomputed with water of 1000 kg/m³: column 7.58, dry gas 684.0 mmHg (684.05 before it was rounded). Water
        // of 28 °C is lighter: 996.235 kg/m³ by the CIPM formula of 2001, which makes 7.548 and 684.08 mmHg.
        const double per_litre = value(run, Output::water_density, UnitId::kilogram_per_cubic_metre) / 1000;
        CHECK(in_mmhg(run, Output::column_pressure) == printed("7.548"));
        CHECK(in_mmhg(run, Output::dry_gas_pressure) == printed("684.08"));
        CHECK(in_mmhg(run, Output::column_pressure) / per_litre == printed("7.58"));
    }
    SUBCASE("the source's numbers, by a column of 0.103 cm") {
        const Assessment run = record.with({{Field::level_difference, "0,103 cm"}}).run();
        const double per_litre = value(run, Output::water_density, UnitId::kilogram_per_cubic_metre) / 1000;
        CHECK(in_mmhg(run, Output::column_pressure) / per_litre == printed("0.0758"));
        CHECK(in_mmhg(run, Output::dry_gas_pressure) == printed("690.22"));
        CHECK(standard_millilitre(run) == printed("58.65"));
        CHECK(molar_mass_by_gas_law(run) == printed("21"));
    }
    SUBCASE("which is the column left out, to a tenth of a millimetre of mercury") {
        const Outcome<double> ignored = outcome_by(record.run(), Method{.column = Method::Column::ignored});
        CHECK(from_base(ignored[Output::dry_gas_pressure], UnitId::torr) - 690.22 == printed("0.1"));
    }
}

TEST_CASE("case mg-tube-calibration-factor: a scale that does not begin at the closed end") {
    // Study cards from a general-chemistry R experiment, student notes: 40.50 mL of the tube are 40.00 mL of a burette.
    const CaseRecord record("Tube calibrated against a burette", with_own_vapour(),
                            {{Field::metal, "magnesium"},
                             {Field::acid, "hydrochloric"},
                             {Field::mass_of_metal, "0.0410 g"},
                             {Field::number_at_closed_end, "zero"},
                             {Field::scale_reading, "40.00 mL"},
                             {Field::liquid_stands, "level"},
                             {Field::temperature, "23.5 °C"},
                             {Field::barometer, "767.8 torr"},
                             {Field::own_vapour_pressure, "21.717 torr"},
                             {Field::accepted_value, "22.414 L/mol"}});
    check_recomputed(record, {"0.001687", "21.72", "0.0", "746.08", "99.470", "36.16", "21.43", "-4.37", "21.72",
                              "0.001613", "0.07847", "25.42"});

    SUBCASE("the source's own steps") {
        const Assessment run = record.run();
        CHECK(in_mole(run, Output::amount_of_metal) == printed("0.00169"));
        CHECK(value(run, Output::dry_gas_pressure, UnitId::atmosphere) == printed("0.9817"));
        // R 0.0784 rests on the amount at three figures.
        CHECK(gas_constant_litre_atmosphere(run) > 0.9817 * 0.04000 / (0.001695 * 296.65));
        CHECK(gas_constant_litre_atmosphere(run) < 0.9817 * 0.04000 / (0.001685 * 296.65));
    }
    SUBCASE("without the calibration") {
        CHECK(gas_constant_litre_atmosphere(record.with({{Field::scale_reading, "40.50 mL"}}).run()) ==
              printed("0.07945"));  // recomputed
    }
}

TEST_CASE("case mg-es-lecture-regression: the worked example of a lecture") {
    // Lecture slides on measurement and data treatment (in Spanish): molar volume of hydrogen. 273 K, 760 mmHg, 22.4.
    Conventions course = with_own_vapour();
    course.decimal_sign = DecimalSign::comma;
    const CaseRecord record("Lecture on measurement", course,
                            {{Field::metal, "magnesium"},
                             {Field::acid, "hydrochloric"},
                             {Field::mass_of_metal, "76,2 mg ± 0,1"},
                             {Field::number_at_closed_end, "zero"},
                             {Field::scale_reading, "78 mL ± 1"},
                             {Field::liquid_stands, "level"},
                             {Field::temperature, "20 °C ± 1"},
                             {Field::barometer, "765 mmHg ± 1"},
                             {Field::own_vapour_pressure, "18 mmHg"},
                             {Field::accepted_value, "22,4 L/mol"}});
    check_recomputed(record.by(at_one_atmosphere()),
                     {"0.003135", "17.55", "0.0", "747.45", "99.652", "71.48", "22.80", "1.72", "23.10", "0.003189",
                      "0.08347", "23.89"});
    const Assessment run = record.run();
    CHECK(in_mmhg(run, Output::dry_gas_pressure) == printed("747"));
    CHECK(in_mole(run, Output::amount_of_metal) == printed("0.0031"));
    CHECK(litre_per_mole_of(run, Output::molar_volume_standard) == printed("22.8"));
    CHECK(standard_millilitre(run) == printed("71.4"));
}
