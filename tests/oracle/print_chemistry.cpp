// Prints all elements' weights, then for each line of the standard input what core/matter makes of it, for
// compare_chemistry.py to check against independent libraries. `F H2O` is a formula, `E H2 + O2 -> H2O` an equation.
// Lines: kind,...; numbers with 17 digits.

#include <cstdio>
#include <iostream>
#include <string>

#include "core/matter/balance.hpp"
#include "core/matter/molar_mass.hpp"
#include "core/matter/periodic_table.hpp"

using namespace overwater;

namespace {

void print_weights() {
    for (int number = 1; number <= last_atomic_number; ++number) {
        const std::string symbol(element_symbol(number));
        const auto weight = standard_atomic_weight(number);
        if (weight) {
            std::printf("weight,%d,%s,%.17g,%.17g,%d,%.17g,%.17g\n", number, symbol.c_str(), weight->value,
                        weight->plus_minus, weight->decimals, weight->lowest, weight->highest);
        } else {
            std::printf("no_weight,%d,%s\n", number, symbol.c_str());
        }
    }
}

void print_formula(const std::string& text) {
    const FormulaReading reading = parse_formula(text);
    const MolarMassReading mass = molar_mass(reading.formula);
    std::printf("formula,%d,%.17g,%.17g,", static_cast<int>(reading.problem.kind), mass.mass.value.si() * 1e3,
                mass.mass.plus_minus.si() * 1e3);
    for (const ElementCount& one : reading.formula.atoms) {
        std::printf("%s:%d ", std::string(element_symbol(one.atomic_number)).c_str(), one.count);
    }
    std::printf("\n");
}

const char* name_of(BalanceProblem problem) {
    switch (problem) {
    case BalanceProblem::none: return "balanced";
    case BalanceProblem::nothing_to_balance: return "nothing";
    case BalanceProblem::same_on_both_sides: return "same";
    case BalanceProblem::written_twice: return "twice";
    case BalanceProblem::element_on_one_side: return "one_side";
    case BalanceProblem::no_solution: return "no_solution";
    case BalanceProblem::charge: return "charge";
    case BalanceProblem::wrong_side: return "wrong_side";
    case BalanceProblem::takes_no_part: return "no_part";
    case BalanceProblem::several_reactions: return "several";
    case BalanceProblem::too_large: return "too_large";
    }
    return "";
}

void print_equation(const std::string& text) {
    const EquationReading reading = parse_equation(text);
    const Balance found = balance(reading.equation);
    std::printf("equation,%d,%s,%zu,%d,", static_cast<int>(reading.problem.kind), name_of(found.problem),
                found.independent, found.term == no_term ? -1 : static_cast<int>(found.term));
    for (const std::int64_t coefficient : found.coefficients) std::printf("%lld ", static_cast<long long>(coefficient));
    std::printf("\n");
}

}  // namespace

int main() {
    print_weights();
    std::string line;
    while (std::getline(std::cin, line)) {
        if (line.size() < 2) continue;
        line[0] == 'F' ? print_formula(line.substr(2)) : print_equation(line.substr(2));
    }
    return 0;
}
