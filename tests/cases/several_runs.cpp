#include <array>

#include "tests/cases/case_record.hpp"

using namespace overwater;
using namespace overwater::cases;

// Several runs in one room. Values named "recomputed" were computed from the source's readings without any code of the
// product; for all three they take the levels as equal (the pressure is the barometer's less the vapour).

TEST_CASE("case mg-microscale-3-trials: a good mean of three scattered runs") {
    // Molar volume and gas constant, microscale student report (2013). At the bench; R compared with 8.314.
    // 760 mmHg, written as 101.308 kPa in the source, which goes on with that.
    const CaseRecord record("Microscale (2013)", with_own_vapour(),
                            {{Field::metal, "magnesium"},
                             {Field::acid, "hydrochloric"},
                             {Field::number_at_closed_end, "zero"},
                             {Field::liquid_stands, "level"},
                             {Field::temperature, "28 °C"},
                             {Field::barometer, "101.308 kPa"},
                             {Field::own_vapour_pressure, "3.77239 kPa"},
                             {Field::accepted_value, "22.414 L/mol"}},
                            {{{Field::mass_of_metal, "0.0057 g"}, {Field::scale_reading, "5.6 mL"}},
                             {{Field::mass_of_metal, "0.0062 g"}, {Field::scale_reading, "6.4 mL"}},
                             {{Field::mass_of_metal, "0.0056 g"}, {Field::scale_reading, "6.2 mL"}}});
    struct Row {
        const char* collected;      // recomputed
        const char* gas_constant;   // recomputed
        const char* molar_volume;   // recomputed
        const char* source_amount;  // mol x 10^-4, the sign of the exponent lost in the source
        const char* source_collected;
        const char* source_constant;
    };
    const std::array rows{Row{"23.88", "7.734", "20.85", "2.34", "23.93", "7.75"},
                          Row{"25.09", "8.126", "21.91", "2.55", "25.10", "8.08"},
                          Row{"26.91", "8.715", "23.49", "2.30", "26.96", "8.73"}};
    double mean_volume = 0;
    double mean_constant = 0;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        CAPTURE(i);
        const Row& row = rows[i];
        const Assessment run = record.run(i);
        CHECK(litre_per_mole_of(run, Output::molar_volume_bench) == printed(row.collected));
        CHECK(gas_constant_found(run) == printed(row.gas_constant));
        CHECK(litre_per_mole_of(run, Output::molar_volume_standard) == printed(row.molar_volume));
        mean_volume += litre_per_mole_of(run, Output::molar_volume_standard) / 3;
        mean_constant += gas_constant_found(run) / 3;

        // The source's own numbers, by its amount cut to three figures.
        const double amount = printed(row.source_amount).value() * 1e-4;
        CHECK(std::fabs(in_mole(run, Output::amount_of_gas) - amount) < 0.01e-4);
        CHECK(1e-3 * in_millilitre(run, Output::gas_volume) / amount == printed(row.source_collected));
        const double constant = gas_constant_found(run) * in_mole(run, Output::amount_of_gas) / amount;
        if (i != 1) CHECK(constant == printed(row.source_constant));
        if (i == 1) CHECK(constant == printed("8.13"));  // its 8.08 is not its own pV/nT
    }
    CHECK(mean_volume == printed("22.08"));    // recomputed
    CHECK(mean_constant == printed("8.192"));  // recomputed
    CHECK(mean_constant == printed("8.19"));   // source
}

