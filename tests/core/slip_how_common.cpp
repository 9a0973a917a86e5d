#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "core/lesson/slip_search.hpp"
#include "tests/core/check_support.hpp"

using namespace overwater;
using namespace overwater::test;

// Which mistake of the collection a slip is, and how common: that decides which of several that fit is offered first.

namespace {

struct Kind {
    std::string_view slip;
    int how_common;
};
struct Mistake {
    int number;
    std::vector<Kind> slips;
};

// The number is that of mistakes.md, section 1 and 2, whose words stand beside it; 55 is none of them. How common, 1 to 100:
// common practice, no source; the order among those that look alike is what matters.
const std::vector<Mistake>& mistakes() {
    static const std::vector<Mistake> all{
        // Pressure in one unit, vapour pressure or barometer in another; a column 100 times too small.
        {1,
         {{"vapour_kilopascal_as_millimetre", 10},
          {"vapour_millimetre_as_kilopascal", 8},
          {"vapour_hectopascal_as_millimetre", 4},
          {"vapour_millimetre_as_hectopascal", 4},
          {"barometer_inch_as_millimetre", 8},
          {"barometer_inch_as_kilopascal", 6},
          {"barometer_millimetre_as_kilopascal", 6},
          {"barometer_kilopascal_as_millimetre", 6},
          {"column_hundredth", 3}}},
        // Vapour pressure not subtracted.
        {2, {{"vapour_ignored", 60}, {"whole_pressure", 12}}},
        // Vapour pressure added.
        {3, {{"vapour_added", 15}}},
        // Vapour pressure for the wrong temperature, or of the wrong row.
        {4,
         {{"vapour_row_above", 8},
          {"vapour_row_below", 8},
          {"vapour_five_degrees_above", 4},
          {"vapour_five_degrees_below", 4},
          {"vapour_of_25_celsius", 6}}},
        // Local rule: as many mmHg as degrees Celsius.
        {5, {{"vapour_celsius_number", 6}}},
        // Moles rounded too early, or one-figure mass.
        {6,
         {{"mass_one_figure", 6},
          {"mass_one_figure_cut", 2},
          {"amount_one_figure", 10},
          {"amount_one_figure_cut", 5},
          {"amount_two_figures", 10},
          {"amount_two_figures_cut", 4}}},
        // Circular calculation.
        {7, {{"circular_by_gas_law", 10}, {"circular_by_accepted_value", 12}, {"circular_by_volume_at_standard", 8}}},
        // Inverted scale reading used as the gas volume.
        {8, {{"reading_taken_as_gas", 30}, {"reading_alone", 20}, {"counted_from_capacity", 10}}},
        // End space ignored.
        {9, {{"end_space_ignored", 40}}},
        // End space subtracted, or added when the start reading was already on the scale.
        {10, {{"end_space_subtracted", 10}, {"end_space_added_to_difference", 10}}},
        // Scale read in the wrong direction between numbers.
        {11, {{"mirrored_beyond", 10}, {"mirrored_within", 6}}},
        // Celsius in the gas law.
        {13, {{"celsius_in_gas_law", 15}, {"celsius_both", 8}}},
        // Combined gas law inverted.
        {14, {{"temperature_upside_down", 15}, {"pressure_upside_down", 12}, {"both_upside_down", 8}}},
        // No conversion to standard conditions at all.
        {15, {{"no_conversion", 30}}},
        // A factor dropped on the calculator.
        {16,
         {{"temperature_left_out", 12},
          {"pressure_left_out", 12},
          {"standard_temperature_dropped", 3},
          {"only_over_temperature", 3}}},
        // mL as L, mol for mmol, lost minus sign in 10^-4.
        {17,
         {{"millilitre_as_litre", 15},
          {"litre_as_millilitre", 4},
          {"amount_millimole_as_mole", 8},
          {"amount_tenfold", 6},
          {"amount_tenth", 6},
          {"amount_minus_lost", 4}}},
        // Length -> mass slip (cm, m, g/m); nominal mass per metre.
        {18,
         {{"mass_thousandfold", 5},
          {"mass_thousandth", 8},
          {"mass_hundredfold", 5},
          {"mass_hundredth", 5},
          {"mass_tenfold", 6},
          {"mass_tenth", 6},
          {"mass_nominal_ribbon", 8}}},
        // Wrong molar mass.
        {19,
         {{"molar_mass_atomic_number", 10},
          {"molar_mass_of_salt", 6},
          {"molar_mass_of_hydrogen", 4},
          {"molar_mass_of_manganese", 4},
          {"molar_mass_doubled", 5}}},
        // Mole ratio: exactly half or double.
        {20,
         {{"ratio_half", 10},
          {"ratio_twice", 12},
          {"ratio_one", 12},
          {"ratio_upside_down", 4},
          {"equivalent_not_halved", 15}}},
        // Sea-level pressure used as that of the place.
        {22, {{"barometer_not_reduced", 25}}},
        // 1 atm assumed, barometer never read.
        {23, {{"barometer_one_atmosphere", 25}, {"barometer_one_bar", 8}}},
        // Impossible barometer accepted.
        {24, {{"barometer_hectopascal_as_millimetre", 6}, {"barometer_millimetre_as_hectopascal", 6}}},
        // Level difference: ignored; wrong sign; water as mercury, or cm where mm belong.
        {25, {{"column_ignored", 40}}},
        {26, {{"column_wrong_side", 20}}},
        {27, {{"column_as_mercury", 12}, {"column_tenth", 10}, {"column_tenfold", 3}}},
        // Standard pressures mixed: 100 kPa against 1 atm.
        {28, {{"standard_other_pressure", 20}, {"accepted_other_pressure", 15}}},
        // Value of a room, or of another temperature.
        {29, {{"standard_other_temperature", 6}, {"accepted_at_room", 8}, {"accepted_at_standard", 8}}},
        // Percent error formula.
        {30, {{"error_ratio", 12}, {"error_over_found", 8}, {"error_sign_lost", 8}, {"error_as_fraction", 4}}},
        // Wrong R for the units.
        {36, {{"millimetre_with_atmosphere", 6}, {"gas_constant_tenfold", 4}}},
        // Acid or water added after closing: its volume not subtracted.
        {48, {{"injected_ignored", 30}}},
        // Trapped air at the start not subtracted.
        {54, {{"start_ignored", 10}}},
        {55, {{"share_of_the_other", 8}}}};
    return all;
}

std::map<std::string_view, int> commonness() {
    std::map<std::string_view, int> all;
    for (const Mistake& mistake : mistakes()) {
        for (const Kind& kind : mistake.slips) all[kind.slip] = kind.how_common;
    }
    return all;
}

std::string_view name_of_first(const SlipExplanation& one) { return slip_table[one.slips.slips[0]].name; }

/// Record A where nobody wrote the acid down: it cannot run out.
Sheet sheet() { return record_a().with({{Field::acid_volume, ""}, {Field::acid_concentration, ""}}); }

SlipFinding explained(double litres, double half, const Sheet& of = sheet()) {
    const StatedValue answers[]{{Output::molar_volume_standard, litres * 1e-3, half * 1e-3}};
    return find_slips(of.assessed(), answers);
}

/// The single slips that give this number to all its digits, in the order in which they are offered.
std::string singles(double litres, double half, const Sheet& of = sheet()) {
    std::string names;
    for (const SlipExplanation& one : explained(litres, half, of).explanations) {
        if (one.slips.count == 1 && one.exact) names += (names.empty() ? "" : " ") + std::string(name_of_first(one));
    }
    return names;
}

}  // namespace

