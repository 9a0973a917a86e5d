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
