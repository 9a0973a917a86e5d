#include "core/bench/meniscus.hpp"
#include "core/quantity/units.hpp"
#include "core/result/sense_checks.hpp"

/// The tube itself: its capacity, how long its scale is, its bore, and a meniscus at the scale's end.

namespace overwater {

namespace {

constexpr double smallest_capacity = 5 * millilitre.factor;
constexpr double largest_capacity = 500 * millilitre.factor;

void capacity(Remarks& remarks) {
    if (!remarks.usable(Field::tube_capacity)) return;
    const Reading& reading = remarks.reading(Field::tube_capacity);
    if (within(reading.base, smallest_capacity, largest_capacity)) return;
    remarks.doubt(Field::tube_capacity, as_typed("check.capacity_unusual", reading));
}

void length(Remarks& remarks) {
    if (!remarks.usable(Field::length_of_scale) || !remarks.usable(Field::tube_capacity)) return;
    const Reading& reading = remarks.reading(Field::length_of_scale);
    const Reading& holds = remarks.reading(Field::tube_capacity);
    if (is_possible_scale(reading.base / holds.base)) return;
    remarks.doubt(Field::length_of_scale,
                  as_typed("check.length_of_scale", reading)
                      .quantity("capacity", holds.base, holds.unit, decimals_of(holds))
                      .figures("usual", usual_scale(holds.base) * holds.base, UnitId::millimetre, 2));
}

void bore(Remarks& remarks) {
    if (!remarks.usable(Field::tube_bore) || !has_column(remarks.setup())) return;
    if (remarks.setup().closed_end == ClosedEnd::zero) {
        remarks.note(Field::tube_bore, Message{"note.bore_counted"});
    } else if (remarks.setup().start == Start::reading) {
        remarks.note(Field::tube_bore, Message{"note.bore_cancels"});
    } else if (!meniscus_ring(remarks.base(Field::tube_bore))) {
        remarks.note(Field::tube_bore, as_typed("note.bore_unknown", remarks.reading(Field::tube_bore))
                                           .quantity("lowest", 9.5e-3, UnitId::millimetre, 1)
                                           .quantity("highest", 25e-3, UnitId::millimetre, 0));
    }
}

/// The gas reaches the last mark before the mouth: how much there is beyond it, nobody can read.
void gas_to_last_mark(Remarks& remarks) {
    if (!remarks.usable(Field::scale_reading)) return;
    const ClosedEnd end = remarks.setup().closed_end;
    const double mark = remarks.base(Field::scale_reading);
    const bool at_zero = end == ClosedEnd::largest && mark == 0;
    const bool at_capacity =
        end == ClosedEnd::zero && remarks.usable(Field::tube_capacity) && mark == remarks.base(Field::tube_capacity);
    if (!at_zero && !at_capacity) return;
    remarks.doubt(Field::scale_reading, as_typed("check.gas_to_last_mark", remarks.reading(Field::scale_reading)));
}

}  // namespace

double length_below(double mark, const Remarks& remarks, const ScaleLength& scale) {
    const bool from_mouth = remarks.setup().closed_end == ClosedEnd::largest;
    return (from_mouth ? mark : remarks.base(Field::tube_capacity) - mark) * scale.per_volume;
}

void check_scale(Remarks& remarks) {
    capacity(remarks);
    length(remarks);
    bore(remarks);
    gas_to_last_mark(remarks);
}

}  // namespace overwater
