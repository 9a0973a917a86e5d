#include <cmath>

#include "core/quantity/units.hpp"
#include "core/result/sense_checks.hpp"

/// Level differences that the tube is too short for, and millimetres that look like centimetres.

namespace overwater {

namespace {

/// Between the last mark and the mouth no tube has more (own choice, generous).
constexpr double without_scale = 100 * millimetre.factor;
/// How far a real scale may be longer than an assumed or measured one (own choice, generous).
constexpr double longer_when_assumed = 1.25;
constexpr double longer_when_measured = 1.05;

struct Stretch {
    double length;   ///< of tube on the side to which the liquid stands higher
    double longest;  ///< level difference that it can give
};

/// Inside higher, the liquid hangs in the tube from the meniscus to the mouth, which stays under water; outside higher,
/// the closed end is what must not go under.
Stretch stretch(const Remarks& remarks, double mark, const ScaleLength& scale) {
    const double below = length_below(mark, remarks, scale);
    const double whole = remarks.base(Field::tube_capacity) * scale.per_volume;
    const double length = remarks.setup().liquid_stands == LiquidStands::higher_inside ? below : whole - below;
    return {length, length * (scale.assumed ? longer_when_assumed : longer_when_measured) + without_scale};
}

void too_large(Remarks& remarks, Field field, const Stretch& tube) {
    const Reading& reading = remarks.reading(field);
    const bool inside = remarks.setup().liquid_stands == LiquidStands::higher_inside;
    for (const UnitId other : {UnitId::millimetre, UnitId::centimetre}) {
        const double meant = to_base(reading.number.value, other);
        if (meant >= reading.base || meant > tube.longest) continue;
        remarks.doubt(field,
                      as_typed(inside ? "check.mouth_out_of_water_unit" : "check.closed_end_under_water_unit", reading)
                          .figures("room", tube.length, UnitId::millimetre, 2)
                          .quantity("other", meant, other, decimals_of(reading)));
        return;
    }
    remarks.doubt(field, as_typed(inside ? "check.mouth_out_of_water" : "check.closed_end_under_water", reading)
                             .figures("room", tube.length, UnitId::millimetre, 2));
}

/// A ruler shows whole millimetres, perhaps halves: 11.2 is what one reads in centimetres.
bool looks_like_centimetres(const Reading& reading, const Stretch& tube) {
    if (reading.unit != UnitId::millimetre || reading.last_place != -1 || reading.number.value >= 30) return false;
    if (std::fmod(std::round(reading.number.value * 10), 5) == 0) return false;
    return to_base(reading.number.value, UnitId::centimetre) <= tube.longest;
}

void look_at(Remarks& remarks, Field field, double mark) {
    const auto scale = scale_length(remarks.readings());
    if (!scale || !remarks.usable(field) || remarks.base(field) < 0) return;
    const Reading& reading = remarks.reading(field);
    const Stretch tube = stretch(remarks, mark, *scale);
    if (tube.length < 0) return;
    if (reading.base > tube.longest) {
        too_large(remarks, field, tube);
    } else if (looks_like_centimetres(reading, tube)) {
        remarks.doubt(field, as_typed("check.level_in_centimetres", reading)
                                 .quantity("other", to_base(reading.number.value, UnitId::centimetre),
                                           UnitId::centimetre, decimals_of(reading)));
    }
}

}  // namespace

void check_level(Remarks& remarks) {
    const Setup& setup = remarks.setup();
    if (setup.closed_end == ClosedEnd::unknown) return;
    if (setup.liquid_stands != LiquidStands::higher_inside && setup.liquid_stands != LiquidStands::higher_outside) {
        return;
    }
    if (remarks.usable(Field::scale_reading)) {
        look_at(remarks, Field::level_difference, remarks.base(Field::scale_reading));
    }
    if (setup.start == Start::reading && remarks.usable(Field::start_reading)) {
        look_at(remarks, Field::start_level_difference, remarks.base(Field::start_reading));
    } else if (setup.start == Start::bubble && remarks.usable(Field::tube_capacity)) {
        // A bubble leaves all of the scale full of liquid.
        const bool from_mouth = setup.closed_end == ClosedEnd::largest;
        look_at(remarks, Field::start_level_difference, from_mouth ? remarks.base(Field::tube_capacity) : 0.0);
    }
}

}  // namespace overwater
