#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "tests/core/monte_carlo_support.hpp"

using namespace overwater;

namespace {

constexpr Output standard = Output::molar_volume_standard;

void check_same(const MonteCarloResult& a, const MonteCarloResult& b) {
    CHECK(a.trials == b.trials);
    CHECK(a.mean == b.mean);
    CHECK(a.u == b.u);
    CHECK(a.median == b.median);
    CHECK(a.symmetric.low == b.symmetric.low);
    CHECK(a.symmetric.high == b.symmetric.high);
    CHECK(a.shortest.low == b.shortest.low);
    CHECK(a.shortest.high == b.shortest.high);
}

/// A run whose result is 22.7 L/mol with 0.03 g of metal weighed to `half_width` (kg, triangular) and nothing else in
/// doubt.
Doubts one_figure_mass(double half_width) {
    Doubts doubts = record_a_without_doubt();
    Measured<double>& run = doubts.measured;
    run[Input::mass_of_metal] = 0.03e-3;
    const double now = evaluate(run, Method{}, OutputSet::all())[standard];
    const double gas = run[Input::tube_capacity] - run[Input::scale_reading] + run[Input::end_space];
    run[Input::scale_reading] += gas * (1 - 22.7e-3 / now);
    add_limits(doubts, Input::mass_of_metal, Shape::triangular, half_width);
    return doubts;
}

/// Quantile of the symmetric triangular distribution between -1 and 1.
double triangular_quantile(double p) { return p < 0.5 ? std::sqrt(2 * p) - 1 : 1 - std::sqrt(2 * (1 - p)); }

}  // namespace

TEST_CASE("record A: 100 000 trials give the numbers of the second implementation") {
    // tests/oracle/interval_draws.py: the same draws and the same model in NumPy, sorted.
    const MonteCarloResult result = run_all(record_a_doubts(), standard, 100000);
    const auto near = [](double value) { return doctest::Approx(value).epsilon(1e-12).scale(0); };
    CHECK(result.trials == 100000);
    CHECK(result.has_mean);
    CHECK(result.mean == near(0.02268179626344867));
    CHECK(result.median == near(0.022681636852839613));
    CHECK(result.symmetric.low == near(0.022561748187635303));
    CHECK(result.symmetric.high == near(0.022801868661481036));
    CHECK(result.shortest.low == near(0.02256238307245592));
    CHECK(result.shortest.high == near(0.02280234558600482));
    // A small difference of large numbers: 1e-12 of the value is 4e-10 of its spread.
    CHECK(result.u == doctest::Approx(6.181586643219727e-05).epsilon(4e-10).scale(0));
}

TEST_CASE("the size of the steps changes nothing, and no slice is left out") {
    const Doubts doubts = record_a_doubts();
    MonteCarlo one(doubts, standard, 50000);
    const MonteCarloResult expected = run_all(one, 50000);
    for (const std::size_t step : {1u, 256u, 300u, 20000u}) {
        CAPTURE(step);
        MonteCarlo trials(doubts, standard, 50000);
        std::size_t before = 0;
        while (!trials.step(step)) {
            CHECK(trials.made() >= before);
            CHECK(trials.made() <= 50000);
            before = trials.made();
        }
        CHECK(trials.done());
        CHECK(trials.made() == 50000);
        CHECK(trials.step(step));
        check_same(trials.result(), expected);
        CHECK(trials.histogram() == one.histogram());
    }
    MonteCarlo moved = MonteCarlo(doubts, standard, 50000);
    moved.step(20000);
    MonteCarlo target(doubts, standard, 10);
    target = std::move(moved);
    check_same(run_all(target), expected);
    // Another seed gives other draws of the same distribution.
    MonteCarlo other(doubts, standard, 50000, 2);
    const MonteCarloResult otherwise = run_all(other);
    CHECK(otherwise.median != expected.median);
    CHECK(std::fabs(otherwise.mean - expected.mean) <= 4 * std::sqrt(2.0 / 50000) * expected.u);
}

