#include "core/matter/formula_text.hpp"

#include "core/matter/periodic_table.hpp"

namespace overwater {
namespace {

/// Every digit of `digits` in the form that begins with `zero`, three bytes of UTF-8.
std::string in_form(const std::string& digits, const char* zero) {
    std::string text;
    for (const char digit : digits) {
        text += zero;
        text.back() = static_cast<char>(text.back() + (digit - '0'));
    }
    return text;
}

std::string lowered(int number) { return in_form(std::to_string(number), "\u2080"); }

std::string raised(int number) {
    std::string text;
    for (const char digit : std::to_string(number)) {
        switch (digit) {
        case '1': text += "\u00B9"; break;
        case '2': text += "\u00B2"; break;
        case '3': text += "\u00B3"; break;
        default: text += in_form(std::string(1, digit), "\u2070"); break;
        }
    }
    return text;
}

}  // namespace

std::string index_text(int count, FormulaScript script) {
    if (count == 1) return {};
    return script == FormulaScript::plain ? std::to_string(count) : lowered(count);
}

std::string charge_text(int charge, FormulaScript script) {
    if (charge == 0) return {};
    const int size = charge < 0 ? -charge : charge;
    const bool plain = script == FormulaScript::plain;
    std::string text = plain ? "^" : "";
    if (size != 1) text += plain ? std::to_string(size) : raised(size);
    if (plain) return text + (charge < 0 ? '-' : '+');
    return text + (charge < 0 ? "\u207B" : "\u207A");
}

std::string state_text(State state, FormulaScript script) {
    switch (state) {
    case State::none: break;
    case State::solid: return "(s)";
    case State::liquid: return "(l)";
    case State::gas: return "(g)";
    case State::aqueous: return "(aq)";
    case State::evolved: return script == FormulaScript::plain ? "(g)" : "\u2191";
    case State::precipitated: return script == FormulaScript::plain ? "(s)" : "\u2193";
    }
    return {};
}

std::string formula_text(const ChemicalFormula& formula, FormulaScript script) {
    std::string text;
    if (formula.is_electron()) text = "e";
    for (const FormulaPiece& piece : formula.pieces) {
        switch (piece.kind) {
        case FormulaPiece::Kind::element:
            text += element_symbol(piece.atomic_number);
            text += index_text(piece.count, script);
            break;
        case FormulaPiece::Kind::open: text += piece.bracket; break;
        case FormulaPiece::Kind::close:
            text += piece.bracket;
            text += index_text(piece.count, script);
            break;
        case FormulaPiece::Kind::dot:
            text += script == FormulaScript::plain ? "." : "\u00B7";
            if (piece.count != 1) text += std::to_string(piece.count);
            break;
        }
    }
    return text + charge_text(formula.charge, script) + state_text(formula.state, script);
}

}  // namespace overwater
