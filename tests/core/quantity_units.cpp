#include <doctest/doctest.h>

#include <set>
#include <string>

#include "core/quantity/unit_table.hpp"

using namespace overwater;

namespace {

UnitId unit_at(std::size_t i) { return static_cast<UnitId>(i); }

struct Typed {
    std::string_view text;
    Measure expected;
    UnitId unit;  ///< `none`: not a unit of that measure
};

const Typed typed_units[] = {
    {"g", Measure::mass, UnitId::gram},
    {"grams", Measure::mass, UnitId::gram},
    {"mg", Measure::mass, UnitId::milligram},
    {"Mg", Measure::mass, UnitId::none},
    {"gs", Measure::mass, UnitId::none},
    {"kg", Measure::mass, UnitId::kilogram},
    {"mL", Measure::volume, UnitId::millilitre},
    {"ml", Measure::volume, UnitId::millilitre},
    {"ML", Measure::volume, UnitId::millilitre},
    {"mL.", Measure::volume, UnitId::millilitre},
    {"milliliters", Measure::volume, UnitId::millilitre},
    {"millilitres", Measure::volume, UnitId::millilitre},
    {"cm3", Measure::volume, UnitId::cubic_centimetre},
    {"cm³", Measure::volume, UnitId::cubic_centimetre},
    {"cm^3", Measure::volume, UnitId::cubic_centimetre},
    {"cc", Measure::volume, UnitId::cubic_centimetre},
    {"l", Measure::volume, UnitId::litre},
    {"L", Measure::volume, UnitId::litre},
    {"dm³", Measure::volume, UnitId::cubic_decimetre},
    {"µL", Measure::volume, UnitId::microlitre},
    {"μl", Measure::volume, UnitId::microlitre},  // Greek mu
    {"uL", Measure::volume, UnitId::microlitre},
    {"inHg", Measure::pressure, UnitId::inch_of_mercury},
    {"in Hg", Measure::pressure, UnitId::inch_of_mercury},
    {"in. Hg", Measure::pressure, UnitId::inch_of_mercury},
    {"inches Hg", Measure::pressure, UnitId::inch_of_mercury},
    {"inches of mercury", Measure::pressure, UnitId::inch_of_mercury},
    {"″Hg", Measure::pressure, UnitId::inch_of_mercury},
    {"mmHg", Measure::pressure, UnitId::millimetre_of_mercury},
    {"mm Hg", Measure::pressure, UnitId::millimetre_of_mercury},
    {"mm\u00A0Hg", Measure::pressure, UnitId::millimetre_of_mercury},
    {"mmhg", Measure::pressure, UnitId::millimetre_of_mercury},
    {"hPa", Measure::pressure, UnitId::hectopascal},
    {"hpa", Measure::pressure, UnitId::hectopascal},
    {"HPA", Measure::pressure, UnitId::hectopascal},
    {"kPa", Measure::pressure, UnitId::kilopascal},
    {"KPa", Measure::pressure, UnitId::kilopascal},
    {"Pa", Measure::pressure, UnitId::pascal},
    {"MPa", Measure::pressure, UnitId::none},
    {"mbar", Measure::pressure, UnitId::millibar},
    {"mb", Measure::pressure, UnitId::millibar},
    {"bar", Measure::pressure, UnitId::bar},
    {"atm", Measure::pressure, UnitId::atmosphere},
    {"atmospheres", Measure::pressure, UnitId::atmosphere},
    {"Torr", Measure::pressure, UnitId::torr},
    {"torr", Measure::pressure, UnitId::torr},
    {"psi", Measure::pressure, UnitId::pound_per_square_inch},
    {"mm", Measure::pressure, UnitId::none},
    {"°C", Measure::temperature, UnitId::celsius},
    {"° C", Measure::temperature, UnitId::celsius},
    {"ºC", Measure::temperature, UnitId::celsius},
    {"℃", Measure::temperature, UnitId::celsius},
    {"C", Measure::temperature, UnitId::celsius},
    {"c", Measure::temperature, UnitId::celsius},
    {"degC", Measure::temperature, UnitId::celsius},
    {"deg. C", Measure::temperature, UnitId::celsius},
    {"degrees Celsius", Measure::temperature, UnitId::celsius},
    {"F", Measure::temperature, UnitId::fahrenheit},
    {"°F", Measure::temperature, UnitId::fahrenheit},
    {"K", Measure::temperature, UnitId::kelvin},
    {"\u212A", Measure::temperature, UnitId::kelvin},
    {"°", Measure::temperature, UnitId::none},
    {"m", Measure::length, UnitId::metre},
    {"cm", Measure::length, UnitId::centimetre},
    {"mm", Measure::length, UnitId::millimetre},
    {"in", Measure::length, UnitId::inch},
    {"in.", Measure::length, UnitId::inch},
    {"inches", Measure::length, UnitId::inch},
    {"ft", Measure::length, UnitId::foot},
    {"feet", Measure::length, UnitId::foot},
    {"M", Measure::concentration, UnitId::mole_per_litre},
    {"m", Measure::concentration, UnitId::none},
    {"mol/L", Measure::concentration, UnitId::mole_per_litre},
    {"mol/l", Measure::concentration, UnitId::mole_per_litre},
    {"mol L-1", Measure::concentration, UnitId::mole_per_litre},
    {"mol L^-1", Measure::concentration, UnitId::mole_per_litre},
    {"mol·L⁻¹", Measure::concentration, UnitId::mole_per_litre},
    {"mol/dm3", Measure::concentration, UnitId::mole_per_cubic_decimetre},
    {"mol/dm³", Measure::concentration, UnitId::mole_per_cubic_decimetre},
    {"mol dm⁻³", Measure::concentration, UnitId::mole_per_cubic_decimetre},
    {"mol dm−3", Measure::concentration, UnitId::mole_per_cubic_decimetre},
    {"g/mol", Measure::molar_mass, UnitId::gram_per_mole},
    {"g mol⁻¹", Measure::molar_mass, UnitId::gram_per_mole},
    {"L/mol", Measure::molar_volume, UnitId::litre_per_mole},
    {"dm³ mol⁻¹", Measure::molar_volume, UnitId::cubic_decimetre_per_mole},
    {"J/(mol K)", Measure::molar_entropy, UnitId::joule_per_mole_kelvin},
    {"J/(mol·K)", Measure::molar_entropy, UnitId::joule_per_mole_kelvin},
    {"J mol⁻¹ K⁻¹", Measure::molar_entropy, UnitId::joule_per_mole_kelvin},
    {"g/m", Measure::linear_density, UnitId::gram_per_metre},
    {"g/cm", Measure::linear_density, UnitId::gram_per_centimetre},
    {"kg/m³", Measure::density, UnitId::kilogram_per_cubic_metre},
    {"g/cm³", Measure::density, UnitId::gram_per_millilitre},
    {"mol", Measure::amount, UnitId::mole},
    {"mmol", Measure::amount, UnitId::millimole},
    {"%", Measure::fraction, UnitId::percent},
    {"％", Measure::fraction, UnitId::percent},
    {"per cent", Measure::fraction, UnitId::percent},
    // the same in the signs of other keyboards: spacing ring, Fahrenheit sign, script l, quotation marks, slashes, dashes
    {"\u02DAC", Measure::temperature, UnitId::celsius},
    {"\u2109", Measure::temperature, UnitId::fahrenheit},
    {"m\u2113", Measure::volume, UnitId::millilitre},
    {"\u201CHg", Measure::pressure, UnitId::inch_of_mercury},
    {"\u201DHg", Measure::pressure, UnitId::inch_of_mercury},
    {"\u2019", Measure::length, UnitId::foot},
    {"mol\u2044L", Measure::concentration, UnitId::mole_per_litre},
    {"mol\u2215L", Measure::concentration, UnitId::mole_per_litre},
    {"mol\u2219L\u20101", Measure::concentration, UnitId::mole_per_litre},
    {"mol\u22C5L\u20111", Measure::concentration, UnitId::mole_per_litre},
    {"mol L\u20121", Measure::concentration, UnitId::mole_per_litre},
    {"mol L\u20131", Measure::concentration, UnitId::mole_per_litre},
    {"lb/in\u00B2", Measure::pressure, UnitId::pound_per_square_inch},
    {"\u066A", Measure::fraction, UnitId::percent},
    {"\uFF2B", Measure::temperature, UnitId::kelvin},
    {"ATM", Measure::pressure, UnitId::atmosphere},
    {"BARS", Measure::pressure, UnitId::bar},
    {"mms", Measure::length, UnitId::none},
    {"mol L\u20141", Measure::concentration, UnitId::none},  // an em dash is no sign of a power
    {"", Measure::mass, UnitId::none},
    {" ", Measure::mass, UnitId::none},
    {"s", Measure::mass, UnitId::none},
    {"mL", Measure::number, UnitId::none},
    {"\xFF", Measure::mass, UnitId::none},
    {"mLmLmLmLmLmLmLmLmLmLmLmLmLmLmLmLmLmLmLmL", Measure::volume, UnitId::none},
};

}  // namespace

