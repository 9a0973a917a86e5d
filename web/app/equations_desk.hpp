#pragma once

#include <string>
#include <utility>
#include <vector>

#include "core/quantity/text_view.hpp"

namespace overwater {

/// What the page of formulas and equations holds: texts as they were typed and chosen. What they mean, the page alone reads.
struct EquationsDesk {
    /// By name: "text", "per" (the formula gas is counted for), and with a reactant's formula "amount.HCl", "unit.HCl".
    using Texts = std::vector<std::pair<std::string, std::string>>;

    Texts texts;
    std::vector<std::string> reactants;  ///< their formulas in the order of their fields, as they were drawn last
    std::vector<Texts> done;             ///< before each step that can be taken back
    std::vector<Texts> undone;
    std::string open_step;  ///< the control whose next letter goes on with the last step
    double last_ms = 0;

    /// Empty where nothing has this name.
    std::string at(const TextView& name) const {
        for (const auto& [of, text] : texts) {
            if (of == name) return text;
        }
        return {};
    }
};

}  // namespace overwater
