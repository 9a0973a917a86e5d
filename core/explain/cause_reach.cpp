#include <algorithm>
#include <cmath>

#include "core/bench/meniscus.hpp"
#include "core/explain/cause_model.hpp"
#include "core/matter/gas.hpp"
#include "core/matter/water.hpp"
#include "core/quantity/units.hpp"

/// Which causes a run can have, and how far they go in it.

namespace overwater {

namespace {

constexpr double no_limit = 100;  ///< times the run's own: enough for any difference

/// Pressures that a weather report gives on most days, and on any (from memory).
constexpr double usual_report_low = 1000 * hectopascal.factor;
constexpr double usual_report_high = 1030 * hectopascal.factor;
constexpr double report_low = 970 * hectopascal.factor;
constexpr double report_high = 1050 * hectopascal.factor;
/// Height that goes unnoticed where the pressure does not look like a report's.
constexpr double low_place = 100;
/// No bench lies higher.
constexpr double highest_bench = 5500;
/// No tube is longer, m.
constexpr double longest_tube = 1;
/// Nobody teaches in a colder room, °C (from memory).
constexpr double coldest_room = 12;
/// An end space that nobody measured: 1 to 4 mL beyond the last mark are usual (common practice, no source).
constexpr double end_space_usual = 4 * millilitre.factor;
constexpr double end_space_largest = 6 * millilitre.factor;
/// Less acid than twice what is needed: the last metal may not dissolve.
constexpr double enough_acid = 2;

class OneRun {
public:
    explicit OneRun(const Assessment& assessment)
        : all_(assessment), in_(assessment.measured), setup_(assessment.measured.setup) {}

    bool has_result() const { return result_of(bench_of(all_)).has_value(); }
    /// Read on a scale, and with liquid that may stand at two heights: causes that other vessels do not have.
    bool has_scale() const { return overwater::has_scale(setup_); }
    bool has_column() const { return overwater::has_column(setup_); }
    bool in_room() const { return setup_.apparatus != Apparatus::pressure_sensor; }
    /// How much more of the gas water takes up than of hydrogen.
    double solubility() const {
        const double kelvin = number(Input::temperature) + celsius_zero_in_kelvin;
        return volumes_dissolved(setup_.gas, kelvin) / volumes_dissolved(Gas::hydrogen, kelvin);
    }
    bool inverted() const { return has_scale() && setup_.closed_end == ClosedEnd::largest; }
    bool start_read() const { return setup_.start == Start::reading; }
    bool converted() const { return setup_.converted; }
    /// Vapour and pressure of the gas are known, so that its state can be another one.
    bool state_known() const {
        return all_.has(reacts() ? Output::molar_volume_standard : Output::volume_at_standard);
    }
    /// Something was weighed that reacts; else it is the gas itself.
    bool reacts() const { return setup_.target != Target::gas_molar_mass; }
    bool level_taken() const { return setup_.liquid_stands == LiquidStands::level; }
    bool read_at_bench() const { return setup_.pressure_kind == PressureKind::at_the_bench; }
    bool looked_up() const { return setup_.vapour == VapourFrom::looked_up; }
    bool vapour_subtracted() const { return is_taken_off(setup_.vapour); }
    bool by_ribbon() const { return setup_.mass_from == MassFrom::ribbon; }
    /// More metal than acid: the metal's mass does not count.
    bool acid_sets_gas() const { return all_.acid_gives_out(); }
    /// Only a metal has an oxide on it; what a reaction of one's own weighs may be one.
    bool may_have_oxide() const {
        const auto sample = all_.readings.sample;
        return !sample || is_metal(*sample) || setup_.own_reaction;
    }
    bool acid_may_be_short() const {
        if (!reacts() || !all_.readings.sample || !(setup_.acid_per_sample > 0)) return false;
        if (reaction(*all_.readings.sample, all_.readings.acid.value_or(Acid::hydrochloric)).with_water) return false;
        return !all_.has(Output::acid_excess) || all_.acid_is_below(enough_acid);
    }
    bool mercury_column() const {
        const UnitId unit = all_.readings[Field::barometer].unit;
        return unit == UnitId::torr || unit == UnitId::millimetre_of_mercury || unit == UnitId::inch_of_mercury;
    }
    bool ring_taken_off() const { return setup_.ring_known; }
    bool end_space_measured() const {
        return setup_.present.has(Field::end_space) && in_[Input::end_space] > 0;
    }