TEST_CASE("every unit is found by its own key, once") {
    std::set<std::string> keys;
    for (std::size_t i = 1; i < unit_count; ++i) {
        const UnitInfo& row = info(unit_at(i));
        INFO(std::string(row.key));
        CHECK(row.id == unit_at(i));
        CHECK_FALSE(row.key.empty());
        CHECK_FALSE(row.symbol.empty());
        CHECK(keys.insert(std::string(row.key)).second);
        CHECK(unit_by_key(row.key) == row.id);
        for (const char letter : row.key) CHECK((letter > ' ' && letter < 0x7F));
    }
    CHECK_FALSE(unit_by_key(""));
    CHECK_FALSE(unit_by_key("ml"));
    CHECK_FALSE(unit_by_key("mL "));
    CHECK(info(UnitId::count).id == UnitId::none);
}

TEST_CASE("every unit is understood as it is shown and as it is recorded") {
    for (std::size_t i = 1; i < unit_count; ++i) {
        const UnitInfo& row = info(unit_at(i));
        INFO(std::string(row.key));
        CHECK(unit_by_typed_text(row.symbol, row.measure) == row.id);
        CHECK(unit_by_typed_text(row.key, row.measure) == row.id);
        CHECK(is_unit_of_some_measure(row.symbol));
    }
}

