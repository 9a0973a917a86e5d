#pragma once

#include <array>
#include <optional>

#include "core/bench/apparatus.hpp"
#include "core/bench/entry.hpp"
#include "core/bench/instrument.hpp"
#include "core/bench/tube.hpp"
#include "core/matter/reaction.hpp"
#include "core/quantity/number_text.hpp"

namespace overwater {

/// What was put down about the doubt of a reading.
struct TypedDoubt {
    std::optional<double> half_width;  ///< in the base of the measure, above zero
    Problem problem = Problem::none;   ///< why a text typed for it is no half-width
    std::optional<Shape> shape;        ///< as chosen
    const Instrument* instrument = nullptr;  ///< as chosen
    int count = 1;                     ///< how often the reading was taken, this one included
    double of_mean = 0;                ///< standard deviation of the mean of the readings, base
    int misread = 0;                   ///< further readings that are no number
    double odd = 0;                    ///< of several readings the one farthest from the mean of the others, base
    double odd_by = 0;                 ///< how far, base; 0 for a single reading
};

/// A typed reading understood. Where a thing was read several times, `base` is the mean of what was read.
struct Reading {
    NumberText number;
    UnitId unit = UnitId::none;  ///< the unit that counts: the one typed, else the one chosen, else the usual one
    double base = 0;             ///< in the base of the measure; meaningful only where `there`
    bool there = false;          ///< a number was read
    int last_place = 0;          ///< power of ten of the last digit typed, in `unit`
    TypedDoubt doubt;
};

/// All entries of one run, understood.
struct Readings {
    std::array<Reading, field_count> typed{};
    std::optional<Substance> sample;  ///< what is weighed: the field `metal`
    std::optional<Acid> acid;
    ClosedEnd closed_end = ClosedEnd::unknown;
    LiquidStands liquid_stands = LiquidStands::unknown;
    MassFrom mass_from = MassFrom::weighed;
    PressureKind pressure_kind = PressureKind::at_the_bench;
    Apparatus apparatus = Apparatus::tube_over_water;
    Gas own_gas = Gas::other;                       ///< of an own reaction, or where the gas alone is weighed
    bool dry = false;                               ///< the gas in a syringe holds no water vapour
    Target target = Target::molar_volume;
    std::optional<Substance> second;                   ///< the other metal of an alloy
    const Reading& operator[](Field f) const { return typed[static_cast<std::size_t>(f)]; }
};

/// The gas of the run: that of the reaction, or what was chosen for an own one and where the gas itself is weighed; hydrogen
/// as long as nothing is.
Gas gas_of(const Readings& readings);
/// Whether what is weighed is a metal, as it is taken to be as long as nothing was chosen.
bool weighs_metal(const Readings& readings);

/// Understands one typed entry.
Reading read_entry(Field field, const Entry& entry);

/// Understands all entries; `entry_of(Field) -> const Entry&`.
template <class EntryOf>
Readings read_all(EntryOf entry_of) {
    Readings readings;
    for (std::size_t i = 0; i < static_cast<std::size_t>(first_choice); ++i) {
        const auto field = static_cast<Field>(i);
        readings.typed[i] = read_entry(field, entry_of(field));
    }
    // One tube, one scale: what it is, is chosen at the scale reading.
    readings.typed[static_cast<std::size_t>(Field::start_reading)].doubt.instrument =
        instrument_by_key(Field::scale_reading, entry_of(Field::scale_reading).instrument);
    readings.sample = substance_by_key(entry_of(Field::metal).text);
    readings.acid = acid_by_key(entry_of(Field::acid).text);
    const std::string& end = entry_of(Field::number_at_closed_end).text;
    if (end == "zero") readings.closed_end = ClosedEnd::zero;
    if (end == "largest") readings.closed_end = ClosedEnd::largest;
    const std::string& stands = entry_of(Field::liquid_stands).text;
    if (stands == "higher_inside") readings.liquid_stands = LiquidStands::higher_inside;
    if (stands == "higher_outside") readings.liquid_stands = LiquidStands::higher_outside;
    if (stands == "level") readings.liquid_stands = LiquidStands::level;
    const std::string& mass = entry_of(Field::mass_from).text;
    if (mass == "by_difference") readings.mass_from = MassFrom::by_difference;
    if (mass == "ribbon") readings.mass_from = MassFrom::ribbon;
    const std::string& pressure = entry_of(Field::pressure_kind).text;
    if (pressure == "altimeter_setting") readings.pressure_kind = PressureKind::altimeter_setting;
    if (pressure == "reduced_to_sea_level") readings.pressure_kind = PressureKind::reduced_to_sea_level;
    if (pressure == "mercury_column") readings.pressure_kind = PressureKind::mercury_column;
    readings.apparatus = apparatus_by_key(entry_of(Field::apparatus).text);
    readings.own_gas = gas_by_key(entry_of(Field::gas).text).value_or(Gas::other);
    readings.dry = entry_of(Field::gas_is).text == "dry";
    readings.target = target_by_key(entry_of(Field::target).text);
    readings.second = substance_by_key(entry_of(Field::second_metal).text);
    return readings;
}

}  // namespace overwater
