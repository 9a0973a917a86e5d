#include "core/lesson/plan_model.hpp"

#include <algorithm>
#include <cmath>

#include "core/quantity/number_format.hpp"
#include "core/quantity/units.hpp"
#include "core/result/sense_checks.hpp"

namespace overwater {

namespace {

void put(Entries& entries, Field field, double value, UnitId unit, int decimals) {
    Entry& entry = entries.edit(field);
    entry.text = format_fixed(value, decimals, DecimalSign::point);
    entry.unit = unit;
    entry.repeats.clear();
}

bool there(const Entries& entries, Field field) { return read_entry(field, entries.at(field)).there; }
bool blank(const Entries& entries, Field field) {
    return read_entry(field, entries.at(field)).number.state == NumberText::State::blank;
}

}  // namespace

Conventions nature(const Conventions& conventions) {
    Conventions all;
    if (conventions.accepted == Conventions::Accepted::real) all.accepted = Conventions::Accepted::real;
    return all;
}

bool by_standard_atmosphere(const Entries& bench) {
    return blank(bench, Field::barometer) && there(bench, Field::height_above_sea_level);
}

bool liquid_hangs(const Entries& bench) {
    return bench.at(Field::liquid_stands).text == "higher_inside" && blank(bench, Field::level_difference);
}

Entries bench_sheet(const PlanSheet& sheet) {
    Entries entries = sheet.bench;
    for (const Field field :
         {Field::mass_of_metal, Field::mass_before, Field::mass_after, Field::ribbon_length, Field::acid_volume,
          Field::acid_concentration, Field::start_reading, Field::starting_bubble, Field::start_level_difference}) {
        entries.edit(field).text.clear();
    }
    entries.edit(Field::mass_from).text.clear();
    if (by_standard_atmosphere(entries)) {
        // At sea level 1 atm: an altimeter setting of 1 atm is the standard atmosphere.
        entries.edit(Field::pressure_kind).text = "altimeter_setting";
        put(entries, Field::barometer, 1, UnitId::atmosphere, 0);
    }
    if (liquid_hangs(entries)) put(entries, Field::level_difference, 0, UnitId::millimetre, 0);
    const Reading capacity = read_entry(Field::tube_capacity, entries.at(Field::tube_capacity));
    const double half = capacity.there && capacity.base > 0 ? capacity.base / 2 : millilitre.factor;
    put(entries, Field::scale_reading, from_base(half, capacity.unit), capacity.unit, 9);
    return entries;
}

Assessment assess_sheet(const Entries& entries, const Conventions& conventions) {
    const auto entry_of = [&entries](Field field) -> const Entry& { return entries.at(field); };
    return assess(read_all(entry_of), conventions);
}

PlanModel::PlanModel(Assessment bench, bool hangs) : all_(std::move(bench)), hangs_(hangs) {}

void PlanModel::take(const Doubts& shifted, const Doubts& doubts) {
    all_.measured = shifted.measured;
    all_.outcome.ready = shifted.ready;
    constexpr Input level = Input::level_difference;
    if (hangs_) level_shift_ = shifted.measured[level] - doubts.measured[level];
}

Outcome<double> PlanModel::run_at(double fill) {
    const double mark = all_.measured.setup.closed_end == ClosedEnd::largest ? capacity() - fill : fill;
    all_.measured[Input::scale_reading] = mark;
    if (hangs_) {
        // The last mark before the mouth stands at the water outside.
        const auto scale = scale_length(all_.readings);
        const double hanging = scale ? std::max(0.0, length_below(mark, Remarks(all_), *scale)) : 0.0;
        all_.measured[Input::level_difference] = hanging + level_shift_;
    }
    return outcome_by(all_, Method{});
}

double PlanModel::gas_at(double fill) { return run_at(fill)[Output::amount_by_volume]; }
double PlanModel::gas_of_metal() const { return outcome_by(all_, Method{})[Output::amount_of_gas]; }

double PlanModel::mass_for(double gas) {
    double& mass = all_.measured[Input::mass_of_metal];
    mass = 1;
    mass = gas / gas_of_metal();
    return mass;
}

double PlanModel::fill() {
    const double gas = gas_of_metal();
    // The gas grows with the fill throughout: a bracket, and the false position with the older end halved (Illinois).
    double low = -run_at(0.0)[Output::gas_volume];
    double below = -gas;
    double high = capacity();
    double above = gas_at(high) - gas;
    for (int i = 0; i < 60 && above < 0; ++i) {
        high *= 2;
        above = gas_at(high) - gas;
    }
    if (!(above >= 0)) return without_end;
    int side = 0;
    double found = high;
    for (int i = 0; i < 200 && above > below; ++i) {
        const double before = found;
        found = (low * above - high * below) / (above - below);
        if (std::fabs(found - before) <= 1e-15 * capacity()) break;
        const double off = gas_at(found) - gas;
        if (off == 0) break;
        if (off > 0) {
            high = found;
            above = off;
            if (side > 0) below /= 2;
            side = 1;
        } else {
            low = found;
            below = off;
            if (side < 0) above /= 2;
            side = -1;
        }
    }
    return found;
}

PlanPoint PlanModel::at(double fill) {
    const Outcome<double> outcome = run_at(fill);
    PlanPoint point;
    point.share = fill / capacity();
    point.gas_volume = outcome[Output::gas_volume];
    point.scale_reading = all_.measured[Input::scale_reading];
    point.level_difference = all_.measured[Input::level_difference];
    point.pressure_at_bench = outcome.ready.has(Output::pressure_at_bench) ? outcome[Output::pressure_at_bench]
                                                                           : all_.measured[Input::barometer];
    point.vapour_pressure = outcome[Output::water_vapour_pressure];
    point.dry_gas_pressure = outcome[Output::dry_gas_pressure];
    point.amount_of_gas = outcome[Output::amount_by_volume];
    return point;
}

}  // namespace overwater
