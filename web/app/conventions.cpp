// What a choice of the conventions page changes.

#include <algorithm>
#include <cmath>

#include "core/matter/constants.hpp"
#include "core/quantity/number_text.hpp"
#include "core/record/convention_choices.hpp"
#include "web/app/app.hpp"
#include "web/browser/platform.hpp"

namespace overwater {

void App::choose_convention(std::string_view name, const std::string& value) {
    // Radio buttons have their value behind the convention's name.
    name = name.substr(0, name.find('.'));
    const std::string key = "conventions." + std::string(name);
    if (name == "theme") {
        theme_choice_ = value;
        shelf_.set_setting("theme", value);
        platform::wake(2);
        return;
    }
    if (name == "course") return choose_course(value);
    if (refused()) return;
    before_change(key);
    if (name == "pressure_unit") {
        record_.conventions.pressure_unit = unit_by_key(value).value_or(UnitId::none);
    } else {
        choose(record_.conventions, name, value);
        if (name == "decimal_sign") keep_decimal_sign();
    }
    after_change(key);
}

void App::type_convention(std::string_view name, const std::string& text) {
    const std::string key = "conventions." + std::string(name);
    if (name == "own_name") return rename_course(text);
    if (name == "course_name") {
        course_name_ = text;
        platform::wake(2);
        return;
    }
    if (refused()) return;
    const bool celsius = name == "own_celsius";
    (celsius ? own_celsius_text_ : own_pressure_text_) = text;
    const NumberText number = parse_number(text, celsius ? Measure::temperature : Measure::pressure);
    const bool read = number.state == NumberText::State::number;
    const UnitId usual = celsius ? UnitId::celsius : UnitId::kilopascal;
    const double base = to_base(number.value, number.unit == UnitId::none ? usual : number.unit);
    // A state below absolute zero or without pressure is none; what is typed stays visible and the last good one holds.
    if (read && (celsius ? base > -celsius_zero_in_kelvin : base > 0) && std::isfinite(base)) {
        before_change(key);
        (celsius ? record_.conventions.own_celsius : record_.conventions.own_pressure) = base;
        after_change(key);
    }
    platform::wake(2);
}

std::string App::typed_convention(std::string_view name) const {
    const bool celsius = name == "own_celsius";
    // A field that was emptied stays empty, as it does in the document.
    const std::optional<std::string>& text = celsius ? own_celsius_text_ : own_pressure_text_;
    if (text) return *text;
    const double value = celsius ? record_.conventions.own_celsius
                                 : from_base(record_.conventions.own_pressure, UnitId::kilopascal);
    return format_significant(value, 6, language_.decimal_sign());
}

}  // namespace overwater
