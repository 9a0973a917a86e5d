#pragma once

#include <optional>

#include "core/lesson/plan_model.hpp"
#include "core/result/budget.hpp"

/// The sheet of a run as it is expected to be filled in, and how sure its result would be.

namespace overwater {

/// `bench` (bench_sheet) with the mass as it is weighed, in the way the teacher chose: as typed, or of `share_mass` kg to
/// the last digit of balance or ruler. Blank where nothing of it would be left, or a ribbon has no mass per metre.
Entries with_mass(const Entries& bench, const Entries& typed, std::optional<double> share_mass);

/// Whether a mass was put down, in the way chosen; not whether it can be understood.
bool mass_is_typed(const Entries& typed);

/// The sheet with what the instruments will show of `point`: digits as fine as the instruments chosen or assumed.
/// What the teacher typed stays, or gets the zeros that such an instrument shows.
struct NotTyped {
    bool pressure = false;  ///< nobody read a barometer yet: it will show the pressure of the point
    bool level = false;     ///< the level difference is that of the point
};
Entries as_read(const Entries& bench, const PlanPoint& point, const Conventions& conventions, NotTyped not_typed);

/// Half-width of the instrument that is chosen for a field, else of the one assumed, in the base of its measure.
double half_width_of(const Entries& entries, Field field);

/// `base` as the instrument of `field` on this sheet shows it, with so many decimals more.
void write_reading(Entries& entries, Field field, double base, int more_decimals = 0);

/// Of the ways to improve, the one that asks for least money and work; the more helpful of two alike.
std::optional<std::size_t> cheapest_of(const std::vector<Improvement>& improvements);

}  // namespace overwater
