#include "core/lesson/route_band.hpp"

#include <algorithm>
#include <cmath>
#include <initializer_list>
#include <span>

#include "core/bench/readings.hpp"
#include "core/matter/vapour_table.hpp"
#include "core/quantity/number_format.hpp"
#include "core/quantity/units.hpp"
#include "core/result/evaluate.hpp"

namespace overwater {

namespace {

void take_in(Band& band, double value) {
    if (!std::isfinite(value)) return;
    band.low = std::min(band.low, value);
    band.high = std::max(band.high, value);
}

void take_in(Band& band, const Band& other) {
    take_in(band, other.low);
    take_in(band, other.high);
}

class Walk {
public:
    Walk(const Assessment& run, const Outcome<double>& carried, bool whole_kelvin)
        : run_(run), measured_(run.measured), carried_(carried) {
        if (whole_kelvin) method_.temperature = Method::Temperature::whole_kelvin;
    }

    RouteBands walk() {
        step(Output::absolute_temperature, {});
        vapour();
        columns();
        step(Output::pressure_at_bench, {});
        step(Output::dry_gas_pressure, {Output::water_vapour_pressure, Output::column_pressure, Output::pressure_at_bench});
        step(Output::start_dry_pressure, {Output::water_vapour_pressure, Output::pressure_at_bench});
        step(Output::gas_at_end, {});
        step(Output::gas_at_start, {});
        volume();
        step(Output::mass, {});
        amount_of_metal();
        step(Output::amount_of_acid, {});
        step(Output::acid_needed, {Output::amount_of_metal});
        step(Output::amount_of_gas, {Output::amount_of_metal, Output::amount_of_acid});
        step(Output::molar_volume_bench, {Output::gas_volume, Output::amount_of_gas});
        step(Output::dry_gas_at_barometer, {Output::gas_volume, Output::amount_of_gas, Output::dry_gas_pressure});
        conversion();
        step(Output::gas_constant, {Output::gas_volume, Output::amount_of_gas, Output::dry_gas_pressure,
                                    Output::absolute_temperature});
        accepted();
        step(Output::amount_by_volume, {Output::volume_at_standard, Output::accepted_value});
        other_last_lines();
        percent_error();
        return out_;
    }

private:
    Output found() const { return sought_output(measured_.setup.converted, measured_.setup.target); }
    Band& band(Output o) { return out_.bands[static_cast<std::size_t>(o)]; }

    double value(Output o) const {
        return evaluate(measured_, method_, run_.outcome.ready - given_.ready, given_)[o];
    }

    /// All corners of the steps before; everything else as the run has it.
    Band corners(Output o, std::initializer_list<Output> before) {
        Band reached{HUGE_VAL, -HUGE_VAL};
        const std::size_t count = before.size();
        for (std::size_t corner = 0; corner < (std::size_t{1} << count); ++corner) {
            given_ = carried_;
            std::size_t k = 0;
            for (const Output b : before) {
                const bool high = (corner >> k++ & 1) != 0;
                if (out_.known.has(b)) given_.put(b, high ? band(b).high : band(b).low);
            }
            take_in(reached, value(o));
        }
        return reached;
    }

    /// A result is judged by the digits it is given with; as a step to the percent error it may be rounded more.
    static bool is_result(Output o) {
        return is_molar_volume(o) || o == Output::gas_constant || is_by_volume(o) || o == Output::percent_error;
    }

    void keep(Output o, Band reached) {
        if (carried_.ready.has(o)) {
            const double taken = carried_.si[static_cast<std::size_t>(o)];
            reached = Band{taken, taken};
        } else if (!is_result(o)) {
            reached = as_a_step(o, reached);
        }
        band(o) = reached;
        out_.known.add(o);
    }

    void step(Output o, std::initializer_list<Output> before) {
        if (run_.has(o)) keep(o, corners(o, before));
    }

    void vapour() {
        if (!run_.has(Output::water_vapour_pressure)) return;
        Band reached = corners(Output::water_vapour_pressure, {});
        const double celsius = measured_[Input::temperature];
        given_ = carried_;
        for (const BetweenRows between : {BetweenRows::interpolated, BetweenRows::nearest}) {
            if (const auto pascal = vapour_from_table(VapourTable::rounded_formula, between, celsius)) {
                take_in(reached, *pascal);
            }
        }
        Measured<double> by_formula = measured_;
        by_formula.setup.vapour = VapourFrom::formula;
        const Method plain;
        take_in(reached, evaluate(by_formula, plain, run_.outcome.ready)[Output::water_vapour_pressure]);
        keep(Output::water_vapour_pressure, reached);
    }

