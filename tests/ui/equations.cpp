// The page of formulas and equations, by its own nodes: what is typed, what is said of it, amounts, keeping, undo.

#include <doctest/doctest.h>

#include <string>

#include "tests/ui/desk.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

bool has(const std::string& text, std::string_view what) { return text.find(what) != std::string::npos; }

/// The page with this typed.
void write(Desk& desk, const std::string& text) {
    if (desk.app().page() != PageName::equations) desk.press("header.equations");
    desk.type("equations.text", text);
    desk.settle();
}

std::string words(const Desk& desk, const std::string& key) {
    const Node* node = desk.find(key);
    if (node == nullptr) return {};
    return plain(node->role == Role::output ? node->value : node->name);
}

/// The formula or equation as it is set, as it is spoken.
std::string spoken(const Desk& desk) {
    std::string all;
    for (int line = 0; const Node* node = desk.find("equations.set." + std::to_string(line)); ++line) {
        all += (line > 0 ? " " : "") + node->name;
    }
    return all;
}

void texts_of(const Element& element, std::vector<std::string>& out) {
    if (element.name == "td" || element.name == "th") out.emplace_back();
    if (element.name.empty() && !out.empty()) out.back() += plain(element.text);
    for (const Element& child : element.children) texts_of(child, out);
}

/// All cells of a table, one after the other, its header first.
std::vector<std::string> cells(const Desk& desk, const std::string& key) {
    std::vector<std::string> out;
    for (const Element& part : desk.node(key).content) texts_of(part, out);
    return out;
}

using Cells = std::vector<std::string>;

}  // namespace

TEST_CASE("an equation is balanced as it is typed, set with an arrow at its gas, and spoken") {
    new_world();
    Desk desk;
    write(desk, "CaCO3 + HCl -> CaCl2 + H2O + CO2");
    // The coefficients are in every textbook; by hand: Ca 1, C 1, O 3, H 2, Cl 2 on both sides.
    CHECK(spoken(desk) == "CaCO₃ plus 2 HCl gives CaCl₂ plus H₂O plus CO₂↑");
    CHECK(words(desk, "equations.verdict") ==
          "As typed it is not balanced: H (1 left, 2 right) and Cl (1 left, 2 right). The line above is.");
    write(desk, "CaCO3 + 2HCl -> CaCl2 + H2O + CO2");
    CHECK(words(desk, "equations.verdict") == "As typed it is balanced.");
    write(desk, "2 CaCO3 + 4 HCl = 2 CaCl2 + 2 H2O + 2 CO2");
    CHECK(has(words(desk, "equations.verdict"), "all coefficients can be divided by 2"));
    CHECK(spoken(desk) == "CaCO₃ plus 2 HCl gives CaCl₂ plus H₂O plus CO₂↑");
    // Lowered digits, a charge, another arrow; the charge by hand: 0 left, 2 − 1 right.
    write(desk, "Zn + H⁺ → Zn²⁺ + H₂");
    CHECK(spoken(desk) == "Zn plus 2 H⁺ gives Zn²⁺ plus H₂↑");
    CHECK(has(words(desk, "equations.verdict"), "H (1 left, 2 right) and charge (1 left, 2 right)"));
}

TEST_CASE("what cannot be balanced is told in a sentence") {
    new_world();
    Desk desk;
    const std::pair<const char*, const char*> rows[] = {
        {"Mg + HCl -> MgCl2 + H2 + Na", "Na stands on one side only"},
        {"H2O + O2 -> H2O", "H₂O stands on both sides"},
        {"H2 + H2 + O2 -> H2O", "H₂ stands twice on the same side"},
        {"KMnO4 + H2SO4 + H2O2 -> K2SO4 + MnSO4 + H2O + O2", "Several reactions run side by side"},
        {"Fe2+ -> Fe3+", "not together with the charge"}};
    for (const auto& row : rows) {
        const auto& text = row.first;
        const auto& said = row.second;
        INFO(std::string(text));
        write(desk, text);
        CHECK(has(words(desk, "equations.verdict"), said));
        CHECK(desk.find("equations.amounts") == nullptr);
    }
    // Two reactions at once, but the coefficients typed are right (by hand: K 2, Mn 2, H 16, O 30, S 3): they hold.
    write(desk, "2 KMnO4 + 3 H2SO4 + 5 H2O2 -> K2SO4 + 2 MnSO4 + 8 H2O + 5 O2");
    CHECK(words(desk, "equations.verdict") == "As typed it is balanced.");
    CHECK(desk.find("equations.amounts") != nullptr);
}

