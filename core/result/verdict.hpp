#pragma once

#include <array>
#include <optional>
#include <string_view>

#include "core/result/budget.hpp"
#include "core/result/monte_carlo.hpp"

/// What the doubt says about agreement with the accepted value (method.md, sections 6 and 7).

namespace overwater {

/// Why the linear interval is not used.
enum class Caution : std::uint8_t {
    none,
    one_input,       ///< one rectangular or triangular input has over 80 % of the variance
    no_denominator,  ///< the lower limit of the amount is at or below 10 % of it: no ± and no mean
    disagrees        ///< the Monte Carlo interval differs in the digits shown
};
inline constexpr std::array<std::string_view, 4> caution_names{"none", "one_input", "no_denominator", "disagrees"};
constexpr std::string_view name_of(Caution caution) { return caution_names[static_cast<std::size_t>(caution)]; }

/// The linear interval beside that of the trials.
struct Agreement {
    double low = 0;          ///< size of the difference of the lower ends, SI
    double high = 0;         ///< of the upper ends; infinite where the trials' interval is open
    double tolerance = 0;    ///< JCGM 101 clause 8 with n_dig = 2: half a unit of the second digit of u
    bool validated = false;  ///< both within the tolerance
    bool to_digits_shown = false;  ///< both within half a unit of the second digit of U, which is what is shown
};
Agreement compared(const Budget& budget, const CoverageInterval& symmetric);

/// value + offset ± U.
CoverageInterval linear_interval(const Budget& budget);

struct Verdict {
    enum class Kind : std::uint8_t { no_interval, inside, found_too_high, found_too_low };
    Kind kind = Kind::no_interval;
    CoverageInterval interval;   ///< the one that decides, SI
    bool by_monte_carlo = false;
    bool preliminary = false;    ///< the Monte Carlo should decide and has not finished
    Caution caution = Caution::none;
    double outside_by = 0;       ///< from the nearer end of the interval to the accepted value, SI; 0 inside
    bool shows_plus_minus = true;  ///< false: the median and the interval instead
};

/// The caution that the budget alone gives (never `disagrees`).
Caution caution_of(const Doubts& doubts, const Sensitivities& sensitivities, const Budget& budget);

/// `accepted` in SI; `result` once the Monte Carlo is done.
Verdict verdict_of(const Budget& budget, Caution caution, const MonteCarloResult* result,
                   std::optional<double> accepted);

}  // namespace overwater
