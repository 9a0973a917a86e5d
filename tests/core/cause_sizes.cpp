// How large each cause is in a careful class, and the largest that was seen: what decides whether a teacher is told that a
// mistake is likely. Each row beside its source, and what can be worked out is worked out here.

#include <doctest/doctest.h>

#include <cmath>
#include <string>

#include "tests/core/gap_support.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

constexpr double percent = 1e-2;
constexpr double mL = 1e-6;
constexpr double mm = 1e-3;
constexpr double mg = 1e-6;
constexpr double hPa = 1e2;
constexpr double mmHg = 133.322;  // NIST SP 811; its last digits do not count here

doctest::Approx about(double value) { return doctest::Approx(value).epsilon(1e-5).scale(0); }

/// What a mercury column of 760 mm in a brass scale is too long by at `celsius`, in mm: the form of WMO-No. 8.
double mercury_too_long(double celsius) {
    constexpr double mercury = 1.818e-4;
    constexpr double brass = 1.84e-5;
    return 760 * (mercury - brass) * celsius / (1 + mercury * celsius);
}

}  // namespace

TEST_CASE("each cause has the sizes that its source says, in the unit that a class measures it in") {
    struct Row {
        Cause cause;
        UnitId unit;
        double usual;
        double largest;
    };
    const Row rows[] = {
        // From memory; 2 mL of air at the start: a report of a home kit.
        {Cause::air_bubble, UnitId::millilitre, 0.5 * mL, 2 * mL},
        // From memory.
        {Cause::gas_lost, UnitId::millilitre, 0.5 * mL, 5 * mL},
        // From memory; a report of a result that was 38 % too low.
        {Cause::metal_left, UnitId::percent, 2 * percent, 38 * percent},
        // 1 to 5 % reported; 2 % of them common practice, no source.
        {Cause::oxide_coat, UnitId::percent, 2 * percent, 5 * percent},
        // From memory.
        {Cause::wet_metal, UnitId::milligram, 1 * mg, 10 * mg},
        // Common practice, no source: one and ten digits of a balance of 1 mg.
        {Cause::balance_off, UnitId::milligram, 1 * mg, 10 * mg},
        // From memory; ribbons of 0.8 to 1.5 g/m reported (below).
        {Cause::ribbon_mass, UnitId::percent, 3 * percent, 30 * percent},
        // From memory.
        {Cause::gas_warm, UnitId::celsius, 2, 10},
        // From memory; a report of 50 °C put down in a room of 22 °C.
        {Cause::hot_liquid, UnitId::celsius, 5, 50 - 22},
        // From memory: half a degree each for the reading and for the scale; up to 1 °C each.
        {Cause::thermometer_off, UnitId::celsius, 0.5, 1 + 1},
        // From memory; 280 mm in a report of a tall tube.
        {Cause::levels_not_equal, UnitId::millimetre, 5 * mm, 280 * mm},
        // From memory.
        {Cause::level_misread, UnitId::millimetre, 2 * mm, 10 * mm},
        // From memory; 3 to 4 mL at the tap end of burettes, reported.
        {Cause::end_space_off, UnitId::millilitre, 0.2 * mL, 4 * mL},
        // One division of a 50 mL burette, ISO 385:2005; at most one number of the scale the wrong way.
        {Cause::scale_misread, UnitId::millilitre, 0.1 * mL, 1 * mL},
        // method.md, section 1: two rings, for 50 mL and for 100 mL.
        {Cause::meniscus, UnitId::millilitre, 0.25 * mL, 0.45 * mL},
        // From memory.
        {Cause::drops_on_wall, UnitId::millilitre, 0.1 * mL, 0.3 * mL},
        // Class B of 50 mL: burette ISO 385:2005, table 1; cylinder ISO 4788:2005.
        {Cause::tube_off, UnitId::millilitre, 0.1 * mL, 1 * mL},
        // Own estimate; the whole from Henry's constant (below).
        {Cause::dissolved_gas, UnitId::percent, 1 * percent, 2.5 * percent},
        // From memory; 1 atm put down 3 to 4 % off, reported: 40 hPa of 1013.
        {Cause::barometer_off, UnitId::hectopascal, 1 * hPa, 40 * hPa},
        // From memory; schools at 2600 m reported.
        {Cause::sea_level_pressure, UnitId::metre, 300, 2600},
        // The formula above, at 25 °C to a tenth and at 32 °C to a whole millimetre.
        {Cause::mercury_not_corrected, UnitId::millimetre_of_mercury, std::round(10 * mercury_too_long(25)) / 10 * mmHg,
         std::round(mercury_too_long(32)) * mmHg},
        // The row beside it reported; from memory.
        {Cause::vapour_wrong_row, UnitId::celsius, 1, 5},
        // Activity of water by Pitzer's equation, computed apart: 0.979 at 0.6 mol/kg, 0.67 at 6 mol/kg.
        {Cause::acid_lowers_vapour, UnitId::percent, 1 - 0.979, 1 - 0.67},
        // Common practice, no source; a report of 49 % that was left.
        {Cause::acid_short, UnitId::percent, 5 * percent, 49 * percent},
        // 24 for 24.305 (CIAAW 2021); half a unit is the most that whole numbers are off by.
        {Cause::molar_mass_rounded, UnitId::gram_per_mole, (24.305 - 24) * 1e-3, 0.5e-3},
    };
    CHECK(std::size(rows) == cause_count);
    for (const Row& row : rows) {
        CAPTURE(std::string(name_of(row.cause)));
        CHECK(info(row.cause).unit == row.unit);
        CHECK(info(row.cause).usual == about(row.usual));
        CHECK(info(row.cause).largest == about(row.largest));
    }
}

TEST_CASE("sizes that follow from others agree with them") {
    // 1.5 and 0.8 g/m are 30 % about their middle.
    CHECK(info(Cause::ribbon_mass).largest == doctest::Approx((1.5 - 0.8) / (1.5 + 0.8)).epsilon(0.02));
    // 7.8e-6 mol/(m³ Pa) of hydrogen (Sander 2023) at 1 atm in 50 mL, of the 1.6 mmol of a class.
    CHECK(info(Cause::dissolved_gas).largest == doctest::Approx(7.8e-6 * 101325 * 50e-6 / 1.6e-3).epsilon(0.02));
    // 3 to 4 % of a standard atmosphere.
    CHECK(info(Cause::barometer_off).largest > 0.03 * 101325);
    CHECK(info(Cause::barometer_off).largest < 0.04 * 101325);
    // 760 mmHg at 25 °C and at 32 °C: the same correction to the digits given in tables.
    CHECK(mercury_too_long(25) == doctest::Approx(3.09).epsilon(0.002));
    CHECK(mercury_too_long(32) == doctest::Approx(3.95).epsilon(0.002));
}
