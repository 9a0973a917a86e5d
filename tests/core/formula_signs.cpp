// Every sign of formulas and equations in the forms that keyboards, word processors and web pages give it (Unicode names beside
// the code points), and the signs that stand next to them in Unicode and mean something else.

#include <doctest/doctest.h>

#include <string>

#include "core/matter/equation.hpp"
#include "core/matter/formula_text.hpp"
#include "core/matter/likely_spelling.hpp"

using namespace overwater;
using Kind = FormulaProblemKind;

namespace {

/// The formula in one form; "problem" where it is none.
std::string as_read(const std::string& text) {
    const FormulaReading reading = parse_formula(text);
    return reading.problem.none() ? formula_text(reading.formula, FormulaScript::plain) : "problem";
}

}  // namespace

TEST_CASE("every lowered and raised digit counts, and their neighbours do not") {
    const char* const lowered[] = {"\u2080", "\u2081", "\u2082", "\u2083", "\u2084",
                                   "\u2085", "\u2086", "\u2087", "\u2088", "\u2089"};
    const char* const raised[] = {"\u2070", "\u00B9", "\u00B2", "\u00B3", "\u2074",
                                  "\u2075", "\u2076", "\u2077", "\u2078", "\u2079"};
    for (int digit = 0; digit <= 9; ++digit) {
        CAPTURE(digit);
        const std::string count = "C1" + std::to_string(digit) + "H";
        CHECK(as_read("C\u2081" + std::string(lowered[digit]) + "H") == count);
        CHECK(as_read("C\u00B9" + std::string(raised[digit]) + "H") == count);
    }
    // superscript i and n, subscript plus, superscript equals, the copyright-like signs around raised 1, 2 and 3
    for (const char* other : {"\u2071", "\u207F", "\u208A", "\u207C", "\u00B1", "\u00B4", "\u00B8", "\u00BA"}) {
        INFO(std::string(other));
        CHECK(as_read("C\u2081" + std::string(other) + "H") == "problem");
    }
}

TEST_CASE("every dash is a minus, raised or not") {
    // hyphen, non-breaking hyphen, figure dash, en dash, em dash, minus, full-width hyphen; superscript minus
    for (const char* dash : {"-", "\u2010", "\u2011", "\u2012", "\u2013", "\u2014", "\u2212", "\uFF0D", "\u207B"}) {
        INFO(std::string(dash));
        CHECK(as_read("Cl" + std::string(dash)) == "Cl^-");
        CHECK(as_read("SO4^2" + std::string(dash)) == "SO4^2-");
    }
    // horizontal bar and double line are none
    for (const char* other : {"\u2015", "\u2016", "\u200F"}) CHECK(as_read("SO4^2" + std::string(other)) == "problem");
}

TEST_CASE("every dot stands before water of crystallization") {
    // full stop, asterisk, middle dot, bullet, hyphenation point, bullet operator, dot operator, katakana middle dot and its half
    for (const char* dot : {".", "*", "\u00B7", "\u2022", "\u2027", "\u2219", "\u22C5", "\u30FB", "\uFF65"}) {
        INFO(std::string(dot));
        CHECK(as_read("CuSO4" + std::string(dot) + "5H2O") == "CuSO4.5H2O");
    }
    for (const char* other : {"\u00B6", "\u2021", "\u2218", "\u22C6"})
        CHECK(as_read("CuSO4" + std::string(other) + "5H2O") == "problem");
}

TEST_CASE("every arrow parts an equation, and half an arrow does not") {
    for (const char* arrow :
         {"->",     "-->",    "=>",     "=",      "==",     "<->",    "<=>",    "<==>",   "\u2192", "\u2194",
          "\u21C4", "\u21CB", "\u21CC", "\u21D2", "\u21D4", "\u27F6", "\u27F7", "\u27F9", "\u279E", "\uFF1D"}) {
        INFO(std::string(arrow));
        const EquationReading reading = parse_equation("2 Ca " + std::string(arrow) + " Mg");
        CHECK(reading.problem.none());
        CHECK(reading.equation.reactants == 1);
        CHECK(reading.equation.terms.size() == 2);
    }
    // leftwards and upwards arrow, less than or equal, and typed ones without a head
    for (const char* other : {"\u2190", "\u2195", "\u21D1", "\u27F5", "<=", "<-", ">"}) {
        INFO(std::string(other));
        CHECK(parse_equation("Ca " + std::string(other) + " Mg").problem.kind == Kind::unknown_character);
    }
}

