#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string_view>

/// The units a person types or chooses, each with its stable spelling for records and the sign shown.
///
/// The base of a measure is its coherent SI unit (kg, m, m³, Pa, kg/m³, mol, kg/mol, m³/mol, mol/m³, kg/m, J/(mol K),
/// 1), with one exception: temperatures are kept in degrees Celsius. Adding 273.15 and taking it away again would turn
/// a typed 21.4 °C into 21.399999999999977 °C, and the bench thermometer, the density formula and the record all speak
/// Celsius; the one place that needs kelvin is `Temperature::in_kelvin`.

namespace overwater {

/// What kind of thing a number measures.
enum class Measure : std::uint8_t {
    number,
    mass,
    length,
    volume,
    pressure,
    temperature,
    density,
    amount,
    molar_mass,
    molar_volume,
    concentration,
    linear_density,
    molar_entropy,
    fraction
};

// g++ 12 takes the enumerators for shadows of the constants of units.hpp, though the enumeration has a scope of its
// own.
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wshadow"
enum class UnitId : std::uint8_t {
    none,
    kilogram,
    gram,
    milligram,
    metre,
    centimetre,
    millimetre,
    inch,
    litre,
    millilitre,
    cubic_centimetre,
    cubic_decimetre,
    microlitre,
    pascal,
    hectopascal,
    kilopascal,
    millibar,
    bar,
    atmosphere,
    torr,
    millimetre_of_mercury,
    inch_of_mercury,
    pound_per_square_inch,
    celsius,
    kelvin,
    fahrenheit,
    kilogram_per_cubic_metre,
    gram_per_millilitre,
    mole,
    millimole,
    gram_per_mole,
    litre_per_mole,
    cubic_decimetre_per_mole,
    mole_per_litre,
    mole_per_cubic_decimetre,
    gram_per_metre,
    gram_per_centimetre,
    joule_per_mole_kelvin,
    percent,
    foot,
    count ///< how many there are; no unit
};
#pragma GCC diagnostic pop

inline constexpr std::size_t unit_count = static_cast<std::size_t>(UnitId::count);

/// One unit. A number x of it is (x + offset) * factor in the base of its measure; only degrees have an offset.
struct UnitInfo {
    UnitId id;
    Measure measure;
    std::string_view key;    ///< stable ASCII spelling used in records: "inHg", "degC", "mL", "mol/L"; "" for none
    std::string_view symbol; ///< what is shown, Unicode: "°C", "cm³"; "" for none
    double factor;
    double offset;
};

/// The row of `unit`. `UnitId::count` is no unit and gives the row of `none`.
const UnitInfo& info(UnitId unit);

/// `value` in `unit`, as a number in the base of the unit's measure (temperatures: degrees Celsius).
double to_base(double value, UnitId unit);

/// `base` in the base of the unit's measure, as a number in `unit`.
double from_base(double base, UnitId unit);

/// The same for differences and half-widths: 1 °F is 5/9 of 1 °C, wherever the two scales begin.
double difference_to_base(double difference, UnitId unit);
double difference_from_base(double difference, UnitId unit);

/// The unit with this record spelling, exactly; nothing for an unknown or empty one.
std::optional<UnitId> unit_by_key(std::string_view key);

/// The unit of the measure `expected` that a person means by `text` (UTF-8, no number in it). Spaces, dots, `^`, middle
/// dots and parentheses do not count; raised digits equal plain ones; words, singular or plural, are known in English.
/// Capitals count only where they tell two units apart (M is mol/L, m is not). Nothing if it is not a unit of
/// `expected`.
std::optional<UnitId> unit_by_typed_text(std::string_view text, Measure expected);

/// Whether `text` is a unit of any measure (for telling a wrong kind of unit from an unknown one).
bool is_unit_of_some_measure(std::string_view text);

/// The units of a measure in the order in which a person would like to find them in a list.
std::span<const UnitId> units_of(Measure measure);

} // namespace overwater
