#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "core/lesson/route_band.hpp"
#include "core/lesson/slip.hpp"

/// Which slip gives this answer? All single slips, pairs and triples that can happen in a run are tried with the one
/// model; those that give the answer within its own rounding are ranked by how few and how common they are.

namespace overwater {

/// A number that somebody came to.
struct StatedValue {
    Output output = Output::count;
    double si = 0;         ///< coherent SI units, percent error as a fraction
    double half_unit = 0;  ///< half of one unit of its last digit
};

struct SlipExplanation {
    SlipSet slips;
    double value = 0;    ///< what these slips give, in SI units
    bool exact = false;  ///< within the answer's own rounding; else by one of the accepted routes as well
    int rank = 0;        ///< 1 is best; what is numerically the same shares a rank
    double weight = 0;   ///< logarithm, relative: how likely before the answer was known
};

struct SlipFinding {
    enum class Kind : std::uint8_t {
        right,
        right_by_route,  ///< within what accepted routes reach: nobody is accused
        explained,
        unexplained
    };
    Kind kind = Kind::unexplained;
    std::vector<SlipExplanation> explanations;  ///< best first
    std::vector<SlipExplanation> nearest;       ///< where nothing explains: single slips and pairs that come nearest
};

inline constexpr std::size_t most_explanations = 12;

/// Explains the last of `answers`, an output that the run has. Answers before it are of earlier steps: an explanation
/// has to give them too. Steps in `carried` are taken as they are.
SlipFinding find_slips(const Assessment& run, std::span<const StatedValue> answers, const Outcome<double>& carried = {});

/// Whether a stated value is right: within half of its last digit of what accepted routes reach.
bool is_right(const StatedValue& answer, const Band& band);

}  // namespace overwater
