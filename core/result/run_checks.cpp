#include "core/result/run_checks.hpp"

#include <algorithm>
#include <optional>
#include <utility>

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

/// What a run's metal (and acid) should give, and the gas that was found.
struct Row {
    double expected;
    double found;
};
using Rows = std::vector<std::optional<Row>>;

/// All runs on one footing: the gas by pressure and temperature where every run knows them, else by volume.
Rows rows_of(const std::vector<Assessment>& runs) {
    const bool reduced = std::all_of(runs.begin(), runs.end(), [](const Assessment& run) {
        return !run.has(Output::gas_volume) || run.has(Output::gas_constant);
    });
    Rows rows(runs.size());
    for (std::size_t i = 0; i < runs.size(); ++i) {
        const Assessment& run = runs[i];
        if (!run.has(Output::amount_of_gas) || !run.has(Output::gas_volume)) continue;
        // The acid sets the gas: more metal gives no more of it.
        if (run.acid_gives_out()) continue;
        const double volume = run.outcome[Output::gas_volume];
        const double found =
            reduced ? volume * run.outcome[Output::dry_gas_pressure] / run.outcome[Output::absolute_temperature]
                    : volume;
        rows[i] = Row{run.outcome[Output::amount_of_gas], found};
    }
    return rows;
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
           first.readings.sample == second.readings.sample;
}

/// Further apart than `share`, by the smaller.
bool apart(double a, double b, double share) { return std::max(a, b) / std::min(a, b) > 1 + share; }

/// The results differ, and would not if the masses were exchanged.
bool exchanged(const Row& a, const Row& b) {
    if (!apart(a.found / a.expected, b.found / b.expected, far_apart)) return false;
    return !apart(a.found / b.expected, b.found / a.expected, scatter);
}

bool contradict(const Row& a, const Row& b) {
    const Row& more = a.expected > b.expected ? a : b;
    const Row& less = a.expected > b.expected ? b : a;
    return apart(a.expected, b.expected, scatter) && less.found > more.found * (1 + scatter);
}

/// Largest result over smallest when the masses of two runs are exchanged.
double spread_after(Rows rows, std::size_t i, std::size_t j) {
    std::swap(rows[i]->expected, rows[j]->expected);
    double low = rows[i]->found / rows[i]->expected;
    double high = low;
    for (const auto& row : rows) {
        if (!row) continue;
        low = std::min(low, row->found / row->expected);
        high = std::max(high, row->found / row->expected);
    }
    return high / low;
}

using Two = std::pair<std::size_t, std::size_t>;

/// The exchange after which all runs of the record agree best.
std::optional<Two> best_exchange(const Rows& rows) {
    std::optional<Two> best;
    double best_spread = 0;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        for (std::size_t j = i + 1; j < rows.size(); ++j) {
            if (!rows[i] || !rows[j] || !exchanged(*rows[i], *rows[j])) continue;
            const double spread = spread_after(rows, i, j);
            if (best && spread >= best_spread) continue;
            best = Two{i, j};
            best_spread = spread;
        }
    }
    return best;
}

Message about(std::string_view key, std::size_t first, std::size_t second) {
    Message message{key};
    message.count("first", static_cast<long long>(first) + 1);
    message.count("second", static_cast<long long>(second) + 1);
    return message;
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
    const Rows rows = rows_of(runs);
    const auto exchange = best_exchange(rows);
    if (exchange) {
        const auto [i, j] = *exchange;
        checks.push_back({{i, j}, about("check.runs_exchanged", i, j)});
    }
    for (std::size_t i = 0; i < runs.size(); ++i) {
        for (std::size_t j = i + 1; j < runs.size(); ++j) {
            if (equal(runs[i], runs[j])) {
                checks.push_back({{i, j}, about("check.runs_equal", i, j)});
            } else if (!exchange && rows[i] && rows[j] && contradict(*rows[i], *rows[j])) {
                checks.push_back({{i, j}, about("check.more_metal_less_gas", i, j)});
            }
        }
    }
    rooms(runs, Field::temperature, same_room, checks);
    const bool one_kind = std::all_of(runs.begin(), runs.end(), [&runs](const Assessment& run) {
        return run.readings.pressure_kind == runs.front().readings.pressure_kind;
    });
    if (one_kind) rooms(runs, Field::barometer, same_weather, checks);
    return checks;
}

}  // namespace overwater