TEST_CASE("each slip is one of the collection of mistakes, as common as is thought") {
    std::size_t told = 0;
    for (const Mistake& mistake : mistakes()) {
        for (const Kind& kind : mistake.slips) {
            CAPTURE(kind.slip);
            bool there = false;
            for (const Slip& slip : slip_table) {
                if (slip.name != kind.slip) continue;
                there = true;
                CHECK(slip.row == mistake.number);
                CHECK(slip.commonness == kind.how_common);
            }
            CHECK(there);
            ++told;
        }
    }
    CHECK(told == slip_count);
}

TEST_CASE("of slips that give the same number the commonest is offered first") {
    // Record A of method.md: 22.6818 L/mol.
    // A thousand times too much: millilitres taken as litres, or grams as milligrams.
    CHECK(singles(22681.8, 0.05) == "millilitre_as_litre mass_thousandth");
    // Twice: half of the ratio of moles comes before twice the molar mass.
    CHECK(singles(2 * 22.6818, 2 * 0.00005) == "ratio_half molar_mass_doubled");
    // A thousandth: millimoles taken as moles, milligrams as grams, and litres as millilitres.
    CHECK(singles(0.0226818, 0.00000005) == "amount_millimole_as_mole mass_thousandfold litre_as_millilitre");
    // Levels equal: the vapour forgotten at once, or only in the last formula. 95.974 kPa were dry (method.md), 99.62 are not.
    const Sheet level = sheet().with({{Field::liquid_stands, "level"}, {Field::level_difference, ""}});
    CHECK(singles(22.6818 * 99.62 / 95.974, 0.0005, level) == "vapour_ignored whole_pressure");
}

