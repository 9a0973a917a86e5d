#include <string>

#include "core/quantity/units.hpp"
#include "core/result/sense_checks.hpp"

/// Which metal it is, how pure, and where its mass comes from.

namespace overwater {

namespace {

/// Magnesium ribbon; the lightest and heaviest asked about (method.md, section 3).
constexpr double lightest_ribbon = 0.5 * gram_per_metre.factor;
constexpr double heaviest_ribbon = 2.0 * gram_per_metre.factor;

void kind_of_metal(Remarks& remarks) {
    const Readings& readings = remarks.run().readings;
    if (!readings.sample || readings.target == Target::gas_molar_mass) return;
    const Reaction& equation = reaction(*readings.sample, readings.acid.value_or(Acid::hydrochloric));
    if (equation.demonstration_only) remarks.note(Field::metal, Message{"note.demonstration_metal"});
    if (equation.slow) remarks.note(Field::metal, Message{"note.slow_metal"});
    if (readings.acid != Acid::sulfuric) return;
    if (equation.coats) {
        remarks.doubt(Field::acid, Message{is_metal(*readings.sample) ? "check.calcium_sulfuric" : "check.carbonate_sulfuric"});
    } else if (equation.demonstration_only) {
        remarks.doubt(Field::acid, Message{"check.lithium_sulfuric"});
    }
}

/// 0.98 may be 0.98 % or the fraction that is 98 %.
void purity(Remarks& remarks) {
    if (!remarks.usable(Field::purity)) return;
    const Reading& reading = remarks.reading(Field::purity);
    if (reading.number.unit != UnitId::none || reading.number.value > 1) return;
    remarks.doubt(Field::purity,
                  as_typed("check.purity_fraction", reading)
                      .quantity("other", reading.number.value, UnitId::percent, std::max(0, decimals_of(reading) - 2)));
}

void ribbon(Remarks& remarks) {
    const Readings& readings = remarks.run().readings;
    if (remarks.setup().mass_from != MassFrom::ribbon) return;
    for (const Field field : {Field::ribbon_length, Field::mass_per_metre}) {
        if (remarks.usable(field) && remarks.base(field) < 0) {
            remarks.doubt(field, as_typed("check.below_zero", remarks.reading(field)));
        }
    }
    if (!remarks.usable(Field::mass_per_metre) || remarks.base(Field::mass_per_metre) < 0) return;
    // Ribbon of another metal is heavier, and nobody has listed it.
    if (readings.sample && *readings.sample != Substance::magnesium) return;
    const Reading& reading = remarks.reading(Field::mass_per_metre);
    if (within(reading.base, lightest_ribbon, heaviest_ribbon)) return;
    const auto units = units_that_fit(reading, lightest_ribbon, heaviest_ribbon);
    if (units.empty()) {
        remarks.doubt(Field::mass_per_metre, as_typed("check.ribbon", reading)
                                                 .quantity("lowest", lightest_ribbon, UnitId::gram_per_metre, 1)
                                                 .quantity("highest", heaviest_ribbon, UnitId::gram_per_metre, 1));
    } else {
        remarks.doubt(Field::mass_per_metre, as_typed("check.ribbon_unit", reading).text("units", signs_of(units)));
    }
}

void difference(Remarks& remarks) {
    if (remarks.setup().mass_from != MassFrom::by_difference) return;
    if (!remarks.usable(Field::mass_before) || !remarks.usable(Field::mass_after)) return;
    if (remarks.base(Field::mass_after) <= remarks.base(Field::mass_before)) return;
    remarks.doubt(Field::mass_after, Message{"check.after_larger"});
}

}  // namespace

void check_metal(Remarks& remarks) {
    kind_of_metal(remarks);
    purity(remarks);
    ribbon(remarks);
    difference(remarks);
}

}  // namespace overwater
