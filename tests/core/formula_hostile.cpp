#include <doctest/doctest.h>

#include <array>
#include <map>
#include <random>
#include <string>

#include "core/matter/balance.hpp"
#include "core/matter/equation_check.hpp"
#include "core/matter/limiting.hpp"
#include "core/matter/molar_mass.hpp"
#include "core/matter/periodic_table.hpp"
#include "core/quantity/utf8.hpp"

using namespace overwater;

namespace {

using Generator = std::mt19937_64;

int below(Generator& generator, int limit) { return static_cast<int>(generator() % static_cast<unsigned>(limit)); }

/// A formula made at random, in three forms, and what it consists of.
struct Made {
    std::string plain;
    std::string raised;
    std::map<int, int> atoms;
};

std::string lowered(int number) {
    constexpr std::array<const char*, 10> digits{"\u2080", "\u2081", "\u2082", "\u2083", "\u2084",
                                                 "\u2085", "\u2086", "\u2087", "\u2088", "\u2089"};
    std::string text;
    for (const char digit : std::to_string(number)) text += digits[static_cast<std::size_t>(digit - '0')];
    return text;
}

void append_count(Made& made, int count) {
    if (count == 1) return;
    made.plain += std::to_string(count);
    made.raised += lowered(count);
}

Made random_group(Generator& generator, int levels) {
    Made made;
    const int pieces = 1 + below(generator, 3);
    for (int i = 0; i < pieces; ++i) {
        const int count = below(generator, 2) == 0 ? 1 : 1 + below(generator, 12);
        if (levels > 0 && below(generator, 4) == 0) {
            const Made inner = random_group(generator, levels - 1);
            const bool square = below(generator, 3) == 0;
            made.plain += (square ? '[' : '(') + inner.plain + (square ? ']' : ')');
            made.raised += (square ? '[' : '(') + inner.raised + (square ? ']' : ')');
            append_count(made, count);
            for (const auto& [element, number] : inner.atoms) made.atoms[element] += number * count;
        } else {
            const int element = 1 + below(generator, last_atomic_number);
            made.plain += element_symbol(element);
            made.raised += element_symbol(element);
            append_count(made, count);
            made.atoms[element] += count;
        }
    }
    return made;
}

Made random_formula(Generator& generator) {
    Made made = random_group(generator, 3);
    if (below(generator, 4) == 0) {
        const Made part = random_group(generator, 1);
        const int times = 1 + below(generator, 10);
        const std::string number = times == 1 ? "" : std::to_string(times);
        made.plain += '.' + number + part.plain;
        made.raised += "\u00B7" + number + part.raised;
        for (const auto& [element, count] : part.atoms) made.atoms[element] += count * times;
    }
    return made;
}

/// What holds for every text, whatever its bytes.
bool keeps_its_word(std::string_view text, const FormulaProblem& problem) {
    const bool inside = problem.at <= text.size() && problem.length <= text.size() - problem.at;
    const bool likely_inside =
        problem.likely_at <= text.size() && problem.likely_length <= text.size() - problem.likely_at;
    const bool likely_agrees = problem.likely.size() == problem.likely_length;
    std::size_t character = 0;
    while (character < problem.at) character += code_point_at(text, character).bytes;
    const bool on_a_character = character == problem.at;
    return inside && likely_inside && likely_agrees && on_a_character;
}

void survive_formula(std::string_view text) {
    const FormulaReading reading = parse_formula(text);
    if (!keeps_its_word(text, reading.problem)) FAIL_CHECK("broke its word: " << std::string(text));
    if (!reading.problem.none()) return;
    const MolarMassReading mass = molar_mass(reading.formula);
    if (mass.problem.none() && !(mass.mass.value.si() > 0.0) && !reading.formula.is_electron()) {
        FAIL_CHECK("weighs nothing: " << std::string(text));
    }
    for (const ElementCount& one : reading.formula.atoms) {
        if (one.count < 1 || one.count > largest_atom_count) FAIL_CHECK("wrong count: " << std::string(text));
    }
    const std::string plain = formula_text(reading.formula, FormulaScript::plain);
    if (plain.size() > longest_formula_text) return;
    const ChemicalFormula again = parse_formula(plain).formula;
    if (!again.same_formula(reading.formula)) FAIL_CHECK("not read back: " << std::string(text) << " as " << plain);
}

void survive_equation(std::string_view text) {
    const EquationReading reading = parse_equation(text);
    if (!keeps_its_word(text, reading.problem)) FAIL_CHECK("broke its word: " << std::string(text));
    if (!reading.problem.none()) return;
    check_coefficients(reading.equation);
    const Balance found = balance(reading.equation);
    if (found.problem != BalanceProblem::none) return;
    Equation balanced = reading.equation;
    for (std::size_t i = 0; i < balanced.terms.size(); ++i) {
        if (found.coefficients[i] > largest_count) return;
        balanced.terms[i].coefficient = static_cast<int>(found.coefficients[i]);
    }
    if (check_coefficients(balanced).verdict != CoefficientVerdict::right) {
        FAIL_CHECK("not balanced: " << std::string(text));
    }
}

constexpr std::array<std::string_view, 64> pieces{
    "H",      "O2",     "Na",       "Cl",     "Fe",     "C",      "mg",     "X",      "1",      "2",      "0",
    "12",     "99999",  "(",        ")",      "[",      "]",      "{",      "}",      "()",     "^",      "^2-",
    "+",      "-",      " + ",      " ",      "->",     "=",      "-->",    "\u2192", "\u21CC", "<->",    "<",
    ">",      "e-",     "e",        ".",      "*",      "\u00B7", ",",      "/",      "(s)",    "(aq)",   "(g",
    "\u2191", "\u2193", "\u2082",   "\u2080", "\u00B2", "\u207A", "\u207B", "\u00BD", "\u00A0", "\u2212", "\uFF28",
    "\u041D", "\xFF",   "\xE2\x82", "H2O",    "CO2",    "SO42-",  "NH4+",   "Fe3+",   "\t"};

}  // namespace