TEST_CASE("how likely an explanation was before the answer was known") {
    // Of a thousand sheets so many have the slip; a second one in the same calculation is five times rarer; one class in ten
    // works by another route, and such an answer may lie anywhere in what routes reach. Common practice, no source.
    const std::map<std::string_view, int> common = commonness();
    const Band band = route_bands(sheet().assessed())[Output::molar_volume_standard];
    int exact = 0;
    int by_route = 0;
    int pairs = 0;
    int triples = 0;
    for (const double litres : {23.28, 22.10, 24.8, 25.48, 6.038, 11.34, 45.4, 22681.8, 23.9, 26.0}) {
        const double half = litres > 1000 ? 0.05 : 0.005;
        for (const SlipExplanation& one : explained(litres, half).explanations) {
            double likely = 1;
            for (std::uint8_t i = 0; i < one.slips.count; ++i) {
                likely *= common.at(slip_table[one.slips.slips[i]].name) / 1000.0;
                if (i > 0) likely *= 0.2;
            }
            if (!one.exact) likely *= 0.1 / (1 + (band.high - band.low) / (2 * half * 1e-3));
            CHECK(one.weight == doctest::Approx(std::log(likely)));
            (one.exact ? exact : by_route) += 1;
            pairs += one.slips.count == 2 ? 1 : 0;
            triples += one.slips.count == 3 ? 1 : 0;
        }
    }
    CHECK(exact > 10);
    CHECK(by_route > 10);
    CHECK(pairs > 10);
    CHECK(triples > 0);
}

TEST_CASE("explanations: the best first, as many as can be read, and what is numerically the same shares a rank") {
    std::size_t most = 0;
    int shared = 0;
    for (const double litres : {23.3, 22.1, 24.8, 25.48, 6.038, 11.34, 45.4, 23.9, 26.0, 20.0, 30.0}) {
        const std::vector<SlipExplanation> all = explained(litres, 0.05).explanations;
        most = std::max(most, all.size());
        CHECK(all.size() <= 12);
        for (std::size_t i = 0; i < all.size(); ++i) {
            const SlipExplanation& here = all[i];
            CHECK(here.slips.count <= 3);
            // Three slips give anything: only the very digits count.
            if (here.slips.count == 3) CHECK(here.exact);
            if (here.exact) CHECK(std::fabs(here.value * 1e3 - litres) <= 0.05 * (1 + 1e-6));
            if (i == 0) {
                CHECK(here.rank == 1);
                continue;
            }
            const SlipExplanation& before = all[i - 1];
            CHECK((here.rank == before.rank || here.rank == before.rank + 1));
            const bool alike =
                std::fabs(here.value / before.value - 1) < 1e-9 && here.slips.count == before.slips.count;
            if (alike) CHECK(here.rank == before.rank);
            if (here.rank == before.rank) {
                ++shared;
                CHECK(alike);
                CHECK(here.weight <= before.weight);
            }
            // One slip that gives the digits comes before whatever needs more.
            if (here.slips.count == 1 && here.exact) CHECK((before.slips.count == 1 && before.exact));
        }
    }
    CHECK(most == 12);
    CHECK(shared > 0);
}

TEST_CASE("where nothing explains an answer, the nearest single slips and pairs are told, the nearest first") {
    for (const double litres : {-3.1, 1e7, 3.3e-7}) {
        const SlipFinding finding = explained(litres, std::fabs(litres) * 1e-6);
        REQUIRE(finding.kind == SlipFinding::Kind::unexplained);
        REQUIRE(finding.nearest.size() == 3);
        for (std::size_t i = 0; i < 3; ++i) {
            CHECK(finding.nearest[i].slips.count >= 1);
            CHECK(finding.nearest[i].slips.count <= 2);
            if (i == 0) continue;
            const auto off = [&](std::size_t k) { return std::fabs(finding.nearest[k].value * 1e3 - litres); };
            CHECK(off(i - 1) <= off(i) * 1.05);  // what routes reach is taken off: 1 % or so of each
        }
    }
}

TEST_CASE("an answer is right up to half of its last digit, and not beyond") {
    // In binary 0.7 + 0.1 falls short of 0.8.
    const Band high{0.8, 0.9};
    CHECK(is_right({Output::gas_volume, 0.7, 0.1}, high));
    CHECK(is_right({Output::gas_volume, 1.0, 0.1}, high));
    CHECK_FALSE(is_right({Output::gas_volume, 0.7, 0.0999}, high));
    CHECK_FALSE(is_right({Output::gas_volume, 1.0, 0.0999}, high));
    CHECK(is_right({Output::gas_volume, 0.85, 0.0}, high));
}
