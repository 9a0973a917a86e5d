#include "core/bench/readings.hpp"

namespace overwater {

Reading read_entry(Field field, const Entry& entry) {
    Reading reading;
    const FieldInfo& about = info(field);
    reading.number = parse_number(entry.text, about.measure);
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