TEST_CASE("nonsense is pointed at, and the likely spelling is a press away") {
    new_world();
    Desk desk;
    write(desk, "Mg + HCL -> MgCl2 + H2");
    desk.blur();
    desk.settle();
    CHECK(desk.node("equations.text").invalid);
    CHECK(words(desk, "equations.problem") == "Character 8: No element has this symbol.");
    CHECK(has(desk.node("equations.text").described_by, "equations.problem"));
    CHECK(words(desk, "equations.mark") == "Mg + HCL -> MgCl2 + H2");
    REQUIRE(desk.find("equations.likely") != nullptr);
    CHECK(desk.node("equations.likely").name == "Write HCl");
    desk.press("equations.likely");
    CHECK(desk.node("equations.text").value == "Mg + HCl -> MgCl2 + H2");
    CHECK(spoken(desk) == "Mg plus 2 HCl gives MgCl₂ plus H₂↑");
    CHECK(desk.find("equations.problem") == nullptr);

    const std::pair<const char*, const char*> rows[] = {{"CaCO3)", "Character 6: This bracket"},
                                                        {"H2S04", "Character 4: A count does not begin with 0."},
                                                        {"Mg? + O2 -> MgO", "Character 3: No formula has this sign."},
                                                        {"Ca½O", "Only whole numbers"},
                                                        {"RaCl2", "Character 1: This element has no standard"}};
    for (const auto& row : rows) {
        const auto& text = row.first;
        const auto& said = row.second;
        INFO(std::string(text));
        write(desk, text);
        desk.blur();
        desk.settle();
        CHECK(has(words(desk, "equations.problem"), said));
        CHECK(desk.node("equations.text").invalid);
    }
}

TEST_CASE("what is still being typed is shown and not called wrong") {
    new_world();
    Desk desk;
    write(desk, "Mg + HCl");
    CHECK(spoken(desk) == "Mg plus HCl");
    CHECK_FALSE(desk.node("equations.text").invalid);
    CHECK(has(words(desk, "equations.problem"), "An arrow is missing"));
    write(desk, "Mg + ");
    CHECK(spoken(desk) == "Mg");
    CHECK_FALSE(desk.node("equations.text").invalid);
    // A symbol begun, as long as the field is left neither by key nor by pointer.
    write(desk, "Mg + HCl -> M");
    CHECK_FALSE(desk.node("equations.text").invalid);
    desk.blur();
    desk.settle();
    CHECK(desk.node("equations.text").invalid);
    write(desk, " ");
    CHECK(desk.find("equations.problem") == nullptr);
}

