#include "core/explain/cause_model.hpp"

#include <cmath>

#include "core/matter/water.hpp"
#include "core/result/evaluate.hpp"

namespace overwater {

namespace {

/// Which way a cause is gone through: from the truth to what was put down, or back.
enum class Way : std::uint8_t { falsify, correct };

double value_of(const Bench& bench, Output output) {
    OutputSet ready = bench.ready;
    ready.add(output);
    return evaluate(bench.measured, Method{}, ready)[output];
}

/// `volume` more gas on the scale; in a closed flask as much as has this volume at the pressure before.
void add_gas(Bench& bench, double volume) {
    Measured<double>& measured = bench.measured;
    if (measured.setup.apparatus == Apparatus::displaced_water) {
        measured[Input::displaced_mass] += volume * value_of(bench, Output::water_density);
        return;
    }
    if (measured.setup.apparatus == Apparatus::pressure_sensor) {
        measured[Input::pressure_after] += measured[Input::barometer] * volume / value_of(bench, Output::gas_volume);
        return;
    }
    const bool upright = measured.setup.closed_end == ClosedEnd::zero;
    measured[Input::scale_reading] += upright ? volume : -volume;
}

/// The gas that the metal gave, times `factor`; gas that was there at the start stays.
void scale_new_gas(Bench& bench, double factor) {
    Measured<double>& measured = bench.measured;
    if (measured.setup.apparatus == Apparatus::pressure_sensor) {
        double& after = measured[Input::pressure_after];
        after += (factor - 1) * (after - measured[Input::barometer]);
        return;
    }
    add_gas(bench, (factor - 1) * value_of(bench, Output::gas_volume));
}

/// All the gas in the tube, times `factor`.
void scale_all_gas(Bench& bench, double factor) {
    const bool on_scale = has_scale(bench.measured.setup);
    add_gas(bench, (factor - 1) * value_of(bench, on_scale ? Output::gas_at_end : Output::gas_volume));
}

void add_mass(Bench& bench, double mass) {
    const bool difference = bench.measured.setup.mass_from == MassFrom::by_difference;
    bench.measured[difference ? Input::mass_before : Input::mass_of_metal] += mass;
}

/// Of what was weighed, `factor` times as much is metal.
void scale_purity(Bench& bench, double factor) {
    Measured<double>& measured = bench.measured;
    const double purity = measured.setup.present.has(Field::purity) ? measured[Input::purity] : 1.0;
    measured.setup.present.add(Field::purity);
    measured[Input::purity] = factor * purity;
}

/// The liquid inside stands `height` higher than before, against the one outside.
void raise_inside(Bench& bench, double height) {
    Measured<double>& measured = bench.measured;
    if (measured.setup.liquid_stands == LiquidStands::level) {
        measured.setup.liquid_stands = LiquidStands::higher_inside;
        measured[Input::level_difference] = 0;
    }
    const bool outside = measured.setup.liquid_stands == LiquidStands::higher_outside;
    measured[Input::level_difference] += outside ? -height : height;
}

/// Another state of the gas than the one put down: it fills another volume. How much larger, the model says: the same
/// volume of gas comes to less at standard conditions, by the same factor. The gas is moist,
/// whatever the class subtracts.
template <class Change>
void expand(Bench& bench, Way way, Change change) {
    Bench as_put_down = bench;
    as_put_down.measured.setup.start = Start::nothing;
    if (as_put_down.measured.setup.vapour == VapourFrom::not_subtracted) {
        as_put_down.measured.setup.vapour = VapourFrom::formula;
    }
    Bench as_it_was = as_put_down;
    change(as_it_was);
    const double factor = value_of(as_put_down, Output::molar_volume_standard) /
                          value_of(as_it_was, Output::molar_volume_standard);
    scale_all_gas(bench, way == Way::falsify ? factor : 1 / factor);
}

/// In a closed flask the air and the vapour are warmed with the gas, so that all of the pressure rises.
void warm_flask(Bench& bench, Way way, double kelvin) {
    const double celsius = bench.measured[Input::temperature];
    const double cold = celsius + celsius_zero_in_kelvin;
    const auto vapour = [](double t) { return water_vapour_pressure(Temperature<>::celsius(t)).si(); };
    double& after = bench.measured[Input::pressure_after];
    after = way == Way::falsify ? (after - vapour(celsius)) * ((cold + kelvin) / cold) + vapour(celsius + kelvin)
                                : (after - vapour(celsius + kelvin)) * (cold / (cold + kelvin)) + vapour(celsius);
}

/// The pressure was one at sea level, and the bench lies `height` higher than that. An altimeter setting is additive in
/// the height, so a height below zero undoes it.
void lift(Bench& bench, double height) {
    Measured<double>& measured = bench.measured;
    if (measured.setup.pressure_kind == PressureKind::at_the_bench) {
        measured.setup.pressure_kind = PressureKind::altimeter_setting;
        measured[Input::height_above_sea_level] = 0;
        bench.ready.add(Output::pressure_at_bench);
    }
    measured[Input::height_above_sea_level] += height;
}

void put_vapour(Bench& bench, double value) {
    Measured<double>& measured = bench.measured;
    measured.setup.vapour = VapourFrom::looked_up;
    measured.setup.vapour_looked_up_at = measured[Input::temperature];
    measured[Input::vapour_value] = value;
}

/// Looked up in a row `colder` degrees below.
void look_up_colder(Bench& bench, Way way, double colder) {
    Measured<double>& measured = bench.measured;
    if (way == Way::correct) {
        // The model adds what the vapour differs by between the row and the gas.
        measured.setup.vapour_looked_up_at -= colder;
        return;
    }
    Bench row = bench;
    row.measured[Input::temperature] -= colder;
    put_vapour(bench, value_of(row, Output::water_vapour_pressure));
}

Bench changed(Bench bench, Cause cause, Way way, double size) {
    Measured<double>& measured = bench.measured;
    const double signed_size = way == Way::falsify ? size : -size;
    const double less = way == Way::falsify ? 1 - size : 1 / (1 - size);
    switch (cause) {
        case Cause::air_bubble:
        case Cause::meniscus:
        case Cause::drops_on_wall:
        case Cause::end_space_off:
        case Cause::scale_misread:
        case Cause::tube_off: add_gas(bench, signed_size); break;
        case Cause::gas_lost: add_gas(bench, -signed_size); break;
        case Cause::metal_left:
        case Cause::dissolved_gas:
        case Cause::acid_short: scale_new_gas(bench, less); break;
        case Cause::oxide_coat: scale_purity(bench, 1 / less); break;
        case Cause::wet_metal: add_mass(bench, signed_size); break;
        case Cause::balance_off: add_mass(bench, -signed_size); break;
        case Cause::ribbon_mass:
            measured[Input::mass_per_metre] *= way == Way::falsify ? 1 / (1 + size) : 1 + size;
            break;
        case Cause::gas_warm:
            if (measured.setup.apparatus == Apparatus::pressure_sensor) {
                warm_flask(bench, way, size);
                break;
            }
            expand(bench, way, [size](Bench& warm) { warm.measured[Input::temperature] += size; });
            break;
        case Cause::hot_liquid: measured[Input::temperature] += signed_size; break;
        case Cause::thermometer_off: measured[Input::temperature] -= signed_size; break;
        case Cause::levels_not_equal:
            expand(bench, way, [size](Bench& apart) { raise_inside(apart, size); });
            break;
        case Cause::level_misread: raise_inside(bench, -signed_size); break;
        case Cause::barometer_off:
        case Cause::mercury_not_corrected: measured[Input::barometer] += signed_size; break;
        case Cause::sea_level_pressure: lift(bench, -signed_size); break;
        case Cause::vapour_wrong_row: look_up_colder(bench, way, size); break;
        case Cause::acid_lowers_vapour:
            put_vapour(bench, value_of(bench, Output::water_vapour_pressure) / less);
            break;
        case Cause::molar_mass_rounded: measured[Input::molar_mass] += signed_size; break;
        case Cause::count: break;
    }
    return bench;
}

/// Whether the readings could have been put down: on the scale, of liquid water, something weighed.
bool can_be_read(const Measured<double>& measured) {
    const double reading = measured[Input::scale_reading];
    const bool capacity_known = measured.setup.present.has(Field::tube_capacity);
    // The rounding of sums and differences is no reason to refuse a reading on the last mark.
    const double grain = 1e-12 * (capacity_known ? measured[Input::tube_capacity] : 1e-3);
    const bool on_scale = has_scale(measured.setup);
    if (on_scale && (reading < -grain || (capacity_known && reading > measured[Input::tube_capacity] + grain))) {
        return false;
    }
    if (measured.setup.mass_from == MassFrom::weighed && measured[Input::mass_of_metal] <= 0) return false;
    return !measured.setup.present.has(Field::temperature) ||
           water_vapour_pressure_range.contains(measured[Input::temperature]);
}

}  // namespace

Output explained_output(const Assessment& assessment) {
    const Setup& setup = assessment.measured.setup;
    const Output sought = sought_output(setup.converted, setup.target);
    return setup.known != 0 ? sought : headline_output(assessment.conventions);
}

Bench bench_of(const Assessment& assessment) {
    Bench bench{assessment.measured, assessment.outcome.ready, explained_output(assessment)};
    // A change may ask for what this run did not need: a column where the liquids were level.
    if (bench.ready.has(Output::absolute_temperature)) {
        bench.ready.add(Output::water_density);
        if (bench.measured.setup.vapour != VapourFrom::looked_up) bench.ready.add(Output::water_vapour_pressure);
    }
    if (bench.measured.setup.pressure_kind != PressureKind::at_the_bench) bench.ready.add(Output::pressure_at_bench);
    return bench;
}

std::optional<double> result_of(const Bench& bench) {
    if (!bench.ready.has(bench.explained)) return std::nullopt;
    const double value = evaluate(bench.measured, Method{}, bench.ready)[bench.explained];
    return std::isfinite(value) && value > 0 ? std::optional(value) : std::nullopt;
}

Bench falsified(const Bench& bench, Cause cause, double size) {
    return changed(bench, cause, Way::falsify, size);
}

Bench corrected(const Bench& bench, Cause cause, double size) { return changed(bench, cause, Way::correct, size); }

std::optional<double> result_with(const Assessment& assessment, Cause cause, double size) {
    const auto reach = reach_of(assessment, cause);
    if (!reach || !std::isfinite(size)) return std::nullopt;
    const bool both = info(cause).raises && info(cause).lowers;
    if (size < 0 && !both) return std::nullopt;
    if (both && falls_with_volume(explained_output(assessment))) size = -size;
    if ((size > 0 && both && !reach->raises) || (size < 0 && !reach->lowers)) return std::nullopt;
    const Bench found = falsified(bench_of(assessment), cause, size);
    return can_be_read(found.measured) ? result_of(found) : std::nullopt;
}

}  // namespace overwater
