#include "core/matter/equation.hpp"

#include <algorithm>

#include "core/matter/formula_reader.hpp"

namespace overwater {
namespace {

using namespace formula_signs;
using Kind = FormulaProblemKind;

class EquationReader {
public:
    explicit EquationReader(std::string_view text) : text_(text) {}

    EquationReading read() {
        if (text_.size() > longest_equation_text) {
            const std::size_t at = sign_start(text_, longest_equation_text);
            fail(Kind::too_long, at, sign_at(text_, at).bytes);
        }
        if (good() && after_spaces(text_, 0) == text_.size()) fail(Kind::nothing_there, text_.size(), 0);
        while (good() && read_term() && read_what_follows()) {}
        if (good() && !arrow_) fail(Kind::no_arrow, text_.size(), 0);
        if (!good()) result_.equation = {};
        return std::move(result_);
    }

private:
    bool good() const { return result_.problem.none(); }

    bool fail(FormulaProblemKind kind, std::size_t at, std::size_t length) {
        result_.problem.kind = kind;
        result_.problem.at = at;
        result_.problem.length = length;
        return false;
    }

    /// Coefficient and formula.
    bool read_term() {
        at_ = after_spaces(text_, at_);
        EquationTerm term;
        const Number number = number_at(text_, at_);
        if (const std::size_t broken = broken_number(text_, number, true); broken != 0) {
            return fail(Kind::count_not_whole, at_, broken);
        }
        if (number.length != 0) {
            if (number.height != Height::normal) return fail(Kind::count_out_of_place, at_, number.length);
            if (result_.problem = problem_of(number); !good()) return false;
            term.coefficient = number.value;
            term.is_typed = true;
            at_ = after_spaces(text_, number.end());
        }
        if (result_.equation.terms.size() >= most_substances && at_ < text_.size()) {
            return fail(Kind::too_many_substances, at_, sign_at(text_, at_).bytes);
        }
        FormulaReader reader(text_, at_, Within::equation);
        FormulaReading reading = reader.read();
        if (!reading.problem.none()) {
            result_.problem = std::move(reading.problem);
            return false;
        }
        term.formula = std::move(reading.formula);
        term.at = at_;
        at_ = reader.at();
        std::size_t end = at_;
        while (end > term.at && after_spaces(text_, sign_start(text_, end - 1)) >= end)
            end = sign_start(text_, end - 1);
        term.length = end - term.at;
        result_.equation.terms.push_back(std::move(term));
        return true;
    }

    /// A plus or an arrow; false at the end.
    bool read_what_follows() {
        if (at_ >= text_.size()) return false;
        const std::size_t length = arrow_at(text_, at_);
        if (length == 0) {
            at_ += sign_at(text_, at_).bytes;  // the plus at which the formula ended
            return true;
        }
        if (arrow_) return fail(Kind::second_arrow, at_, length);
        arrow_ = true;
        result_.equation.reactants = result_.equation.terms.size();
        at_ += length;
        return true;
    }

    std::string_view text_;
    std::size_t at_ = 0;
    bool arrow_ = false;
    EquationReading result_{};
};

}  // namespace

bool Equation::any_typed() const {
    return std::any_of(terms.begin(), terms.end(), [](const EquationTerm& term) { return term.is_typed; });
}

EquationReading parse_equation(std::string_view text) { return EquationReader(text).read(); }

std::string equation_text(const Equation& equation, const std::vector<std::int64_t>& coefficients,
                          FormulaScript script) {
    std::string text;
    const auto add_between = [&](const char* sign) {
        text += ' ';
        text += sign;
        text += ' ';
    };
    for (std::size_t i = 0; i < equation.terms.size() && i < coefficients.size(); ++i) {
        if (i == equation.reactants) {
            add_between(script == FormulaScript::plain ? "->" : "\u2192");
        } else if (i != 0) {
            add_between("+");
        }
        if (coefficients[i] != 1) {
            text += std::to_string(coefficients[i]);
            text += ' ';
        }
        text += formula_text(equation.terms[i].formula, script);
    }
    return text;
}

}  // namespace overwater
