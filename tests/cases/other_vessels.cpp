#include <array>

#include "core/result/budget.hpp"
#include "tests/cases/case_record.hpp"

using namespace overwater;
using namespace overwater::cases;

// Vessels other than a tube over water, and a gas that is weighed itself. Values named "recomputed" were computed from the
// source's readings without any code of the product.

TEST_CASE("case mg-cn-exam-flask: a flask, a syringe and the acid that was let in") {
    // Exam item (in Chinese): displacement flask and syringe, sulfuric acid. Water caught 110.0 and 121.0 mL, gas drawn
    // back with the syringe 6.5 and 8.0 mL, acid let in 10.0 mL: the scale reading is the sum of the first two.
    Conventions exam = as_collected();
    exam.molar_mass_digits = Conventions::MolarMassDigits::one_decimal;  // 24.3 g/mol, as its numbers show
    const CaseRecord record("Exam item, flask and syringe", exam,
                            {{Field::metal, "magnesium"},
                             {Field::acid, "sulfuric"},
                             {Field::apparatus, "generator_flask"},
                             {Field::injected_volume, "10.0 mL"},
                             {Field::number_at_closed_end, "zero"},
                             {Field::liquid_stands, "level"},
                             {Field::temperature, "25 °C"},
                             {Field::barometer, "101 kPa"},
                             {Field::accepted_value, "24.5 L/mol"}},
                            {{{Field::mass_of_metal, "0.100 g"}, {Field::scale_reading, "116.5 mL"}},
                             {{Field::mass_of_metal, "0.115 g"}, {Field::scale_reading, "129.0 mL"}}});
    const std::array volumes{"106.5", "119.0"};    // source and recomputed
    const std::array per_mole{"25.88", "25.15"};   // recomputed
    double sum = 0;
    for (std::size_t i = 0; i < record.runs(); ++i) {
        const Assessment run = record.run(i);
        CAPTURE(i);
        CHECK(in_millilitre(run, Output::gas_volume) == printed(volumes[i]));
        CHECK(litre_per_mole_of(run, Output::molar_volume_bench) == printed(per_mole[i]));
        // What the vapour adds, which the item leaves in.
        CHECK(100 * (litre_per_mole_of(run, Output::molar_volume_bench) /
                         litre_per_mole_of(run, Output::dry_gas_at_barometer) -
                     1) == printed("3.24"));  // recomputed
        sum += litre_per_mole_of(run, Output::molar_volume_bench);
    }
    CHECK(sum / 2 == printed("25.51"));                    // recomputed
    CHECK(100 * (sum / 2 / 24.5 - 1) == printed("4.13"));  // recomputed
    // Its 24.5 L/mol: the ideal gas of 25 °C and 101 kPa has 24.54.
    Conventions own = at_one_atmosphere();
    own.standard = StandardConditions::own;
    own.own_celsius = 25;
    own.own_pressure = 101000;
    CHECK(litre_per_mole_of(record.by(own).run(), Output::accepted_value) == printed("24.54"));  // recomputed
}

TEST_CASE("case mg-sensor-circular: the rise of a pressure, and an amount that goes in a circle") {
    // Molar volume from a pressure sensor (2018), student report. Only the rise is written down: 1 atm stands for what the
    // sensor showed before.
    const CaseRecord record("Pressure sensor (2018)", at_one_atmosphere(),
                            {{Field::metal, "magnesium"},
                             {Field::acid, "hydrochloric"},
                             {Field::apparatus, "pressure_sensor"},
                             {Field::flask_volume, "145 mL"},
                             {Field::barometer, "1.0000 atm"}},
                            {{{Field::mass_of_metal, "0.010 g"},
                              {Field::pressure_after, "1.0691 atm"},
                              {Field::temperature, "22.2 °C"}},
                             {{Field::mass_of_metal, "0.015 g"},
                              {Field::pressure_after, "1.1121 atm"},
                              {Field::temperature, "22.6 °C"}}});
    const std::array rises{"0.0691", "0.1121"};           // source
    const std::array of_metal{"4.11e-4", "6.17e-4"};      // source
    const std::array per_mole{"22.52", "24.33"};          // recomputed
    const std::array of_gas{"4.14e-4", "6.70e-4"};        // source
    const std::array circular{"22.38", "22.41"};          // recomputed: "about 22.4", twice
    for (std::size_t i = 0; i < record.runs(); ++i) {
        const Assessment run = record.run(i);
        CAPTURE(i);
        CHECK(value(run, Output::dry_gas_pressure, UnitId::atmosphere) == printed(rises[i]));
        CHECK(in_mole(run, Output::amount_of_metal) == printed(of_metal[i]));
        CHECK(litre_per_mole_of(run, Output::molar_volume_standard) == printed(per_mole[i]));
        // The volume at 0 °C and 1 atm over the source's own amount, which came of pV/RT: nothing is found out.
        CHECK(1e-3 * standard_millilitre(run) / printed(of_gas[i]).value() == printed(circular[i]));
        // What rose is the gas's own: no vapour is taken off, and no column.
        CHECK(run.state(Output::column_pressure).kind == OutputState::Kind::not_asked);
    }
    // Its first amount is by 295 K.
    CHECK(amount_by_gas_law(record.with_each({{Field::temperature, "295 K"}}).run(0)) == printed(of_gas[0]));
    CHECK(amount_by_gas_law(record.run(1)) == printed(of_gas[1]));
    CHECK(says(record.run(), Field::apparatus, "note.closed_flask"));
}