TEST_CASE("case mg-ib-R-circular-0.02pct: the amount taken from the gas itself") {
    // IB SL lab: determination of R with a eudiometer, student report. The barometer is not in the table: its dry
    // pressure of 98.8 kPa needs 98.8 + 3.2 + 0.6846 = 102.6846 kPa (70 mm of water of 997.32 kg/m³, CIPM 2001).
    const CaseRecord record("Determination of R", with_own_vapour(),
                            {{Field::metal, "magnesium"},
                             {Field::acid, "hydrochloric"},
                             {Field::mass_of_metal, "0.03 g ± 0.005"},
                             {Field::number_at_closed_end, "zero"},
                             {Field::liquid_stands, "higher_inside"},
                             {Field::level_difference, "70 mm"},
                             {Field::temperature, "23.9 °C"},
                             {Field::barometer, "102.6846 kPa"},
                             {Field::own_vapour_pressure, "3.2 kPa"}},
                            {{{Field::scale_reading, "0.0254 L"}},
                             {{Field::scale_reading, "0.0506 L"}},
                             {{Field::scale_reading, "0.0514 L"}}});
    struct Row {
        const char* gas_constant;   // recomputed
        const char* molar_volume;   // recomputed
        double source_gas_constant;
    };
    const std::array rows{Row{"6.844", "18.45", 8.312381}, Row{"13.63", "36.76", 8.313808},
                          Row{"13.85", "37.34", 8.312476}};
    for (std::size_t i = 0; i < rows.size(); ++i) {
        CAPTURE(i);
        const Assessment run = record.run(i);
        CHECK(in_kilopascal(run, Output::dry_gas_pressure) == printed("98.8"));
        CHECK(gas_constant_found(run) == printed(rows[i].gas_constant));
        CHECK(litre_per_mole_of(run, Output::molar_volume_standard) == printed(rows[i].molar_volume));
        CHECK(in_kilopascal(record.by(at_one_atmosphere()).run(i), Output::water_vapour_pressure) == printed("2.97"));
        // With the amount by pV/(RT) in place of the metal's, R comes out whatever the volume: the source's 0.02 %.
        const double circular =
            gas_constant_found(run) * in_mole(run, Output::amount_of_gas) / amount_by_gas_law(run);
        CHECK(circular == doctest::Approx(rows[i].source_gas_constant).epsilon(0.00026));
    }
    // The source's 0.686 kPa is of water of 1000 kg/m³.
    const double per_litre = value(record.run(), Output::water_density, UnitId::kilogram_per_cubic_metre) / 1000;
    CHECK(in_kilopascal(record.run(), Output::column_pressure) / per_litre == printed("0.686"));
}

TEST_CASE("case mg-es-2600m-hot-gas: one dry pressure for three temperatures") {
    // Universal gas constant (in Spanish, city at high altitude), student report. The source's 535.5 mmHg went into
    // pV = nRT as it stands, with 24.3 g/mol.
    Conventions course = at_one_atmosphere();
    course.decimal_sign = DecimalSign::comma;
    course.molar_mass_digits = Conventions::MolarMassDigits::one_decimal;
    const CaseRecord formula("Gas constant at 2600 m", course,
                             {{Field::metal, "magnesium"},
                              {Field::acid, "hydrochloric"},
                              {Field::number_at_closed_end, "zero"},
                              {Field::liquid_stands, "level"},
                              {Field::barometer, "535,5 mmHg"}},
                             {{{Field::mass_of_metal, "0,018 g"},
                               {Field::scale_reading, "21,5 mL"},
                               {Field::temperature, "50 °C"}},
                              {{Field::mass_of_metal, "0,023 g"},
                               {Field::scale_reading, "31 mL"},
                               {Field::temperature, "45 °C"}},
                              {{Field::mass_of_metal, "0,028 g"},
                               {Field::scale_reading, "38 mL"},
                               {Field::temperature, "40 °C"}}});
    course.vapour = Conventions::Vapour::not_subtracted;
    const CaseRecord record = formula.by(course);
    struct Row {
        const char* source;       // source and recomputed
        const char* vapour;       // recomputed, mmHg
        const char* at_25;        // recomputed
        const char* collected;    // recomputed
    };
    const std::array rows{Row{"0.06329", "92.6", "0.06859", "29.02"}, Row{"0.07254", "72.0", "0.07740", "32.75"},
                          Row{"0.07420", "55.4", "0.07794", "32.98"}};
    double mean = 0;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        CAPTURE(i);
        const Assessment run = record.run(i);
        CHECK(value(run, Output::dry_gas_pressure, UnitId::atmosphere) == printed("0.7046"));
        CHECK(gas_constant_litre_atmosphere(run) == printed(rows[i].source));
        CHECK(litre_per_mole_of(run, Output::molar_volume_bench) == printed(rows[i].collected));
        CHECK(in_mmhg(formula.run(i), Output::water_vapour_pressure) == printed(rows[i].vapour));
        // The vapour left out of the method gives the same.
        const Outcome<double> ignored = outcome_by(formula.run(i), Method{.vapour_use = Method::VapourUse::ignored});
        CHECK(ignored[Output::gas_constant] / 101.325 == printed(rows[i].source));
        mean += gas_constant_litre_atmosphere(run) / 3;
    }
    CHECK(mean == printed("0.070"));  // source

    SUBCASE("the same dry pressure and a gas at 25 °C, which needs a barometer of 559.3 mmHg") {
        for (std::size_t i = 0; i < rows.size(); ++i) {
            CAPTURE(i);
            const CaseRecord cool = record.with_each({{Field::temperature, "25 °C"}});
            CHECK(gas_constant_litre_atmosphere(cool.run(i)) == printed(rows[i].at_25));
        }
        const CaseRecord room =
            formula.with({{Field::barometer, "559,3 mmHg"}}).with_each({{Field::temperature, "25 °C"}});
        CHECK(in_mmhg(room.run(), Output::dry_gas_pressure) == printed("535.5"));
    }
}
