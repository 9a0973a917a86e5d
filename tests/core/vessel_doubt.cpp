// Which readings are doubtful in which vessel, and by how much where nobody said it. tests/oracle/compare_vessels.py works
// whole budgets out apart from this program.

#include <doctest/doctest.h>

#include <set>
#include <string>

#include "core/result/budget.hpp"
#include "tests/core/vessel_support.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

/// The inputs with a share in the doubt of an output.
std::set<Input> doubtful(const Sheet& sheet, Output output = Output::molar_volume_standard) {
    const Doubts doubts = doubts_of(sheet.assessed());
    std::set<Input> inputs;
    for (const BudgetRow& row : budget_of(doubts, Sensitivities(doubts), output).rows) inputs.insert(row.doubt.input);
    return inputs;
}

double half_width(const Sheet& sheet, Input input, DoubtKind kind = DoubtKind::reading) {
    const Doubts doubts = doubts_of(sheet.assessed());
    for (const Doubt& doubt : doubts.all()) {
        if (doubt.input == input && doubt.kind == kind) return doubt.high;
    }
    return 0;
}

Budget budget(const Sheet& sheet, Output output = Output::molar_volume_standard) {
    const Doubts doubts = doubts_of(sheet.assessed());
    return budget_of(doubts, Sensitivities(doubts), output);
}

const std::set<Input> everywhere{Input::mass_of_metal, Input::molar_mass, Input::temperature, Input::barometer};

std::set<Input> with(std::set<Input> inputs, std::initializer_list<Input> more) {
    inputs.insert(more);
    return inputs;
}

}  // namespace

TEST_CASE("each vessel doubts its own readings, and no other's") {
    const std::set<Input> column{Input::scale_reading, Input::level_difference, Input::gravity, Input::meniscus_ring,
                                 Input::vapour_value};
    std::set<Input> tube = everywhere;
    tube.insert(column.begin(), column.end());
    CHECK(doubtful(good_run(Apparatus::tube_over_water)) == tube);
    CHECK(doubtful(good_run(Apparatus::generator_flask)) == with(tube, {Input::injected_volume}));
    CHECK(doubtful(good_run(Apparatus::gas_syringe)) == with(everywhere, {Input::scale_reading, Input::vapour_value}));
    CHECK(doubtful(good_run(Apparatus::gas_syringe).with({{Field::gas_is, "dry"}})) == with(everywhere, {Input::scale_reading}));
    CHECK(doubtful(good_run(Apparatus::displaced_water)) == with(everywhere, {Input::displaced_mass, Input::vapour_value}));
    CHECK(doubtful(good_run(Apparatus::pressure_sensor)) ==
          with(everywhere, {Input::flask_volume, Input::acid_volume, Input::pressure_after}));
    for (const Apparatus vessel : vessels) {
        CAPTURE(std::string(name_of(vessel)));
        CHECK(doubtful(all_typed(vessel)) == doubtful(good_run(vessel)));
        CHECK(budget(all_typed(vessel)).u == doctest::Approx(budget(good_run(vessel)).u).epsilon(1e-12));
    }
}

TEST_CASE("half-widths of the vessels' readings where nothing was said of them") {
    // method.md, section 6: a balance by its last digit, a barometer ± 1 hPa; ISO 4788:2005, class B of 10 mL, ± 0.2 mL.
    CHECK(half_width(good_run(Apparatus::displaced_water), Input::displaced_mass) == doctest::Approx(0.01e-3));
    CHECK(half_width(good_run(Apparatus::displaced_water).with({{Field::displaced_mass, "42.6"}}), Input::displaced_mass) ==
          doctest::Approx(0.1e-3));
    CHECK(half_width(good_run(Apparatus::pressure_sensor), Input::pressure_after) == doctest::Approx(100));
    CHECK(half_width(good_run(Apparatus::pressure_sensor), Input::flask_volume) == doctest::Approx(0.2e-6));
    CHECK(half_width(good_run(Apparatus::pressure_sensor).with({{Field::flask_volume, "150"}}), Input::flask_volume) ==
          doctest::Approx(1e-6));
    CHECK(half_width(good_run(Apparatus::generator_flask), Input::injected_volume) == doctest::Approx(0.2e-6));
    CHECK(half_width(good_run(Apparatus::pressure_sensor).with({{Field::pressure_after, "129.25 ± 0.02"}}), Input::pressure_after) ==
          doctest::Approx(20));
}

