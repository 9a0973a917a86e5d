#include "core/quantity/units.hpp"
#include "core/result/sense_checks.hpp"

/// The room between the closed end and the nearest mark, where the scale does not count it.

namespace overwater {

namespace {

/// Each mL that was not counted makes the molar volume low by one mL's share of the gas, and high what is divided by it.
/// Against a start reading on the same scale it drops out, but for the other pressure at the start.
void blank(Remarks& remarks) {
    const Assessment& all = remarks.run();
    if (remarks.setup().present.has(Field::end_space) || !all.has(Output::gas_volume)) return;
    double missing = millilitre.factor;
    if (remarks.setup().start == Start::reading) {
        if (!remarks.setup().start_level_known) {
            remarks.note(Field::end_space, Message{"note.end_space_cancels"});
            return;
        }
        missing *= 1 - all.outcome[Output::start_dry_pressure] / all.outcome[Output::dry_gas_pressure];
        if (missing <= 0) return;
    }
    const Output sought = sought_output(all.conventions, remarks.setup().target);
    remarks.note(Field::end_space,
                 Message{falls_with_volume(sought) ? "note.end_space_blank_high" : "note.end_space_blank"}.figures(
                     "share", missing / all.outcome[Output::gas_volume], UnitId::percent, 2));
}

}  // namespace

void check_end_space(Remarks& remarks) {
    if (remarks.setup().closed_end != ClosedEnd::largest) return;
    blank(remarks);
    if (!remarks.usable(Field::end_space)) return;
    const Reading& reading = remarks.reading(Field::end_space);
    // In the model it is a volume also where the water was weighed.
    const double volume = remarks.run().measured[Input::end_space];
    if (volume == 0) {
        remarks.doubt(Field::end_space, as_typed("check.end_space_zero", reading));
    } else if (remarks.usable(Field::tube_capacity) && volume > remarks.base(Field::tube_capacity) / 5) {
        remarks.doubt(Field::end_space, as_typed("check.end_space_large", reading));
    }
}

}  // namespace overwater
