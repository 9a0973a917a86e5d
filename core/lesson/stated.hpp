#pragma once

#include <optional>
#include <string_view>

#include "core/lesson/slip_search.hpp"
#include "core/quantity/number_text.hpp"

namespace overwater {

/// An answer to a step, as typed, understood.
struct StatedAnswer {
    NumberText number;           ///< its state says whether it is blank, a number or none
    UnitId unit = UnitId::none;  ///< typed, else chosen, else the step's usual one
    bool unit_given = false;     ///< typed or chosen; a plain number needs none
    std::optional<StatedValue> value;  ///< where it is a number
};

/// Understands `text`; `chosen` is the unit beside the field, none where there is none. A percent error without a unit
/// is in percent.
StatedAnswer read_answer(Output output, std::string_view text, UnitId chosen = UnitId::none);

}  // namespace overwater
