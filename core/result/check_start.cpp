#include "core/result/sense_checks.hpp"

/// Gas that was in the tube before the reaction.

namespace overwater {

namespace {

/// Below this share of the result the level at the start is not worth a sentence.
constexpr double worth_saying = 0.001;

void below_zero(Remarks& remarks) {
    for (const Field field : {Field::start_reading, Field::starting_bubble, Field::start_level_difference}) {
        if (remarks.usable(field) && remarks.base(field) < 0) {
            remarks.doubt(field, as_typed("check.below_zero", remarks.reading(field)));
        }
    }
}

void beyond_scale(Remarks& remarks) {
    if (!remarks.usable(Field::start_reading) || !remarks.usable(Field::tube_capacity)) return;
    const Reading& capacity = remarks.reading(Field::tube_capacity);
    if (remarks.base(Field::start_reading) <= capacity.base) return;
    remarks.doubt(Field::start_reading, as_typed("check.start_beyond_scale", remarks.reading(Field::start_reading))
                                            .quantity("capacity", capacity.base, capacity.unit, decimals_of(capacity)));
}

void more_than_at_the_end(Remarks& remarks) {
    const Assessment& all = remarks.run();
    if (!all.has(Output::gas_at_start) || !all.has(Output::gas_at_end)) return;
    if (all.outcome[Output::gas_at_start] <= all.outcome[Output::gas_at_end]) return;
    if (remarks.setup().start == Start::reading) {
        remarks.doubt(Field::start_reading, Message{"check.more_gas_at_start"});
    } else {
        remarks.doubt(Field::starting_bubble, Message{"check.bubble_larger"});
    }
}

/// Nobody measured the level at the start. Where the tube stood nearly full with its mouth just under water, all of its
/// liquid hung below the outside pressure: from (p_end - p_w) V_end - (p_start - p_w) V_start the gas found is low by
/// V_start (p_end - p_start)/(p_end - p_w).
void level_blank(Remarks& remarks) {
    const Assessment& all = remarks.run();
    const auto scale = scale_length(remarks.readings());
    if (!scale || !all.has(Output::gas_volume) || !all.has(Output::gas_at_start) || !all.has(Output::water_density) ||
        !all.has(Output::dry_gas_pressure) || !all.has(Output::column_pressure)) {
        return;
    }
    const double tall = remarks.setup().start == Start::reading
                            ? length_below(remarks.base(Field::start_reading), remarks, *scale)
                            : remarks.base(Field::tube_capacity) * scale->per_volume;
    const double column = all.outcome[Output::column_pressure];
    const double at_the_end = remarks.setup().liquid_stands == LiquidStands::higher_inside ? column : -column;
    const double at_the_start = all.outcome[Output::water_density] * all.measured[Input::gravity] * tall;
    const double share = all.outcome[Output::gas_at_start] * (at_the_start - at_the_end) /
                         (all.outcome[Output::dry_gas_pressure] * all.outcome[Output::gas_volume]);
    if (share < worth_saying) return;
    remarks.note(Field::start_level_difference,
                 Message{"note.start_level_blank"}.figures("share", share, UnitId::percent, 2));
}

}  // namespace

void check_start(Remarks& remarks) {
    if (remarks.setup().start == Start::nothing) return;
    below_zero(remarks);
    beyond_scale(remarks);
    if (remarks.typed(Field::start_reading) && remarks.typed(Field::starting_bubble)) {
        remarks.doubt(Field::starting_bubble, Message{"check.start_and_bubble"});
    }
    more_than_at_the_end(remarks);
    if (!remarks.setup().present.has(Field::start_level_difference)) {
        level_blank(remarks);
    } else if (remarks.setup().liquid_stands == LiquidStands::level) {
        remarks.note(Field::start_level_difference, Message{"note.start_level_not_used"});
    }
}

}  // namespace overwater
