#include "core/matter/chemical_formula.hpp"

#include "core/matter/formula_reader.hpp"

namespace overwater {

int ChemicalFormula::count_of(int atomic_number) const {
    for (const ElementCount& one : atoms) {
        if (one.atomic_number == atomic_number) return one.count;
    }
    return 0;
}

bool ChemicalFormula::same_formula(const ChemicalFormula& other) const {
    return pieces == other.pieces && charge == other.charge;
}

FormulaReading parse_formula(std::string_view text) {
    if (text.size() > longest_formula_text) {
        FormulaReading reading;
        reading.problem.kind = FormulaProblemKind::too_long;
        reading.problem.at = formula_signs::sign_start(text, longest_formula_text);
        reading.problem.length = code_point_at(text, reading.problem.at).bytes;
        return reading;
    }
    return formula_signs::FormulaReader(text, 0, formula_signs::Within::formula).read();
}

}  // namespace overwater
