#include <doctest/doctest.h>

#include <string>

#include "core/matter/chemical_formula.hpp"

using namespace overwater;
using Kind = FormulaProblemKind;

TEST_CASE("nonsense formulas point at the character") {
    struct Row {
        std::string text;
        Kind kind;
        std::size_t at;
        std::size_t length;
        const char* likely;
    };
    const Row rows[] = {
        {"", Kind::nothing_there, 0, 0, ""},
        {"   ", Kind::nothing_there, 3, 0, ""},
        {"NACL", Kind::unknown_symbol, 1, 1, "NaCl"},
        {"NaCL", Kind::unknown_symbol, 3, 1, "NaCl"},
        {"Nacl", Kind::unknown_symbol, 2, 2, "NaCl"},
        {"mg", Kind::unknown_symbol, 0, 2, "Mg"},
        {"MG", Kind::unknown_symbol, 0, 1, "Mg"},
        {"MgO2h", Kind::unknown_symbol, 4, 1, "H"},
        {"h2o", Kind::unknown_symbol, 0, 1, "H"},
        {"H2o", Kind::unknown_symbol, 2, 1, "O"},
        {"caco3", Kind::unknown_symbol, 0, 4, "CaCO"},
        {"CACO3", Kind::unknown_symbol, 1, 1, "CaCO"},
        {"Caco3", Kind::unknown_symbol, 2, 2, "CaCO"},
        {"naoh", Kind::unknown_symbol, 0, 4, "NaOH"},
        {"H2So4x", Kind::unknown_symbol, 2, 2, "SO"},
        {"NAHCO3", Kind::unknown_symbol, 1, 1, "NaHCO"},
        {"co2", Kind::unknown_symbol, 0, 2, "CO"},
        {"Mg(oh)2", Kind::unknown_symbol, 3, 2, "OH"},
        {"Xx", Kind::unknown_symbol, 0, 2, ""},
        {"H2Qo", Kind::unknown_symbol, 2, 2, ""},
        {"J", Kind::unknown_symbol, 0, 1, ""},
        {"D2O", Kind::unknown_symbol, 0, 1, ""},
        {"e", Kind::unknown_symbol, 0, 1, ""},
        {"e+", Kind::unknown_symbol, 0, 1, ""},
        {"He-", Kind::none, 0, 0, ""},
        {"Nae-", Kind::unknown_symbol, 2, 1, ""},
        {"H2O)", Kind::unmatched_bracket, 3, 1, ""},
        {"(H2O", Kind::unmatched_bracket, 0, 1, ""},
        {"Ca(OH2", Kind::unmatched_bracket, 2, 1, ""},
        {"Ca[(OH)2", Kind::unmatched_bracket, 2, 1, ""},
        {"Ca(OH]2", Kind::unmatched_bracket, 5, 1, ""},
        {"Al2(SO4)3)", Kind::unmatched_bracket, 9, 1, ""},
        {"()", Kind::empty_bracket, 0, 2, ""},
        {"Ca()2", Kind::empty_bracket, 2, 2, ""},
        {"Ca( )2", Kind::empty_bracket, 2, 3, ""},
        {"H0", Kind::count_zero, 1, 1, ""},
        {"H20O", Kind::none, 0, 0, ""},
        {"H2O0", Kind::count_zero, 3, 1, ""},
        {"H02O", Kind::count_zero, 1, 2, ""},
        {"Fe2(SO4)0", Kind::count_zero, 8, 1, ""},
        {"CuSO4.0H2O", Kind::count_zero, 6, 1, ""},
        {"H\u2080", Kind::count_zero, 1, 3, ""},
        {"Na^0+", Kind::count_zero, 3, 1, ""},
        {"C9999", Kind::none, 0, 0, ""},
        {"C10000", Kind::count_too_large, 1, 5, ""},
        {"C99999999999999999999", Kind::count_too_large, 1, 20, ""},
        {"Fe^99999+", Kind::count_too_large, 3, 5, ""},
        {"(C1000)1000", Kind::none, 0, 0, ""},
        {"(C1000)1001", Kind::count_too_large, 1, 1, ""},
        {"N2(H((C9999)9999)9999)9999", Kind::count_too_large, 6, 1, ""},
        {"(C600)1000C(C400)1000", Kind::count_too_large, 12, 1, ""},
        {"H1.5O", Kind::none, 0, 0, ""},  // H . 5 O: a full stop is a dot
        {"H0.5O", Kind::count_not_whole, 1, 3, ""},
        {"H1,5O", Kind::count_not_whole, 1, 3, ""},
        {"H1/2", Kind::count_not_whole, 1, 3, ""},
        {"CaSO4.0.5H2O", Kind::count_not_whole, 6, 3, ""},
        {"CaSO4\u00B7\u00BDH2O", Kind::count_not_whole, 7, 2, ""},
        {"CaSO4\u00B71\u00BDH2O", Kind::count_not_whole, 7, 3, ""},
        {"2H2O", Kind::count_out_of_place, 0, 1, ""},
        {"12 C", Kind::count_out_of_place, 0, 2, ""},
        {"\u00B2H2O", Kind::count_out_of_place, 0, 2, ""},
        {"(2H)O", Kind::count_out_of_place, 1, 1, ""},
        {"H2 3", Kind::count_out_of_place, 3, 1, ""},
        {"H\u20822", Kind::count_out_of_place, 4, 1, ""},
        {"+", Kind::stray_sign, 0, 1, ""},
        {"-2", Kind::stray_sign, 0, 2, ""},
        {"^2-", Kind::stray_sign, 0, 3, ""},
        {"Na+Cl", Kind::stray_sign, 2, 1, ""},
        {"Na+Cl-", Kind::stray_sign, 2, 1, ""},
        {"Na++-", Kind::stray_sign, 2, 2, ""},
        {"(NH4+)2", Kind::stray_sign, 4, 1, ""},
        {"SO4^", Kind::stray_sign, 3, 1, ""},
        {"SO4^2", Kind::stray_sign, 3, 2, ""},
        {"SO4^{2-", Kind::stray_sign, 3, 4, ""},
        {"SO4^2-2", Kind::stray_sign, 3, 3, ""},
        {"SO4^2+-", Kind::stray_sign, 3, 3, ""},
        {"(s)", Kind::stray_state, 0, 3, ""},
        {"H2O(s)(l)", Kind::stray_state, 6, 3, ""},
        {"H2(g)O", Kind::stray_state, 2, 3, ""},
        {"H2O(aq)2", Kind::stray_state, 3, 4, ""},
        {"\u2191", Kind::stray_state, 0, 3, ""},
        {"H2O.", Kind::nothing_there, 4, 0, ""},
        {"CuSO4\u00B7", Kind::nothing_there, 7, 0, ""},
        {"CuSO4.5", Kind::nothing_there, 7, 0, ""},
        {"CuSO4..5H2O", Kind::nothing_there, 6, 0, ""},
        {".H2O", Kind::unknown_character, 0, 1, ""},
        {"(H.O)", Kind::unknown_character, 2, 1, ""},
        {"H2O!", Kind::unknown_character, 3, 1, ""},
        {"H2,O", Kind::unknown_character, 2, 1, ""},
        {"H_2O", Kind::unknown_character, 1, 1, ""},
        {"H2O=", Kind::unknown_character, 3, 1, ""},
        {"\u041D2O", Kind::unknown_character, 0, 2, ""},  // a Cyrillic letter
        {"C\u03B1", Kind::unknown_character, 1, 2, ""},
        {"H2\xFFO", Kind::not_utf8, 2, 1, ""},
        {"H\xE2\x82", Kind::not_utf8, 1, 1, ""},
        {std::string("H\0O", 3), Kind::unknown_character, 1, 1, ""},
        {"((((((((H))))))))", Kind::none, 0, 0, ""},
        {"(((((((((H)))))))))", Kind::too_deep, 8, 1, ""},
        {std::string(200, 'C'), Kind::none, 0, 0, ""},
        {std::string(201, 'C'), Kind::too_long, 200, 1, ""},
        {std::string(199, 'C') + "\u2082", Kind::too_long, 199, 3, ""},
    };
    for (const Row& row : rows) {
        INFO(row.text);
        const FormulaReading reading = parse_formula(row.text);
        CHECK(static_cast<int>(reading.problem.kind) == static_cast<int>(row.kind));
        CHECK(reading.problem.at == row.at);
        CHECK(reading.problem.length == row.length);
        CHECK(reading.problem.likely == row.likely);
        CHECK(reading.formula.atoms.empty() == (row.kind != Kind::none && row.text != "e-"));
    }
}

TEST_CASE("the likely spelling says what it replaces") {
    const FormulaProblem problem = parse_formula("K2[mgCL4]").problem;
    CHECK(problem.at == 3);
    CHECK(problem.length == 2);
    CHECK(problem.likely == "MgCl");
    CHECK(problem.likely_at == 3);
    CHECK(problem.likely_length == 4);
}
