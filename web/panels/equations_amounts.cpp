#include "web/panels/equations_amounts.hpp"

#include <algorithm>
#include <cmath>

#include "core/matter/constants.hpp"
#include "core/matter/formula_text.hpp"
#include "core/matter/limiting.hpp"
#include "core/matter/reaction.hpp"
#include "core/quantity/number_format.hpp"
#include "core/quantity/number_text.hpp"
#include "core/result/refusals.hpp"
#include "web/app/app.hpp"
#include "web/panels/equations_words.hpp"
#include "web/panels/remark.hpp"
#include "web/panels/ruled_table.hpp"
#include "web/panels/types.hpp"

namespace overwater {

namespace {

constexpr Type said{Face::semibold, 16, Ink::text};
constexpr UnitId units[] = {UnitId::gram, UnitId::milligram, UnitId::mole, UnitId::millimole};
constexpr float field_width = 84;
constexpr float unit_width = 66;
constexpr int fewest_figures = 3;
constexpr int most_figures = 6;
/// A formula in a list is set smaller rather than cut.
constexpr float list_room = 26;

class Amounts {
public:
    Amounts(App& app, Ui& ui, const Rect& area, const TypedChemistry& typed)
        : app_(app),
          ui_(ui),
          conventions_(app.record().conventions),
          equation_(typed.equation),
          coefficients_(typed.coefficients),
          area_(area),
          y_(area.y),
          box_(ui.touch() ? 38.0f : 30.0f) {
        for (const EquationTerm& term : equation_.terms) {
            names_.push_back(substance_words(term.formula));
            masses_.push_back(class_molar_mass(conventions_, term.formula));
        }
    }

    float draw() {
        y_ += ui_.heading("equations.amounts", 3, {area_.x, y_, area_.w, 0}, app_.say("equations.amounts"),
                          {Face::semibold, 17, Ink::text}) +
              2;
        read();
        if (!extent_) {
            y_ += ui_.text("equations.amounts_hint", {area_.x, y_, area_.w, 0}, app_.say("equations.amounts_hint"), small) + 4;
        }
        for (const std::string& name : names_) label_ = std::max(label_, ui_.text_width(name, Type{}));
        label_ = std::min(std::max(std::ceil(label_) + 16, 92.0f), area_.w - field_width - unit_width - 8);
        for (std::size_t i = 0; i < equation_.reactants; ++i) reactant(i);
        if (extent_) {
            limiting();
            products();
        }
        gas();
        return y_ - area_.y;
    }

private:
    struct Given {
        std::string formula;  ///< plain, by which its texts are kept
        std::string text;
        UnitId unit = UnitId::gram;
        NumberText number{};
    };

    void read() {
        std::vector<std::string> formulas;
        std::vector<std::optional<Amount>> amounts;
        bool any_wrong = false;
        for (std::size_t i = 0; i < equation_.reactants; ++i) {
            Given& one = given_.emplace_back();
            one.formula = formula_text(equation_.terms[i].formula, FormulaScript::plain);
            formulas.push_back(one.formula);
            one.text = app_.equations_desk().at("amount." + one.formula);
            one.unit = unit_by_key(app_.equations_desk().at("unit." + one.formula)).value_or(UnitId::gram);
            one.number = parse_number(one.text, Measure::mass);
            if (one.number.problem == Problem::wrong_kind_of_unit) one.number = parse_number(one.text, Measure::amount);
            amounts.emplace_back();
            if (one.number.state == NumberText::State::blank) continue;
            if (one.number.unit != UnitId::none) one.unit = one.number.unit;
            any_wrong = any_wrong || is_wrong(one, i);
            if (is_wrong(one, i)) continue;
            const double base = to_base(one.number.value, one.unit);
            amounts.back() = Amount::si(is_mass(one.unit) ? base / masses_[i] : base);
            const int figures = std::clamp(one.number.figures, fewest_figures, most_figures);
            figures_ = figures_ == 0 ? figures : std::min(figures_, figures);
        }
        if (!any_wrong) extent_ = reaction_extent(equation_, coefficients_, amounts);
        amounts_ = std::move(amounts);
        app_.set_reactants(std::move(formulas));
    }

