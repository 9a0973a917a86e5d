#include "core/lesson/plan_expected.hpp"

#include <algorithm>
#include <cmath>

#include "core/quantity/number_format.hpp"
#include "core/quantity/units.hpp"

namespace overwater {

namespace {

bool blank(const Entries& entries, Field field) {
    return read_entry(field, entries.at(field)).number.state == NumberText::State::blank;
}

}  // namespace

double half_width_of(const Entries& entries, Field field) {
    const Instrument* chosen = instrument_by_key(field, entries.at(field).instrument);
    if (chosen != nullptr) return chosen->reading;
    const double capacity = read_entry(Field::tube_capacity, entries.at(Field::tube_capacity)).base;
    if (const Instrument* assumed = assumed_instrument(field, capacity)) return assumed->reading;
    // Of balances none is assumed by name; the first of the list weighs to 0.001 g.
    return instruments_for(field).front().reading;
}

void write_reading(Entries& entries, Field field, double base, int more_decimals) {
    Entry& entry = entries.edit(field);
    const Reading before = read_entry(field, entry);
    const UnitId unit = info(before.unit).measure == info(field).measure ? before.unit : info(field).usual_unit;
    const double half = difference_from_base(half_width_of(entries, field), unit);
    // A doubt typed behind the reading is its own; it goes into the box for it.
    if (entry.plus_minus.empty() && before.doubt.half_width) {
        const double typed = difference_from_base(*before.doubt.half_width, unit);
        entry.plus_minus = without_end_zeros(format_significant(typed, 6, DecimalSign::point), DecimalSign::point);
    }
    entry.text = format_fixed(from_base(base, unit), decimals_of_half_width(half) + more_decimals, DecimalSign::point);
    entry.unit = unit;
    entry.repeats.clear();
}

namespace {

/// A guess of whole degrees will be read in tenths. Digits that are there already stay.
void refine(Entries& entries, Field field) {
    const Reading typed = read_entry(field, entries.at(field));
    if (!typed.there) return;
    const double half = half_width_of(entries, field);
    if (difference_to_base(std::pow(10.0, typed.last_place), typed.unit) > half)
        write_reading(entries, field, typed.base);
}

void weigh(Entries& entries, double mass) {
    const std::string& from = entries.at(Field::mass_from).text;
    if (from == "ribbon") {
        // What one metre of it weighs, by the model.
        Entries one = entries;
        one.edit(Field::ribbon_length).text.assign(1, '1');
        one.edit(Field::ribbon_length).unit = UnitId::metre;
        const Assessment all = assess_sheet(one, Conventions{});
        if (!all.has(Output::mass)) return;
        write_reading(entries, Field::ribbon_length, mass / all.outcome[Output::mass]);
        if (!(read_entry(Field::ribbon_length, entries.at(Field::ribbon_length)).base > 0)) {
            entries.edit(Field::ribbon_length).text.clear();
        }
        return;
    }
    if (from == "by_difference") {
        // An empty holder: what it weighs drops out.
        write_reading(entries, Field::mass_before, mass);
        write_reading(entries, Field::mass_after, 0.0);
        if (read_entry(Field::mass_before, entries.at(Field::mass_before)).base > 0) return;
        entries.edit(Field::mass_before).text.clear();
        return;
    }
    write_reading(entries, Field::mass_of_metal, mass);
    if (read_entry(Field::mass_of_metal, entries.at(Field::mass_of_metal)).base > 0) return;
    entries.edit(Field::mass_of_metal).text.clear();
}

constexpr std::array mass_fields{Field::mass_from, Field::mass_of_metal, Field::mass_before, Field::mass_after,
                                 Field::ribbon_length};

/// What it asks for: nothing but care, some metal, some work, an instrument.
int cost_of(Improvement::Way way) {
    switch (way) {
    case Improvement::Way::read_again: return 0;
    case Improvement::Way::more_metal: return 1;
    case Improvement::Way::measure_it: return 2;
    case Improvement::Way::ribbon_by_length: return 3;
    case Improvement::Way::finer_instrument: break;
    }
    return 4;
}

}  // namespace

bool mass_is_typed(const Entries& typed) {
    const std::string& from = typed.at(Field::mass_from).text;
    if (from == "ribbon") return !blank(typed, Field::ribbon_length);
    if (from == "by_difference") return !blank(typed, Field::mass_before) || !blank(typed, Field::mass_after);
    return !blank(typed, Field::mass_of_metal);
}

Entries with_mass(const Entries& bench, const Entries& typed, std::optional<double> share_mass) {
    Entries entries = bench;
    for (const Field field : mass_fields) entries.edit(field) = typed.at(field);
    if (!mass_is_typed(typed) && share_mass) weigh(entries, *share_mass);
    return entries;
}

Entries as_read(const Entries& bench, const PlanPoint& point, const Conventions& conventions, NotTyped not_typed) {
    Entries entries = bench;
    write_reading(entries, Field::scale_reading, point.scale_reading);
    refine(entries, Field::temperature);
    if (not_typed.pressure) {
        entries.edit(Field::pressure_kind).text = "at_the_bench";
        entries.edit(Field::barometer).unit = UnitId::kilopascal;
        entries.edit(Field::barometer).text.clear();
        write_reading(entries, Field::barometer, point.pressure_at_bench, 1);
    } else {
        refine(entries, Field::barometer);
    }
    if (not_typed.level) {
        write_reading(entries, Field::level_difference, point.level_difference);
    } else {
        refine(entries, Field::level_difference);
    }
    if (conventions.vapour == Conventions::Vapour::own_value && blank(entries, Field::own_vapour_pressure)) {
        // Books give tenths of a torr.
        Entry& own = entries.edit(Field::own_vapour_pressure);
        own.text = format_fixed(from_base(point.vapour_pressure, UnitId::torr), 1, DecimalSign::point);
        own.unit = UnitId::torr;
    }
    return entries;
}

std::optional<std::size_t> cheapest_of(const std::vector<Improvement>& improvements) {
    if (improvements.empty()) return std::nullopt;
    const auto cheaper = [](const Improvement& a, const Improvement& b) { return cost_of(a.way) < cost_of(b.way); };
    return static_cast<std::size_t>(std::min_element(improvements.begin(), improvements.end(), cheaper) -
                                    improvements.begin());
}

}  // namespace overwater
