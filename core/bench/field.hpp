#pragma once

#include <array>
#include <cstdint>
#include <string_view>

/// What a person reads or chooses at the bench, by name (method.md, section 9). The order is the order of the bench.

namespace overwater {

enum class Field : std::uint8_t {
    // typed readings
    mass_of_metal,
    mass_before,
    mass_after,
    ribbon_length,
    mass_per_metre,
    purity,
    molar_mass,
    gas_per_mole,
    acid_per_mole,
    acid_volume,
    acid_concentration,
    tube_capacity,
    end_space,
    start_reading,
    starting_bubble,
    start_level_difference,
    scale_reading,
    level_difference,
    length_of_scale,
    tube_bore,
    tube_factor,
    injected_volume,
    flask_volume,
    displaced_mass,
    temperature,
    barometer,
    pressure_after,
    barometer_temperature,
    latitude,
    height_above_sea_level,
    outdoor_temperature,
    own_vapour_pressure,
    water_activity,
    accepted_value,
    // choices
    metal,
    acid,
    mass_from,
    number_at_closed_end,
    liquid_stands,
    pressure_kind,
    apparatus,
    gas,
    gas_is,
    target,
    second_metal,
    count
};

inline constexpr std::size_t field_count = static_cast<std::size_t>(Field::count);
inline constexpr Field first_choice = Field::metal;

/// The name of the field in records, keys of controls and message keys.
inline constexpr std::array<std::string_view, field_count> field_names{
    "mass_of_metal", "mass_before", "mass_after", "ribbon_length", "mass_per_metre", "purity", "molar_mass",
    "gas_per_mole", "acid_per_mole", "acid_volume", "acid_concentration", "tube_capacity", "end_space", "start_reading",
    "starting_bubble", "start_level_difference", "scale_reading", "level_difference", "length_of_scale", "tube_bore",
    "tube_factor", "injected_volume", "flask_volume", "displaced_mass", "temperature", "barometer", "pressure_after",
    "barometer_temperature", "latitude", "height_above_sea_level", "outdoor_temperature", "own_vapour_pressure",
    "water_activity", "accepted_value", "metal", "acid", "mass_from", "number_at_closed_end", "liquid_stands",
    "pressure_kind", "apparatus", "gas", "gas_is", "target", "second_metal"};

constexpr std::string_view name_of(Field field) { return field_names[static_cast<std::size_t>(field)]; }
constexpr bool is_choice(Field field) { return field >= first_choice; }

/// A set of fields, one bit each.
class FieldSet {
public:
    constexpr FieldSet() = default;
    template <class... Fields>
    static constexpr FieldSet of(Fields... fields) {
        FieldSet set;
        (set.add(fields), ...);
        return set;
    }
    constexpr void add(Field f) { bits_ |= bit(f); }
    constexpr void remove(Field f) { bits_ &= ~bit(f); }
    constexpr bool has(Field f) const { return (bits_ & bit(f)) != 0; }
    constexpr bool empty() const { return bits_ == 0; }
    constexpr std::uint64_t bits() const { return bits_; }
    friend constexpr FieldSet operator|(FieldSet a, FieldSet b) { return from_bits(a.bits_ | b.bits_); }
    friend constexpr FieldSet operator&(FieldSet a, FieldSet b) { return from_bits(a.bits_ & b.bits_); }
    /// What is in `a` and not in `b`.
    friend constexpr FieldSet operator-(FieldSet a, FieldSet b) { return from_bits(a.bits_ & ~b.bits_); }
    friend constexpr bool operator==(FieldSet a, FieldSet b) { return a.bits_ == b.bits_; }

private:
    static constexpr FieldSet from_bits(std::uint64_t bits) {
        FieldSet set;
        set.bits_ = bits;
        return set;
    }
    static constexpr std::uint64_t bit(Field f) { return std::uint64_t{1} << static_cast<unsigned>(f); }
    std::uint64_t bits_ = 0;
};

}  // namespace overwater
