#include "core/matter/vapour_table.hpp"

#include <cmath>

#include "core/matter/water.hpp"
#include "core/quantity/number_format.hpp"
#include "core/quantity/units.hpp"

namespace overwater {

namespace {

constexpr int last_row = 50;
constexpr int first_older = 27;
constexpr double older[] = {26.7, 28.3, 30.0, 31.8};

}  // namespace

std::optional<double> vapour_table_row(VapourTable table, int celsius) {
    if (celsius < 0 || celsius > last_row) return std::nullopt;
    if (table == VapourTable::older && celsius >= first_older && celsius < first_older + 4) {
        return older[celsius - first_older];
    }
    return round_to_place(water_vapour_pressure(Temperature<>::celsius(celsius)).in(torr), -1);
}

std::optional<double> vapour_from_table(VapourTable table, BetweenRows between, double celsius) {
    if (!(celsius >= 0 && celsius <= last_row)) return std::nullopt;
    if (between == BetweenRows::nearest) {
        const auto row = vapour_table_row(table, static_cast<int>(std::floor(celsius + 0.5)));
        return row ? std::optional(Pressure::from(*row, torr).si()) : std::nullopt;
    }
    const int below = static_cast<int>(std::floor(celsius));
    const auto low = vapour_table_row(table, below);
    if (celsius == below) return Pressure::from(*low, torr).si();
    const auto high = vapour_table_row(table, below + 1);
    // What is interpolated is written down to the table's own last digit.
    return Pressure::from(round_to_place(*low + (*high - *low) * (celsius - below), -1), torr).si();
}

}  // namespace overwater
