// Formulas and equations as they are typed: set, weighed, balanced, and what reacts with what.

#include <algorithm>
#include <cmath>

#include "core/explain/chemical_setting.hpp"
#include "core/matter/limiting.hpp"
#include "core/matter/molar_mass.hpp"
#include "core/quantity/utf8.hpp"
#include "web/draw/typeset.hpp"
#include "web/panels/equations_amounts.hpp"
#include "web/panels/equations_mass.hpp"
#include "web/panels/equations_words.hpp"
#include "web/panels/page_column.hpp"
#include "web/panels/remark.hpp"
#include "web/panels/second_part.hpp"
#include "web/panels/wording.hpp"

namespace overwater {

namespace {

constexpr float room_for_two = 1000;  ///< room for what is typed, and beside it what it comes to
constexpr float gap = 48;
constexpr float set_size = 30;
constexpr float narrow_set_size = 24;
constexpr float least_shrunk = 0.8f;
constexpr float smallest_set = 11;
constexpr Type marked{Face::regular, 18, Ink::text};
constexpr std::size_t most_around = 24;  ///< characters shown on each side of a marked one

struct Example {
    const char* name;
    const char* text;
};
// Balanced by the page. From memory.
constexpr Example examples[] = {{"equations.example.magnesium", "Mg+HCl->MgCl2+H2"},
                                {"equations.example.carbonate", "CaCO3+HCl->CaCl2+H2O+CO2"},
                                {"equations.example.peroxide", "H2O2->H2O+O2"},
                                {"equations.example.chlorate", "KClO3->KCl+O2"},
                                {"equations.example.citric", "NaHCO3+C6H8O7->Na3C6H5O7+CO2+H2O"}};

/// Its name begins with hydrogen, and it is neither that nor water nor the peroxide.
bool is_acid(const ChemicalFormula& formula) {
    const auto& atoms = formula.atoms;
    if (atoms.size() < 2 || atoms[0].atomic_number != 1 || formula.charge < 0) return false;
    return atoms.size() > 2 || atoms[1].atomic_number != 8;
}

class EquationsPage : private PageColumn {
public:
    EquationsPage(App& app, Ui& ui, float top)
        : PageColumn(app, ui, top, 1340, 1340),
          text_(app.equations_desk().at("text")),
          typed_(read_typed(text_)),
          left_(width_ >= room_for_two ? std::floor((width_ - gap) / 2) : width_) {
        if (typed_.kind == TypedChemistry::Kind::formula) mass_ = molar_mass(typed_.formula);
    }

    void draw() {
        begin("equations", app_.say("page.equations"));
        paragraph("equations.about", app_.say("equations.about"), {Face::regular, 15, Ink::soft}, 10);
        const float top = y_;
        input();
        if (typed_.kind == TypedChemistry::Kind::formula) set(set_chemical_formula(typed_.formula));
        if (!typed_.equation.terms.empty()) set(set_equation(typed_.equation, typed_.drawn()));
        problem();
        if (typed_.kind == TypedChemistry::Kind::equation) verdict();
        const bool beside = left_ < width_;
        if (beside) choices();
        const float bottom = y_;
        Rect area{margin_ + (beside ? left_ + gap : 0.0f), beside ? top : y_ + 10, left_, 0};
        if (typed_.kind == TypedChemistry::Kind::formula && mass_.problem.none() && mass_.mass.value.si() > 0) {
            area.y += draw_formula_mass(app_, ui_, area, typed_.formula, mass_.mass);
        } else if (typed_.balanced()) {
            area.y += draw_equation_amounts(app_, ui_, area, typed_);
            area.y = cautions(area);
        } else {
            app_.set_reactants({});
        }
        if (beside && area.y > top) ui_.rule({area.x - gap / 2, top}, {area.x - gap / 2, std::max(bottom, area.y)});
        y_ = std::max(bottom, area.y);
        if (!beside) choices();
        // Another equation was just chosen: what is drawn here are no fields of it.
        if (app_.equations_desk().at("text") != text_) app_.set_reactants({});
        end();
    }

private:
    void input() {
        const std::string words = app_.say("equations.text");
        ui_.label("equations.text.label", "equations.text", {margin_, y_, left_, 22}, words);
        y_ += 24;
        Ui::Field field;
        field.value = text_;
        field.number = false;
        field.input_mode = "text";
        field.described_by = "equations.hint";
        const bool wrong = (typed_.kind == TypedChemistry::Kind::neither && !unfinished()) || !mass_.problem.none();
        field.invalid = wrong;
        if (typed_.kind == TypedChemistry::Kind::neither || wrong) {
            field.described_by += ' ';
            field.described_by += "equations.problem";
        }
        ui_.field("equations.text", {margin_, y_, left_, row_ + 4}, field);
        y_ += row_ + 8;
        y_ += ui_.text("equations.hint", {margin_, y_, left_, 0}, app_.say("equations.hint"), {Face::regular, 14, Ink::soft}) + 16;
    }

