#pragma once

#include <cmath>
#include <span>

#include "core/result/evaluate.hpp"
#include "core/result/monte_carlo.hpp"

/// Record A of the method (invented) with doubts written down by hand, for the tests, the comparison with other libraries
/// and the benchmark.

namespace overwater {

inline void add_limits(Doubts& doubts, Input input, Shape shape, double half_width) {
    Doubt doubt;
    doubt.input = input;
    doubt.shape = shape;
    doubt.low = -half_width;
    doubt.high = half_width;
    doubt.u = half_width / std::sqrt(shape == Shape::triangular ? 6.0 : 3.0);
    doubts.add(doubt);
}

inline Doubts record_a_without_doubt() {
    Doubts doubts;
    Measured<double>& run = doubts.measured;
    run.setup.closed_end = ClosedEnd::largest;
    run.setup.liquid_stands = LiquidStands::higher_inside;
    run.setup.present = FieldSet::of(Field::end_space);
    run[Input::mass_of_metal] = 0.0412e-3;
    run[Input::tube_capacity] = 50e-6;
    run[Input::end_space] = 2.35e-6;
    run[Input::scale_reading] = 9.15e-6;
    run[Input::level_difference] = 0.112;
    run[Input::temperature] = 21.4;
    run[Input::barometer] = 99620;
    run[Input::molar_mass] = 24.305e-3;
    run[Input::gravity] = 9.80665;
    doubts.ready = OutputSet::all();
    return doubts;
}

/// tests/oracle/interval_draws.py has the same in the same order.
inline Doubts record_a_doubts() {
    Doubts doubts = record_a_without_doubt();
    add_limits(doubts, Input::mass_of_metal, Shape::triangular, 0.1e-6);
    add_limits(doubts, Input::scale_reading, Shape::rectangular, 0.05e-6);
    add_limits(doubts, Input::scale_reading, Shape::rectangular, 0.10e-6);
    add_limits(doubts, Input::end_space, Shape::rectangular, 0.10e-6);
    add_limits(doubts, Input::temperature, Shape::rectangular, 0.5);
    add_limits(doubts, Input::barometer, Shape::rectangular, 100);
    add_limits(doubts, Input::level_difference, Shape::rectangular, 1e-3);
    return doubts;
}

/// Runs to the end in steps of one size.
inline MonteCarloResult run_all(MonteCarlo& trials, std::size_t step = 65536) {
    while (!trials.step(step)) {
    }
    return trials.result();
}
inline MonteCarloResult run_all(const Doubts& doubts, Output output, std::size_t count) {
    MonteCarlo trials(doubts, output, count);
    return run_all(trials);
}

/// Any values through the collector, given again where it asks for that.
inline MonteCarloResult collected(std::span<const double> values) {
    Collector collector(values.size());
    collector.add(values);
    if (collector.wanted() > 0) collector.add(values);
    while (!collector.finish_slice()) {
    }
    return collector.result();
}

}  // namespace overwater
