#pragma once

#include <array>
#include <cstdint>
#include <memory>
#include <optional>
#include <vector>

#include "core/result/doubt.hpp"

/// Propagation of distributions by the Monte Carlo method (JCGM 101:2008, section 7).

namespace overwater {

/// An interval of coverage. Without an upper end (`open_above`) where so many trials have no denominator left.
struct CoverageInterval {
    double low = 0;
    double high = 0;
    bool open_above = false;
    bool holds(double value) const { return value >= low && (open_above || value <= high); }
};

struct MonteCarloResult {
    std::size_t trials = 0;
    double mean = 0;
    double u = 0;       ///< standard deviation of the trials
    double median = 0;
    CoverageInterval symmetric;  ///< probabilistically symmetric, 95 %
    CoverageInterval shortest;   ///< shortest, 95 %
    bool has_mean = true;        ///< false where trials without a denominator make mean and u meaningless
};

inline constexpr std::size_t monte_carlo_trials = 1000000;

/// A resumable run of trials: step() until done(). The same doubts and the same seed give the same draws on every
/// machine.
class MonteCarlo {
public:
    static constexpr std::size_t bins = 60;

    /// Trials of `output`, which must be ready in `doubts`.
    MonteCarlo(const Doubts& doubts, Output output, std::size_t trials = monte_carlo_trials, std::uint64_t seed = 1);
    ~MonteCarlo();
    MonteCarlo(MonteCarlo&&) noexcept;
    MonteCarlo& operator=(MonteCarlo&&) noexcept;

    /// Does about `trials` more (rounded up to whole packs), or one slice of the sorting at the end. True when done.
    bool step(std::size_t trials);
    bool done() const;
    /// Trials made so far.
    std::size_t made() const;
    /// Only when done.
    const MonteCarloResult& result() const;

    /// Counts of trials between `histogram_low` and `histogram_high`, bins of one width; grows with the trials.
    const std::array<std::uint32_t, bins>& histogram() const;
    double histogram_low() const;
    double histogram_high() const;

private:
    struct State;
    std::unique_ptr<State> state_;
};

}  // namespace overwater