TEST_CASE("a typed molar mass, a calibration and a water activity are as good as their digits") {
    const Sheet tube = good_run(Apparatus::tube_over_water);
    const Sheet own = tube.with({{Field::metal, "own"}, {Field::molar_mass, "24.3"}, {Field::gas, "hydrogen"}, {Field::gas_per_mole, "1"}});
    CHECK(half_width(own, Input::molar_mass) == doctest::Approx(0.1e-3));
    CHECK(half_width(own.with({{Field::molar_mass, "24.305 ± 0.002"}}), Input::molar_mass) == doctest::Approx(0.002e-3));
    CHECK(doubtful(own).contains(Input::molar_mass));
    // The list's own has the bounds of the atomic weight, whatever was typed for another substance.
    CHECK(half_width(tube.with({{Field::molar_mass, "24"}}), Input::molar_mass) == 0);
    CHECK(half_width(tube.with({{Field::molar_mass, "24"}}), Input::molar_mass, DoubtKind::atomic_weight) == doctest::Approx(0.002e-3));
    CHECK(half_width(tube.with({{Field::tube_factor, "0.987"}}), Input::tube_factor) == doctest::Approx(0.001));
    CHECK(half_width(tube.with({{Field::water_activity, "0.98"}}), Input::water_activity) == doctest::Approx(0.01));
    // Calcium carbonate: the bounds of all its atoms, 0.004 + 0.002 + 3 x 0.001 g/mol.
    const Sheet carbonate = tube.with({{Field::metal, "calcium_carbonate"}, {Field::mass_of_metal, "0.1697"}});
    CHECK(half_width(carbonate, Input::molar_mass, DoubtKind::atomic_weight) == doctest::Approx(0.009e-3));
}

TEST_CASE("both pressures of a closed flask count, and their difference is what is doubtful") {
    // By hand: u of each is 100 Pa/sqrt 3 = 57.735 Pa; the rise of 29630 Pa has sqrt 2 of it, 0.27556 %.
    const Budget found = budget(good_run(Apparatus::pressure_sensor), Output::dry_gas_pressure);
    CHECK(found.rows.size() == 2);
    CHECK(found.u == doctest::Approx(81.6497).epsilon(1e-5));
    CHECK(found.u / found.value == doctest::Approx(0.0027556).epsilon(1e-4));
}

TEST_CASE("with a known latitude the acceleration is not doubtful") {
    const Sheet tube = good_run(Apparatus::tube_over_water);
    CHECK(doubtful(tube).contains(Input::gravity));
    CHECK_FALSE(doubtful(tube.with({{Field::latitude, "51"}})).contains(Input::gravity));
}

TEST_CASE("the last line that is sought has a budget of its own") {
    const Sheet alloy = good_run(Apparatus::generator_flask)
                            .with({{Field::target, "alloy"}, {Field::metal, "aluminium"}, {Field::second_metal, "zinc"},
                                   {Field::mass_of_metal, "0.0500"}});
    CHECK(doubtful(alloy, Output::alloy_share).contains(Input::mass_of_metal));
    CHECK(doubtful(alloy, Output::alloy_share).contains(Input::injected_volume));
    // An equivalent mass needs no molar mass, a purity does.
    CHECK_FALSE(doubtful(good_run(Apparatus::gas_syringe), Output::equivalent_mass).contains(Input::molar_mass));
    CHECK(doubtful(good_run(Apparatus::gas_syringe), Output::purity_found).contains(Input::molar_mass));
    const Sheet weighed = good_run(Apparatus::gas_syringe)
                              .with({{Field::target, "gas_molar_mass"}, {Field::gas, "carbon_dioxide"}, {Field::gas_is, "dry"}});
    CHECK(doubtful(weighed, Output::gas_molar_mass) ==
          std::set<Input>{Input::mass_of_metal, Input::temperature, Input::barometer, Input::scale_reading});
}
