#include "core/explain/gap.hpp"
#include "core/quantity/units.hpp"

namespace overwater {

namespace {

struct Row {
    Cause cause;
    CauseInfo info;
};

constexpr double percent = 1e-2;
constexpr double mL = millilitre.factor;
constexpr double mm = millimetre.factor;
constexpr double mg = milligram.factor;
constexpr double hPa = hectopascal.factor;
constexpr double mmHg = millimetre_of_mercury.factor;

constexpr bool only_up[2] = {true, false};
constexpr bool only_down[2] = {false, true};
constexpr bool both[2] = {true, true};

constexpr Row row(Cause cause, UnitId unit, const bool (&way)[2], double usual, double largest) {
    return Row{cause, CauseInfo{unit, way[0], way[1], usual, largest}};
}

/// "Seen" is what published reports of this experiment have. A difference of temperatures is shown in °C: its base has
/// no offset there.
constexpr Row rows[] = {
    // A bubble of some tenths: from memory. 2 mL of air at the start, seen in a report of a home kit.
    row(Cause::air_bubble, UnitId::millilitre, only_up, 0.5 * mL, 2 * mL),
    // Some bubbles at the stopper, and a loss that everybody would see: both from memory.
    row(Cause::gas_lost, UnitId::millilitre, only_down, 0.5 * mL, 5 * mL),
    // A speck, from memory. Results 18 % and 38 % too low by a piece that floated off: seen.
    row(Cause::metal_left, UnitId::percent, only_down, 2 * percent, 38 * percent),
    // 1 to 5 % of the mass of ribbon that was not rubbed clean: seen; 2 % of them common practice, no source.
    row(Cause::oxide_coat, UnitId::percent, only_down, 2 * percent, 5 * percent),
    // A trace of water or grease, and a drop: from memory.
    row(Cause::wet_metal, UnitId::milligram, only_down, 1 * mg, 10 * mg),
    // One and ten digits of a balance of 1 mg: common practice, no source. The run's own digit counts where it is more.
    row(Cause::balance_off, UnitId::milligram, both, 1 * mg, 10 * mg),
    // One metre weighed, used for a whole reel: from memory. Ribbons of 0.8 to 1.5 g/m: seen, 30 % about the middle.
    row(Cause::ribbon_mass, UnitId::percent, both, 3 * percent, 30 * percent),
    // A few minutes too early, and at once: from memory.
    row(Cause::gas_warm, UnitId::celsius, only_up, 2, 10),
    // From memory. 50 °C of the liquid put down, in a room of 22 °C: seen.
    row(Cause::hot_liquid, UnitId::celsius, only_down, 5, 28),
    // Reading and scale of a thermometer with divisions of 1 °C, 0.5 to 1 °C each: from memory.
    row(Cause::thermometer_off, UnitId::celsius, both, 0.5, 2),
    // By eye from above: from memory. A tall tube left as it stood, 280 mm: seen.
    row(Cause::levels_not_equal, UnitId::millimetre, both, 5 * mm, 280 * mm),
    // A ruler through the glass, and one held askew or from its edge: from memory.
    row(Cause::level_misread, UnitId::millimetre, both, 2 * mm, 10 * mm),
    // Measured with a small cylinder, from memory. The tap end of a burette has 3 to 4 mL: seen.
    row(Cause::end_space_off, UnitId::millilitre, both, 0.2 * mL, 4 * mL),
    // One division of a 50 mL tube. 14.4 for 13.6, against the run of the numbers: seen, at most 1 mL.
    row(Cause::scale_misread, UnitId::millilitre, both, 0.1 * mL, 1 * mL),
    // Twice the ring of water at zero contact angle (Young-Laplace, own computation): 11 mm and 15 mm of bore.
    row(Cause::meniscus, UnitId::millilitre, only_up, 0.25 * mL, 0.45 * mL),
    // Some drops, and a wall that does not drain: from memory.
    row(Cause::drops_on_wall, UnitId::millilitre, only_up, 0.1 * mL, 0.3 * mL),
    // Class B of a 50 mL burette, ISO 385:2005, table 1, and of a 50 mL cylinder, ISO 4788:2005 (from second-hand
    // copies).
    row(Cause::tube_off, UnitId::millilitre, both, 0.1 * mL, 1 * mL),
    // Hydrogen at 1 atm in all of 50 mL of water, 2.5 % of a class amount: Sander, Compilation of Henry's law
    // constants, v5.0.0 (2023). Only what the bubbles touch takes up gas, so less than 1 % (order of magnitude, own estimate).
    row(Cause::dissolved_gas, UnitId::percent, only_down, 1 * percent, 2.5 * percent),
    // A school's barometer or a telephone: from memory. 1 atm put down in a deep low, 3 to 4 % off: seen.
    row(Cause::barometer_off, UnitId::hectopascal, both, 1 * hPa, 40 * hPa),
    // Where most people live, from memory. Schools at 2600 m: seen.
    row(Cause::sea_level_pressure, UnitId::metre, only_up, 300, 2600),
    // Mercury in brass at 760 mmHg, h (a - b) t/(1 + a t) with 1.818e-4 and 1.84e-5 a kelvin (form of WMO-No. 8, from
    // memory): 3.1 mmHg at 25 °C, 3.9 at 32 °C.
    row(Cause::mercury_not_corrected, UnitId::millimetre_of_mercury, only_up, 3.1 * mmHg, 4 * mmHg),
    // The row beside it: seen. The row of 25 °C kept all year: from memory.
    row(Cause::vapour_wrong_row, UnitId::celsius, both, 1, 5),
    // Hydrochloric acid of 0.6 and of 6 mol/kg at 25 °C: Pitzer's equation, own computation with the coefficients of a
    // public geochemistry database.
    row(Cause::acid_lowers_vapour, UnitId::percent, only_down, 2.1 * percent, 33 * percent),
    // A label 5 % off, common practice, no source. 3 mL of 0.5 mol/L acid, which left 49 %: seen.
    row(Cause::acid_short, UnitId::percent, only_down, 5 * percent, 49 * percent),
    // Magnesium as 24 for 24.305: seen. Half a unit is the most that rounding to whole numbers can do.
    row(Cause::molar_mass_rounded, UnitId::gram_per_mole, both, 0.305 * gram_per_mole.factor,
        0.5 * gram_per_mole.factor),
};

constexpr bool in_order() {
    for (std::size_t i = 0; i < cause_count; ++i) {
        if (rows[i].cause != static_cast<Cause>(i)) return false;
    }
    return sizeof rows / sizeof rows[0] == cause_count;
}
static_assert(in_order());

}  // namespace

const CauseInfo& info(Cause cause) { return rows[static_cast<std::size_t>(cause)].info; }

}  // namespace overwater