    static bool is_mass(UnitId unit) { return info(unit).measure == Measure::mass; }

    bool is_wrong(const Given& one, std::size_t i) const {
        return one.number.state == NumberText::State::not_a_number || one.number.value < 0 ||
               (is_mass(one.unit) && masses_[i] <= 0);
    }

    std::string wrong_words(const Given& one) const {
        if (one.number.state == NumberText::State::not_a_number) return app_.say(key_of_text(one.number.problem));
        if (one.number.value < 0) return app_.say(Message{"refusal.below_zero"}.text("reading", one.text));
        return app_.say("equations.problem.no_weight");
    }

    std::string quantity(double base, UnitId unit) const {
        return app_.language().with_unit(format_significant(from_base(base, unit), figures_, conventions_.decimal_sign,
                                                            conventions_.rounding),
                                         unit);
    }

    /// "0.0250 mol = 2.50 g"; without a molar mass the first alone.
    std::string both(double mole, double molar_mass) const {
        std::string words = quantity(mole, UnitId::mole);
        if (molar_mass > 0) words += "\u00a0=\u00a0" + quantity(mole * molar_mass, UnitId::gram);
        return words;
    }

    void reactant(std::size_t i) {
        const Given& one = given_[i];
        const std::string key = "equations.amount." + std::to_string(i);
        const auto lines = static_cast<float>(ui_.lines(names_[i], Type{}, label_ - 8).size());
        const float tall = std::max(box_, lines * Ui::line_height(Type{}));
        ui_.label(key + ".label", key, {area_.x, y_, label_ - 8, tall}, names_[i]);
        const Rect box{area_.x + label_, y_, field_width, box_};
        Ui::Field about;
        about.value = one.text;
        about.name = app_.say(Message{"equations.given"}.text("substance", names_[i]));
        const bool wrong = one.number.state != NumberText::State::blank && is_wrong(one, i);
        about.invalid = wrong;
        const std::string words = wrong ? wrong_words(one) : extent_ ? result_words(i) : std::string();
        if (!words.empty()) about.described_by = key + ".result";
        ui_.field(key, box, about);
        Ui::Choice choice;
        for (const UnitId unit : units) choice.options.emplace_back(info(unit).key, info(unit).symbol);
        choice.chosen = info(one.unit).key;
        choice.shown = info(one.unit).symbol;
        choice.framed = false;
        choice.ink = Ink::soft;
        choice.name = app_.say(Message{"equations.unit_of"}.text("substance", names_[i]));
        const float unit_room = std::max(26.0f, std::ceil(ui_.text_width(choice.shown, Type{})) + 20);
        ui_.select(key + ".unit", {box.right() + 8, y_, unit_room, box_}, choice);
        const float right = box.right() + unit_width + 8;
        const bool beside = area_.x + area_.w - right >= 230 && !wrong;
        const Rect place = beside ? Rect{right, y_ + (box_ - 22) / 2, area_.x + area_.w - right, 0}
                                  : Rect{area_.x, y_ + tall + 2, area_.w, 0};
        y_ += tall;
        if (wrong) {
            y_ += draw_remark(ui_, place, key + ".result", words, true);
        } else if (!words.empty()) {
            y_ = std::max(y_, place.y + ui_.text(key + ".result", place, words));
        }
        y_ += 6;
    }

    std::string result_words(std::size_t i) const {
        const std::string used = both(extent_->used[i].si(), masses_[i]);
        if (!amounts_[i]) return app_.say(Message{"equations.needed"}.text("amount", used));
        const std::string there = quantity(amounts_[i]->si(), UnitId::mole);
        const auto& limits = extent_->limiting;
        if (std::find(limits.begin(), limits.end(), i) != limits.end()) {
            return app_.say(Message{"equations.used_up"}.text("amount", there));
        }
        return app_.say(
            Message{"equations.left"}.text("amount", there).text("left", both(extent_->left[i].si(), masses_[i])));
    }

