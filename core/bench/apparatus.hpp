#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <string_view>

#include "core/quantity/choice_names.hpp"

namespace overwater {

/// What the gas is collected in. Each asks for its own readings, and for nothing that it does not have.
enum class Apparatus : std::uint8_t {
    tube_over_water,  ///< the metal inside the upside-down tube; also levelled in a deep cylinder
    generator_flask,  ///< a flask with a delivery tube to the upside-down tube or cylinder in a trough
    gas_syringe,      ///< no column; the gas moist from the acid, or dried
    displaced_water,  ///< the water that the gas pushes out is weighed; levels equal when the pinch is closed
    pressure_sensor   ///< a closed flask of known volume: the rise of the pressure is the gas's own
};

inline constexpr std::size_t apparatus_count = 5;
/// Names in records and in the keys of messages.
inline constexpr std::array<std::string_view, apparatus_count> apparatus_names{
    "tube_over_water", "generator_flask", "gas_syringe", "displaced_water", "pressure_sensor"};

constexpr std::string_view name_of(Apparatus apparatus) {
    return apparatus_names[static_cast<std::size_t>(apparatus)];
}

// g++ 12 takes an enumerator for a shadow of the constant of matter/constants.hpp, though it has a scope of its own.
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wshadow"
/// What is sought: which line is the last.
enum class Target : std::uint8_t {
    molar_volume,
    gas_constant,
    molar_mass,       ///< of what was weighed
    equivalent_mass,  ///< of the metal: the mass that sets half a mole of hydrogen free
    purity,           ///< by mass: of a metal, a carbonate, a peroxide
    alloy,            ///< share by mass of the metal in an alloy with a second one
    gas_molar_mass    ///< of a gas weighed by difference, without a reaction
};
#pragma GCC diagnostic pop

inline constexpr std::size_t target_count = 7;
inline constexpr std::array<std::string_view, target_count> target_names{
    "molar_volume", "gas_constant", "molar_mass", "equivalent_mass", "purity", "alloy", "gas_molar_mass"};

constexpr std::string_view name_of(Target target) { return target_names[static_cast<std::size_t>(target)]; }

/// The choice with this name; the first one for a name that is not known.
constexpr Apparatus apparatus_by_key(std::string_view key) {
    return choice_named<Apparatus>(apparatus_names, key).value_or(Apparatus{});
}
constexpr Target target_by_key(std::string_view key) {
    return choice_named<Target>(target_names, key).value_or(Target{});
}

}  // namespace overwater