TEST_CASE("every fraction is told as one") {
    // one quarter, one half, three quarters; one seventh to seven eighths; fraction slash
    for (const char* part : {"\u00BC", "\u00BD", "\u00BE", "\u2150", "\u2153", "\u215E", "\u215F"}) {
        INFO(std::string(part));
        CHECK(parse_equation(std::string(part) + " O2 -> O").problem.kind == Kind::count_not_whole);
        CHECK(parse_equation("1" + std::string(part) + " O2 -> O").problem.length == 1 + std::string(part).size());
    }
    CHECK(parse_equation("1\u20442 O2 -> O").problem.kind == Kind::count_not_whole);
    for (const char* other : {"\u00BB", "\u00BF", "\u214F", "\u2160"}) {
        INFO(std::string(other));
        CHECK(parse_formula("H2" + std::string(other)).problem.kind == Kind::unknown_character);
    }
    // A nought and a point begin a decimal number; two noughts are only noughts.
    CHECK(parse_formula("H0.5O").problem.kind == Kind::count_not_whole);
    CHECK(parse_formula("H00.5O").problem.kind == Kind::count_zero);
    CHECK(parse_formula("H\u2082.5H2O").problem.none());  // a hydrate
}

TEST_CASE("a state symbol is whole or none") {
    for (const char* text : {"H2O(s", "H2O(sl)", "H2O(a)", "H2O(aq", "H2O(ag)", "H2O(x)", "H2O()"}) {
        INFO(std::string(text));
        CHECK_FALSE(parse_formula(text).problem.none());
    }
    CHECK(parse_formula("H2O\uFF08aq\uFF09").formula.state == State::aqueous);  // full-width brackets
}

TEST_CASE("charges with brackets of either kind, on either side, and with several signs") {
    const char* const rows[][2] = {
        {"Cu^(2+)", "Cu^2+"},
        {"Cu^(+2)", "Cu^2+"},
        {"Cu^{++}", "Cu^2+"},
        {"Cu^{+}", "Cu^+"},
        {"O^(2-)", "O^2-"},
        {"Cu^++", "Cu^2+"},
        {"Al^+++", "Al^3+"},
        {"Al+++", "Al^3+"},
        {"Cu\u207A\u207A", "Cu^2+"},
        {"Cu\u207A\u00B2", "Cu^2+"},
        {"Cu^2\u207A", "Cu^2+"},
        {"Cu^\u00B2\u207A", "Cu^2+"},
        {"Al\u207A\u207A\u207A", "Al^3+"},
        {"Cu+\u00B2", "Cu^2+"},
        {"Cu^\u207A", "Cu^+"},
        {"Cu2\u207A\u207A", "Cu2^2+"},
        {"Fe^12+", "Fe^12+"},
    };
    for (const auto& row : rows) {
        INFO(std::string(row[0]));
        CHECK(as_read(row[0]) == row[1]);
    }
    for (const char* text : {"Cu^(2+}", "Cu^{2+)", "Cu^(2+", "Cu^[2+]", "Cu\u207A\u207A\u00B2", "Cu^+\u2082", "Cu^(2)",
                             "Cu^()", "Cu+\u2082", "Cu\u207A\u207B"}) {
        INFO(std::string(text));
        CHECK(parse_formula(text).problem.kind == Kind::stray_sign);
    }
}

TEST_CASE("digits before a sign are the charge only of one element or of one square bracket") {
    // chemical_formula.hpp: a square bracket that is the whole formula; anything else has one digit as its count.
    const char* const rows[][2] = {
        {"[Fe(CN)6]3-", "[Fe(CN)6]^3-"},
        {"K[Fe(CN)6]3-", "K[Fe(CN)6]3^-"},
        {"[Fe][Cu]2+", "[Fe][Cu]2^+"},
        {"[FeO2]Cl2+", "[FeO2]Cl2^+"},
        {"(Fe)3+", "(Fe)3^+"},
        {"{Fe}3+", "{Fe}3^+"},
        {"Hg12+", "Hg^2+"},  // the last of two digits, and a count of one
        {"C31-", "C31^-"},
        {"C32-", "C3^2-"},
        {"C34-", "C3^4-"},
        {"C9994-", "C999^4-"},
        {"Fe 13+", "Fe^13+"},
    };
    for (const auto& row : rows) {
        INFO(std::string(row[0]));
        CHECK(as_read(row[0]) == row[1]);
    }
}