    /// Where one amount alone is known nothing competes.
    void limiting() {
        std::size_t known = 0;
        for (const auto& amount : amounts_) known += amount ? 1U : 0U;
        if (known < 2) return;
        std::vector<std::string> names;
        for (const std::size_t i : extent_->limiting) names.push_back(names_[i]);
        const std::string words = names.size() == 1
                                      ? app_.say(Message{"equations.limits"}.text("substance", names[0]))
                                      : app_.say(Message{"equations.exact"}.text("substances", app_.language().list(names)));
        y_ += ui_.text("equations.limits", {area_.x, y_ + 2, area_.w, 0}, words, said) + 8;
    }

    double molar_volume() const {
        const StandardState state = standard_state(conventions_);
        return gas_constant.si() * state.temperature.in_kelvin() / state.pressure.si();
    }

    void products() {
        const std::vector<std::size_t> gases = gases_formed(equation_);
        std::vector<std::string> columns{app_.say("equations.product"), app_.say("equations.amount"),
                                         app_.say("equations.mass")};
        if (!gases.empty()) columns.push_back(app_.say("output.gas_volume"));
        std::vector<std::vector<std::string>> rows{columns};
        for (std::size_t i = equation_.reactants; i < equation_.terms.size(); ++i) {
            const double mole = extent_->formed[i - equation_.reactants].si();
            std::vector<std::string> cells{names_[i], quantity(mole, UnitId::mole),
                                           masses_[i] > 0 ? quantity(mole * masses_[i], UnitId::gram) : "–"};
            if (!gases.empty()) {
                const bool is_gas = std::find(gases.begin(), gases.end(), i) != gases.end();
                cells.push_back(is_gas ? quantity(mole * molar_volume(), UnitId::litre) : std::string());
            }
            rows.push_back(std::move(cells));
        }
        y_ += draw_ruled_table(ui_, "equations.products", {area_.x, y_, area_.w, 0}, columns[0], rows) + 12;
    }

    /// Gas for a mole of what was weighed: the first reactant, or the one chosen.
    void gas() {
        const std::vector<std::size_t> gases = gases_formed(equation_);
        if (gases.empty()) return;
        std::size_t per = 0;
        Ui::Choice choice;
        for (std::size_t i = 0; i < equation_.reactants; ++i) {
            if (given_[i].formula == app_.equations_desk().at("per")) per = i;
            choice.options.emplace_back(std::to_string(i), names_[i]);
        }
        choice.chosen = std::to_string(per);
        float wide = 0;
        for (std::size_t i = 0; i < equation_.reactants; ++i) wide = std::max(wide, ui_.text_width(names_[i], Type{}));
        wide = std::ceil(wide) + list_room + 4;
        const std::string words = app_.say("equations.per");
        const float label = std::ceil(ui_.text_width(words, Type{})) + 10;
        y_ += 4;
        ui_.label("equations.per.label", "equations.per", {area_.x, y_, label, box_}, words);
        const bool below = label + wide > area_.w;
        if (below) y_ += box_;
        ui_.select("equations.per", {area_.x + (below ? 0 : label), y_, std::min(wide, area_.w), box_}, choice);
        y_ += box_ + 4;
        std::vector<std::string> names;
        for (const std::size_t i : gases) names.push_back(names_[i]);
        const WholeRatio ratio = gas_per_mole(equation_, coefficients_, per);
        std::string amount = std::to_string(ratio.numerator);
        if (ratio.denominator != 1) amount += '/' + std::to_string(ratio.denominator);
        y_ += ui_.text("equations.gas", {area_.x, y_, area_.w, 0},
                       app_.say(Message{"equations.gas"}
                                    .text("amount", amount)
                                    .text("gases", app_.language().list(names))
                                    .text("volume", app_.language().with_unit(
                                                        format_significant(
                                                            from_base(ratio.value() * molar_volume(), UnitId::litre), 4,
                                                            conventions_.decimal_sign, conventions_.rounding),
                                                        UnitId::litre))
                                    .text("conditions", standard_words(app_)))) +
              6;
        if (gases.size() == 1 && app_.practice() == nullptr) take(per, ratio.value(), gases[0]);
    }

