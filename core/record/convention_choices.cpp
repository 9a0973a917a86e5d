#include "core/record/convention_choices.hpp"

#include <type_traits>

#include "core/record/convention_names.hpp"

namespace overwater {

std::vector<ConventionChoice> convention_choices(const Conventions& conventions) {
    std::vector<ConventionChoice> all;
    const auto add = [&all](std::string_view name, auto choice) {
        constexpr auto& names = ChoiceNames<decltype(choice)>::names;
        all.push_back({name, {names.begin(), names.end()}, static_cast<std::size_t>(choice)});
    };
    add("standard", conventions.standard);
    each_choice(conventions, add);
    return all;
}

std::vector<std::string_view> differing(const Conventions& one, const Conventions& other) {
    using Vapour = Conventions::Vapour;
    std::vector<std::string_view> names;
    const auto ours = convention_choices(one);
    const auto theirs = convention_choices(other);
    const bool as_collected = one.conversion == Conventions::Conversion::none && other.conversion == one.conversion;
    const bool by_table = one.vapour == Vapour::table || one.vapour == Vapour::older_table;
    for (std::size_t i = 0; i < ours.size(); ++i) {
        const std::string_view name = ours[i].name;
        const bool idle = (name == "standard" && as_collected) || (name == "vapour_rows" && !by_table);
        if (ours[i].chosen != theirs[i].chosen && !idle) names.push_back(name);
    }
    if (one.pressure_unit != other.pressure_unit) names.push_back("pressure_unit");
    const bool own = one.standard == StandardConditions::own && other.standard == one.standard && !as_collected;
    if (own && one.own_celsius != other.own_celsius) names.push_back("own_celsius");
    if (own && one.own_pressure != other.own_pressure) names.push_back("own_pressure");
    return names;
}

bool choose(Conventions& conventions, std::string_view name, std::string_view value) {
    bool done = false;
    const auto set = [&](std::string_view known, auto& choice) {
        if (name != known) return;
        const auto wanted = choice_by_name<std::remove_reference_t<decltype(choice)>>(value);
        done = wanted.has_value();
        if (wanted) choice = *wanted;
    };
    set("standard", conventions.standard);
    each_choice(conventions, set);
    return done;
}

}  // namespace overwater
