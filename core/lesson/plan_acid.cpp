#include "core/lesson/plan_acid.hpp"

#include "core/lesson/plan_model.hpp"
#include "core/quantity/units.hpp"

namespace overwater {

namespace {

using Kind = OutputState::Kind;

// Moles of protons in a litre. Common practice, no source: classes use 1 mol/L hydrochloric acid where patience is
// asked for, and 2 to 3 mol/L usually (method.md, section 10).
constexpr double slow_below = 1 * mole_per_litre.factor;
constexpr double brisk_above = 3 * mole_per_litre.factor;

bool typed(const Readings& readings, Field field) { return readings[field].number.state != NumberText::State::blank; }

/// A number that was worked out, in the place of a reading; a check that shows it shows hundredths.
Reading computed(double base, UnitId unit) {
    Reading reading;
    reading.number.state = NumberText::State::number;
    reading.number.value = from_base(base, unit);
    reading.unit = unit;
    reading.base = base;
    reading.there = true;
    reading.last_place = -2;
    return reading;
}

class AcidPlanner {
public:
    AcidPlanner(const Entries& run, const Entries& typed_sheet, const Conventions& by_nature, const PlanAsked& asked)
        : by_(by_nature), asked_(asked) {
        readings_ = read_all([&](Field field) -> const Entry& {
            const bool own = field == Field::acid_volume || field == Field::acid_concentration;
            return own ? typed_sheet.at(field) : run.at(field);
        });
        has_volume_ = typed(readings_, Field::acid_volume);
        has_concentration_ = typed(readings_, Field::acid_concentration);
    }

    PlannedAcid plan() {
        const Assessment start = assess(readings_, by_);
        take_checks(start);
        if (start.readings.sample && reaction(*start.readings.sample, Acid::hydrochloric).demonstration_only) {
            return ruled_out(Message{"plan.refusal.water_only"});
        }
        if (!start.readings.acid) return waiting(FieldSet::of(Field::acid));
        if (!has_volume_ && !has_concentration_) return waiting(FieldSet::of(Field::acid_concentration));
        if (!has_volume_) return by_concentration(start);
        if (!has_concentration_) return by_volume();
        return settled(start);
    }

private:
    PlannedAcid ruled_out(const Message& reason) {
        out_.state.kind = Kind::not_possible;
        out_.state.reason = reason;
        return out_;
    }
    PlannedAcid waiting(FieldSet fields) {
        out_.state.kind = Kind::waiting;
        out_.state.waiting_for = fields;
        return out_;
    }

    void put(Field field, double base, UnitId unit) {
        readings_.typed[static_cast<std::size_t>(field)] = computed(base, unit);
    }

    void take_checks(const Assessment& all) {
        out_.acid.checks.clear();
        for (const Check& check : all.checks) {
            const bool of_acid = check.field == Field::acid || check.field == Field::acid_volume ||
                                 check.field == Field::acid_concentration;
            if (of_acid) out_.acid.checks.push_back(check);
        }
    }

    PlannedAcid by_concentration(const Assessment& all) {
        const OutputState& state = all.state(Output::acid_volume_needed);
        if (state.kind != Kind::value) {
            out_.state = state;
            return out_;
        }
        put(Field::acid_volume, asked_.excess * all.outcome[Output::acid_volume_needed], UnitId::millilitre);
        return settled(assess(readings_, by_));
    }

    PlannedAcid by_volume() {
        // The excess goes with the concentration: what 1 mol/L would give tells what is needed.
        put(Field::acid_concentration, mole_per_litre.factor, UnitId::mole_per_litre);
        const Assessment one = assess(readings_, by_);
        if (one.state(Output::acid_excess).kind != Kind::value) {
            out_.state = one.state(Output::acid_excess);
            return out_;
        }
        put(Field::acid_concentration, asked_.excess / one.outcome[Output::acid_excess] * mole_per_litre.factor,
            UnitId::mole_per_litre);
        return settled(assess(readings_, by_));
    }

    PlannedAcid settled(const Assessment& all) {
        take_checks(all);
        out_.state = all.state(Output::acid_excess);
        if (out_.state.kind != Kind::value) return out_;
        PlanAcid& acid = out_.acid;
        acid.needed = all.outcome[Output::acid_needed];
        acid.volume = all.measured[Input::acid_volume];
        acid.concentration = all.measured[Input::acid_concentration];
        acid.excess = all.outcome[Output::acid_excess];
        const Setup& setup = all.measured.setup;
        // Hydrogen takes two protons a molecule.
        const double protons = 2 * setup.gas_per_sample / setup.acid_per_sample * acid.concentration;
        acid.slow = protons < slow_below;
        acid.brisk = protons > brisk_above;
        for (const Check& check : acid.checks) {
            const std::string_view key = check.message.key;
            if (key == "check.no_such_acid" || key == "check.strong_sulfuric") return ruled_out(check.message);
            if (key == "note.strong_hydrochloric") acid.needs_consent = true;
        }
        const Reading& capacity = all.readings[Field::tube_capacity];
        if (capacity.there && acid.volume > capacity.base) {
            return ruled_out(Message{"plan.refusal.acid_no_room"}
                                 .figures("volume", acid.volume, UnitId::millilitre, 3)
                                 .figures("capacity", capacity.base, UnitId::millilitre, 3));
        }
        if (acid.needs_consent && !asked_.consent) {
            out_.asks_consent = true;
            return waiting({});
        }
        return out_;
    }

    Readings readings_;
    const Conventions& by_;
    const PlanAsked& asked_;
    bool has_volume_ = false;
    bool has_concentration_ = false;
    PlannedAcid out_;
};

}  // namespace

PlannedAcid plan_acid(const Entries& run, const Entries& typed_sheet, const Conventions& by_nature,
                      const PlanAsked& asked) {
    return AcidPlanner(run, typed_sheet, by_nature, asked).plan();
}

}  // namespace overwater
