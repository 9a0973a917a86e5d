#include <array>
#include <cmath>

#include "core/matter/constants.hpp"
#include "core/quantity/units.hpp"
#include "core/result/sense_checks.hpp"

/// A result far from every gas: the slip that explains it, below the reading where it was most likely made. Where
/// nothing fits, nothing is said. Nothing here gives the result away.

namespace overwater {

namespace {

/// 15 and 35 L/mol at 0 °C and 100 kPa, where an ideal gas has 22.711 L/mol: beyond them no careful run comes.
constexpr double far_below = 15 / 22.711;
constexpr double far_above = 35 / 22.711;
/// A gas as collected in a warm room, where pressure and temperature are not known: RT/p at 25 °C and 101.3 kPa.
constexpr double as_collected = 24.5 * litre_per_mole.factor;

/// Sentences that name the cause already.
constexpr std::array<std::string_view, 21> explained{"check.comma_thousands",
                                                     "check.pressure_unit",
                                                     "check.pressure_impossible",
                                                     "check.pressure_mmhg",
                                                     "check.purity_fraction",
                                                     "check.ribbon",
                                                     "check.ribbon_unit",
                                                     "check.mass_unit",
                                                     "check.too_much_metal",
                                                     "check.too_little_metal",
                                                     "check.temperature_unit",
                                                     "check.capacity_unusual",
                                                     "check.start_beyond_scale",
                                                     "check.end_space_large",
                                                     "check.temperature_far",
                                                     "check.vapour_unit",
                                                     "check.vapour_impossible",
                                                     "check.mouth_out_of_water",
                                                     "check.mouth_out_of_water_unit",
                                                     "check.closed_end_under_water",
                                                     "check.closed_end_under_water_unit"};

bool about(double value, double wanted, double share) { return std::fabs(value / wanted - 1) <= share; }

/// Molar volume found, as a multiple of an ideal gas's at the same temperature and pressure.
std::optional<double> times_expected(const Assessment& all) {
    if (all.has(Output::gas_constant)) return all.outcome[Output::gas_constant] / gas_constant.si();
    // In a closed flask the gas is spread over all of it: without its pressure the volume says nothing.
    if (all.measured.setup.apparatus == Apparatus::pressure_sensor) return std::nullopt;
    if (all.has(Output::molar_volume_bench)) return all.outcome[Output::molar_volume_bench] / as_collected;
    return std::nullopt;
}

/// The same mark with the other number at the closed end.
bool other_end_fits(const Remarks& remarks, double times) {
    const Setup& setup = remarks.setup();
    if (!has_column(setup) || setup.start == Start::reading || !remarks.usable(Field::tube_capacity)) return false;
    const double mark = remarks.base(Field::scale_reading);
    const double bubble = setup.start == Start::bubble ? remarks.base(Field::starting_bubble) : 0.0;
    const double seen = setup.closed_end == ClosedEnd::largest ? mark : remarks.base(Field::tube_capacity) - mark;
    const double volume = remarks.run().outcome[Output::gas_volume];
    return about(times * (seen - bubble) / volume, 1, 0.15);
}

/// The metal whose mole ratio and molar mass would make it right.
std::optional<Substance> other_metal(const Remarks& remarks, double times) {
    const auto& own = remarks.run().readings.sample;
    if (!own || !is_metal(*own)) return std::nullopt;
    const auto grams_a_mole = [](Substance metal) {
        return molar_mass_of(metal).si() / reaction(metal, Acid::hydrochloric).gas_per_sample;
    };
    for (std::size_t i = 0; i < metal_count; ++i) {
        const auto metal = static_cast<Substance>(i);
        if (metal != *own && about(times * grams_a_mole(metal) / grams_a_mole(*own), 1, 0.03)) return metal;
    }
    return std::nullopt;
}

void slip_of_ten(Remarks& remarks, double times) {
    for (const int power : {10, 100, 1000}) {
        const bool above = about(times, power, 0.15);
        if (!above && !about(times * power, 1, 0.15)) continue;
        remarks.doubt(field_of_mass(remarks.setup()),
                      Message{above ? "check.slip_of_ten_above" : "check.slip_of_ten_below"}.count("times", power));
        return;
    }
}

/// Half or double: the mole ratio. It follows from metal and acid, so one of those is to be looked at.
bool factor_of_two(Remarks& remarks, double times) {
    const bool half = about(times, 0.5, 0.1);
    if (!half && !about(times, 2, 0.1)) return false;
    const bool acid_sets_gas = remarks.setup().acid_limits && remarks.said("check.acid_limits");
    if (acid_sets_gas) {
        remarks.doubt(Field::acid, Message{half ? "check.acid_half" : "check.acid_double"});
    } else {
        remarks.doubt(Field::metal, Message{half ? "check.metal_half" : "check.metal_double"});
    }
    return true;
}

}  // namespace

void check_result(Remarks& remarks) {
    // Where a purity or an alloy is sought, less gas than of the pure metal is what is to be found out.
    const Target target = remarks.setup().target;
    if (target == Target::purity || target == Target::alloy) return;
    const auto times = times_expected(remarks.run());
    if (!times || within(*times, far_below, far_above)) return;
    if (other_end_fits(remarks, *times)) {
        remarks.doubt(Field::number_at_closed_end, Message{"check.other_end"});
        return;
    }
    if (const auto metal = other_metal(remarks, *times)) {
        remarks.doubt(Field::metal, Message{"check.other_metal"}.text("other", std::string(symbol_of(*metal))));
        return;
    }
    for (const std::string_view key : explained) {
        if (remarks.said(key)) return;
    }
    if (!factor_of_two(remarks, *times)) slip_of_ten(remarks, *times);
}

}  // namespace overwater
