#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <string_view>

#include "core/bench/apparatus.hpp"
#include "core/quantity/unit_table.hpp"

namespace overwater {

/// What is computed from the readings, each after those it needs (method.md, sections 1 to 4).
// g++ 12 takes an enumerator for a shadow of the constant of matter/constants.hpp, though it has a scope of its own.
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wshadow"
enum class Output : std::uint8_t {
    absolute_temperature,
    water_vapour_pressure,
    water_density,
    pressure_at_bench,  ///< from a weather report; else the barometer's reading is it
    column_pressure,
    dry_gas_pressure,
    start_dry_pressure,  ///< of the gas there at the start
    gas_at_end,          ///< room the gas takes in the end, gas there at the start included
    gas_at_start,
    gas_volume,
    mass,  ///< of the metal, by difference or from the ribbon
    amount_of_metal,
    amount_of_acid,
    acid_needed,
    acid_volume_needed,
    acid_excess,
    amount_of_gas,
    molar_volume_bench,
    dry_gas_at_barometer,
    compression_factor,           ///< Z of the gas at the bench, for a real accepted value
    standard_compression_factor,  ///< Z at the standard conditions
    molar_volume_standard,
    gas_constant,
    accepted_value,
    // Other last lines of the same readings, with the accepted molar volume taken as known:
    volume_at_standard,  ///< of the gas of this run
    amount_by_volume,    ///< of the gas, by its volume alone
    molar_mass_found,    ///< of the metal
    purity_found,        ///< of the metal as weighed
    equivalent_mass,     ///< of the metal: what sets half a mole of hydrogen free
    alloy_share,         ///< by mass, of the metal in an alloy with a second one
    gas_molar_mass,      ///< of a gas that was weighed itself
    percent_error,       ///< of the last line that is sought, from what is known of it
    count
};
#pragma GCC diagnostic pop

inline constexpr std::size_t output_count = static_cast<std::size_t>(Output::count);

inline constexpr std::array<std::string_view, output_count> output_names{
    "absolute_temperature",        "water_vapour_pressure", "water_density",      "pressure_at_bench",
    "column_pressure",             "dry_gas_pressure",      "start_dry_pressure", "gas_at_end",
    "gas_at_start",                "gas_volume",            "mass",               "amount_of_metal",
    "amount_of_acid",              "acid_needed",           "acid_volume_needed", "acid_excess",
    "amount_of_gas",               "molar_volume_bench",    "dry_gas_at_barometer", "compression_factor",
    "standard_compression_factor", "molar_volume_standard", "gas_constant",       "accepted_value",
    "volume_at_standard",          "amount_by_volume",      "molar_mass_found",   "purity_found",
    "equivalent_mass",             "alloy_share",           "gas_molar_mass",     "percent_error"};

constexpr std::string_view name_of(Output output) { return output_names[static_cast<std::size_t>(output)]; }

/// The unit each output is shown in where no convention says otherwise.
inline constexpr std::array<UnitId, output_count> output_units{
    UnitId::kelvin,         UnitId::kilopascal,     UnitId::kilogram_per_cubic_metre, UnitId::kilopascal,
    UnitId::kilopascal,     UnitId::kilopascal,     UnitId::kilopascal,               UnitId::millilitre,
    UnitId::millilitre,     UnitId::millilitre,     UnitId::gram,                     UnitId::millimole,
    UnitId::millimole,      UnitId::millimole,      UnitId::millilitre,               UnitId::none,
    UnitId::millimole,      UnitId::litre_per_mole, UnitId::litre_per_mole,           UnitId::none,
    UnitId::none,           UnitId::litre_per_mole, UnitId::joule_per_mole_kelvin,    UnitId::litre_per_mole,
    UnitId::millilitre,     UnitId::millimole,      UnitId::gram_per_mole,            UnitId::percent,
    UnitId::gram_per_mole,  UnitId::percent,        UnitId::gram_per_mole,            UnitId::percent};

constexpr UnitId unit_of(Output output) { return output_units[static_cast<std::size_t>(output)]; }

/// The last line: what the run is for. As collected nothing but the gas constant can be found beside the molar volume.
constexpr Output sought_output(bool converted, Target target) {
    if (target == Target::gas_constant) return Output::gas_constant;
    if (!converted) return Output::molar_volume_bench;
    switch (target) {
        case Target::molar_mass: return Output::molar_mass_found;
        case Target::equivalent_mass: return Output::equivalent_mass;
        case Target::purity: return Output::purity_found;
        case Target::alloy: return Output::alloy_share;
        case Target::gas_molar_mass: return Output::gas_molar_mass;
        case Target::molar_volume:
        case Target::gas_constant: break;
    }
    return Output::molar_volume_standard;
}

constexpr bool is_molar_volume(Output output) {
    return output == Output::molar_volume_standard || output == Output::molar_volume_bench;
}

/// A last line that follows from the amount of gas by its volume: all but the molar volumes and the gas constant.
constexpr bool is_by_volume(Output output) {
    return output > Output::amount_by_volume && output <= Output::gas_molar_mass;
}

/// More gas makes it smaller: it is divided by the amount of gas, as the molar mass found. What raises a molar volume
/// lowers it.
constexpr bool falls_with_volume(Output output) {
    return output == Output::molar_mass_found || output == Output::equivalent_mass || output == Output::gas_molar_mass;
}

/// A set of outputs, one bit each.
class OutputSet {
public:
    constexpr OutputSet() = default;
    static constexpr OutputSet all() {
        OutputSet set;
        set.bits_ = (std::uint64_t{1} << output_count) - 1;
        return set;
    }
    template <class... Outputs>
    static constexpr OutputSet of(Outputs... outputs) {
        OutputSet set;
        (set.add(outputs), ...);
        return set;
    }
    constexpr void add(Output o) { bits_ |= bit(o); }
    constexpr void remove(Output o) { bits_ &= ~bit(o); }
    constexpr bool has(Output o) const { return (bits_ & bit(o)) != 0; }
    /// What is in this set and not in the other.
    friend constexpr OutputSet operator-(OutputSet a, OutputSet b) {
        a.bits_ &= ~b.bits_;
        return a;
    }
    /// Every output from `first` to `last`.
    static constexpr OutputSet span(Output first, Output last) {
        OutputSet set;
        set.bits_ = (bit(last) << 1) - bit(first);
        return set;
    }
    constexpr bool meets(OutputSet other) const { return (bits_ & other.bits_) != 0; }
    constexpr std::uint64_t bits() const { return bits_; }
    friend constexpr bool operator==(OutputSet a, OutputSet b) { return a.bits_ == b.bits_; }

private:
    static constexpr std::uint64_t bit(Output o) { return std::uint64_t{1} << static_cast<unsigned>(o); }
    std::uint64_t bits_ = 0;
};

/// The values of one evaluation, in coherent SI units (percent error and purity as fractions). Only
/// what is in `ready` has a meaning.
template <class Real>
struct Outcome {
    OutputSet ready;
    std::array<Real, output_count> si{};
    const Real& operator[](Output o) const { return si[static_cast<std::size_t>(o)]; }
    void put(Output o, Real value) {
        ready.add(o);
        si[static_cast<std::size_t>(o)] = value;
    }
};

}  // namespace overwater