TEST_CASE("the likely spelling takes usual elements before rare ones") {
    // likely_spelling.cpp: two usual elements are likelier than one that is rare, and one usual than two; common practice.
    const char* const rows[][2] = {
        {"al2o3", "Al"}, {"agcl", "AgCl"}, {"AGCL", "AgCl"}, {"ZNO", "ZnO"}, {"zno", "ZnO"},   {"os", "OS"},
        {"cs", "CS"},    {"ho", "HO"},     {"po", "PO"},     {"np", "NP"},   {"sn", "Sn"},     {"cu", "Cu"},
        {"pu", "PU"},    {"bk", "BK"},     {"licl", "LiCl"}, {"si", "Si"},   {"pb", "Pb"},     {"mn", "Mn"},
        {"ar", "Ar"},    {"rn", "Rn"},     {"he", "He"},     {"fm", "Fm"},   {"hcoh", "HCOH"}, {"cof", "COF"},
    };
    for (const auto& row : rows) {
        INFO(std::string(row[0]));
        CHECK(parse_formula(row[0]).problem.likely == row[1]);
    }
}

TEST_CASE("a run of letters as long as a formula may be has a likely spelling, a longer one none") {
    const auto likely = [](std::size_t letters) {
        FormulaProblem problem;
        add_likely_spelling(std::string(letters, 'h'), problem);
        return problem.likely;
    };
    CHECK(likely(longest_formula_text) == std::string(longest_formula_text, 'H'));
    CHECK(likely(longest_formula_text + 1).empty());
    CHECK(likely(0).empty());
}

TEST_CASE("limits of length and number are met exactly") {
    CHECK(longest_formula_text == 200);
    CHECK(longest_equation_text == 2000);
    CHECK(most_substances == 24);
    const std::string arrow = " -> C";
    CHECK(parse_equation(std::string(200, 'C') + arrow).problem.none());
    CHECK(parse_equation(std::string(201, 'C') + arrow).problem.kind == Kind::too_long);
    CHECK(parse_equation(std::string(201, 'C') + arrow).problem.at == 200);
    const std::string one = "C -> C";
    CHECK(parse_equation(one + std::string(2000 - one.size(), ' ')).problem.none());
    CHECK(parse_equation(one + std::string(2001 - one.size(), ' ')).problem.kind == Kind::too_long);
    // The whole sign that is too much is told, of two to four bytes.
    for (const char* sign : {"\u00B7", "\u2082", "\U0001F9EA"}) {
        const std::string last = sign;
        for (std::size_t inside = 1; inside < last.size(); ++inside) {
            CAPTURE(inside);
            const FormulaProblem problem = parse_formula(std::string(200 - inside, 'C') + last).problem;
            CHECK(problem.kind == Kind::too_long);
            CHECK(problem.at == 200 - inside);
            CHECK(problem.length == last.size());
        }
    }
    std::string many = "H";
    for (int i = 2; i < 24; ++i) many += " + H";
    CHECK(parse_equation(many + " -> H").equation.terms.size() == 24);
    CHECK(parse_equation(many + " -> H + H").problem.kind == Kind::too_many_substances);
    CHECK(parse_equation("9999 C -> C").equation.terms.front().coefficient == 9999);
    CHECK(parse_equation("10000 C -> C").problem.kind == Kind::count_too_large);
}

TEST_CASE("spaces of any width behind a substance are not part of it") {
    const Equation equation = parse_equation("H2O\u00A0\u3000 + Na+ -> Cl-  ").equation;
    REQUIRE(equation.terms.size() == 3);
    CHECK(equation.terms[0].at == 0);
    CHECK(equation.terms[0].length == 3);
    CHECK(equation.terms[1].length == 3);
    CHECK(equation.terms[2].length == 3);
}
