#pragma once

#include <cstdint>
#include <vector>

#include "core/matter/equation.hpp"

/// Whether the coefficients that were typed are right, and what they leave over.

namespace overwater {

enum class CoefficientVerdict : std::uint8_t {
    right,     ///< elements and charge agree, and there is no common factor
    multiple,  ///< they agree, but all coefficients have a common factor
    wrong
};

/// What one element, or the charge, comes to on both sides.
struct SideCounts {
    int atomic_number = 0;  ///< 0: the charge
    std::int64_t left = 0;
    std::int64_t right = 0;

    bool agree() const { return left == right; }
};

struct CoefficientCheck {
    CoefficientVerdict verdict = CoefficientVerdict::wrong;
    std::int64_t common_factor = 1;
    std::vector<SideCounts> counts{};  ///< each element in the order of the text; then the charge, if anything has one
};

/// Counts elements and charge with the coefficients as typed, 1 where none was. Whether the equation could be balanced at
/// all does not matter here. Of no terms: wrong.
CoefficientCheck check_coefficients(const Equation& equation);

}  // namespace overwater
