#include <cmath>

#include "core/result/doubt.hpp"
#include "core/result/sense_checks.hpp"

/// What was put down about the doubt of a reading: half-widths that are none, or can hardly be meant, and further
/// readings that do not belong to the others.

namespace overwater {

namespace {

/// A half-width this much smaller than the usual one is asked about.
constexpr double hardly_so_small = 0.1;
/// A further reading this many half-widths from the others is asked about.
constexpr double far_out = 5;

/// A difference as a quantity is shown: 1 °C is 1.8 °F, wherever the two scales begin.
double from_zero(double difference, UnitId unit) { return difference + to_base(0.0, unit); }
int decimals_in(double difference, UnitId unit) {
    return decimals_of_half_width(from_base(from_zero(difference, unit), unit));
}

bool says_anything(const Reading& reading) {
    const TypedDoubt& doubt = reading.doubt;
    return doubt.half_width || doubt.problem != Problem::none || doubt.misread > 0 || doubt.count > 1 ||
           reading.number.has_plus_minus;
}

void text(Remarks& remarks, Field field) {
    const Reading& reading = remarks.reading(field);
    const TypedDoubt& doubt = reading.doubt;
    const bool unit = doubt.problem == Problem::unknown_unit || doubt.problem == Problem::wrong_kind_of_unit;
    const bool zero = reading.number.has_plus_minus && !(reading.number.plus_minus > 0) && !doubt.half_width;
    if (unit) {
        remarks.doubt(field, Message{"check.doubt.unit"});
    } else if (doubt.problem != Problem::none || zero) {
        remarks.doubt(field, Message{"check.doubt.number"});
    }
    if (doubt.misread > 0) remarks.doubt(field, Message{"check.doubt.repeat"}.count("number", doubt.misread));
}

/// `usual` is what would count if nothing had been typed.
void size(Remarks& remarks, Field field, double usual) {
    const Reading& reading = remarks.reading(field);
    const UnitId unit = reading.unit;
    const double typed = *reading.doubt.half_width;
    if (typed < hardly_so_small * usual) {
        remarks.doubt(field, Message{"check.doubt.small"}
                                 .quantity("doubt", from_zero(typed, unit), unit, decimals_in(typed, unit))
                                 .quantity("usual", from_zero(usual, unit), unit, decimals_in(usual, unit)));
    }
    // Where a scale begins somewhere by agreement, a small number is no small thing; nor is one read at the first mark.
    const bool from_nothing = info(unit).measure != Measure::temperature;
    if (from_nothing && typed > std::fabs(reading.base) && typed > usual) {
        remarks.doubt(field, Message{"check.doubt.large"}.quantity("doubt", from_zero(typed, unit), unit,
                                                                   decimals_in(typed, unit)));
    }
}

void odd_one(Remarks& remarks, Field field, double half_width) {
    const Reading& reading = remarks.reading(field);
    const double by = reading.doubt.odd_by;
    const UnitId unit = reading.unit;
    if (!(half_width > 0) || by <= far_out * half_width) return;
    remarks.doubt(field, Message{"check.doubt.odd"}
                             .quantity("odd", reading.doubt.odd, unit, decimals_of(reading))
                             .quantity("by", from_zero(by, unit), unit, decimals_in(by, unit))
                             .quantity("doubt", from_zero(half_width, unit), unit, decimals_in(half_width, unit)));
}

/// The half-width of a reading in its own base: the model's, but for water weighed.
double half_width_in(const Doubts& doubts, const Reading& reading, Field field) {
    const Doubt* doubt = doubt_of_reading(doubts, field);
    if (doubt == nullptr) return 0.0;
    const double model = doubts.measured[doubt->input];
    const bool weighed = info(reading.unit).measure != info(field).measure;
    return weighed && model > 0 ? doubt->high * reading.base / model : doubt->high;
}

}  // namespace

void check_doubt(Remarks& remarks) {
    FieldSet asked;
    for (std::size_t i = 0; i < static_cast<std::size_t>(first_choice); ++i) {
        const auto field = static_cast<Field>(i);
        if (remarks.typed(field) && says_anything(remarks.reading(field))) asked.add(field);
    }
    if (asked.empty()) return;
    Assessment usual = remarks.run();
    for (Reading& reading : usual.readings.typed) reading.doubt.half_width.reset();
    const Doubts if_not_typed = doubts_of(usual);
    for (std::size_t i = 0; i < static_cast<std::size_t>(first_choice); ++i) {
        const auto field = static_cast<Field>(i);
        if (!asked.has(field)) continue;
        text(remarks, field);
        const Reading& reading = remarks.reading(field);
        const double otherwise = half_width_in(if_not_typed, reading, field);
        if (reading.doubt.half_width) size(remarks, field, otherwise);
        odd_one(remarks, field, reading.doubt.half_width.value_or(otherwise));
    }
}

}  // namespace overwater