    void choices() {
        y_ += 16;
        y_ += ui_.heading("equations.examples", 3, {margin_, y_, left_, 0}, app_.say("equations.examples"),
                          {Face::semibold, 15, Ink::soft});
        Flow flow(margin_, y_, left_, row_, 20);
        for (const Example& example : examples) {
            const std::string label = app_.say(example.name);
            const Rect rect = flow.next(std::min(left_, std::ceil(ui_.text_width(label, small))));
            if (ui_.button(example.name, rect, label, Ui::ButtonLook::link, false, {}, small.size)) {
                const Equation equation = parse_equation(example.text).equation;
                const std::vector<std::int64_t> ones(equation.terms.size(), 1);
                app_.put_equation(equation_text(equation, ones, FormulaScript::plain), true);
            }
        }
        y_ = flow.bottom();
    }

    /// Still being typed: what is wrong lies at the end and may be right with the next letter.
    bool unfinished() const {
        const FormulaProblem& problem = typed_.problem;
        if (problem.kind == FormulaProblemKind::no_arrow || problem.kind == FormulaProblemKind::nothing_there) return true;
        return ui_.focused("equations.text") && problem.at + problem.length >= text_.size();
    }

    /// In as many lines as it needs; smaller where that saves a second line, or a line alone is too wide for the page.
    void set(const Formula& whole) {
        const float all = typeset(whole, size(), Ink::text, ui_.measure()).width;
        if (all > left_ && all * least_shrunk <= left_) shrunk_ = left_ / all;
        std::vector<Formula> line;
        std::vector<Formula> next;
        int number = 0;
        const auto flush = [&] {
            if (!line.empty()) set_line("equations.set." + std::to_string(number++), line);
            line.clear();
        };
        const auto parts = whole.children.empty() ? std::vector<Formula>{whole} : whole.children;
        for (std::size_t i = 0; i < parts.size(); ++i) {
            next.push_back(parts[i]);
            if (parts[i].kind != Formula::Kind::operation && i + 1 < parts.size()) continue;
            std::vector<Formula> both = line;
            both.insert(both.end(), next.begin(), next.end());
            if (typeset(Formula::of(Formula::Kind::row, both), size(), Ink::text, ui_.measure()).width > left_) {
                flush();
                both = next;
            }
            line = std::move(both);
            next.clear();
        }
        flush();
        y_ += 6;
    }

    float size() const { return std::floor((left_ < 450 ? narrow_set_size : set_size) * shrunk_); }

    void set_line(const std::string& key, const std::vector<Formula>& parts) {
        const Formula row = Formula::of(Formula::Kind::row, parts);
        float shown = size();
        float baseline = 0;
        Picture picture = typeset(row, shown, Ink::text, ui_.measure(), &baseline);
        if (picture.width > left_) {
            shown = std::floor(shown * left_ / picture.width);
            picture = typeset(row, shown, Ink::text, ui_.measure(), &baseline);
        }
        if (shown < smallest_set) return;
        ui_.formula(key, {margin_, y_ + baseline}, row, spoken_formula(app_, row), shown, Ink::text);
        y_ += picture.height + 4;
    }

