#include "core/matter/constants.hpp"
#include "core/quantity/units.hpp"
#include "core/result/sense_checks.hpp"

/// The gas that the metal gives, against the tube that has to hold it: finds grams taken for milligrams.

namespace overwater {

namespace {

/// Less gas than this share of the tube cannot be read well enough (own choice).
constexpr double least_share = 0.05;

/// Room a mole of gas takes in this tube, in m³/mol; by 25 °C and 100 kPa where the room's are not known, or cannot be:
/// a slip of the barometer is not to be laid on the metal.
double room_of_a_mole(const Assessment& all) {
    const double found_kelvin = all.has(Output::absolute_temperature) ? all.outcome[Output::absolute_temperature] : 0;
    const double found_pressure = all.has(Output::dry_gas_pressure) ? all.outcome[Output::dry_gas_pressure] : 0;
    const double kelvin = within(found_kelvin, 273.15, 323.15) ? found_kelvin : 298.15;
    const bool is_air = within(found_pressure, 40 * kilopascal.factor, 110 * kilopascal.factor);
    // The dry pressure at an impossible temperature lacks an impossible vapour.
    return gas_constant.si() * kelvin / (is_air && found_kelvin == kelvin ? found_pressure : 1e5);
}

/// The unit in which the number on the balance would give a volume that the tube holds and shows.
std::optional<UnitId> other_unit(const Remarks& remarks, double metal_gives, double capacity) {
    if (remarks.setup().mass_from != MassFrom::weighed) return std::nullopt;
    const Reading& reading = remarks.reading(Field::mass_of_metal);
    for (const UnitId unit : units_of(Measure::mass)) {
        const double gives = metal_gives * (to_base(reading.number.value, unit) / reading.base);
        if (unit != reading.unit && within(gives, least_share * capacity, capacity)) return unit;
    }
    return std::nullopt;
}

}  // namespace

void check_mass(Remarks& remarks) {
    const Assessment& all = remarks.run();
    const Field field = field_of_mass(remarks.setup());
    if (!has_scale(remarks.setup())) return;
    if (!all.has(Output::amount_of_gas) || !all.has(Output::amount_of_metal)) return;
    if (!remarks.usable(Field::tube_capacity) || !remarks.usable(field)) return;
    // The purity is asked about already.
    if (remarks.said("check.purity_fraction")) return;
    const double capacity = remarks.base(Field::tube_capacity);
    const bool end_known = remarks.setup().closed_end == ClosedEnd::largest && remarks.usable(Field::end_space);
    const double holds = capacity + (end_known ? all.measured[Input::end_space] : 0.0);
    const double room = room_of_a_mole(all);
    const double gives = all.outcome[Output::amount_of_gas] * room;
    const bool too_much = gives > holds;
    if (!too_much && gives >= least_share * capacity) return;
    const double metal_gives = all.outcome[Output::amount_of_metal] * remarks.setup().gas_per_sample * room;
    const UnitId shown = remarks.reading(Field::tube_capacity).unit;
    if (const auto unit = other_unit(remarks, metal_gives, capacity)) {
        const Reading& reading = remarks.reading(field);
        remarks.doubt(field, as_typed("check.mass_unit", reading)
                                 .figures("volume", metal_gives, shown, 2)
                                 .quantity("other", to_base(reading.number.value, *unit), *unit, decimals_of(reading)));
        return;
    }
    remarks.doubt(field, Message{too_much ? "check.too_much_metal" : "check.too_little_metal"}.figures("volume", gives,
                                                                                                       shown, 2));
}

}  // namespace overwater