TEST_CASE("case butane-0.1g-185pct: a tenth of a gram on a balance of a tenth of a gram") {
    // Butane lighter lab, student essay; the volume ("at least 70 mL") follows from its 185 % of 39.9 mL.
    Conventions course = at_one_atmosphere();
    course.vapour = Conventions::Vapour::own_value;
    const CaseRecord record("Butane lighter", course,
                            {{Field::target, "gas_molar_mass"},
                             {Field::gas, "other_gas"},
                             {Field::mass_from, "by_difference"},
                             {Field::mass_before, "13.5 g"},
                             {Field::mass_after, "13.4 g"},
                             {Field::number_at_closed_end, "zero"},
                             {Field::scale_reading, "73.8 mL"},
                             {Field::liquid_stands, "level"},
                             {Field::temperature, "22 °C"},
                             {Field::barometer, "760 mmHg"},
                             {Field::own_vapour_pressure, "19.8 torr"}});
    const Assessment run = record.run();
    const auto molar_mass = [](const Assessment& of) { return value(of, Output::gas_molar_mass, UnitId::gram_per_mole); };
    CHECK(in_mole(run, Output::amount_by_volume) == printed("0.002968"));  // recomputed
    CHECK(molar_mass(run) == printed("33.7"));                             // recomputed
    CHECK(sought_output(course, run.measured.setup.target) == Output::gas_molar_mass);
    // Its expected 39.9 mL and 0.0017 mol are of 0.1 g of butane, 58.12 g/mol; 73.8 mL are 185 % of it.
    CHECK(0.1 / 58.12 == printed("0.0017"));
    CHECK(in_millilitre(run, Output::gas_volume) / 39.9 == printed("1.85"));
    // 0.1 g may be anything from 0.05 to 0.15 g.
    const CaseRecord one_mass = record.with({{Field::mass_from, "weighed"}});
    CHECK(molar_mass(one_mass.with({{Field::mass_of_metal, "0.05 g"}}).run()) == printed("16.8"));  // recomputed
    CHECK(molar_mass(one_mass.with({{Field::mass_of_metal, "0.15 g"}}).run()) == printed("50.5"));  // recomputed
    CHECK(molar_mass(one_mass.with({{Field::mass_of_metal, "0.172 g"}}).run()) ==
          doctest::Approx(58.12).epsilon(0.005 / 1.72 + 0.0005));  // recomputed, to half of its last digit
    // So butane is within the interval, and the two weighings are nearly all of the doubt.
    const Doubts doubts = doubts_of(run);
    const Budget budget = budget_of(doubts, Sensitivities(doubts), Output::gas_molar_mass);
    CHECK(from_base(budget.value + budget.expanded, UnitId::gram_per_mole) > 58.12);
    REQUIRE(budget.rows.size() > 2);
    CHECK(budget.rows[0].share + budget.rows[1].share > 0.99);
    CHECK(budget.rows[0].doubt.input != budget.rows[1].doubt.input);
    // Nothing is said of a reaction, as there is none.
    CHECK(run.state(Output::molar_volume_standard).kind == OutputState::Kind::not_asked);
}

TEST_CASE("case co2-balloon-litres: cubic centimetres called litres") {
    // Effervescent tablet in a balloon of 35 cm circumference, student report: 35³/(6 pi²) cm³. Gas that stands in no
    // trough: as in a syringe, moist.
    CHECK(35.0 * 35 * 35 / (6 * 3.14159265 * 3.14159265) == printed("724"));
    Conventions course = at_one_atmosphere();
    course.vapour = Conventions::Vapour::own_value;
    const CaseRecord record("Tablet in a balloon", course,
                            {{Field::metal, "own"},
                             {Field::gas, "carbon_dioxide"},
                             {Field::apparatus, "gas_syringe"},
                             {Field::scale_reading, "723.86 cm3"},
                             {Field::temperature, "20 °C"},
                             {Field::barometer, "769.9 mmHg"},
                             {Field::own_vapour_pressure, "17.5 mmHg"}});
    const Assessment run = record.run();
    CHECK(in_mmhg(run, Output::dry_gas_pressure) == printed("752.4"));
    CHECK(value(run, Output::dry_gas_pressure, UnitId::atmosphere) == printed("0.99"));
    CHECK(in_mole(run, Output::amount_by_volume) == printed("0.0298"));
    CHECK(in_mole(run, Output::amount_by_volume) == printed("0.02979"));  // recomputed
    // By the unit it wrote there would be a thousand times as much.
    CHECK(in_mole(record.with({{Field::scale_reading, "723.86 L"}}).run(), Output::amount_by_volume) == printed("29.79"));
}
