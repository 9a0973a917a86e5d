#include <doctest/doctest.h>

#include <algorithm>
#include <string_view>

#include "core/quantity/unit_table.hpp"

using namespace overwater;

namespace {

/// What a unit is called in English and how it is abbreviated, several with a bar between.
struct Words {
    UnitId unit;
    std::string_view words;
};

constexpr Words words[]{
    {UnitId::gram, "g|gram|grams|gramme|grammes|gr"},
    {UnitId::milligram, "mg|milligram|milligrams|milligramme"},
    {UnitId::kilogram, "kg|kilogram|kilograms|kilogramme"},
    {UnitId::millimetre, "mm|millimetre|millimeters|millimeter"},
    {UnitId::centimetre, "cm|centimetre|centimetres|centimeter"},
    {UnitId::metre, "m|metre|metres|meter"},
    {UnitId::inch, "in|in.|inch|inches|\"|″"},
    {UnitId::foot, "ft|ft.|foot|feet|'|′"},
    {UnitId::millilitre, "mL|ml|millilitre|milliliters"},
    {UnitId::cubic_centimetre, "cm3|cm³|cc|ccm|cubic centimetres|cubic centimeter"},
    {UnitId::litre, "L|l|litre|liters"},
    {UnitId::cubic_decimetre, "dm3|dm³|cubic decimetre|cubic decimeters"},
    {UnitId::microlitre, "µL|uL|microlitre|microliters"},
    {UnitId::kilopascal, "kPa|kilopascal|kilopascals"},
    {UnitId::hectopascal, "hPa|hectopascal|hectopascals"},
    {UnitId::pascal, "Pa|pascal|pascals"},
    {UnitId::millibar, "mbar|mb|millibar|millibars"},
    {UnitId::bar, "bar|bars"},
    {UnitId::atmosphere, "atm|atmosphere|atmospheres"},
    {UnitId::torr, "Torr|torr"},
    {UnitId::millimetre_of_mercury, "mmHg|mm of Hg|mm of mercury|millimetres of mercury|millimeters of mercury"},
    {UnitId::inch_of_mercury, "inHg|in of Hg|inch Hg|inches Hg|inches of Hg|inches of mercury|inches mercury|\"Hg"},
    {UnitId::pound_per_square_inch, "psi|psia|lb/in²|lbf/in²"},
    {UnitId::celsius, "°C|C|degC|Celsius|deg Celsius|degree Celsius|degrees Celsius|degrees C|centigrade"},
    {UnitId::kelvin, "K|kelvin|kelvins|deg K"},
    {UnitId::fahrenheit, "°F|F|degF|Fahrenheit|deg Fahrenheit|degree Fahrenheit|degrees Fahrenheit|degrees F"},
    {UnitId::gram_per_millilitre, "g/mL|g mL⁻¹|g/cm³|g cm⁻³|g/cc|kg/L"},
    {UnitId::kilogram_per_cubic_metre, "kg/m³|kg m⁻³|g/L"},
    {UnitId::mole, "mol|mole|moles"},
    {UnitId::millimole, "mmol|millimole|millimoles"},
    {UnitId::gram_per_mole, "g/mol|g mol⁻¹"},
    {UnitId::litre_per_mole, "L/mol|L mol⁻¹"},
    {UnitId::cubic_decimetre_per_mole, "dm³/mol|dm³ mol⁻¹"},
    {UnitId::mole_per_litre, "mol/L|mol L⁻¹|mol/litre|mol/liter|M|molar"},
    {UnitId::mole_per_cubic_decimetre, "mol/dm³|mol dm⁻³"},
    {UnitId::gram_per_metre, "g/m|g m⁻¹|mg/mm"},
    {UnitId::gram_per_centimetre, "g/cm|g cm⁻¹"},
    {UnitId::joule_per_mole_kelvin, "J/mol/K|J/(mol K)|J/(K mol)|J/K/mol|J mol⁻¹ K⁻¹|J K⁻¹ mol⁻¹"},
    {UnitId::percent, "%|percent"},
};

}  // namespace

TEST_CASE("each unit is known by its words and its abbreviations") {
    CHECK(std::size(words) == unit_count - 1);  // all but none
    for (const Words& row : words) {
        for (std::string_view left = row.words; !left.empty();) {
            const std::string_view word = left.substr(0, left.find('|'));
            left.remove_prefix(std::min(word.size() + 1, left.size()));
            INFO(word);
            CHECK(unit_by_typed_text(word, info(row.unit).measure) == row.unit);
        }
    }
}