    /// What is wrong, where, and how it was likely meant.
    void problem() {
        const FormulaProblem& found = typed_.kind == TypedChemistry::Kind::neither ? typed_.problem : mass_.problem;
        if (found.none()) return;
        const bool loud = mass_.problem.none() ? !unfinished() : true;
        if (loud) mark(found);
        y_ += draw_remark(ui_, {margin_, y_, left_, 0}, "equations.problem",
                          problem_words(app_, text_, found, loud), loud) +
              4;
        if (found.likely.empty()) return;
        // As it would stand there, with what the letters stand beside: `MgCl2`, not `MgCl`.
        std::string meant = text_;
        meant.replace(found.likely_at, found.likely_length, found.likely);
        const std::size_t before = meant.find_last_of(' ', found.likely_at);
        const std::size_t begin = before == std::string::npos ? 0 : before + 1;
        const std::size_t end = meant.find(' ', found.likely_at);
        const std::string words =
            app_.say(Message{"equations.likely"}.text("likely", meant.substr(begin, end == std::string::npos ? end : end - begin)));
        const Rect rect{margin_, y_, std::min(left_, std::ceil(ui_.text_width(words, Type{})) + 28), row_};
        if (ui_.button("equations.likely", rect, words, Ui::ButtonLook::framed)) {
            app_.put_equation(meant, false);
        }
        y_ += row_ + 8;
    }

    /// The typed text with a mark around what is wrong.
    void mark(const FormulaProblem& found) {
        const std::string_view text = text_;
        const std::size_t at = std::min(found.at, text.size());
        const std::size_t end = std::min(at + found.length, text.size());
        std::size_t from = at;
        for (std::size_t i = 0; i < around() && from > 0; ++i) from = previous(from);
        std::size_t to = at;
        // What is wrong may itself be long.
        for (std::size_t i = 0; i < 2 * around() && to < text.size(); ++i) to += code_point_at(text, to).bytes;
        const std::string before = piece(from, at, from > 0);
        const std::string what = piece(at, std::min(end, to), false);
        std::string after = piece(std::min(end, to), to, false);
        if (to < text.size()) after += "…";
        const float left = margin_ + ui_.text_width(before, marked);
        const float room = std::max(9.0f, ui_.text_width(what, marked));
        ui_.fill({left - 1, y_, room + 2, 28}, Ink::warning_paper, 3);
        ui_.fill({left, y_ + 25, room, 3}, Ink::warning);
        ui_.text("equations.mark", {margin_, y_ + 1, left_, 0}, before + what + after, marked);
        y_ += 34;
    }

    std::size_t around() const { return left_ < 450 ? most_around / 2 : most_around; }

    std::size_t previous(std::size_t at) const {
        do --at;
        while (at > 0 && (static_cast<unsigned char>(text_[at]) & 0xc0) == 0x80);
        return at;
    }

    /// A part of the typed text in which no line is broken.
    std::string piece(std::size_t from, std::size_t to, bool cut) const {
        std::string out = cut ? "…" : "";
        for (std::size_t i = from; i < to; ++i) {
            if (text_[i] == ' ') {
                out += "\u00a0";
            } else {
                out += text_[i];
            }
        }
        return out;
    }

    void verdict() {
        const std::string words = balance_words(app_, typed_);
        if (typed_.balanced()) {
            const Type type{Face::regular, 16, typed_.check.verdict == CoefficientVerdict::wrong ? Ink::text : Ink::good};
            y_ += ui_.text("equations.verdict", {margin_, y_, left_, 0}, words, type) + 4;
        } else {
            y_ += draw_remark(ui_, {margin_, y_, left_, 0}, "equations.verdict", words, true);
        }
    }

    /// Where an acid or a gas takes part.
    float cautions(const Rect& area) {
        const auto& terms = typed_.equation.terms;
        const bool acid = std::any_of(terms.begin(), terms.end(), [](const auto& term) { return is_acid(term.formula); });
        if (!acid && gases_formed(typed_.equation).empty()) return area.y;
        const float tall = draw_short_cautions(app_, ui_, {area.x + 16, area.y + 8, area.w - 16, 0});
        ui_.fill({area.x, area.y + 8, 3, tall}, Ink::copper);
        return area.y + 8 + tall;
    }

    static constexpr Type small{Face::regular, 15, Ink::copper};

    std::string text_;
    TypedChemistry typed_;
    MolarMassReading mass_{};
    float left_;
    float shrunk_ = 1;
};

}  // namespace

void draw_equations_page(App& app, Ui& ui, float top) { EquationsPage(app, ui, top).draw(); }

}  // namespace overwater
