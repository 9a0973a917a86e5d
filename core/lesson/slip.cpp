#include "core/lesson/slip.hpp"

#include <cstddef>

namespace overwater {

namespace {

bool barometer_in(const Assessment& run, UnitId a, UnitId b) {
    const UnitId unit = run.readings[Field::barometer].unit;
    return unit == a || unit == b;
}

/// Of the ways that need more than a difference in the numbers to be thinkable.
bool thinkable(Method::Barometer way, const Assessment& run) {
    switch (way) {
        case Method::Barometer::inch_as_millimetre:
        case Method::Barometer::inch_as_kilopascal:
            return barometer_in(run, UnitId::inch_of_mercury, UnitId::inch_of_mercury);
        case Method::Barometer::millimetre_as_kilopascal:
        case Method::Barometer::millimetre_as_hectopascal:
            return barometer_in(run, UnitId::millimetre_of_mercury, UnitId::torr);
        case Method::Barometer::kilopascal_as_millimetre:
            return barometer_in(run, UnitId::kilopascal, UnitId::kilopascal);
        case Method::Barometer::hectopascal_as_millimetre:
            return barometer_in(run, UnitId::hectopascal, UnitId::millibar);
        case Method::Barometer::not_reduced: return run.measured.setup.pressure_kind != PressureKind::at_the_bench;
        default: return true;
    }
}

bool thinkable(Method::Volume way, const Setup& setup) {
    switch (way) {
        case Method::Volume::injected_ignored: return setup.present.has(Field::injected_volume);
        case Method::Volume::counted_from_capacity:
            return has_column(setup) && setup.closed_end == ClosedEnd::zero && setup.present.has(Field::tube_capacity);
        case Method::Volume::end_space_added_to_difference:
            return setup.start == Start::reading && setup.present.has(Field::end_space);
        case Method::Volume::start_ignored: return setup.start != Start::nothing;
        default: return setup.closed_end == ClosedEnd::largest;
    }
}

/// What is sought follows from the amount of gas by its volume alone.
bool is_by_volume(const Setup& setup) {
    return is_by_volume(sought_output(setup.converted, setup.target));
}

/// Whether the sheet for what is sought has the output or comes by it.
bool matters(Output output, const Setup& setup) {
    const bool from_mass = output >= Output::amount_of_metal && output <= Output::gas_constant &&
                           output != Output::compression_factor && output != Output::standard_compression_factor;
    return !from_mass || !is_by_volume(setup);
}

bool thinkable(const Method& method, const Slip& slip, const Assessment& run) {
    const Setup& setup = run.measured.setup;
    if (method.barometer != Method::Barometer::right) return thinkable(method.barometer, run);
    if (method.volume != Method::Volume::right) return thinkable(method.volume, setup);
    if (method.mass == Method::Mass::nominal_ribbon) return setup.mass_from == MassFrom::ribbon;
    if (method.molar_mass == Method::MolarMass::of_manganese) return run.readings.sample == Substance::magnesium;
    if (method.molar_mass == Method::MolarMass::of_hydrogen) return setup.gas == Gas::hydrogen;
    if (method.last_line == Method::LastLine::other_share) {
        return setup.target == Target::purity || setup.target == Target::alloy;
    }
    if (method.last_line == Method::LastLine::whole_mole) return setup.target == Target::equivalent_mass;
    if (method.circular != Method::Circular::right && is_by_volume(setup)) return false;
    if (method.accepted == Method::Accepted::at_standard) return !setup.converted;
    if (method.accepted == Method::Accepted::other_pressure) return setup.converted;
    if (method.temperature == Method::Temperature::celsius_both) return setup.standard_celsius != 0;
    const bool vapour = method.vapour != Method::Vapour::right || method.vapour_use != Method::VapourUse::subtracted;
    if (vapour) return is_taken_off(setup.vapour);
    return slip.part != SlipPart::conversion || setup.converted || method.circular != Method::Circular::right ||
           method.gas_law != Method::GasLaw::right || method.temperature != Method::Temperature::right;
}

}  // namespace

bool SlipSet::has(SlipIndex slip) const {
    for (std::uint8_t i = 0; i < count; ++i) {
        if (slips[i] == slip) return true;
    }
    return false;
}

bool SlipSet::add(SlipIndex slip) {
    if (count == slips.size()) return false;
    for (std::uint8_t i = 0; i < count; ++i) {
        if (slip_table[slips[i]].excludes(slip_table[slip])) return false;
    }
    slips[count++] = slip;
    return true;
}

Method method_of(const SlipSet& slips) {
    Method method;
    for (std::uint8_t i = 0; i < slips.count; ++i) make_slip(method, slips.slips[i]);
    return method;
}

bool can_happen(SlipIndex slip, const Assessment& run) {
    Method method;
    make_slip(method, slip);
    if (!thinkable(method, slip_table[slip], run)) return false;
    const Setup& setup = run.measured.setup;
    if (slip_table[slip].part == SlipPart::conversion) return true;  // some change another slip's outcome only
    const Outcome<double> outcome = outcome_by(run, method);
    for (std::size_t i = 0; i < output_count; ++i) {
        const auto output = static_cast<Output>(i);
        if (run.has(output) && matters(output, setup) && outcome[output] != run.outcome[output]) return true;
    }
    return false;
}

}  // namespace overwater