    void columns() {
        if (!run_.has(Output::column_pressure)) return;
        Band reached{HUGE_VAL, -HUGE_VAL};
        for (const auto size :
             {Method::ColumnSize::right, Method::ColumnSize::by_13_6, Method::ColumnSize::density_1000}) {
            method_.column_size = size;
            take_in(reached, corners(Output::column_pressure, {}).low);
        }
        method_.column_size = Method::ColumnSize::right;
        keep(Output::column_pressure, reached);
    }

    void volume() {
        if (!run_.has(Output::gas_volume)) return;
        Band reached = corners(Output::gas_volume, {Output::gas_at_end, Output::gas_at_start, Output::dry_gas_pressure,
                                                    Output::start_dry_pressure});
        method_.volume = Method::Volume::ring_ignored;
        take_in(reached, corners(Output::gas_volume, {}).low);
        method_.volume = Method::Volume::right;
        // Water that was weighed is 1 mL a gram for most.
        if (measured_.setup.apparatus == Apparatus::displaced_water) take_in(reached, measured_[Input::displaced_mass] / 1000.0);
        keep(Output::gas_volume, reached);
    }

    void amount_of_metal() {
        if (!run_.has(Output::amount_of_metal)) return;
        Band reached = corners(Output::amount_of_metal, {Output::mass});
        by_molar_masses(Output::amount_of_metal, {Output::mass}, reached);
        keep(Output::amount_of_metal, reached);
    }

    /// With the molar mass, and that of the other metal of an alloy, of 0 to 3 decimals.
    void by_molar_masses(Output o, std::initializer_list<Output> before, Band& reached) {
        const double own = measured_[Input::molar_mass];
        const double second = measured_.setup.second_molar_mass;
        const double full = run_.readings.sample ? molar_mass_of(*run_.readings.sample).in(gram_per_mole) : own * 1e3;
        const double full_second = run_.readings.second ? molar_mass_of(*run_.readings.second).in(gram_per_mole) : second * 1e3;
        for (const int place : {0, -1, -2, -3}) {
            for (const int second_place : {0, -1, -2, -3}) {
                if (second == 0 && second_place != 0) continue;
                measured_[Input::molar_mass] = round_to_place(full, place) * 1e-3;
                measured_.setup.second_molar_mass = round_to_place(full_second, second_place) * 1e-3;
                take_in(reached, corners(o, before));
            }
        }
        measured_[Input::molar_mass] = own;
        measured_.setup.second_molar_mass = second;
    }

    void other_last_lines() {
        const std::initializer_list<Output> before{Output::amount_by_volume, Output::mass};
        step(Output::molar_mass_found, before);
        step(Output::equivalent_mass, before);
        step(Output::gas_molar_mass, before);
        for (const Output share : {Output::purity_found, Output::alloy_share}) {
            if (!run_.has(share)) continue;
            Band reached = corners(share, before);
            by_molar_masses(share, before, reached);
            keep(share, reached);
        }
    }

    /// V/n first and then converted, or the volume converted first.
    void conversion() {
        const std::initializer_list<Output> before{Output::gas_volume, Output::dry_gas_pressure,
                                                   Output::absolute_temperature, Output::compression_factor};
        step(Output::compression_factor, {Output::dry_gas_pressure});
        step(Output::standard_compression_factor, {});
        if (!run_.has(Output::volume_at_standard) && !run_.has(Output::molar_volume_standard)) return;
        if (run_.has(Output::volume_at_standard)) {
            Band reached = corners(Output::volume_at_standard, before);
            method_.standard = Method::Standard::rounded;
            take_in(reached, corners(Output::volume_at_standard, before).high);
            method_.standard = Method::Standard::right;
            keep(Output::volume_at_standard, reached);
        }
        if (!run_.has(Output::molar_volume_standard)) return;
        const std::initializer_list<Output> with_amount{Output::gas_volume, Output::dry_gas_pressure,
                                                        Output::absolute_temperature, Output::amount_of_gas};
        Band reached = corners(Output::molar_volume_standard, with_amount);
        method_.standard = Method::Standard::rounded;
        take_in(reached, corners(Output::molar_volume_standard, with_amount).high);
        method_.standard = Method::Standard::right;
        if (run_.has(Output::volume_at_standard)) reached = by_volume_at_standard(reached);
        keep(Output::molar_volume_standard, reached);
    }

