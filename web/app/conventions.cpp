// What a choice of the conventions page changes, and sets of conventions kept by name.

#include <algorithm>
#include <cmath>

#include "core/matter/constants.hpp"
#include "core/quantity/number_text.hpp"
#include "core/quantity/short_sort.hpp"
#include "core/record/convention_choices.hpp"
#include "core/record/stored.hpp"
#include "web/app/app.hpp"
#include "web/browser/platform.hpp"

namespace overwater {

namespace {

constexpr std::string_view set_prefix = "overwater.conventions.";

/// A record that holds nothing but conventions: the form in which a set is kept.
Record record_of_set(const Conventions& conventions, const std::string& name) {
    Record record;
    record.name = name;
    record.conventions = conventions;
    return record;
}

}  // namespace

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
    if (name == "set_name") {
        set_name_ = text;
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

void App::keep_set() {
    if (set_name_.empty()) return;
    const Record set = record_of_set(record_.conventions, set_name_);
    platform::store_put(std::string(set_prefix) + Shelf::new_id(), stored_from(set, 1, platform::iso_time()));
    set_name_.clear();
    ++interaction_.write;
    read_sets();
}

void App::read_sets() {
    sets_.clear();
    for (const std::string& key : platform::store_list(set_prefix)) {
        const auto text = platform::store_get(key);
        const auto stored = text ? stored_to(*text) : std::nullopt;
        if (stored) sets_.emplace_back(key.substr(set_prefix.size()), stored->record.name);
    }
    short_sort(sets_.begin(), sets_.end(), [](const auto& a, const auto& b) { return a.second < b.second; });
    platform::wake(2);
}

void App::use_set(const std::string& id) {
    const auto text = platform::store_get(std::string(set_prefix) + id);
    const auto stored = text ? stored_to(*text) : std::nullopt;
    if (!stored || refused()) return;
    before_change("conventions.set");
    record_.conventions = stored->record.conventions;
    keep_decimal_sign();
    own_celsius_text_.reset();
    own_pressure_text_.reset();
    ++interaction_.write;
    after_change("conventions.set");
}

void App::forget_set(const std::string& id) {
    platform::store_remove(std::string(set_prefix) + id);
    read_sets();
}

}  // namespace overwater
