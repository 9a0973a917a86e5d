#include "core/lesson/plan.hpp"

#include <algorithm>
#include <cmath>

#include "core/lesson/plan_expected.hpp"
#include "core/quantity/number_format.hpp"
#include "core/quantity/units.hpp"
#include "core/result/sense_checks.hpp"

namespace overwater {

namespace {

class Planner {
public:
    explicit Planner(const PlanSheet& sheet)
        : sheet_(sheet),
          by_nature_(nature(sheet.conventions)),
          bench_(bench_sheet(sheet)),
          typed_(assess_sheet(sheet.bench, sheet.conventions)) {
        out_.asked = read_asked(sheet);
        out_.liquid_hangs = liquid_hangs(sheet.bench);
        out_.standard_atmosphere = by_standard_atmosphere(sheet.bench);
    }

    Plan plan() {
        for (const Check& check : typed_.checks) {
            // The evening before, the pressure is a guess.
            const bool guess = check.message.key == "check.pressure_assumed";
            if (!of_acid(check.field) && !guess) out_.checks.push_back(check);
        }
        if (!ruled_out()) {
            window();
            chosen();
            overflow();
            acid();
            expected();
            classes();
        }
        take_acid_checks();
        const bool amounts = out_.has(PlanOutput::mass_window) || out_.has(PlanOutput::gas);
        if (amounts) out_.caution = "cautions.short";
        out_.says = words_of(out_);
        return std::move(out_);
    }

private:
    PlanState& state(PlanOutput o) { return out_.states[static_cast<std::size_t>(o)]; }
    static bool of_acid(Field field) {
        return field == Field::acid_volume || field == Field::acid_concentration || field == Field::acid;
    }
    bool demonstration() const {
        return typed_.readings.sample && reaction(*typed_.readings.sample, Acid::hydrochloric).demonstration_only;
    }

    /// Powders are refused, and so is sulfuric acid with a metal that reacts with water.
    bool ruled_out() {
        std::optional<Message> reason;
        if (out_.asked.powder) reason = Message{"plan.refusal.powder"};
        if (demonstration() && typed_.readings.acid == Acid::sulfuric) {
            for (const Check& check : typed_.checks) {
                if (check.field == Field::acid && check.weight == Check::Weight::doubt) reason = check.message;
            }
        }
        if (!reason) return false;
        for (PlanState& own : out_.states) own.rule_out(*reason);
        return true;
    }

    void window() {
        Entries sheet = bench_;
        sheet.edit(Field::mass_of_metal).text.assign(1, '1');
        sheet.edit(Field::mass_of_metal).unit = UnitId::gram;
        const Assessment all = assess_sheet(sheet, by_nature_);
        PlanState& own = state(PlanOutput::mass_window) = PlanState::settled();
        own.needs_model(all);
        model_state_ = own;
        own.needs(out_.asked, PlanField::least_share);
        own.needs(out_.asked, PlanField::most_share);
        ribbon_state();
        if (!model_state_.has_value()) return;
        PlanModel model(all, out_.liquid_hangs);
        const double capacity = all.readings[Field::tube_capacity].base;
        mass_of_share_ = model.mass_for(model.gas_at(out_.asked.share * capacity));
        const double least = out_.asked.least_share;
        const double most = out_.asked.most_share;
        const std::array shares{least, (least + most) / 2, most};
        for (std::size_t i = 0; i < shares.size(); ++i) {
            out_.window[i] = model.at(shares[i] * capacity);
            out_.window[i].mass = model.mass_for(out_.window[i].amount_of_gas);
            out_.window[i].ribbon_length = length_of(out_.window[i].mass);
            for (const PlanOutput output : {PlanOutput::mass_window, PlanOutput::ribbon_window}) {
                state(output).must_be(out_.window[i].dry_gas_pressure, out_.window[i].mass);
            }
        }
        model_state_.must_be(1.0, mass_of_share_);
    }