    /// The band of the volume at standard conditions over that of the amount: the molar volume is their quotient.
    Band by_volume_at_standard(Band reached) {
        const double volume = run_.outcome[Output::volume_at_standard];
        const double amount = run_.outcome[Output::amount_of_gas];
        const double result = run_.outcome[Output::molar_volume_standard];
        const Band& v = band(Output::volume_at_standard);
        const Band& n = band(Output::amount_of_gas);
        take_in(reached, result * (v.low / volume) * (amount / n.high));
        take_in(reached, result * (v.high / volume) * (amount / n.low));
        return reached;
    }

    void accepted() {
        if (!run_.has(Output::accepted_value)) return;
        Band reached = corners(Output::accepted_value, {});
        if (!measured_.setup.accepted_typed) {
            // By R = 8.31 J/(mol K) and 0.0821 L atm/(mol K), the ends of what is used.
            const double right = reached.high;
            take_in(reached, right * 8.31 / gas_constant.si());
            take_in(reached, right * 0.0821 * 101.325 / gas_constant.si());
        }
        keep(Output::accepted_value, reached);
    }

    void percent_error() {
        if (!run_.has(Output::percent_error)) return;
        const Band as_found = band(found());
        if (!carried_.ready.has(found())) band(found()) = as_a_step(found(), as_found);
        if (is_molar_volume(found())) {
            step(Output::percent_error, {found(), Output::accepted_value});
        } else {
            Band reached = corners(Output::percent_error, {found()});
            by_known_values(reached);
            keep(Output::percent_error, reached);
        }
        band(found()) = as_found;
    }

    /// What is known of a molar mass has 0 to 3 decimals too, and the gas constant is 8.31, 8.314 or 0.0821.
    void by_known_values(Band& reached) {
        const double own = measured_.setup.known;
        const auto with = [&](double known) {
            measured_.setup.known = known;
            take_in(reached, corners(Output::percent_error, {found()}));
        };
        if (found() == Output::gas_constant) {
            for (const double known : {8.31, 8.314, 0.0821 * 101.325, 0.08206 * 101.325}) with(known);
        } else {
            // Of an equivalent mass the molar mass is what was rounded, if not the equivalent mass itself.
            const double parts = found() == Output::equivalent_mass ? 2 * measured_.setup.gas_per_sample : 1.0;
            for (const int place : {0, -1, -2, -3}) {
                with(round_to_place(own * 1e3, place) * 1e-3);
                with(round_to_place(own * parts * 1e3, place) * 1e-3 / parts);
            }
        }
        measured_.setup.known = own;
    }

    const Assessment& run_;
    Measured<double> measured_;
    const Outcome<double>& carried_;
    Outcome<double> given_;
    Method method_;
    RouteBands out_;
};

}  // namespace

/// Rounding never changes the order of two numbers: the ends of the band rounded are the ends of what is rounded. Three
/// figures of a pressure are not the same in every unit.
Band as_a_step(Output output, Band band) {
    constexpr UnitId pressures[]{UnitId::kilopascal, UnitId::millimetre_of_mercury, UnitId::inch_of_mercury,
                                 UnitId::atmosphere};
    constexpr UnitId as_it_is[]{UnitId::none};
    const bool pressure = info(unit_of(output)).measure == Measure::pressure;
    Band wide = band;
    for (const UnitId unit : pressure ? std::span<const UnitId>(pressures) : std::span<const UnitId>(as_it_is)) {
        for (const double end : {band.low, band.high}) {
            for (const int figures : {3, 4, 5}) {
                take_in(wide, difference_to_base(to_figures(difference_from_base(end, unit), figures), unit));
            }
        }
    }
    return wide;
}

RouteBands route_bands(const Assessment& run, const Outcome<double>& carried) {
    RouteBands bands = Walk(run, carried, false).walk();
    const RouteBands whole = Walk(run, carried, true).walk();
    for (std::size_t i = 0; i < output_count; ++i) {
        take_in(bands.bands[i], whole.bands[i]);
    }
    return bands;
}

}  // namespace overwater
