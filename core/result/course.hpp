#pragma once

#include <span>
#include <string_view>

#include "core/result/conventions.hpp"

/// Sets of conventions that classes work by, each known by what it is: standard conditions, vapour, units, molar mass,
/// decimal sign. Whoever works otherwise makes a set of their own.

namespace overwater {

struct Course {
    std::string_view key;  ///< in controls; says the same as the conventions
    Conventions conventions;
    double accepted = 0;   ///< L/mol, for the reading `accepted_value` where that is what the class compares with; else 0
};

/// All of them, in the order in which they are offered. What they do not decide has its default, save `answers`, which a
/// course leaves to the teacher.
std::span<const Course> courses();

}  // namespace overwater
