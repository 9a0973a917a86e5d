#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <memory>

#include "core/result/collector.hpp"
#include "core/result/doubt.hpp"

/// Propagation of distributions by the Monte Carlo method (JCGM 101:2008, section 7).

namespace overwater {

inline constexpr std::size_t monte_carlo_trials = 1000000;

/// A resumable run of trials: step() until done(). The same doubts and the same seed give the same draws on every
/// machine, whatever the portions. A trial whose amount of gas falls to zero or below has no value by it: it counts as
/// infinitely high.
class MonteCarlo {
public:
    static constexpr std::size_t bins = Collector::bins;

    /// Trials of `output`, which must be ready in `doubts`.
    MonteCarlo(const Doubts& doubts, Output output, std::size_t trials = monte_carlo_trials, std::uint64_t seed = 1);
    ~MonteCarlo();
    MonteCarlo(MonteCarlo&&) noexcept;
    MonteCarlo& operator=(MonteCarlo&&) noexcept;

    /// Does about `trials` more (rounded up to whole blocks of 256), or one slice of the sorting at the end. True when done.
    bool step(std::size_t trials);
    bool done() const;
    /// Trials made so far. (Stays at its end where they have to be made a second time: see Collector.)
    std::size_t made() const;
    /// Only when done.
    const MonteCarloResult& result() const;

    /// Counts of trials between `histogram_low` and `histogram_high` (SI), bins of one width; grows with the trials after
    /// the first 8192. Trials outside are not in it.
    std::array<std::uint32_t, bins> histogram() const;
    double histogram_low() const;
    double histogram_high() const;

private:
    struct State;
    std::unique_ptr<State> state_;
};

}  // namespace overwater