TEST_CASE("only what an output needs is computed, and it is computed right") {
    // The percent error and the molar volume before the conversion follow from the same draws.
    Doubts doubts = record_a_doubts();
    const double accepted = evaluate(doubts.measured, Method{}, OutputSet::all())[Output::accepted_value];
    const MonteCarloResult volume = run_all(doubts, standard, 20000);
    const MonteCarloResult error = run_all(doubts, Output::percent_error, 20000);
    CHECK(error.symmetric.low == doctest::Approx(volume.symmetric.low / accepted - 1).epsilon(1e-10).scale(1));
    CHECK(error.symmetric.high == doctest::Approx(volume.symmetric.high / accepted - 1).epsilon(1e-10).scale(1));
    CHECK(error.median == doctest::Approx(volume.median / accepted - 1).epsilon(1e-10).scale(1));
    for (std::size_t i = 0; i < output_count; ++i) {
        const auto output = static_cast<Output>(i);
        if (output == Output::pressure_at_bench || output == Output::start_dry_pressure ||
            output == Output::gas_at_start || output == Output::mass || output == Output::amount_of_acid ||
            output == Output::acid_volume_needed || output == Output::acid_excess || output == Output::alloy_share) {
            continue;  // record A has no such step, or no such reading here
        }
        CAPTURE(name_of(output));
        const double plain = evaluate(doubts.measured, Method{}, OutputSet::all())[output];
        const MonteCarloResult result = run_all(doubts, output, 20000);
        CHECK(result.symmetric.holds(plain));
        CHECK(result.median == doctest::Approx(plain).epsilon(0.003));
    }
}

TEST_CASE("without any doubt every trial is the value") {
    const Doubts doubts = record_a_without_doubt();
    const double value = evaluate(doubts.measured, Method{}, OutputSet::all())[standard];
    const MonteCarloResult result = run_all(doubts, standard, 10000);
    CHECK(result.median == value);
    CHECK(result.symmetric.low == value);
    CHECK(result.symmetric.high == value);
    CHECK(result.shortest.low == value);
    CHECK(result.u == 0);
}

TEST_CASE("a one-figure mass: 0.03 g on a 0.01 g balance") {
    const MonteCarloResult result = run_all(one_figure_mass(0.01e-3), standard, monte_carlo_trials);
    const auto count = static_cast<double>(monte_carlo_trials);
    // V = 22.7 x 0.03/m, so the exact ends are those of m. Standard error of an end: sqrt(p (1 - p)/M)/density.
    const auto value_at = [](double p) { return 22.7e-3 * 0.03 / (0.03 + 0.01 * triangular_quantile(1 - p)); };
    const auto standard_error = [&](double p) {
        const double step = 1e-6;
        const double slope = (value_at(p + step) - value_at(p - step)) / (2 * step);
        return std::sqrt(p * (1 - p) / count) * slope;
    };
    CHECK(std::fabs(result.symmetric.low - value_at(0.025)) <= 4 * standard_error(0.025));
    CHECK(std::fabs(result.symmetric.high - value_at(0.975)) <= 4 * standard_error(0.975));
    CHECK(std::fabs(result.median - value_at(0.5)) <= 4 * standard_error(0.5));
    // method.md, section 6, to its printed digits.
    CHECK(std::fabs(result.symmetric.low - 18.04e-3) <= 0.005e-3 + 4 * standard_error(0.025));
    CHECK(std::fabs(result.symmetric.high - 30.63e-3) <= 0.005e-3 + 4 * standard_error(0.975));
    CHECK_FALSE(result.symmetric.open_above);

    // The shortest: exactly 17.4793 to 29.6261 (scipy, from the quantile function above, at p = 0.005404). Its length is
    // as sure as that of the symmetric one; where it begins is less so, as the minimum is flat: the ends may lie wherever
    // the exact length is longer by no more than the error of two lengths.
    const double length_error = 4 * std::hypot(standard_error(0.0054), standard_error(0.9554));
    CHECK(std::fabs((result.shortest.high - result.shortest.low) - (29.62607e-3 - 17.47928e-3)) <= length_error);
    double first = 1;
    double last = 0;
    for (double p = 0.0001; p < 0.05; p += 0.0001) {
        if (value_at(p + 0.95) - value_at(p) > 29.62607e-3 - 17.47928e-3 + 2 * length_error) continue;
        first = std::min(first, p);
        last = std::max(last, p);
    }
    CHECK(result.shortest.low >= value_at(first) - 4 * standard_error(0.0054));
    CHECK(result.shortest.low <= value_at(last) + 4 * standard_error(0.0054));
    CHECK(17.51e-3 >= value_at(first));  // method.md
    CHECK(17.51e-3 <= value_at(last));
    CHECK(29.66e-3 >= value_at(first + 0.95));
    CHECK(29.66e-3 <= value_at(last + 0.95));
}

