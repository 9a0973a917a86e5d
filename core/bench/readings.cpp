#include "core/bench/readings.hpp"

namespace overwater {

Reading read_entry(Field field, const Entry& entry) {
    Reading reading;
    const FieldInfo& about = info(field);
    reading.number = parse_number(entry.text, about.measure);
    // The end space may be given by the water that fills it, weighed: 2.34 g.
    const bool weighed = info(entry.unit).measure == Measure::mass;
    if (field == Field::end_space && (weighed || reading.number.problem == Problem::wrong_kind_of_unit)) {
        const NumberText as_mass = parse_number(entry.text, Measure::mass);
        if (as_mass.state == NumberText::State::number && (weighed || as_mass.unit != UnitId::none)) {
            reading.number = as_mass;
        }
    }
    reading.unit = reading.number.unit != UnitId::none ? reading.number.unit
                   : entry.unit != UnitId::none        ? entry.unit
                                                       : about.usual_unit;
    reading.last_place = reading.number.last_place;
    if (reading.number.state == NumberText::State::number) {
        reading.base = to_base(reading.number.value, reading.unit);
        reading.there = true;
    }
    return reading;
}

}  // namespace overwater