TEST_CASE("the molar mass of a formula with its bounds, and a row for each element") {
    new_world();
    Desk desk;
    write(desk, "CaCO3");
    // Added by hand from Table 1 of Prohaska et al., Pure Appl. Chem. 94 (2022) 573: 40.078(4), 12.011(2), 15.999(1).
    // python3-periodictable 1.6.0 has 100.087 and shares of 40.04 %, 12.00 % and 47.96 %.
    CHECK(words(desk, "equations.mass") == "100.086 ± 0.009 g/mol");
    CHECK(cells(desk, "equations.elements") ==
          Cells{"Element", "Count", "Atomic weight", "Share of mass", "Ca", "1", "40.078 ± 0.004", "40.04 %", "C", "1",
                "12.011 ± 0.002", "12.00 %", "O", "3", "15.999 ± 0.001", "47.96 %"});
    CHECK(desk.find("equations.rounded") == nullptr);
    // 249.677 ± 0.034, to the decimals of sulfur; python3-periodictable: 249.685, H 4.037 %.
    write(desk, "CuSO4·5H2O");
    CHECK(spoken(desk) == "CuSO₄·5H₂O");
    CHECK(words(desk, "equations.mass") == "249.68 ± 0.03 g/mol");
    CHECK(has(plain(cells(desk, "equations.elements").back()), "4.04 %"));

    desk.press("header.conventions");
    desk.choose("conventions.molar_mass_digits.one_decimal", "one_decimal");
    desk.choose("conventions.decimal_sign.comma", "comma");
    desk.press("header.equations");
    // 63.5 + 32.1 + 9 × 16.0 + 10 × 1.0, by hand.
    CHECK(has(words(desk, "equations.rounded"), "249,6 g/mol"));
    CHECK(words(desk, "equations.mass") == "249,68 ± 0,03 g/mol");
}

TEST_CASE("amounts: what limits, what is formed, what is left, and the gas") {
    new_world();
    Desk desk;
    write(desk, "CaCO3 + HCl -> CaCl2 + H2O + CO2");
    CHECK(words(desk, "equations.gas") == "1 mol of CO₂: 22.71 L as an ideal gas at 0 °C, 100 kPa");
    CHECK(desk.find("equations.products") == nullptr);
    desk.type("equations.amount.0", "2.50");
    desk.settle();
    // Worked out with python3-periodictable 1.6.0 and the molar volume of CODATA 2018, 22.710954 L/mol.
    CHECK(words(desk, "equations.amount.0.result") == "0.0250 mol, all used up");
    CHECK(words(desk, "equations.amount.1.result") == "reacts: 0.0500 mol = 1.82 g");
    CHECK(desk.find("equations.limits") == nullptr);
    desk.type("equations.amount.1", "1.00");
    desk.settle();
    CHECK(words(desk, "equations.limits") == "HCl limits: it is used up first.");
    CHECK(words(desk, "equations.amount.0.result") == "0.0250 mol, left over: 0.0113 mol = 1.13 g");
    CHECK(cells(desk, "equations.products") ==
          Cells{"Product", "Amount", "Mass", "Gas volume", "CaCl₂", "0.0137 mol", "1.52 g", "", "H₂O", "0.0137 mol",
                "0.247 g", "", "CO₂", "0.0137 mol", "0.604 g", "0.311 L"});
    // 0.0500 mol of acid are twice the 0.0250 mol of the salt: an exact mixture.
    desk.choose("equations.amount.1.unit", "mol");
    desk.choose("equations.amount.0.unit", "mmol");
    desk.type("equations.amount.0", "25.0");
    desk.type("equations.amount.1", "0.0500");
    desk.settle();
    CHECK(words(desk, "equations.limits") == "CaCO₃ and HCl are used up together.");
    // A unit typed behind the number counts.
    desk.type("equations.amount.0", "50 mg");
    desk.settle();
    CHECK(desk.node("equations.amount.0.unit").value == "mg");
    for (const char* text : {"a lot", "-1", "5 mL"}) {
        desk.type("equations.amount.0", text);
        desk.settle();
        CHECK(desk.node("equations.amount.0").invalid);
        CHECK(desk.node("equations.amount.0").described_by == "equations.amount.0.result");
        CHECK(desk.find("equations.products") == nullptr);
    }
    // Per mole of the acid it is half as much: 22.710954 L / 2.
    desk.choose("equations.per", "1");
    desk.settle();
    CHECK(has(words(desk, "equations.gas"), "1/2 mol of CO₂: 11.36 L"));
    // The teacher's conditions: 22.413969 L/mol at 1 atm (CODATA).
    desk.press("header.conventions");
    desk.choose("conventions.standard.0C_1atm", "0C_1atm");
    desk.press("header.equations");
    CHECK(has(words(desk, "equations.gas"), "11.21 L as an ideal gas at 0 °C, 1 atm"));
    CHECK(desk.find("cautions.short") != nullptr);
}

