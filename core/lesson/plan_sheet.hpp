#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/bench/readings.hpp"
#include "core/quantity/message.hpp"
#include "core/result/assess.hpp"
#include "core/result/conventions.hpp"

/// What a teacher puts down the evening before: tube, room, metal, acid and instruments as on the sheet of a run, and
/// what a run has no field for.

namespace overwater {

enum class PlanField : std::uint8_t {
    least_share,         ///< of the scale, lower end of what is read well
    most_share,          ///< upper end
    share,               ///< of the scale that the gas is to fill, where no mass is chosen
    temperature_within,  ///< how far the room may be off the guess tomorrow
    pressure_within,
    mouth_space,  ///< room between the last mark of the scale and the mouth
    form,         ///< of the metal: a name of `metal_form_names`
    excess,       ///< times the acid needed
    consent,      ///< "yes": the responsible teacher agrees to acid above 3 mol/L
    groups,
    runs,   ///< of each group
    spare,  ///< share of all pieces
    count
};
inline constexpr std::size_t plan_field_count = static_cast<std::size_t>(PlanField::count);

/// Names in keys of controls.
inline constexpr std::array<std::string_view, plan_field_count> plan_field_names{
    "least_share",     "most_share",  "share", "temperature_within",
    "pressure_within", "mouth_space", "form",  "excess",
    "consent",         "groups",      "runs",  "spare"};
constexpr std::string_view name_of(PlanField field) { return plan_field_names[static_cast<std::size_t>(field)]; }
/// The key of what a person calls the field.
std::string_view label_of(PlanField field);

inline constexpr std::array<std::string_view, 4> metal_form_names{"ribbon", "foil", "granules", "powder"};

/// A plan as typed. Of `bench` count: metal, acid, tube, room, levels, purity, the mass chosen (blank: by the share), and
/// the instrument of any reading, whether or not the reading itself is blank.
struct PlanSheet {
    Entries bench;
    std::array<std::string, plan_field_count> asked;
    Conventions conventions;

    std::string& edit(PlanField field) { return asked[static_cast<std::size_t>(field)]; }
    const std::string& at(PlanField field) const { return asked[static_cast<std::size_t>(field)]; }
};

/// A remark that belongs below one field of the plan.
struct PlanCheck {
    PlanField field;
    Check::Weight weight;
    Message message;
};

/// What was typed in the plan's own fields, understood: SI units, shares as fractions. A blank field counts as what stands
/// here: common practice, no source.
struct PlanAsked {
    double least_share = 0.60;
    double most_share = 0.90;
    double share = 0.75;
    double temperature_within = 3;  ///< K
    double pressure_within = 2000;  ///< Pa: the weather from one day to the next
    double mouth_space = 0;         ///< m³
    double excess = 5;
    bool consent = false;
    bool powder = false;
    std::optional<int> groups;
    int runs = 1;
    double spare = 0.20;
    std::vector<PlanField> unusable;  ///< typed, but not understood or not possible
    std::vector<PlanCheck> checks;

    bool usable(PlanField field) const;
};

inline constexpr int most_groups = 1000;

PlanAsked read_asked(const PlanSheet& sheet);

}  // namespace overwater
