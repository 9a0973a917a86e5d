#pragma once

#include <array>
#include <string>

#include "core/explain/gap.hpp"
#include "core/lesson/practice.hpp"
#include "core/quantity/message.hpp"

/// Words that the practice pages and the teacher's key share.

namespace overwater {

class App;
class Language;

/// What can go wrong unseen in a practice run (core/lesson/practice_draw.cpp).
inline constexpr std::array practice_causes{
    Cause::air_bubble, Cause::gas_lost,   Cause::metal_left,       Cause::oxide_coat,    Cause::wet_metal,
    Cause::balance_off, Cause::gas_warm,  Cause::hot_liquid,       Cause::levels_not_equal, Cause::end_space_off,
    Cause::sea_level_pressure};

/// Difficulty, conventions and release, in a sentence or two.
std::string practice_kind_words(const Language& language, const PracticeSettings& settings);
/// What went wrong, how much of it, where, and which way it moves the result.
std::string mishap_words(const Language& language, const Mishap& mishap);
/// A reading as typed, with its unit.
std::string typed_words(const App& app, Field field);

}  // namespace overwater