    void ribbon_state() {
        const Reading& per_metre = typed_.readings[Field::mass_per_metre];
        if (!per_metre.there) {
            ribbon_state_.wait(FieldSet::of(Field::mass_per_metre));
        } else if (!(per_metre.base > 0)) {
            ribbon_state_.rule_out(as_typed("refusal.not_above_zero", per_metre));
        }
        state(PlanOutput::ribbon_window) = state(PlanOutput::mass_window);
        state(PlanOutput::ribbon_window).inherit(ribbon_state_);
        if (!ribbon_state_.has_value()) return;
        // What one metre weighs, by the model.
        Entries one = bench_;
        one.edit(Field::mass_from).text = "ribbon";
        one.edit(Field::ribbon_length).text.assign(1, '1');
        one.edit(Field::ribbon_length).unit = UnitId::metre;
        const Assessment all = assess_sheet(one, by_nature_);
        if (all.has(Output::mass)) mass_of_a_metre_ = all.outcome[Output::mass];
    }
    double length_of(double mass) const { return mass_of_a_metre_ > 0 ? mass / mass_of_a_metre_ : 0; }

    void chosen() {
        PlanState& own = state(PlanOutput::gas) = PlanState::settled();
        const bool by_share = !mass_is_typed(sheet_.bench);
        if (by_share) {
            own.inherit(model_state_);
            own.needs(out_.asked, PlanField::share);
            if (sheet_.bench.at(Field::mass_from).text == "ribbon") own.inherit(ribbon_state_);
        }
        chosen_ = with_mass(bench_, sheet_.bench,
                            by_share && own.has_value() ? std::optional<double>(mass_of_share_) : std::nullopt);
        // Acid that is given may be too little: then it sets the gas.
        for (const Field field : {Field::acid_volume, Field::acid_concentration}) {
            if (acid_given()) chosen_.edit(field) = sheet_.bench.at(field);
        }
        if (by_share && own.has_value() && !mass_is_typed(chosen_)) {
            own.rule_out(Message{"plan.refusal.too_coarse"}.figures("mass", mass_of_share_, UnitId::gram, 2));
        }
        const Assessment all = assess_sheet(chosen_, by_nature_);
        if (own.has_value()) own.needs_model(all);
        PlanState& mark = state(PlanOutput::scale_reading) = own;
        if (!own.has_value()) return;
        PlanModel model(all, out_.liquid_hangs);
        const double fill = model.fill();
        own.must_be(1.0, 1 + std::fabs(fill));
        if (own.has_value()) out_.chosen = model.at(fill);
        if (own.has_value()) own.must_be(out_.chosen.dry_gas_pressure, out_.chosen.gas_volume);
        mark = own;
        if (!own.has_value()) return;
        out_.chosen.mass = all.has(Output::mass) ? all.outcome[Output::mass] : all.measured[Input::mass_of_metal];
        out_.chosen.ribbon_length = length_of(out_.chosen.mass);
        if (out_.chosen.share > 1) mark.rule_out(Message{"plan.refusal.beyond_last_mark"});
        if (out_.chosen.share < 0) mark.rule_out(Message{"plan.refusal.not_on_scale"});
    }
    bool acid_given() const {
        const FieldSet both = FieldSet::of(Field::acid_volume, Field::acid_concentration);
        return (both - typed_.measured.setup.present).empty();
    }

    /// The chosen sheet as it will be read; where the gas passes the last mark, as if it stood there.
    Entries read_sheet() const {
        PlanPoint point = out_.chosen;
        const double capacity = typed_.readings[Field::tube_capacity].base;
        point.scale_reading = std::clamp(point.scale_reading, 0.0, capacity);
        return as_read(chosen_, point, sheet_.conventions, {out_.standard_atmosphere, out_.liquid_hangs});
    }

    void overflow() {
        PlanState& own = state(PlanOutput::overflow) = state(PlanOutput::gas);
        for (const PlanField field :
             {PlanField::temperature_within, PlanField::pressure_within, PlanField::mouth_space}) {
            own.needs(out_.asked, field);
        }
        if (!own.has_value()) return;
        Entries guesses = read_sheet();
        if (out_.standard_atmosphere) {
            // No barometer's digits: what was planned with.
            write_reading(guesses, Field::barometer, out_.chosen.pressure_at_bench, 9);
        }
        const auto within_of = [&guesses](Field field, double half_width) {
            Entry& entry = guesses.edit(field);
            const Reading reading = read_entry(field, entry);
            entry.plus_minus =
                format_significant(difference_from_base(half_width, reading.unit), 15, DecimalSign::point);
            entry.shape.clear();
        };
        within_of(Field::temperature, out_.asked.temperature_within);
        within_of(Field::barometer, out_.asked.pressure_within);
        own.inherit(assess_sheet(guesses, by_nature_).state(Output::molar_volume_standard));
        if (!own.has_value()) return;
        out_.overflow = overflow_of(guesses, by_nature_, out_.liquid_hangs, out_.asked.mouth_space);
        const Overflow& risk = out_.overflow;
        own.must_be(1.0, std::fabs(risk.upper) + std::fabs(risk.warm) + risk.u);
    }

