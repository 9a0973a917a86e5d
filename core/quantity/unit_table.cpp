#include "core/quantity/unit_table.hpp"

#include <array>

#include "core/quantity/temperature.hpp"
#include "core/quantity/units.hpp"

namespace overwater {
namespace {

// A cubic centimetre is a millilitre and a cubic decimetre a litre, exactly (12th CGPM, 1964); the old litre of 1.000
// 028 dm³ is met in old tables only. The foot is 0.3048 m, exactly (NIST SP 811, Appendix B.8).
constexpr std::array<UnitInfo, unit_count> table{{
    {UnitId::none, Measure::number, "", "", 1.0, 0.0},
    {UnitId::kilogram, Measure::mass, "kg", "kg", kilogram.factor, 0.0},
    {UnitId::gram, Measure::mass, "g", "g", gram.factor, 0.0},
    {UnitId::milligram, Measure::mass, "mg", "mg", milligram.factor, 0.0},
    {UnitId::metre, Measure::length, "m", "m", metre.factor, 0.0},
    {UnitId::centimetre, Measure::length, "cm", "cm", centimetre.factor, 0.0},
    {UnitId::millimetre, Measure::length, "mm", "mm", millimetre.factor, 0.0},
    {UnitId::inch, Measure::length, "in", "in", inch.factor, 0.0},
    {UnitId::litre, Measure::volume, "L", "L", litre.factor, 0.0},
    {UnitId::millilitre, Measure::volume, "mL", "mL", millilitre.factor, 0.0},
    {UnitId::cubic_centimetre, Measure::volume, "cm3", "cm³", millilitre.factor, 0.0},
    {UnitId::cubic_decimetre, Measure::volume, "dm3", "dm³", litre.factor, 0.0},
    {UnitId::microlitre, Measure::volume, "uL", "µL", microlitre.factor, 0.0},
    {UnitId::pascal, Measure::pressure, "Pa", "Pa", pascal.factor, 0.0},
    {UnitId::hectopascal, Measure::pressure, "hPa", "hPa", hectopascal.factor, 0.0},
    {UnitId::kilopascal, Measure::pressure, "kPa", "kPa", kilopascal.factor, 0.0},
    {UnitId::millibar, Measure::pressure, "mbar", "mbar", millibar.factor, 0.0},
    {UnitId::bar, Measure::pressure, "bar", "bar", bar.factor, 0.0},
    {UnitId::atmosphere, Measure::pressure, "atm", "atm", atmosphere.factor, 0.0},
    {UnitId::torr, Measure::pressure, "Torr", "Torr", torr.factor, 0.0},
    {UnitId::millimetre_of_mercury, Measure::pressure, "mmHg", "mmHg", millimetre_of_mercury.factor, 0.0},
    {UnitId::inch_of_mercury, Measure::pressure, "inHg", "inHg", inch_of_mercury.factor, 0.0},
    {UnitId::pound_per_square_inch, Measure::pressure, "psi", "psi", pound_per_square_inch.factor, 0.0},
    {UnitId::celsius, Measure::temperature, "degC", "°C", 1.0, 0.0},
    {UnitId::kelvin, Measure::temperature, "K", "K", 1.0, -celsius_zero_in_kelvin},
    {UnitId::fahrenheit, Measure::temperature, "degF", "°F", 5.0 / 9.0, -32.0},
    {UnitId::kilogram_per_cubic_metre, Measure::density, "kg/m3", "kg/m³", kilogram_per_cubic_metre.factor, 0.0},
    {UnitId::gram_per_millilitre, Measure::density, "g/mL", "g/mL", gram_per_millilitre.factor, 0.0},
    {UnitId::mole, Measure::amount, "mol", "mol", mole.factor, 0.0},
    {UnitId::millimole, Measure::amount, "mmol", "mmol", millimole.factor, 0.0},
    {UnitId::gram_per_mole, Measure::molar_mass, "g/mol", "g/mol", gram_per_mole.factor, 0.0},
    {UnitId::litre_per_mole, Measure::molar_volume, "L/mol", "L/mol", litre_per_mole.factor, 0.0},
    {UnitId::cubic_decimetre_per_mole, Measure::molar_volume, "dm3/mol", "dm³/mol", litre_per_mole.factor, 0.0},
    {UnitId::mole_per_litre, Measure::concentration, "mol/L", "mol/L", mole_per_litre.factor, 0.0},
    {UnitId::mole_per_cubic_decimetre, Measure::concentration, "mol/dm3", "mol/dm³", mole_per_litre.factor, 0.0},
    {UnitId::gram_per_metre, Measure::linear_density, "g/m", "g/m", gram_per_metre.factor, 0.0},
    {UnitId::gram_per_centimetre, Measure::linear_density, "g/cm", "g/cm", 0.1, 0.0},
    {UnitId::joule_per_mole_kelvin, Measure::molar_entropy, "J/mol/K", "J/(mol·K)", joule_per_mole_kelvin.factor, 0.0},
    {UnitId::percent, Measure::fraction, "%", "%", 0.01, 0.0},
    {UnitId::foot, Measure::length, "ft", "ft", 0.3048, 0.0},
}};

constexpr bool rows_stand_at_their_own_index() {
    for (std::size_t i = 0; i < unit_count; ++i) {
        if (table[i].id != static_cast<UnitId>(i)) return false;
    }
    return true;
}
static_assert(rows_stand_at_their_own_index());

constexpr std::array masses{UnitId::gram, UnitId::milligram, UnitId::kilogram};
constexpr std::array lengths{UnitId::millimetre, UnitId::centimetre, UnitId::metre, UnitId::inch, UnitId::foot};
constexpr std::array volumes{UnitId::millilitre, UnitId::cubic_centimetre, UnitId::litre, UnitId::cubic_decimetre,
                             UnitId::microlitre};
constexpr std::array pressures{
    UnitId::kilopascal, UnitId::hectopascal,          UnitId::millibar,   UnitId::millimetre_of_mercury,
    UnitId::torr,       UnitId::inch_of_mercury,      UnitId::atmosphere, UnitId::bar,
    UnitId::pascal,     UnitId::pound_per_square_inch};
constexpr std::array temperatures{UnitId::celsius, UnitId::kelvin, UnitId::fahrenheit};
constexpr std::array densities{UnitId::gram_per_millilitre, UnitId::kilogram_per_cubic_metre};
constexpr std::array amounts{UnitId::mole, UnitId::millimole};
constexpr std::array molar_masses{UnitId::gram_per_mole};
constexpr std::array molar_volumes{UnitId::litre_per_mole, UnitId::cubic_decimetre_per_mole};
constexpr std::array concentrations{UnitId::mole_per_litre, UnitId::mole_per_cubic_decimetre};
constexpr std::array linear_densities{UnitId::gram_per_metre, UnitId::gram_per_centimetre};
constexpr std::array molar_entropies{UnitId::joule_per_mole_kelvin};
constexpr std::array fractions{UnitId::percent};

} // namespace

const UnitInfo& info(UnitId unit) {
    const auto row = static_cast<std::size_t>(unit);
    return row < unit_count ? table[row] : table[0];
}

double to_base(double value, UnitId unit) {
    switch (unit) {
    case UnitId::celsius: return value;
    case UnitId::kelvin: return Temperature<>::kelvin(value).in_celsius();
    case UnitId::fahrenheit: return Temperature<>::fahrenheit(value).in_celsius();
    default: return value * info(unit).factor;
    }
}

double from_base(double base, UnitId unit) {
    switch (unit) {
    case UnitId::celsius: return base;
    case UnitId::kelvin: return Temperature<>::celsius(base).in_kelvin();
    case UnitId::fahrenheit: return Temperature<>::celsius(base).in_fahrenheit();
    default: return base / info(unit).factor;
    }
}

double difference_to_base(double difference, UnitId unit) { return difference * info(unit).factor; }
double difference_from_base(double difference, UnitId unit) { return difference / info(unit).factor; }

std::optional<UnitId> unit_by_key(std::string_view key) {
    if (key.empty()) return std::nullopt;
    for (const UnitInfo& row : table) {
        if (row.key == key) return row.id;
    }
    return std::nullopt;
}

std::span<const UnitId> units_of(Measure measure) {
    switch (measure) {
    case Measure::number: return {};
    case Measure::mass: return masses;
    case Measure::length: return lengths;
    case Measure::volume: return volumes;
    case Measure::pressure: return pressures;
    case Measure::temperature: return temperatures;
    case Measure::density: return densities;
    case Measure::amount: return amounts;
    case Measure::molar_mass: return molar_masses;
    case Measure::molar_volume: return molar_volumes;
    case Measure::concentration: return concentrations;
    case Measure::linear_density: return linear_densities;
    case Measure::molar_entropy: return molar_entropies;
    case Measure::fraction: return fractions;
    }
    return {};
}

} // namespace overwater
