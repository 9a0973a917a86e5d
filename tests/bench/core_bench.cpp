// Speed of the core, natively and (under Node) as WebAssembly. No test asserts a time: this program prints, the README
// quotes.
//
//   core_bench              medians of the small things
//   core_bench trials N     N times: 10^6 trials of record A with their interval; and its sensitivities. For `run`.

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <vector>

#include "core/explain/working.hpp"
#include "core/lesson/slip_search.hpp"
#include "core/matter/constants.hpp"
#include "core/result/assess.hpp"
#include "core/result/budget.hpp"
#include "core/result/dual.hpp"
#include "core/result/evaluate.hpp"
#include "core/result/monte_carlo.hpp"

using namespace overwater;

namespace {

volatile double sink = 0;

template <class Work>
void measure(const char* name, int repeats, Work work) {
    std::vector<double> times;
    for (int round = 0; round < 15; ++round) {
        const auto start = std::chrono::steady_clock::now();
        for (int i = 0; i < repeats; ++i) work();
        const std::chrono::duration<double, std::micro> spent = std::chrono::steady_clock::now() - start;
        times.push_back(spent.count() / repeats);
    }
    std::sort(times.begin(), times.end());
    std::printf("%-44s %9.3f us\n", name, times[times.size() / 2]);
}

/// Record A of the method, typed.
Readings record_a() {
    Entries entries;
    const auto type = [&](Field field, const char* text) { entries.edit(field).text = text; };
    type(Field::mass_of_metal, "0.0412");
    type(Field::metal, "magnesium");
    type(Field::acid, "hydrochloric");
    type(Field::acid_volume, "10.0");
    type(Field::acid_concentration, "3.0");
    type(Field::number_at_closed_end, "largest");
    type(Field::tube_capacity, "50");
    type(Field::end_space, "2.35");
    type(Field::scale_reading, "9.15");
    type(Field::level_difference, "112");
    type(Field::liquid_stands, "higher_inside");
    type(Field::temperature, "21.4");
    type(Field::barometer, "99.62");
    return read_all([&](Field field) -> const Entry& { return entries.at(field); });
}

using Clock = std::chrono::steady_clock;

double milliseconds_since(Clock::time_point start) {
    return std::chrono::duration<double, std::milli>(Clock::now() - start).count();
}

/// Lines "trials MILLISECONDS LOW HIGH LOW HIGH" (symmetric, shortest; L/mol) and "slopes MICROSECONDS OF_ALL".
void trials(const Doubts& doubts, int rounds) {
    for (int round = 0; round < rounds; ++round) {
        auto start = Clock::now();
        MonteCarlo run(doubts, Output::molar_volume_standard);
        while (!run.step(monte_carlo_trials)) {
        }
        const MonteCarloResult& found = run.result();
        std::printf("trials %.2f %.5f %.5f %.5f %.5f\n", milliseconds_since(start), 1e3 * found.symmetric.low,
                    1e3 * found.symmetric.high, 1e3 * found.shortest.low, 1e3 * found.shortest.high);
        constexpr int repeats = 1000;
        start = Clock::now();
        for (int i = 0; i < repeats; ++i) {
            const Sensitivities slopes(doubts);
            sink = sink + slopes.of(Output::molar_volume_standard, Input::temperature);
        }
        std::printf("slopes %.3f\n", 1e3 * milliseconds_since(start) / repeats);
    }
}

}  // namespace

int main(int count, char** arguments) {
    const Readings readings = record_a();
    const Conventions conventions;
    const Assessment all = assess(readings, conventions);
    if (count == 3 && std::strcmp(arguments[1], "trials") == 0) {
        trials(doubts_of(all), std::atoi(arguments[2]));
        return 0;
    }
    const auto dual = all.measured.lifted<Dual<input_count>>(
        [](Input i, double v) { return Dual<input_count>::input(v, static_cast<std::size_t>(i)); });
    measure("one evaluation", 20000, [&] {
        sink = sink + evaluate(all.measured, Method{}, all.outcome.ready)[Output::molar_volume_standard];
    });
    measure("one evaluation with all sensitivities", 5000, [&] {
        sink = sink + evaluate(dual, RightMethod{}, all.outcome.ready)[Output::molar_volume_standard].slope(0);
    });
    measure("assess: states, checks, value", 2000, [&] {
        sink = sink + assess(readings, conventions).outcome[Output::molar_volume_standard];
    });
    measure("working: traced tree to formulas", 1000, [&] {
        sink = sink + static_cast<double>(Working(all, conventions).steps().size());
    });
    // An answer that nothing explains: all single slips, pairs and triples are tried.
    const StatedValue nothing[]{{Output::molar_volume_standard, -3.1e-3, 5e-6}};
    measure("all slips, pairs and triples", 5, [&] {
        sink = sink + static_cast<double>(find_slips(all, nothing).nearest.size());
    });
    const StatedValue no_vapour[]{{Output::molar_volume_standard, 23.28e-3, 5e-6}};
    measure("the slips that give 23.28 L/mol", 5, [&] {
        sink = sink + static_cast<double>(find_slips(all, no_vapour).explanations.size());
    });
    measure("accepted routes' bands", 20, [&] {
        sink = sink + route_bands(all)[Output::molar_volume_standard].high;
    });
    return 0;
}