TEST_CASE("gas for a mole of each example, and no caution where neither acid nor gas is") {
    new_world();
    Desk desk;
    desk.press("header.equations");
    // Ratios by the equations as textbooks have them; 22.710954 L/mol (CODATA).
    const std::array<std::string, 3> rows[] = {
        {"equations.example.magnesium", "Mg plus 2 HCl gives MgCl₂ plus H₂↑", "1 mol of H₂: 22.71 L"},
        {"equations.example.peroxide", "2 H₂O₂ gives 2 H₂O plus O₂↑", "1/2 mol of O₂: 11.36 L"},
        {"equations.example.chlorate", "2 KClO₃ gives 2 KCl plus 3 O₂↑", "3/2 mol of O₂: 34.07 L"},
        {"equations.example.citric", "3 NaHCO₃ plus C₆H₈O₇ gives Na₃C₆H₅O₇ plus 3 CO₂↑ plus 3 H₂O",
         "1 mol of CO₂: 22.71 L"}};
    for (const auto& [key, set, gas] : rows) {
        desk.press(key);
        CHECK(spoken(desk) == set);
        CHECK(has(words(desk, "equations.gas"), gas));
        CHECK(desk.find("cautions.short") != nullptr);
    }
    write(desk, "Fe + S -> FeS");
    CHECK(desk.find("cautions.short") == nullptr);
    CHECK(desk.find("equations.gas") == nullptr);
    write(desk, "H2SO4 + NaOH -> Na2SO4 + H2O");
    CHECK(desk.find("cautions.short") != nullptr);
}

TEST_CASE("what is typed is kept over pages, languages and visits, and taken back step by step") {
    new_world();
    {
        Desk desk;
        write(desk, "Al + HCl -> AlCl3 + H2");
        desk.type("equations.amount.1", "3.0");
        desk.choose("equations.amount.1.unit", "mmol");
        desk.press("header.bench");
        desk.press("header.equations");
        desk.choose("header.language", "de");
        desk.settle();
        CHECK(desk.node("equations.text").value == "Al + HCl -> AlCl3 + H2");
        CHECK(has(words(desk, "equations.verdict"), "nicht ausgeglichen"));
        CHECK(has(words(desk, "equations.gas"), "3/2 mol H₂"));
        desk.choose("header.language", "en");
    }
    {
        Desk desk;
        CHECK(desk.app().page() == PageName::equations);
        CHECK(desk.node("equations.text").value == "Al + HCl -> AlCl3 + H2");
        CHECK(desk.node("equations.amount.1").value == "3.0");
        CHECK(desk.node("equations.amount.1.unit").value == "mmol");
        // Amounts stay with their substance while the equation is changed, and go when another is begun.
        desk.focus("equations.text");
        desk.document().type("equations.text", "HCl + Al -> AlCl3 + H2");
        desk.send(Event::Kind::input, "equations.text", "HCl + Al -> AlCl3 + H2");
        desk.settle();
        CHECK(desk.node("equations.amount.0").value == "3.0");
        CHECK(desk.node("equations.amount.1").value.empty());
        write(desk, "HCl + Al -> AlCl3 + H2");
        CHECK(desk.node("equations.amount.0").value.empty());
    }

    new_world();
    Desk other;
    write(other, "Zn + HCl -> ZnCl2 + H2");
    other.wait(2000);
    other.type("equations.amount.0", "1.5");
    other.blur();
    CHECK(other.app().can_undo());
    other.press("header.undo");
    CHECK(other.node("equations.amount.0").value.empty());
    CHECK(other.node("equations.text").value == "Zn + HCl -> ZnCl2 + H2");
    other.press("header.redo");
    CHECK(other.node("equations.amount.0").value == "1.5");
    other.press("equations.example.peroxide");
    CHECK(other.node("equations.text").value == "H2O2 -> H2O + O2");
    other.send(Event::Kind::undo, "equations.text");
    other.settle();
    CHECK(other.node("equations.text").value == "Zn + HCl -> ZnCl2 + H2");
    CHECK(other.node("equations.amount.0").value == "1.5");
    // The record knows nothing of all this.
    other.press("header.bench");
    CHECK_FALSE(other.app().can_undo());
}

