#include "core/record/conventions_json.hpp"

#include <cmath>

#include "core/matter/constants.hpp"
#include "core/record/convention_names.hpp"

namespace overwater {

namespace {

constexpr std::string_view unit_as_typed = "as_typed";

/// The text of a member that is a name; null if there is none or it is of another type.
const std::string* name_in(JsonMembers& members, std::string_view name) {
    const Json* value = members.peek(name);
    if (!value) return nullptr;
    if (!value->is_string()) {
        members.complaints().wrong_type(members.place_of(name), "string");
        return nullptr;
    }
    return value->get_ptr<const std::string*>();
}

template <class Choice>
void read_choice(JsonMembers& members, std::string_view name, Choice& into) {
    const std::string* text = name_in(members, name);
    if (!text) return;
    if (const auto choice = choice_by_name<Choice>(*text)) {
        into = *choice;
        members.understood(name);
    }
}

void read_pressure_unit(JsonMembers& members, UnitId& into) {
    const std::string* text = name_in(members, "pressure_unit");
    if (!text) return;
    const auto unit = unit_by_key(*text);
    if (*text != unit_as_typed && !(unit && info(*unit).measure == Measure::pressure)) return;
    into = unit.value_or(UnitId::none);
    members.understood("pressure_unit");
}

/// A number above `limit`; what is not stays as it was and is complained about.
void read_above(JsonMembers& members, std::string_view name, double limit, double& into) {
    double value = into;
    members.number(name, value);
    if (value > limit) {
        into = value;
    } else {
        members.complaints().out_of_range(members.place_of(name));
    }
}

double finite_or(double value, double otherwise) { return std::isfinite(value) ? value : otherwise; }

Json known_conventions(const Conventions& conventions) {
    const Conventions fresh;
    Json json = Json::object();
    json["standard"] = name_of_choice(conventions.standard);
    json["own_celsius"] = finite_or(conventions.own_celsius, fresh.own_celsius);
    json["own_pascal"] = finite_or(conventions.own_pressure, fresh.own_pressure);
    each_choice(conventions, [&](const char* name, auto choice) { json[name] = name_of_choice(choice); });
    // It came later than the others: a record without it is written again as it was.
    if (conventions.volume_unit == fresh.volume_unit) json.erase("volume_unit");
    const UnitId unit = conventions.pressure_unit;
    json["pressure_unit"] = unit == UnitId::none ? unit_as_typed : info(unit).key;
    return json;
}

}  // namespace

void read_conventions(const Json& object, const JsonPlace& place, Complaints& complaints, Conventions& into,
                      std::string& kept) {
    JsonMembers members(object, place, complaints);
    read_choice(members, "standard", into.standard);
    read_above(members, "own_celsius", -celsius_zero_in_kelvin, into.own_celsius);
    read_above(members, "own_pascal", 0.0, into.own_pressure);
    each_choice(into, [&](const char* name, auto& choice) { read_choice(members, name, choice); });
    read_pressure_unit(members, into.pressure_unit);
    kept = members.kept();
}

Json conventions_json(const Conventions& conventions, std::string_view kept) {
    const Json fresh = known_conventions(Conventions{});
    Json json = known_conventions(conventions);
    const Json others = kept_members(kept);
    for (const auto& [name, value] : others.items()) {
        const auto known = fresh.find(name);
        if (known == fresh.end() || json[name] == *known) json[name] = value;
    }
    return json;
}

}  // namespace overwater