    void acid() {
        PlanState& own = state(PlanOutput::acid) = state(PlanOutput::gas);
        own.needs(out_.asked, PlanField::excess);
        if (demonstration()) own.rule_out(Message{"plan.refusal.water_only"});
        const PlannedAcid planned = plan_acid(chosen_, sheet_.bench, by_nature_, out_.asked);
        out_.acid = planned.acid;
        own.inherit(planned.state);
        if (planned.asks_consent) own.ask(PlanField::consent);
    }
    void take_acid_checks() {
        const bool planned = out_.has(PlanOutput::gas);
        const std::vector<Check>& from = planned ? out_.acid.checks : typed_.checks;
        for (const Check& check : from) {
            if (of_acid(check.field)) out_.checks.push_back(check);
        }
    }

    void expected() {
        PlanState& own = state(PlanOutput::doubt) = state(PlanOutput::scale_reading);
        if (!own.has_value()) return;
        out_.expected_sheet = read_sheet();
        if (out_.has(PlanOutput::acid)) {
            const bool little = out_.acid.volume < 2 * millilitre.factor;
            write_reading(out_.expected_sheet, Field::acid_volume, out_.acid.volume, little ? 1 : 0);
            Entry& strength = out_.expected_sheet.edit(Field::acid_concentration);
            if (sheet_.bench.at(Field::acid_concentration).text.empty()) {
                strength.text =
                    format_significant(out_.acid.concentration / mole_per_litre.factor, 3, DecimalSign::point);
                strength.unit = UnitId::mole_per_litre;
            } else {
                strength = sheet_.bench.at(Field::acid_concentration);
            }
        }
        out_.expected = assess_sheet(out_.expected_sheet, sheet_.conventions);
        for (const Check& check : out_.expected->checks) {
            if (check.field == Field::end_space && check.weight == Check::Weight::note) out_.checks.push_back(check);
        }
        const Output headline = headline_output(sheet_.conventions);
        own.inherit(out_.expected->state(headline));
        if (!own.has_value()) return;
        const Doubts doubts = doubts_of(*out_.expected);
        out_.budget = budget_of(doubts, Sensitivities(doubts), headline);
        out_.improvements = improvements(*out_.expected, out_.budget);
        out_.cheapest = cheapest_of(out_.improvements);
    }

    void classes() {
        PlanState& own = state(PlanOutput::class_metal) = state(PlanOutput::gas);
        if (demonstration()) own.rule_out(Message{"plan.refusal.no_class"});
        for (const PlanField field : {PlanField::groups, PlanField::runs, PlanField::spare})
            own.needs(out_.asked, field);
        if (!out_.asked.groups && out_.asked.usable(PlanField::groups)) own.ask(PlanField::groups);
        PlanState& acid = state(PlanOutput::class_acid) = own;
        acid.inherit(state(PlanOutput::acid));
        if (!own.has_value()) return;
        ClassAmounts& all = out_.amounts;
        all.groups = *out_.asked.groups;
        all.runs = out_.asked.runs;
        // 10 pieces and 20 % are 12 pieces, whatever the last bit says.
        const double pieces = all.groups * all.runs * (1 + out_.asked.spare);
        all.pieces = static_cast<int>(std::ceil(pieces - 1e-9));
        all.mass = all.pieces * out_.chosen.mass;
        all.ribbon = all.pieces * out_.chosen.ribbon_length;
        if (acid.has_value()) all.acid_volume = all.pieces * out_.acid.volume;
    }

    const PlanSheet& sheet_;
    Conventions by_nature_;
    Entries bench_;
    Assessment typed_;
    Entries chosen_;
    PlanState model_state_;                          ///< nothing but the mass is missing
    PlanState ribbon_state_ = PlanState::settled();  ///< the mass per metre
    double mass_of_share_ = 0;
    double mass_of_a_metre_ = 0;
    Plan out_;
};

}  // namespace

Plan plan_run(const PlanSheet& sheet) { return Planner(sheet).plan(); }

}  // namespace overwater