    double gas() const { return all_.outcome[Output::gas_volume]; }
    double number(Input input) const { return in_[input]; }
    double weighed() const {
        return setup_.mass_from == MassFrom::weighed ? in_[Input::mass_of_metal] : all_.outcome[Output::mass];
    }
    /// Scale on the closed side of the meniscus, and on the open side; the latter may be unknown.
    double scale_above() const {
        return inverted() ? in_[Input::tube_capacity] - in_[Input::scale_reading] : in_[Input::scale_reading];
    }
    double scale_below() const {
        if (inverted()) return in_[Input::scale_reading];
        const bool known = setup_.present.has(Field::tube_capacity);
        return known ? in_[Input::tube_capacity] - in_[Input::scale_reading] : no_limit * gas();
    }
    /// What the convention's rounding adds to the molar mass.
    double molar_mass_added() const {
        const auto metal = all_.readings.sample;
        return metal && !setup_.own_reaction ? in_[Input::molar_mass] - molar_mass_of(*metal).si() : 0.0;
    }
    bool takes_molar_mass() const { return !falls_with_volume(explained_output(all_)); }
    double height() const { return in_[Input::height_above_sea_level]; }
    bool height_typed() const { return setup_.present.has(Field::height_above_sea_level); }

private:
    const Assessment& all_;
    const Measured<double>& in_;
    const Setup& setup_;
};

using Maybe = std::optional<Reach>;

/// A volume of gas counted too much or too little.
Reach volume(Cause cause, const OneRun& run) {
    const CauseInfo& usual = info(cause);
    return {usual.raises, usual.lowers, usual.usual, usual.largest, run.gas(), no_limit * run.gas()};
}

Reach with_limits(Cause cause, double raising, double lowering) {
    const CauseInfo& usual = info(cause);
    return {usual.raises, usual.lowers, usual.usual, usual.largest, raising, lowering};
}

Maybe only_if(bool possible, const Reach& reach) { return possible ? Maybe(reach) : std::nullopt; }

Maybe meniscus(const OneRun& run) {
    if (!run.inverted() || run.start_read() || run.ring_taken_off()) return std::nullopt;
    Reach reach = volume(Cause::meniscus, run);
    // Water wets the glass of every tube, so that the whole ring is usual.
    reach.usual = reach.largest = most_of_meniscus(run.number(Input::tube_capacity));
    return reach;
}

Maybe end_space(const OneRun& run) {
    if (!run.inverted() || run.start_read()) return std::nullopt;
    Reach reach = volume(Cause::end_space_off, run);
    reach.most_raising = std::min(reach.most_raising, run.number(Input::end_space));
    if (!run.end_space_measured()) {
        reach.raises = false;
        reach.usual = end_space_usual;
        reach.largest = end_space_largest;
    }
    return reach;
}

Maybe scale_misread(const OneRun& run) {
    if (!run.has_scale()) return std::nullopt;
    Reach reach = volume(Cause::scale_misread, run);
    reach.most_raising = std::min(reach.most_raising, run.scale_above());
    reach.most_lowering = run.scale_below();
    return reach;
}

/// The liquid that was hot stood in a room: the colder that would have been, the less this is the reason.
Maybe hot_liquid(const OneRun& run) {
    const double celsius = run.number(Input::temperature);
    if (!run.converted() || celsius <= coldest_room) return std::nullopt;
    Reach reach = with_limits(Cause::hot_liquid, 0, celsius);
    reach.largest = std::min(reach.largest, celsius - coldest_room);
    reach.usual = std::min(reach.usual, reach.largest);
    return reach;
}

Maybe sea_level(const OneRun& run) {
    const double pressure = run.number(Input::barometer);
    if (!run.converted() || !run.in_room() || !run.read_at_bench() || pressure < report_low || pressure > report_high) {
        return std::nullopt;
    }
    Reach reach = with_limits(Cause::sea_level_pressure, highest_bench, 0);
    if (pressure < usual_report_low || pressure > usual_report_high) reach.usual = low_place;
    if (!run.height_typed()) return reach;
    if (run.height() <= 0) return std::nullopt;
    reach.largest = std::min(run.height(), highest_bench);
    reach.usual = std::min(reach.usual, reach.largest);
    return reach;
}

/// How far it is rounded is known: no other size is possible.
Maybe molar_mass(const OneRun& run) {
    const double added = run.molar_mass_added();
    if (!run.takes_molar_mass() || added == 0 || run.acid_sets_gas()) return std::nullopt;
    const double size = std::fabs(added);
    return Reach{added > 0, added < 0, size, size, size, size};
}

/// What is usual for hydrogen, in proportion; the most soluble gas may go away altogether.
Maybe dissolved(const OneRun& run) {
    Reach reach = with_limits(Cause::dissolved_gas, 0, 1);
    const double times = run.solubility();
    if (times == 0) return std::nullopt;
    reach.largest = std::min(0.95, reach.largest * times);
    reach.usual = std::min(reach.largest, reach.usual * times);
    return reach;
}

Maybe reach_in(const OneRun& run, Cause cause) {
    const double celsius = run.number(Input::temperature);
    const double hottest = water_vapour_pressure_range.highest - celsius;
    const double pressure = run.number(Input::barometer);
    switch (cause) {
        case Cause::air_bubble: return only_if(run.has_column() && !run.start_read(), volume(cause, run));
        case Cause::gas_lost: return volume(cause, run);
        case Cause::drops_on_wall: return only_if(run.has_column(), volume(cause, run));
        case Cause::tube_off: return only_if(run.has_scale(), volume(cause, run));
        case Cause::meniscus: return meniscus(run);
        case Cause::end_space_off: return end_space(run);
        case Cause::scale_misread: return scale_misread(run);
        case Cause::metal_left: return only_if(run.reacts() && !run.acid_sets_gas(), with_limits(cause, 0, 1));
        case Cause::oxide_coat:
            return only_if(run.reacts() && !run.acid_sets_gas() && run.may_have_oxide(), with_limits(cause, 0, 1));
        case Cause::dissolved_gas: return dissolved(run);
        case Cause::acid_short: return only_if(run.acid_may_be_short(), with_limits(cause, 0, 1));
        case Cause::wet_metal:
            return only_if(run.reacts() && !run.by_ribbon() && !run.acid_sets_gas(), with_limits(cause, 0, run.weighed()));
        case Cause::balance_off:
            return only_if(!run.by_ribbon() && !run.acid_sets_gas(),
                           with_limits(cause, no_limit * run.weighed(), run.weighed()));
        case Cause::ribbon_mass:
            return only_if(run.by_ribbon() && !run.acid_sets_gas(), with_limits(cause, no_limit, 1));
        case Cause::gas_warm: return only_if(run.state_known(), with_limits(cause, hottest, 0));
        case Cause::hot_liquid: return hot_liquid(run);
        case Cause::thermometer_off: return only_if(run.converted(), with_limits(cause, hottest, celsius));
        case Cause::levels_not_equal:
            return only_if(run.has_column() && run.level_taken() && run.state_known(), with_limits(cause, longest_tube, longest_tube));
        case Cause::level_misread:
            return only_if(run.has_column() && !run.level_taken() && run.converted(), with_limits(cause, longest_tube, longest_tube));
        case Cause::barometer_off: return only_if(run.converted() && run.in_room(), with_limits(cause, pressure, pressure));
        case Cause::mercury_not_corrected:
            return only_if(run.converted() && run.in_room() && run.read_at_bench() && run.mercury_column(),
                           with_limits(cause, pressure, 0));
        case Cause::sea_level_pressure: return sea_level(run);
        case Cause::vapour_wrong_row:
            return only_if(run.converted() && run.looked_up(), with_limits(cause, celsius, hottest));
        case Cause::acid_lowers_vapour:
            return only_if(run.converted() && run.vapour_subtracted(), with_limits(cause, 0, 1));
        case Cause::molar_mass_rounded: return molar_mass(run);
        case Cause::count: break;
    }
    return std::nullopt;
}

}  // namespace

std::optional<Reach> reach_of(const Assessment& assessment, Cause cause) {
    const OneRun run(assessment);
    return run.has_result() ? reach_in(run, cause) : std::nullopt;
}

bool applies(Cause cause, const Assessment& assessment) { return reach_of(assessment, cause).has_value(); }

}  // namespace overwater
