#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>

#include "core/quantity/choice_names.hpp"
#include "core/result/conventions.hpp"

/// The names of the conventions' choices in records, in the order of the enumerations of core/result/conventions.hpp.

namespace overwater {

template <class Choice>
struct ChoiceNames;

template <>
struct ChoiceNames<StandardConditions> {
    static constexpr auto names = standard_conditions_names;
};
template <>
struct ChoiceNames<Conventions::MolarMassDigits> {
    static constexpr std::array<std::string_view, 4> names{"abridged", "two_decimals", "one_decimal", "whole"};
};
template <>
struct ChoiceNames<Conventions::Vapour> {
    static constexpr std::array<std::string_view, 5> names{"formula", "table", "older_table", "own_value",
                                                           "not_subtracted"};
};
template <>
struct ChoiceNames<Conventions::VapourRows> {
    static constexpr std::array<std::string_view, 2> names{"interpolated", "nearest"};
};
template <>
struct ChoiceNames<Conventions::Round> {
    static constexpr std::array<std::string_view, 2> names{"at_the_end", "at_each_step"};
};
template <>
struct ChoiceNames<Rounding> {
    static constexpr std::array<std::string_view, 2> names{"half_up", "half_to_even"};
};
template <>
struct ChoiceNames<DecimalSign> {
    static constexpr std::array<std::string_view, 2> names{"point", "comma"};
};
template <>
struct ChoiceNames<Conventions::Conversion> {
    static constexpr std::array<std::string_view, 2> names{"standard_conditions", "none"};
};
template <>
struct ChoiceNames<Conventions::Accepted> {
    static constexpr std::array<std::string_view, 3> names{"ideal", "real", "typed"};
};
template <>
struct ChoiceNames<Conventions::PercentError> {
    static constexpr std::array<std::string_view, 2> names{"with_sign", "magnitude"};
};
template <>
struct ChoiceNames<Conventions::Answers> {
    static constexpr std::array<std::string_view, 3> names{"live", "after_attempt", "hidden"};
};
template <>
struct ChoiceNames<Conventions::Headline> {
    static constexpr std::array<std::string_view, 2> names{"figures", "uncertainty"};
};
template <>
struct ChoiceNames<Conventions::VolumeUnit> {
    static constexpr std::array<std::string_view, 2> names{"mL", "cm3"};
};

/// The name of `choice`; that of the first choice for a value that is none.
template <class Choice>
constexpr std::string_view name_of_choice(Choice choice) {
    constexpr auto& names = ChoiceNames<Choice>::names;
    const auto index = static_cast<std::size_t>(choice);
    return index < names.size() ? names[index] : names[0];
}

template <class Choice>
constexpr std::optional<Choice> choice_by_name(std::string_view name) {
    return choice_named<Choice>(ChoiceNames<Choice>::names, name);
}

/// Calls `visit(name, choice)` for every convention that is a choice by name; the one list for reading, writing and choosing.
template <class C, class Visit>
void each_choice(C& conventions, Visit visit) {
    visit("molar_mass_digits", conventions.molar_mass_digits);
    visit("vapour", conventions.vapour);
    visit("vapour_rows", conventions.vapour_rows);
    visit("round", conventions.round);
    visit("rounding", conventions.rounding);
    visit("decimal_sign", conventions.decimal_sign);
    visit("conversion", conventions.conversion);
    visit("accepted", conventions.accepted);
    visit("percent_error", conventions.percent_error);
    visit("answers", conventions.answers);
    visit("headline", conventions.headline);
    visit("volume_unit", conventions.volume_unit);
}

}  // namespace overwater