    std::string plain(std::size_t term) const {
        ChemicalFormula formula = equation_.terms[term].formula;
        formula.state = State::none;
        return formula_text(formula, FormulaScript::plain);
    }

    std::string decimal(double value) const { return without_end_zeros(format_fixed(value, 5, DecimalSign::point), DecimalSign::point); }

    /// What the bench asks for: a substance that it knows, or molar mass, gas and ratios of another one.
    std::vector<std::pair<Field, std::string>> for_the_bench(std::size_t weighed, double gas_per_mole, std::size_t gas) const {
        std::vector<std::pair<Field, std::string>> entries;
        const std::string formula = plain(weighed);
        std::optional<Acid> with;
        for (std::size_t i = 0; i < equation_.reactants; ++i) {
            for (std::size_t a = 0; a < acid_count; ++a) {
                const auto acid = static_cast<Acid>(a);
                if (plain(i) != formula_of(acid)) continue;
                with = acid;
                entries.emplace_back(Field::acid, key_of(acid));
                entries.emplace_back(Field::acid_per_mole,
                                     decimal(moles_per_mole(coefficients_, i, weighed).value()));
            }
        }
        for (std::size_t i = 0; i + 1 < sample_count; ++i) {
            const auto sample = static_cast<Substance>(i);
            const Reaction& listed = reaction(sample, with.value_or(Acid::hydrochloric));
            const bool same = listed.acid == 0 ? equation_.reactants == 1 : with && equation_.reactants == 2;
            if (!same || formula != symbol_of(sample) || plain(gas) != formula_of(listed.kind_of_gas)) continue;
            entries.emplace_back(Field::metal, key_of(sample));
            return entries;
        }
        std::string_view kind = gas_names[static_cast<std::size_t>(Gas::other)];
        for (std::size_t i = 0; i < gas_count; ++i) {
            if (plain(gas) == gas_formulas[i]) kind = gas_names[i];
        }
        entries.emplace_back(Field::metal, key_of(Substance::own));
        entries.emplace_back(Field::molar_mass, decimal(1e3 * masses_[weighed]));
        entries.emplace_back(Field::gas, kind);
        entries.emplace_back(Field::gas_per_mole, decimal(gas_per_mole));
        return entries;
    }

    void take(std::size_t weighed, double gas_per_mole, std::size_t gas) {
        const std::string words = app_.say(Message{"equations.take"}.text("substance", names_[weighed]));
        const float wide = std::ceil(ui_.text_width(words, Type{}));
        const float tall = ui_.touch() ? 44.0f : 32.0f;
        if (ui_.button("equations.take", {area_.x, y_, std::min(wide, area_.w), tall}, words)) {
            app_.take_reaction(for_the_bench(weighed, gas_per_mole, gas));
        }
        y_ += tall + 10;
    }

    App& app_;
    Ui& ui_;
    const Conventions& conventions_;
    const Equation& equation_;
    const std::vector<std::int64_t>& coefficients_;
    Rect area_;
    float y_;
    float box_;
    float label_ = 0;
    std::vector<std::string> names_;
    std::vector<double> masses_;  ///< kg/mol, one a term; 0 where there is none
    std::vector<Given> given_;
    std::vector<std::optional<Amount>> amounts_;
    std::optional<Extent> extent_;
    int figures_ = 0;
};

}  // namespace

float draw_equation_amounts(App& app, Ui& ui, const Rect& area, const TypedChemistry& typed) {
    return Amounts(app, ui, area, typed).draw();
}

}  // namespace overwater
