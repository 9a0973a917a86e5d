#include "core/quantity/units.hpp"
#include "core/result/sense_checks.hpp"

/// Acid that does not suffice, and acid that is too strong for the bench.

namespace overwater {

namespace {

/// The strongest acids sold: about 12 mol/L (37 %) and 18.4 mol/L (98 %); 13 leaves room for a label's rounding.
constexpr double strongest_hydrochloric = 13 * mole_per_litre.factor;
constexpr double strongest_sulfuric = 18.4 * mole_per_litre.factor;
/// Above these the teacher decides, or the experiment is done otherwise (method.md, sections 3 and 10).
constexpr double consent_hydrochloric = 3 * mole_per_litre.factor;
constexpr double highest_sulfuric = 2 * mole_per_litre.factor;

void excess(Remarks& remarks) {
    const Assessment& all = remarks.run();
    if (all.acid_gives_out()) {
        remarks.doubt(Field::acid_volume, Message{"check.acid_limits"});
    } else if (all.acid_is_below(2)) {
        remarks.doubt(Field::acid_volume, Message{"check.acid_short"});
    }
}

void strength(Remarks& remarks) {
    if (!remarks.usable(Field::acid_concentration)) return;
    const Reading& reading = remarks.reading(Field::acid_concentration);
    const auto acid = remarks.run().readings.acid;
    if (reading.base > (acid == Acid::hydrochloric ? strongest_hydrochloric : strongest_sulfuric)) {
        remarks.doubt(Field::acid_concentration, as_typed("check.no_such_acid", reading));
    } else if (acid == Acid::hydrochloric && reading.base > consent_hydrochloric) {
        remarks.note(Field::acid_concentration, Message{"note.strong_hydrochloric"});
    } else if (acid == Acid::sulfuric && reading.base > highest_sulfuric) {
        remarks.doubt(Field::acid_concentration, Message{"check.strong_sulfuric"});
    }
}

}  // namespace

void check_acid(Remarks& remarks) {
    excess(remarks);
    strength(remarks);
}

}  // namespace overwater
