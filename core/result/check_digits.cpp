#include <algorithm>
#include <cmath>

#include "core/result/sense_checks.hpp"

/// What a mass of one figure costs: half a unit of its last digit is a large share of it.

namespace overwater {

namespace {

/// Half a unit of the last digit typed, in the base of the measure.
double half_a_digit(const Reading& reading) { return to_base(std::pow(10.0, reading.last_place), reading.unit) / 2; }

/// One figure is doubted; two that begin with a one (0.012: half a unit is 4 %) are worth a note.
void weigh_up(Remarks& remarks, Field field, std::string_view key, const Reading& shown, double half) {
    const double share = half / shown.base;
    // 0.01 to 0.09 is 1 to 9 of its last digit; 0.010 to 0.019 is 10 to 19.
    const double steps = std::round(0.5 / share);
    if (steps > 19) return;
    Message message = as_typed(key, shown);
    message.figures("share", share, UnitId::percent, 2);
    if (steps < 10) {
        remarks.doubt(field, std::move(message));
    } else {
        remarks.note(field, std::move(message));
    }
}

void typed(Remarks& remarks, Field field) {
    if (!remarks.usable(field) || remarks.base(field) <= 0) return;
    const Reading& reading = remarks.reading(field);
    weigh_up(remarks, field, "check.few_digits", reading, half_a_digit(reading));
}

/// Two readings, and the small mass between them has the doubt of both.
void difference(Remarks& remarks) {
    if (!remarks.usable(Field::mass_before) || !remarks.usable(Field::mass_after)) return;
    const Reading& before = remarks.reading(Field::mass_before);
    const Reading& after = remarks.reading(Field::mass_after);
    const double half = std::max(half_a_digit(before), half_a_digit(after));
    Reading between = half_a_digit(before) > half_a_digit(after) ? before : after;
    between.base = before.base - after.base;
    if (between.base < half) return;
    weigh_up(remarks, Field::mass_after, "check.few_digits_between", between, half);
}

}  // namespace

void check_digits(Remarks& remarks) {
    switch (remarks.setup().mass_from) {
    case MassFrom::weighed: typed(remarks, Field::mass_of_metal); break;
    case MassFrom::by_difference: difference(remarks); break;
    case MassFrom::ribbon:
        typed(remarks, Field::ribbon_length);
        typed(remarks, Field::mass_per_metre);
        break;
    }
}

}  // namespace overwater
