#include "core/matter/charge_text.hpp"

namespace overwater::formula_signs {
namespace {

int plain_sign(char32_t sign) {
    if (sign == U'+') return 1;
    return sign == U'-' ? -1 : 0;
}

ChargeText stray(std::size_t at, std::size_t length) {
    ChargeText charge;
    charge.length = length;
    charge.problem = {FormulaProblemKind::stray_sign, at, length};
    return charge;
}

ChargeText charge_of(const Number& number, int sign, std::size_t length) {
    ChargeText charge;
    charge.charge = sign * number.value;
    charge.length = length;
    charge.problem = problem_of(number);
    return charge;
}

/// Whether no formula begins at `at`: the end, a plus, an arrow or a state symbol.
bool formula_ends(std::string_view text, std::size_t at, Within within) {
    at = after_spaces(text, at);
    if (at >= text.size() || state_at(text, at).length != 0) return true;
    return within == Within::equation && (sign_at(text, at).value == U'+' || arrow_at(text, at) != 0);
}

char32_t other_half(char32_t opening) {
    if (opening == U'{') return U'}';
    return opening == U'(' ? U')' : 0;
}

/// The bytes of `signs` signs from `at` on; their forms, and so their bytes, may differ.
std::size_t bytes_of(std::string_view text, std::size_t at, int signs) {
    std::size_t place = at;
    for (int i = 0; i < signs; ++i) place += sign_at(text, place).bytes;
    return place - at;
}

/// ^2-, ^-, ^{2-}, ^(+2): `at` is on the caret.
ChargeText after_caret(std::string_view text, std::size_t at, Within within) {
    std::size_t place = at + sign_at(text, at).bytes;
    const char32_t close = other_half(sign_at(text, place).value);
    if (close != 0) place += sign_at(text, place).bytes;
    Number number = number_at(text, place);
    place = number.end();
    const CodePoint first = sign_at(text, place);
    const bool raised = raised_charge_sign(first.value) != 0;
    const int sign = raised ? raised_charge_sign(first.value) : plain_sign(first.value);
    if (sign == 0) return stray(at, place - at);
    int signs = 1;
    if (number.length == 0 && !raised) {
        const int own = plain_charge_signs(text, place, close == 0 ? within : Within::formula);
        signs = own > 1 ? own : 1;
    }
    place += bytes_of(text, place, signs);
    if (number.length == 0 && signs == 1) {
        number = number_at(text, place);
        if (number.length != 0 && number.height == Height::lowered) return stray(at, place - at);
        place += number.length;
    }
    if (close != 0) {
        const CodePoint last = sign_at(text, place);
        if (last.value != close) return stray(at, place - at);
        place += last.bytes;
    }
    if (number.length != 0) return charge_of(number, sign, place - at);
    return {sign * signs, place - at, {}};
}

/// ⁺, ⁺², ⁺⁺: `at` is on the first raised sign.
ChargeText raised_signs(std::string_view text, std::size_t at) {
    const CodePoint first = sign_at(text, at);
    const int sign = raised_charge_sign(first.value);
    int signs = 0;
    std::size_t place = at;
    while (sign_at(text, place).value == first.value) place += first.bytes, ++signs;
    const Number number = number_at(text, place);
    if (number.length == 0 || number.height != Height::raised) return {sign * signs, place - at, {}};
    if (signs > 1) return stray(at, number.end() - at);
    return charge_of(number, sign, number.end() - at);
}

}  // namespace

int plain_charge_signs(std::string_view text, std::size_t at, Within within) {
    const char32_t sign = sign_at(text, at).value;
    if (plain_sign(sign) == 0) return 0;
    if (within == Within::equation && arrow_at(text, at) != 0) return 0;
    int signs = 0;
    std::size_t place = at;
    while (sign_at(text, place).value == sign) place += sign_at(text, place).bytes, ++signs;
    const bool last_is_between = within == Within::equation && sign == U'+' && !formula_ends(text, place, within);
    return last_is_between ? signs - 1 : signs;
}

ChargeText charge_at(std::string_view text, std::size_t at, Within within) {
    const CodePoint first = sign_at(text, at);
    if (first.value == U'^') return after_caret(text, at, within);
    if (raised_charge_sign(first.value) != 0) return raised_signs(text, at);
    const Number number = number_at(text, at);
    if (number.length != 0) {
        return number.height == Height::raised ? number_and_sign_at(text, number, within) : ChargeText{};
    }
    const int sign = plain_sign(first.value);
    if (sign == 0) return {};
    const Number behind = number_at(text, at + first.bytes);
    if (behind.length != 0 && behind.height != Height::lowered && formula_ends(text, behind.end(), within)) {
        return charge_of(behind, sign, behind.end() - at);
    }
    const int signs = plain_charge_signs(text, at, within);
    return {sign * signs, bytes_of(text, at, signs), {}};
}

ChargeText number_and_sign_at(std::string_view text, const Number& number, Within within) {
    const CodePoint next = sign_at(text, number.end());
    const int raised = raised_charge_sign(next.value);
    if (raised != 0) {
        const CodePoint second = sign_at(text, number.end() + next.bytes);
        if (raised_charge_sign(second.value) != 0) return {};
        return charge_of(number, raised, number.length + next.bytes);
    }
    if (plain_charge_signs(text, number.end(), within) != 1) return {};
    return charge_of(number, plain_sign(next.value), number.length + next.bytes);
}

}  // namespace overwater::formula_signs
