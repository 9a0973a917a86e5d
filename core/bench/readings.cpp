#include "core/bench/readings.hpp"

#include <cmath>
#include <vector>

#include "core/quantity/gum.hpp"

namespace overwater {

namespace {

/// Beyond this, in the base of its measure, no number is a reading; below it sums and squares stay finite.
constexpr double largest_reading = 1e100;

bool can_be_read(double base) { return std::fabs(base) <= largest_reading; }

void put_half_width(TypedDoubt& doubt, double half_width) {
    if (!can_be_read(half_width)) {
        doubt.problem = Problem::too_large;
    } else if (!(half_width > 0)) {
        doubt.problem = Problem::too_small;  // a share of a reading of zero, or less than any double
    } else {
        doubt.half_width = half_width;
    }
}

/// The half-width typed in its own box counts before one typed behind the reading.
void read_half_width(TypedDoubt& doubt, const Reading& reading, const Entry& entry, Measure measure) {
    if (!entry.plus_minus.empty()) {
        std::string text = entry.plus_minus;
        // People write the sign where it already stands before the box.
        for (const std::string_view sign : {"±", "+/-", "+-"}) {
            if (text.starts_with(sign)) text.erase(0, sign.size());
        }
        const bool relative = text.find('%') != std::string::npos && measure != Measure::fraction;
        const NumberText typed = parse_number(text, relative ? Measure::fraction : measure);
        if (typed.state == NumberText::State::blank) return;
        if (typed.state != NumberText::State::number) {
            doubt.problem = typed.problem;
        } else if (!(typed.value > 0)) {
            doubt.problem = Problem::stray_character;
        } else if (relative) {
            put_half_width(doubt, std::fabs(reading.base) * to_base(typed.value, UnitId::percent));
        } else {
            put_half_width(doubt,
                           difference_to_base(typed.value, typed.unit == UnitId::none ? reading.unit : typed.unit));
        }
        return;
    }
    if (reading.number.has_plus_minus && reading.number.plus_minus > 0) {
        put_half_width(doubt, difference_to_base(reading.number.plus_minus, reading.unit));
    }
}

/// The reading farthest from the mean of the others.
void find_odd_one(TypedDoubt& doubt, const std::vector<double>& values, double mean) {
    const auto count = static_cast<double>(values.size());
    for (const double value : values) {
        // The mean of the others is (n mean - x) / (n - 1). Of two readings the later one is asked about.
        const double by = std::fabs(value - mean) * count / (count - 1);
        if (by < doubt.odd_by) continue;
        doubt.odd_by = by;
        doubt.odd = value;
    }
}

/// Mean and scatter of a thing read several times.
void read_repeats(Reading& reading, const Entry& entry, Measure measure) {
    std::vector<double> values{reading.base};
    for (const std::string& text : entry.repeats) {
        const NumberText typed = parse_number(text, measure);
        const double base = to_base(typed.value, typed.unit == UnitId::none ? reading.unit : typed.unit);
        if (typed.state == NumberText::State::number && can_be_read(base)) {
            values.push_back(base);
        } else if (typed.state != NumberText::State::blank) {
            ++reading.doubt.misread;
        }
    }
    if (values.size() < 2) return;
    const Sample sample = sample_of(values);
    reading.base = sample.mean;
    reading.doubt.count = static_cast<int>(sample.count);
    reading.doubt.of_mean = sample.of_mean;
    find_odd_one(reading.doubt, values, sample.mean);
}

}  // namespace

Reading read_entry(Field field, const Entry& entry) {
    Reading reading;
    const FieldInfo& about = info(field);
    reading.number = parse_number(entry.text, about.measure);
    // The end space may be given by the water that fills it, weighed: 2.34 g.
    const bool weighed = info(entry.unit).measure == Measure::mass;
    if (field == Field::end_space && (weighed || reading.number.problem == Problem::wrong_kind_of_unit)) {
        const NumberText as_mass = parse_number(entry.text, Measure::mass);
        if (as_mass.state == NumberText::State::number && (weighed || as_mass.unit != UnitId::none)) {
            reading.number = as_mass;
        }
    }
    reading.unit = reading.number.unit != UnitId::none ? reading.number.unit
                   : entry.unit != UnitId::none        ? entry.unit
                                                       : about.usual_unit;
    reading.last_place = reading.number.last_place;
    if (reading.number.state == NumberText::State::number &&
        !can_be_read(to_base(reading.number.value, reading.unit))) {
        reading.number = NumberText{};
        reading.number.state = NumberText::State::not_a_number;
        reading.number.problem = Problem::too_large;
    }
    if (reading.number.state == NumberText::State::number) {
        reading.base = to_base(reading.number.value, reading.unit);
        reading.there = true;
        const Measure measure = info(reading.unit).measure;
        read_half_width(reading.doubt, reading, entry, measure);
        reading.doubt.shape = shape_by_name(entry.shape);
        reading.doubt.instrument = instrument_by_key(field, entry.instrument);
        if (!entry.repeats.empty()) read_repeats(reading, entry, measure);
    }
    return reading;
}

Gas gas_of(const Readings& readings) {
    const bool chosen = readings.target == Target::gas_molar_mass || readings.sample == Substance::own;
    if (chosen) return readings.own_gas;
    return readings.sample ? reaction(*readings.sample, Acid::hydrochloric).kind_of_gas : Gas::hydrogen;
}

bool weighs_metal(const Readings& readings) {
    return is_metal(readings.sample.value_or(Substance::magnesium)) && readings.target != Target::gas_molar_mass;
}

}  // namespace overwater
