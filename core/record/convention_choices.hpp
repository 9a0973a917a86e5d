#pragma once

#include <cstddef>
#include <string_view>
#include <vector>

#include "core/result/conventions.hpp"

/// The conventions that are choices by name, as a list to show and to change.

namespace overwater {

struct ConventionChoice {
    std::string_view name;                 ///< "vapour"
    std::vector<std::string_view> values;  ///< "formula", "table" ...
    std::size_t chosen = 0;
};

/// All of them, the standard conditions first.
std::vector<ConventionChoice> convention_choices(const Conventions& conventions);

/// Names of what two sets of conventions do otherwise: choices, `pressure_unit`, `own_celsius`, `own_pressure`. What counts for
/// nothing under both, such as standard conditions where nothing is converted, is no difference.
std::vector<std::string_view> differing(const Conventions& one, const Conventions& other);

/// Chooses `value` for the convention `name`; false where there is no such name or value.
bool choose(Conventions& conventions, std::string_view name, std::string_view value);

}  // namespace overwater
