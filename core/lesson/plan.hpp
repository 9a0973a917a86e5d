#pragma once

#include <array>
#include <optional>
#include <string_view>
#include <vector>

#include "core/lesson/plan_acid.hpp"
#include "core/lesson/plan_model.hpp"
#include "core/lesson/plan_overflow.hpp"
#include "core/lesson/plan_sheet.hpp"
#include "core/lesson/plan_state.hpp"
#include "core/result/budget.hpp"

/// Plan of a run: how much metal for this tube in this room, what its gas will read, whether it may overflow, how much
/// acid, how sure the result can be, and what a whole class needs.

namespace overwater {

enum class PlanOutput : std::uint8_t {
    mass_window,    ///< masses for the lower end, the middle and the upper end of the scale's range
    ribbon_window,  ///< their lengths of ribbon
    gas,            ///< mass as weighed, volume and pressures: `chosen`
    scale_reading,  ///< of `chosen`; not possible beyond the last mark
    overflow,
    acid,
    doubt,  ///< of the molar volume, with the instruments chosen
    class_metal,
    class_acid,
    count
};
inline constexpr std::size_t plan_output_count = static_cast<std::size_t>(PlanOutput::count);
inline constexpr std::array<std::string_view, plan_output_count> plan_output_names{
    "mass_window", "ribbon_window", "gas", "scale_reading", "overflow", "acid", "doubt", "class_metal", "class_acid"};
constexpr std::string_view name_of(PlanOutput output) { return plan_output_names[static_cast<std::size_t>(output)]; }

/// What to lay out for everybody, spare pieces included. SI units.
struct ClassAmounts {
    int groups = 0;
    int runs = 0;            ///< of each group
    int pieces = 0;          ///< groups times runs and the spare ones, rounded up
    double mass = 0;         ///< kg
    double ribbon = 0;       ///< m; 0 where no mass per metre is known
    double acid_volume = 0;  ///< m³; has a meaning where `class_acid` has a value
};

/// The mass window, in order.
enum class Fill : std::uint8_t { least, middle, most };

struct Plan {
    PlanAsked asked;
    std::array<PlanState, plan_output_count> states;
    std::array<PlanPoint, 3> window;   ///< by Fill
    PlanPoint chosen;                  ///< of the mass typed, or of the share as the balance or ruler shows it
    bool liquid_hangs = false;         ///< the level difference is that of a tube in water up to its last mark
    bool standard_atmosphere = false;  ///< the pressure is that of the height
    Overflow overflow;
    PlanAcid acid;
    Entries expected_sheet;                 ///< the readings as they are expected; to go on with at the bench
    std::optional<Assessment> expected;     ///< of that sheet, by the class's conventions
    Budget budget;                          ///< of its headline
    std::vector<Improvement> improvements;  ///< the most helpful first
    std::optional<std::size_t> cheapest;    ///< of them, the one that asks for least money and work
    ClassAmounts amounts;

    std::vector<Check> checks;  ///< below the fields of a run
    std::vector<Message> says;  ///< what is said about the plan, in order
    std::string_view caution;   ///< key of what stands beside every amount (method.md, section 10); empty: no amount

    const PlanState& state(PlanOutput o) const { return states[static_cast<std::size_t>(o)]; }
    bool has(PlanOutput o) const { return state(o).kind == OutputState::Kind::value; }
    const PlanPoint& at(Fill fill) const { return window[static_cast<std::size_t>(fill)]; }
};

/// Works a plan out. Any text may stand in the sheet: what cannot be understood or cannot be makes its outputs wait, or
/// not possible, with the reason; every number of an output that has a value is finite.
Plan plan_run(const PlanSheet& sheet);

/// The sentences of a plan that is worked out (`Plan::says`).
std::vector<Message> words_of(const Plan& plan);

}  // namespace overwater
