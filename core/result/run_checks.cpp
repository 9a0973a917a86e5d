#include "core/result/run_checks.hpp"

#include <algorithm>
#include <cmath>

#include "core/quantity/units.hpp"

namespace overwater {

namespace {

/// Runs of one class scatter by this much without anyone's slip.
constexpr double scatter = 0.02;
/// Results further apart than this want an explanation.
constexpr double far_apart = 0.05;
/// In one lesson a room changes less (own choice): K, Pa.
constexpr double same_room = 5;
constexpr double same_weather = 1 * kilopascal.factor;

/// Gas and metal of two runs on one footing: by pressure and temperature where both are known, else as volumes.
struct Pair {
    double metal_first, metal_second;  ///< amount of gas that metal and acid give
    double gas_first, gas_second;
};

std::optional<Pair> pair_of(const Assessment& first, const Assessment& second) {
    for (const Assessment* run : {&first, &second}) {
        if (!run->has(Output::amount_of_gas) || !run->has(Output::gas_volume)) return std::nullopt;
        // The acid sets the gas: more metal gives no more of it.
        if (run->measured.setup.acid_limits && run->has(Output::acid_excess) && run->outcome[Output::acid_excess] < 1) {
            return std::nullopt;
        }
    }
    const bool reduced = first.has(Output::gas_constant) && second.has(Output::gas_constant);
    const auto gas = [reduced](const Assessment& run) {
        const double volume = run.outcome[Output::gas_volume];
        return reduced ? volume * run.outcome[Output::dry_gas_pressure] / run.outcome[Output::absolute_temperature]
                       : volume;
    };
    return Pair{first.outcome[Output::amount_of_gas], second.outcome[Output::amount_of_gas], gas(first), gas(second)};
}

bool same_text(const Reading& a, const Reading& b) {
    return a.there == b.there && a.number.value == b.number.value && a.unit == b.unit && a.last_place == b.last_place;
}

/// Two runs of which everything typed is the same, the zeros at the end too.
bool equal(const Assessment& first, const Assessment& second) {
    if (!first.has(Output::amount_of_metal) || !first.readings[Field::scale_reading].there) return false;
    for (std::size_t i = 0; i < static_cast<std::size_t>(first_choice); ++i) {
        if (!same_text(first.readings.typed[i], second.readings.typed[i])) return false;
    }
    return first.readings.liquid_stands == second.readings.liquid_stands &&
           first.readings.metal == second.readings.metal;
}

/// Further apart than `share`, by the smaller.
bool apart(double a, double b, double share) { return std::max(a, b) / std::min(a, b) > 1 + share; }

bool exchanged(const Pair& p) {
    if (!apart(p.gas_first / p.metal_first, p.gas_second / p.metal_second, far_apart)) return false;
    return !apart(p.gas_first / p.metal_second, p.gas_second / p.metal_first, scatter);
}

bool contradict(const Pair& p) {
    const bool first_has_more = p.metal_first > p.metal_second;
    const double gas_of_more = first_has_more ? p.gas_first : p.gas_second;
    const double gas_of_less = first_has_more ? p.gas_second : p.gas_first;
    return apart(p.metal_first, p.metal_second, scatter) && gas_of_less > gas_of_more * (1 + scatter);
}

Message about(std::string_view key, std::size_t first, std::size_t second) {
    Message message{key};
    message.count("first", static_cast<long long>(first) + 1);
    message.count("second", static_cast<long long>(second) + 1);
    return message;
}

void compare(const std::vector<Assessment>& runs, std::size_t i, std::size_t j, std::vector<RunCheck>& checks) {
    if (equal(runs[i], runs[j])) {
        checks.push_back({{i, j}, about("check.runs_equal", i, j)});
        return;
    }
    const auto pair = pair_of(runs[i], runs[j]);
    if (!pair) return;
    if (exchanged(*pair)) {
        checks.push_back({{i, j}, about("check.runs_exchanged", i, j)});
    } else if (contradict(*pair)) {
        checks.push_back({{i, j}, about("check.more_metal_less_gas", i, j)});
    }
}

/// The two runs whose reading of the room is furthest apart, if that is further than one lesson's.
void rooms(const std::vector<Assessment>& runs, Field field, double most, std::vector<RunCheck>& checks) {
    std::optional<std::size_t> low, high;
    for (std::size_t i = 0; i < runs.size(); ++i) {
        const Reading& reading = runs[i].readings[field];
        if (!reading.there) continue;
        if (!low || reading.base < runs[*low].readings[field].base) low = i;
        if (!high || reading.base > runs[*high].readings[field].base) high = i;
    }
    if (!low || runs[*high].readings[field].base - runs[*low].readings[field].base <= most) return;
    const auto [first, second] = std::minmax(*low, *high);
    const Reading& one = runs[first].readings[field];
    const Reading& other = runs[second].readings[field];
    checks.push_back({{first, second},
                      about("check.rooms_differ", first, second)
                          .quantity("one", one.base, one.unit, std::clamp(-one.last_place, 0, 6))
                          .quantity("other", other.base, other.unit, std::clamp(-other.last_place, 0, 6))});
}

}  // namespace

std::vector<RunCheck> run_checks(const std::vector<Assessment>& runs) {
    std::vector<RunCheck> checks;
    for (std::size_t i = 0; i < runs.size(); ++i) {
        for (std::size_t j = i + 1; j < runs.size(); ++j) compare(runs, i, j, checks);
    }
    rooms(runs, Field::temperature, same_room, checks);
    const bool one_kind = std::all_of(runs.begin(), runs.end(), [&runs](const Assessment& run) {
        return run.readings.pressure_kind == runs.front().readings.pressure_kind;
    });
    if (one_kind) rooms(runs, Field::barometer, same_weather, checks);
    return checks;
}

}  // namespace overwater