TEST_CASE("formulas made at random are read as they were made, and written as they were read") {
    Generator generator(20240607);
    int read = 0;
    for (int i = 0; i < 5000; ++i) {
        const Made made = random_formula(generator);
        if (made.raised.size() > longest_formula_text) continue;
        ++read;
        for (const std::string* text : {&made.plain, &made.raised}) {
            const FormulaReading reading = parse_formula(*text);
            if (!reading.problem.none()) {
                FAIL_CHECK("not read: " << *text);
                continue;
            }
            std::map<int, int> atoms;
            for (const ElementCount& one : reading.formula.atoms) atoms[one.atomic_number] = one.count;
            if (atoms != made.atoms) FAIL_CHECK("read otherwise: " << *text);
            if (formula_text(reading.formula, FormulaScript::plain) != made.plain) FAIL_CHECK("plain: " << *text);
            if (formula_text(reading.formula, FormulaScript::raised) != made.raised) FAIL_CHECK("raised: " << *text);
        }
    }
    CHECK(read > 4000);
}

TEST_CASE("charges and states made at random are read as they were made") {
    Generator generator(5);
    for (int i = 0; i < 3000; ++i) {
        ChemicalFormula formula = parse_formula(random_formula(generator).plain).formula;
        if (formula.pieces.empty()) continue;
        formula.charge = below(generator, 15) - 7;
        formula.state = static_cast<State>(below(generator, 7));
        for (const FormulaScript script : {FormulaScript::plain, FormulaScript::raised}) {
            const std::string text = formula_text(formula, script);
            if (text.size() > longest_formula_text) continue;
            const ChemicalFormula again = parse_formula(text).formula;
            if (!again.same_formula(formula)) FAIL_CHECK("read otherwise: " << text);
            if (script == FormulaScript::raised && again.state != formula.state) FAIL_CHECK("state: " << text);
        }
    }
}

TEST_CASE("equations made at random are read as they were made") {
    Generator generator(99);
    for (int i = 0; i < 1000; ++i) {
        Equation made;
        std::vector<std::int64_t> coefficients;
        const int terms = 2 + below(generator, 6);
        made.reactants = static_cast<std::size_t>(1 + below(generator, terms - 1));
        for (int k = 0; k < terms; ++k) {
            EquationTerm term;
            term.formula = parse_formula(below(generator, 9) == 0 ? "e-" : random_formula(generator).plain).formula;
            if (term.formula.pieces.empty() && !term.formula.is_electron()) term.formula = parse_formula("H2O").formula;
            if (!term.formula.is_electron())
                term.formula.charge = below(generator, 3) == 0 ? below(generator, 9) - 4 : 0;
            made.terms.push_back(term);
            coefficients.push_back(1 + below(generator, 20));
        }
        for (const FormulaScript script : {FormulaScript::plain, FormulaScript::raised}) {
            const std::string text = equation_text(made, coefficients, script);
            const EquationReading reading = parse_equation(text);
            if (reading.problem.kind == FormulaProblemKind::too_long) continue;
            if (!reading.problem.none() || reading.equation.terms.size() != made.terms.size() ||
                reading.equation.reactants != made.reactants) {
                FAIL_CHECK("read otherwise: " << text);
                continue;
            }
            for (std::size_t k = 0; k < made.terms.size(); ++k) {
                const EquationTerm& term = reading.equation.terms[k];
                if (!term.formula.same_formula(made.terms[k].formula) || term.coefficient != coefficients[k] ||
                    term.is_typed != (coefficients[k] != 1) ||
                    text.substr(term.at, term.length) != formula_text(made.terms[k].formula, script)) {
                    FAIL_CHECK("read otherwise: " << text);
                }
            }
        }
    }
}

TEST_CASE("random bytes never break the reading of formulas and equations") {
    Generator generator(1);
    std::string text;
    for (int i = 0; i < 30000; ++i) {
        text.resize(generator() % 60);
        for (char& byte : text) byte = static_cast<char>(generator() & 0xFF);
        survive_formula(text);
        survive_equation(text);
    }
}

TEST_CASE("random pieces of what people type never break the reading of formulas and equations") {
    Generator generator(2);
    std::string text;
    for (int i = 0; i < 60000; ++i) {
        text.clear();
        const std::size_t count = generator() % 14;
        for (std::size_t p = 0; p < count; ++p) text += pieces[generator() % pieces.size()];
        survive_formula(text);
        survive_equation(text);
    }
}

TEST_CASE("the longest texts of every piece are read to their end") {
    for (const std::string_view piece : pieces) {
        std::string text;
        while (text.size() < longest_equation_text + 100) text += piece;
        for (const std::size_t size : {longest_formula_text, longest_equation_text, text.size()}) {
            survive_formula(std::string_view(text).substr(0, size));
            survive_equation(std::string_view(text).substr(0, size));
            survive_equation("H" + text.substr(0, size - 1));
        }
    }
    survive_formula(std::string(1000000, '-'));
    survive_equation(std::string(1000000, '('));
    // The most substances there may be, all alike but for one count.
    std::string many;
    for (std::size_t i = 0; i < most_substances; ++i) {
        many += (i == 0                     ? ""
                 : i == most_substances / 2 ? " -> "
                                            : " + ") +
                std::string("C") + std::to_string(9999 - i) + "H" + std::to_string(9000 + 7 * i) + "O" +
                std::to_string(8000 + i * i);
    }
    survive_equation(many);
}
