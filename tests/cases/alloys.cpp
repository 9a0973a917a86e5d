#include <array>

#include "tests/cases/case_record.hpp"

using namespace overwater;
using namespace overwater::cases;

// Alloys, by the hydrogen that they set free. Values named "recomputed" were computed from the source's readings without
// any code of the product.

TEST_CASE("case cual-thread-2025: an alloy of copper and aluminium, and a vapour nobody had heard of") {
    // Homework-help thread. Copper gives no gas: the share of aluminium is the purity of what was weighed.
    const CaseRecord record("Alloy of copper and aluminium", at_one_atmosphere(),
                            {{Field::metal, "aluminium"},
                             {Field::acid, "hydrochloric"},
                             {Field::target, "purity"},
                             {Field::mass_of_metal, "0.033 g"},
                             {Field::number_at_closed_end, "zero"},
                             {Field::scale_reading, "17.4 mL"},
                             {Field::liquid_stands, "level"},
                             {Field::temperature, "21.7 °C"},
                             {Field::barometer, "1.00 atm"}});
    const Assessment run = record.run();
    CHECK(in_mole(run, Output::amount_by_volume) == printed("0.0007007"));              // recomputed
    CHECK(value(run, Output::purity_found, UnitId::percent) == printed("38.2"));        // recomputed
    CHECK(sought_output(record.conventions(), run.measured.setup.target) == Output::purity_found);
    Conventions wet = at_one_atmosphere();
    wet.vapour = Conventions::Vapour::not_subtracted;
    CHECK(value(record.by(wet).run(), Output::purity_found, UnitId::percent) == printed("39.2"));  // recomputed
    // A barometer that shows exactly 1.00 atm was hardly read.
    CHECK(says(run, Field::barometer, "check.pressure_assumed"));
}

TEST_CASE("case alznalloy-forum-2008: the water displaced is the gas") {
    // Forum thread on the composition of an alloy of aluminium and zinc. Levels are not spoken of.
    const CaseRecord record("Alloy of aluminium and zinc (2008)", at_one_atmosphere(),
                            {{Field::metal, "aluminium"},
                             {Field::second_metal, "zinc"},
                             {Field::acid, "hydrochloric"},
                             {Field::target, "alloy"},
                             {Field::apparatus, "generator_flask"},
                             {Field::number_at_closed_end, "zero"},
                             {Field::liquid_stands, "level"},
                             {Field::temperature, "21.4 °C"},
                             {Field::barometer, "762 mmHg"}},
                            {{{Field::mass_of_metal, "0.1229 g"}, {Field::scale_reading, "131.5 mL"}},
                             {{Field::mass_of_metal, "0.1251 g"}, {Field::scale_reading, "140 mL"}}});
    const std::array amounts{"0.005318", "0.005662"};  // recomputed
    const std::array shares{"69.42", "74.35"};         // recomputed
    for (std::size_t i = 0; i < record.runs(); ++i) {
        const Assessment run = record.run(i);
        CAPTURE(i);
        CHECK(in_mole(run, Output::amount_by_volume) == printed(amounts[i]));
        CHECK(value(run, Output::alloy_share, UnitId::percent) == printed(shares[i]));
        CHECK(sought_output(record.conventions(), run.measured.setup.target) == Output::alloy_share);
    }
    // The source took 11.1 % hydrogen "in the water" for the gas: 14.61 and 15.56 mL, less than even pure zinc would give.
    CHECK(14.61 / 131.5 == printed("0.111"));
    const Assessment attempt = record.with_each({{Field::scale_reading, "14.61 mL"}}).run();
    CHECK(attempt.state(Output::alloy_share).kind == OutputState::Kind::not_possible);
    CHECK(attempt.state(Output::alloy_share).reason.key == "refusal.no_alloy");
    // The displaced water on a balance says the same as its volume: 131.5 mL x 0.9979 g/mL (21.4 °C, CIPM 2001).
    const Assessment weighed = record
                                   .with({{Field::apparatus, "displaced_water"}})
                                   .with_each({{Field::displaced_mass, "131.22 g"}})
                                   .run();
    CHECK(value(weighed, Output::alloy_share, UnitId::percent) == printed("69.4"));
}
