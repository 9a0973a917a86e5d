#include "core/lesson/stated.hpp"

#include <cmath>

#include "core/quantity/temperature.hpp"

namespace overwater {

StatedAnswer read_answer(Output output, std::string_view text, UnitId chosen) {
    const UnitId usual = unit_of(output);
    const Measure measure = info(usual).measure;
    StatedAnswer answer;
    answer.number = parse_number(text, measure);
    answer.unit = answer.number.unit;
    if (answer.unit == UnitId::none && info(chosen).measure == measure) answer.unit = chosen;
    answer.unit_given = answer.unit != UnitId::none || measure == Measure::number || measure == Measure::fraction;
    if (answer.unit == UnitId::none) answer.unit = usual;
    if (answer.number.state != NumberText::State::number) return answer;
    StatedValue value;
    value.output = output;
    // The absolute temperature is a number of kelvin: the table of units keeps temperatures in degrees Celsius.
    const bool kelvin = output == Output::absolute_temperature;
    value.si = to_base(answer.number.value, answer.unit) + (kelvin ? celsius_zero_in_kelvin : 0.0);
    value.half_unit = 0.5 * difference_to_base(std::pow(10.0, answer.number.last_place), answer.unit);
    answer.value = value;
    return answer;
}

}  // namespace overwater