TEST_CASE("a mass that may be nothing: the interval is open above, with a median and without a mean") {
    // 0.03 g +- 0.05 g, triangular: m <= 0 has the probability 0.4^2/2 = 8 %.
    const MonteCarloResult result = run_all(one_figure_mass(0.05e-3), standard, 200000);
    CHECK_FALSE(result.has_mean);
    CHECK(result.mean == 0);
    CHECK(result.u == 0);
    CHECK(result.symmetric.open_above);
    CHECK(result.shortest.open_above);
    CHECK(std::isinf(result.symmetric.high));
    // V = 22.7 x 0.03/m: the lower end by the upper end of m, 0.03 + 0.05 (1 - sqrt 0.05). Four standard errors there
    // (density of m 4.47/g) are 0.45 %, of the median (density 20/g) 0.75 %.
    const double m = 0.03 + 0.05 * (1 - std::sqrt(0.05));
    CHECK(result.symmetric.low == doctest::Approx(22.7e-3 * 0.03 / m).epsilon(0.0045).scale(0));
    CHECK(result.median == doctest::Approx(22.7e-3).epsilon(0.0075).scale(0));
    CHECK(result.symmetric.holds(1e9));
    CHECK_FALSE(result.symmetric.holds(5e-3));

    // 0.03 g +- 0.033 g: 0.4 % have no amount, few enough for an upper end, but a mean has no meaning.
    const MonteCarloResult closed = run_all(one_figure_mass(0.033e-3), standard, 200000);
    CHECK_FALSE(closed.has_mean);
    CHECK_FALSE(closed.symmetric.open_above);
    CHECK_FALSE(closed.shortest.open_above);
    // Quantile 0.975 of V is quantile 0.025 of m; four standard errors (density 6.78/g) are 4.7 %.
    const double low_mass = 0.03 + 0.033 * triangular_quantile(0.025);
    CHECK(closed.symmetric.high == doctest::Approx(22.7e-3 * 0.03 / low_mass).epsilon(0.047).scale(0));
}

TEST_CASE("repeated readings and typed standard uncertainties are drawn about the value") {
    // One input in doubt and a result that is proportional to it: the spread is that of the draw.
    Doubts doubts = record_a_without_doubt();
    Doubt doubt;
    doubt.input = Input::end_space;
    doubt.shape = Shape::student;
    doubt.high = doubt.u = 0.1e-6;
    doubt.degrees = 4;
    doubts.add(doubt);
    const MonteCarloResult student = run_all(doubts, Output::gas_volume, 200000);
    // t95(4) = 2.776445 (standards.md, 8.5); the density of t there is 0.02558 by scipy: 4 standard errors are 0.0546.
    CHECK(std::fabs((student.symmetric.high - 43.2e-6) / 0.1e-6 - 2.776445) <= 0.0546);
    CHECK(std::fabs((43.2e-6 - student.symmetric.low) / 0.1e-6 - 2.776445) <= 0.0546);
    doubts.rows[0].shape = Shape::normal;
    doubts.rows[0].degrees = without_end;
    const MonteCarloResult normal = run_all(doubts, Output::gas_volume, 200000);
    // Density 0.05845: 4 standard errors are 0.0239.
    CHECK(std::fabs((normal.symmetric.high - 43.2e-6) / 0.1e-6 - 1.959964) <= 0.0239);
    CHECK(normal.u == doctest::Approx(0.1e-6).epsilon(4 / std::sqrt(400000.0)));
    // One-sided: from nothing to the whole end space.
    doubts.rows[0].shape = Shape::rectangular;
    doubts.rows[0].low = 0;
    doubts.rows[0].high = 4e-6;
    const MonteCarloResult one_sided = run_all(doubts, Output::gas_volume, 200000);
    // Density 1/(4 mL): 4 standard errors are 0.0056 mL.
    CHECK(std::fabs(one_sided.symmetric.low - 43.3e-6) <= 0.0056e-6);
    CHECK(std::fabs(one_sided.symmetric.high - 47.1e-6) <= 0.0056e-6);
}