TEST_CASE("a long equation is broken at its signs, and hostile text breaks nothing") {
    new_world();
    Desk desk({390, 844, true});
    write(desk, "KMnO4 + FeSO4 + H2SO4 -> K2SO4 + MnSO4 + Fe2(SO4)3 + H2O");
    CHECK(desk.find("equations.set.1") != nullptr);
    for (const Node& node : desk.nodes()) CHECK(node.rect.right() <= 390.5F);
    // By hand: 2 MnO4− take 10 electrons, of 10 Fe2+.
    CHECK(spoken(desk) ==
          "2 KMnO₄ plus 10 FeSO₄ plus 8 H₂SO₄ gives K₂SO₄ plus 2 MnSO₄ plus 5 Fe₂(SO₄)₃ plus 8 H₂O");
    const std::string texts[] = {std::string(3000, 'C'), std::string(190, 'C'), "\xff\xfe", "\t\n", "((((((((((", "中 + O2 -> ?",
                                 "C9999H9999 + O2 -> CO2 + H2O", "e- -> e-"};
    for (const std::string& text : texts) {
        desk.focus("equations.text");
        desk.send(Event::Kind::input, "equations.text", text);
        desk.settle();
        desk.blur();
        desk.settle();
        for (const Node& node : desk.nodes()) CHECK(node.rect.right() <= 390.5F);
    }
}

TEST_CASE("a reaction is taken to the bench: a substance that it lists, or the numbers of another one, in one step") {
    new_world();
    Desk desk;
    const std::string before = desk.app().entry(Field::metal).text;
    write(desk, "CaCO3 + HCl -> CaCl2 + H2O + CO2");
    desk.press("equations.take");
    desk.settle();
    CHECK(desk.app().page() == PageName::bench);
    CHECK(desk.app().entry(Field::metal).text == "calcium_carbonate");
    CHECK(desk.app().entry(Field::acid).text == "hydrochloric");
    desk.press("header.undo");
    CHECK(desk.app().entry(Field::metal).text == before);

    // Citric acid is none of the bench's acids. Na 22.990, H 1.0080, C 12.011, 3 O 15.999 each: 84.006 g/mol
    // (abridged standard atomic weights, IUPAC 2021); three of gas for three.
    write(desk, "NaHCO3 + C6H8O7 -> Na3C6H5O7 + H2O + CO2");
    desk.press("equations.take");
    desk.settle();
    CHECK(desk.app().entry(Field::metal).text == "own");
    CHECK(desk.app().entry(Field::molar_mass).text == "84.006");
    CHECK(desk.app().entry(Field::gas).text == "carbon_dioxide");
    CHECK(desk.app().entry(Field::gas_per_mole).text == "1");
    CHECK(desk.app().assessment().has(Output::amount_of_gas));

    // Aluminium with sodium hydroxide: 2 Al + 2 NaOH + 6 H2O -> 2 NaAl(OH)4 + 3 H2, in every textbook.
    write(desk, "Al + NaOH + H2O -> NaAl(OH)4 + H2");
    desk.press("equations.take");
    desk.settle();
    CHECK(desk.app().entry(Field::metal).text == "own");
    CHECK(desk.app().entry(Field::molar_mass).text == "26.982");
    CHECK(desk.app().entry(Field::gas).text == "hydrogen");
    CHECK(desk.app().entry(Field::gas_per_mole).text == "1.5");
}