TEST_CASE("every unit stands once in the list of its measure") {
    std::size_t listed = 0;
    for (int m = 0; m <= static_cast<int>(Measure::fraction); ++m) {
        std::set<UnitId> seen;
        for (const UnitId unit : units_of(static_cast<Measure>(m))) {
            CHECK(info(unit).measure == static_cast<Measure>(m));
            CHECK(seen.insert(unit).second);
            ++listed;
        }
    }
    CHECK(listed == unit_count - 1);  // all but `none`
}

TEST_CASE("typed units are understood where they belong") {
    for (const Typed& row : typed_units) {
        INFO(std::string(row.text));
        CHECK(unit_by_typed_text(row.text, row.expected).value_or(UnitId::none) == row.unit);
    }
}

TEST_CASE("numbers come back from the base") {
    for (std::size_t i = 0; i < unit_count; ++i) {
        for (const double value : {0.0, 0.0412, 9.15, 29.92, 100.0, -40.0, 101325.0}) {
            INFO(std::string(info(unit_at(i)).key));
            CHECK(from_base(to_base(value, unit_at(i)), unit_at(i)) == doctest::Approx(value).epsilon(1e-12));
        }
    }
}

TEST_CASE("the base of temperatures is the degree Celsius, so that 21.4 stays 21.4") {
    CHECK(to_base(21.4, UnitId::celsius) == 21.4);
    CHECK(from_base(21.4, UnitId::celsius) == 21.4);
    CHECK(to_base(294.55, UnitId::kelvin) == doctest::Approx(21.4).epsilon(1e-14));
    CHECK(to_base(72.0, UnitId::fahrenheit) == doctest::Approx(200.0 / 9.0).epsilon(1e-15));  // (72 - 32) 5/9
    CHECK(from_base(100.0, UnitId::fahrenheit) == 212.0);
    for (const UnitId unit : {UnitId::celsius, UnitId::kelvin, UnitId::fahrenheit}) {
        const UnitInfo& row = info(unit);
        CHECK((50.0 + row.offset) * row.factor == doctest::Approx(to_base(50.0, unit)).epsilon(1e-14));
    }
}
