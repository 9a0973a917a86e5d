#pragma once

#include <cstddef>
#include <cstdint>
#include <string_view>
#include <vector>

#include "core/matter/formula_problem.hpp"

/// Chemical formulas as people type them:
///
///     Al2(SO4)3   K4[Fe(CN)6]   CuSO4.5H2O   CuSO4·5H2O   CuSO4*5H2O   SO4^2-   SO₄²⁻   NH4+   H2O(l)   H2↑
///
/// - Brackets ( ) [ ] { } to eight levels. Counts as digits, full-width digits, subscripts or superscripts.
/// - A dot (. · * • and like signs) before water of crystallization and other parts, each with a whole count in front or
///   none.
/// - Spaces between any two of these; not within a symbol or a number.
/// - State symbols (s) (l) (g) (aq), ↑ and ↓, once and at the end. As elements' symbols begin with a capital, (s) is no
///   group.
/// - `e-` is the electron.
///
/// The charge stands at the end, before a state symbol. These leave no doubt: ^2- ^+2 ^{2-}, ²⁻, ++, and digits with a
/// space before and the sign behind (`SO4 2-`). Where digits and a sign simply follow (`Fe3+`, `NH4+`), they are read so:
///
/// - after a single element without any other count (`Fe3+`, `O2-`, `S2-`) or a square bracket that is the whole formula
///   (`[Fe(CN)6]3-`) one digit is the charge: Fe³⁺. So I3- is I³⁻; for triiodide write I3^-;
/// - after anything else one digit is the count, and the charge is 1: NH₄⁺, NO₃⁻;
/// - of two digits or more the last is the charge if it is 2, 3 or 4: SO42- is SO₄²⁻, Hg22+ is Hg₂²⁺; else all are the
///   count, and the charge is 1.

namespace overwater {

enum class State : std::uint8_t { none, solid, liquid, gas, aqueous, evolved, precipitated };

/// One piece of a formula as written.
struct FormulaPiece {
    enum class Kind : std::uint8_t { element, open, close, dot };

    Kind kind = Kind::element;
    std::uint8_t atomic_number = 0;  ///< element
    char bracket = 0;                ///< open, close: one of ( ) [ ] { }
    int count = 1;                   ///< element, close: the index behind; dot: the number in front of the part

    bool operator==(const FormulaPiece&) const = default;
};

/// How often an element stands in a formula.
struct ElementCount {
    int atomic_number = 0;
    int count = 0;           ///< 1 to largest_atom_count
    std::size_t at = 0;      ///< where it first stands in the text, in bytes ...
    std::size_t length = 0;  ///< ... and how long its symbol is there
};

/// A formula read. The electron has no piece, no atom and the charge −1.
struct ChemicalFormula {
    std::vector<FormulaPiece> pieces{};
    std::vector<ElementCount> atoms{};  ///< the composition: each element once, in the order of the text
    int charge = 0;                     ///< in elementary charges
    State state = State::none;

    bool is_electron() const { return pieces.empty() && charge == -1; }
    /// How many atoms of the element one formula unit has; 0 if it has none.
    int count_of(int atomic_number) const;
    /// Whether the two are written alike: the same pieces and charge. States do not count.
    bool same_formula(const ChemicalFormula& other) const;
};

struct FormulaReading {
    ChemicalFormula formula{};  ///< empty if there is a problem
    FormulaProblem problem{};
};

/// Reads one formula. Any bytes may be given; the time grows with the text's length at the most.
FormulaReading parse_formula(std::string_view text);

}  // namespace overwater
