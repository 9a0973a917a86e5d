#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

#include "core/result/assess.hpp"
#include "core/result/verdict.hpp"

/// What would explain the difference between the result and the accepted value (method.md, section 7).

namespace overwater {

/// Something that may have gone wrong at the bench or in a reading.
enum class Cause : std::uint8_t {
    air_bubble,          ///< air in the tube before the reaction, or let in on inversion
    gas_lost,            ///< hydrogen that got away: before inversion, at the stopper, from the mouth
    metal_left,          ///< metal that did not react
    oxide_coat,          ///< oxide weighed as metal
    wet_metal,           ///< water, grease or soot weighed as metal
    balance_off,         ///< balance not zeroed, or its last digit
    ribbon_mass,         ///< mass per metre of this ribbon not what was taken
    gas_warm,            ///< gas read before it was at the temperature put down
    hot_liquid,          ///< the temperature of the hot liquid put down for the gas
    thermometer_off,
    levels_not_equal,    ///< taken as level, and not
    level_misread,
    end_space_off,
    scale_misread,       ///< read between two numbers in the wrong direction, or a division off
    meniscus,            ///< liquid above the lowest point of the meniscus counted as gas
    drops_on_wall,
    tube_off,            ///< the tube's own scale
    dissolved_gas,
    barometer_off,
    sea_level_pressure,  ///< a weather report's number taken for the bench's
    mercury_not_corrected,
    vapour_wrong_row,    ///< vapour pressure of another temperature
    acid_lowers_vapour,  ///< the liquid is acid, not water
    acid_short,          ///< less acid than the metal needs
    molar_mass_rounded,
    count
};
inline constexpr std::size_t cause_count = static_cast<std::size_t>(Cause::count);
inline constexpr std::array<std::string_view, cause_count> cause_names{
    "air_bubble",    "gas_lost",        "metal_left",      "oxide_coat",       "wet_metal",
    "balance_off",   "ribbon_mass",     "gas_warm",        "hot_liquid",       "thermometer_off",
    "levels_not_equal", "level_misread", "end_space_off",  "scale_misread",    "meniscus",
    "drops_on_wall", "tube_off",        "dissolved_gas",   "barometer_off",    "sea_level_pressure",
    "mercury_not_corrected", "vapour_wrong_row", "acid_lowers_vapour", "acid_short", "molar_mass_rounded"};
constexpr std::string_view name_of(Cause cause) { return cause_names[static_cast<std::size_t>(cause)]; }

/// How a size is measured, and what is seen at a bench.
struct CauseInfo {
    UnitId unit;        ///< of sizes shown
    bool raises;        ///< can make a molar volume too high
    bool lowers;        ///< can make it too low
    double usual;       ///< up to here it happens in a careful class, in the base unit
    double largest;     ///< beyond here it was not seen, base unit
};
const CauseInfo& info(Cause cause);

/// Whether a run like this can have it: no ribbon's mass where the metal was weighed, no level misread where it was
/// taken as equal ...
bool applies(Cause cause, const Assessment& assessment);

/// The result that is explained: the last line that is sought where something is known to compare it with, else the molar
/// volume.
Output explained_output(const Assessment& assessment);

/// The result that the bench would have given with `size` (base unit; signed where the cause goes both ways: positive
/// raises the result) of this cause at work, in SI, where the truth is what the assessment has now; nothing where the
/// result has no value or would be impossible.
std::optional<double> result_with(const Assessment& assessment, Cause cause, double size);

/// How likely it is that this cause alone makes the difference.
enum class Plausibility : std::uint8_t {
    usual,        ///< of a size that happens in a careful class
    possible,     ///< of a size that was seen
    implausible,  ///< larger than anything seen
    impossible    ///< no size of it is enough
};
inline constexpr std::array<std::string_view, 4> plausibility_names{"usual", "possible", "implausible", "impossible"};

struct Explanation {
    Cause cause = Cause::count;
    double size = 0;  ///< that it would need to have alone, base unit, 0 or more; the largest tried where impossible
    double share = 0; ///< of the difference that its usual size explains, 0 to 1
    double usual = 0;    ///< as in CauseInfo, for this run and its instruments
    double largest = 0;  ///< as in CauseInfo, for this run and its instruments
    Plausibility plausibility = Plausibility::impossible;
};

struct Gap {
    /// The accepted value lies inside the interval: nothing needs explaining.
    bool nothing_to_explain = false;
    double found = 0;     ///< SI
    double accepted = 0;  ///< SI
    std::vector<Explanation> explanations;  ///< of the right sign only, the most plausible first
};
/// Nothing where the result or the accepted value is missing.
std::optional<Gap> gap_of(const Assessment& assessment, const Verdict& verdict);

}  // namespace overwater
