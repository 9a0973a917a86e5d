#include "core/matter/formula_reader.hpp"

#include <algorithm>

#include "core/matter/likely_spelling.hpp"
#include "core/matter/periodic_table.hpp"

namespace overwater::formula_signs {
namespace {

using Kind = FormulaProblemKind;

char closing_of(char opening) {
    if (opening == '(') return ')';
    return opening == '[' ? ']' : '}';
}

bool is_opening(char32_t sign) { return sign == U'(' || sign == U'[' || sign == U'{'; }
bool is_closing(char32_t sign) { return sign == U')' || sign == U']' || sign == U'}'; }

}  // namespace

FormulaReading FormulaReader::read() {
    at_ = after_spaces(text_, at_);
    const std::size_t begin = at_;
    while (true) {
        const std::size_t place = after_spaces(text_, at_);
        after_space_ = place != at_;
        at_ = place;
        if (at_end()) break;
        if (at_ - begin >= longest_formula_text) {
            fail(Kind::too_long, at_, sign_at(text_, at_).bytes);
            break;
        }
        if (!read_piece()) break;
    }
    if (result_.problem.none() && nothing_yet()) fail(Kind::nothing_there, begin, 0);
    if (result_.problem.none()) check_end();
    if (result_.problem.none()) count_atoms();
    if (!result_.problem.none()) result_.formula = {};
    return std::move(result_);
}

/// Whether the text ends here or, in an equation, the formula does. A plus that belongs to a charge directly follows what
/// it charges.
bool FormulaReader::at_end() const {
    if (at_ >= text_.size()) return true;
    if (within_ == Within::formula) return false;
    if (sign_at(text_, at_).value == U'+') {
        const bool nothing_to_charge = nothing_yet() || charged_ || state_length_ != 0;
        return nothing_to_charge || after_space_ || charge_at(text_, at_, within_).length == 0;
    }
    return arrow_at(text_, at_) != 0;
}

bool FormulaReader::read_piece() {
    const CodePoint sign = sign_at(text_, at_);
    if (const StateSign state = state_at(text_, at_); state.length != 0) return read_state(state);
    if (state_length_ != 0) return fail(Kind::stray_state, state_at_, state_length_);
    if (charged_) return fail(Kind::stray_sign, charge_at_, charge_length_);
    if (sign.value == not_utf8) return fail(Kind::not_utf8, at_, sign.bytes);
    if (is_capital(sign.value)) return read_element();
    if (is_small(sign.value)) return read_electron();
    if (is_opening(sign.value) || is_closing(sign.value)) return read_bracket(sign);
    const Number number = number_at(text_, at_);
    if (number.length != 0 || broken_number(text_, number, false) != 0) return read_number(number);
    if (is_dot(sign.value)) return read_dot(sign);
    if (const ChargeText charge = charge_at(text_, at_, within_); charge.length != 0) return read_charge(charge);
    return fail(Kind::unknown_character, at_, sign.bytes);
}

bool FormulaReader::read_element() {
    const CodePoint capital = sign_at(text_, at_);
    const CodePoint next = sign_at(text_, at_ + capital.bytes);
    const bool two = is_small(next.value);
    std::string symbol(1, static_cast<char>(capital.value));
    if (two) symbol += static_cast<char>(next.value);
    const std::size_t length = capital.bytes + (two ? next.bytes : 0);
    const std::optional<int> number = atomic_number(symbol);
    if (!number) {
        fail(Kind::unknown_symbol, at_, length);
        add_likely_spelling(text_, result_.problem);
        return false;
    }
    FormulaPiece piece;
    piece.atomic_number = static_cast<std::uint8_t>(*number);
    add_piece(piece, length);
    return true;
}

bool FormulaReader::read_electron() {
    const std::size_t behind = at_ + sign_at(text_, at_).bytes;
    ChargeText charge = charge_at(text_, behind, within_);
    // `e-->` has no other meaning than e- and an arrow.
    const CodePoint sign = sign_at(text_, behind);
    if (charge.length == 0 && sign.value == U'-') charge = {-1, sign.bytes, {}};
    if (sign_at(text_, at_).value == U'e' && result_.formula.pieces.empty() && charge.charge == -1) {
        electron_ = true;
        at_ = behind;
        return read_charge(charge);
    }
    std::size_t end = at_;
    for (CodePoint small = sign_at(text_, end); is_small(small.value); small = sign_at(text_, end)) end += small.bytes;
    fail(Kind::unknown_symbol, at_, end - at_);
    add_likely_spelling(text_, result_.problem);
    return false;
}

bool FormulaReader::read_bracket(const CodePoint& sign) {
    FormulaPiece piece;
    piece.bracket = static_cast<char>(sign.value);
    if (is_opening(sign.value)) {
        if (open_.size() >= deepest_brackets) return fail(Kind::too_deep, at_, sign.bytes);
        open_.push_back(result_.formula.pieces.size());
        piece.kind = FormulaPiece::Kind::open;
        add_piece(piece, sign.bytes);
        return true;
    }
    if (open_.empty()) return fail(Kind::unmatched_bracket, at_, sign.bytes);
    const std::size_t opened = open_.back();
    if (closing_of(result_.formula.pieces[opened].bracket) != piece.bracket) {
        return fail(Kind::unmatched_bracket, at_, sign.bytes);
    }
    if (opened + 1 == result_.formula.pieces.size()) {
        return fail(Kind::empty_bracket, piece_at_[opened], at_ + sign.bytes - piece_at_[opened]);
    }
    open_.pop_back();
    piece.kind = FormulaPiece::Kind::close;
    add_piece(piece, sign.bytes);
    return true;
}

/// Digits: a count, the number of a hydrate's part, or a charge.
bool FormulaReader::read_number(const Number& number) {
    const std::vector<FormulaPiece>& pieces = result_.formula.pieces;
    const bool nothing_before = pieces.empty() || pieces.back().kind == FormulaPiece::Kind::open || electron_;
    const bool after_dot = !pieces.empty() && pieces.back().kind == FormulaPiece::Kind::dot;
    if (const std::size_t broken = broken_number(text_, number, after_dot && !counted_); broken != 0) {
        return fail(Kind::count_not_whole, at_, broken);
    }
    if (!nothing_before && !after_dot && open_.empty()) {
        const ChargeText charge = number_and_sign_at(text_, number, within_);
        if (charge.length != 0) {
            if (is_charge_number(number)) return read_charge(charge);
            const int last = number.value % 10;
            const bool parted = number.digits > 1 && last >= 2 && last <= 4 && number.value <= largest_count &&
                                number.height == Height::normal && !counted_;
            if (parted) {
                // A normal digit is one code point; the count is all digits before the last.
                std::size_t end = number.at;
                for (int i = 1; i < number.digits; ++i) end += sign_at(text_, end).bytes;
                Number count = number;
                count.length = end - number.at;
                count.value = number.value / 10;
                const std::size_t last_at = end;
                if (!take_count(count, count.value)) return false;
                return read_charge(number_and_sign_at(text_, number_at(text_, last_at), within_));
            }
        }
    }
    if (nothing_before || counted_) return fail(Kind::count_out_of_place, at_, number.length);
    return take_count(number, number.value);
}

/// Whether digits that a sign follows are a charge and no count (chemical_formula.hpp).
bool FormulaReader::is_charge_number(const Number& number) const {
    const std::vector<FormulaPiece>& pieces = result_.formula.pieces;
    if (after_space_ || counted_ || number.height == Height::raised) return true;
    if (number.height == Height::lowered || number.digits > 1) return false;
    const bool one_element = pieces.size() == 1;
    const auto square = [](const FormulaPiece& piece) { return piece.bracket == '[' || piece.bracket == ']'; };
    const bool one_bracket =
        square(pieces.front()) && square(pieces.back()) && std::count_if(pieces.begin(), pieces.end(), square) == 2;
    return one_element || one_bracket;
}

bool FormulaReader::take_count(const Number& number, int count) {
    if (FormulaProblem problem = problem_of(number); !problem.none()) {
        result_.problem = std::move(problem);
        return false;
    }
    result_.formula.pieces.back().count = count;
    counted_ = true;
    at_ = number.end();
    return true;
}

bool FormulaReader::read_dot(const CodePoint& sign) {
    const std::vector<FormulaPiece>& pieces = result_.formula.pieces;
    if (pieces.empty() || !open_.empty()) return fail(Kind::unknown_character, at_, sign.bytes);
    if (pieces.back().kind == FormulaPiece::Kind::dot) return fail(Kind::nothing_there, at_, 0);
    FormulaPiece piece;
    piece.kind = FormulaPiece::Kind::dot;
    add_piece(piece, sign.bytes);
    return true;
}

bool FormulaReader::read_charge(const ChargeText& charge) {
    if (!charge.problem.none()) {
        result_.problem = charge.problem;
        return false;
    }
    if (nothing_yet() || !open_.empty()) return fail(Kind::stray_sign, at_, charge.length);
    result_.formula.charge = charge.charge;
    charged_ = true;
    charge_at_ = at_;
    charge_length_ = charge.length;
    at_ += charge.length;
    return true;
}

bool FormulaReader::read_state(const StateSign& state) {
    if (nothing_yet() || !open_.empty() || state_length_ != 0) return fail(Kind::stray_state, at_, state.length);
    result_.formula.state = state.state;
    state_at_ = at_;
    state_length_ = state.length;
    at_ += state.length;
    return true;
}

/// What may be missing where a formula ends.
bool FormulaReader::check_end() {
    if (!open_.empty()) return fail(Kind::unmatched_bracket, piece_at_[open_.back()], piece_length_[open_.back()]);
    const bool after_dot = !electron_ && result_.formula.pieces.back().kind == FormulaPiece::Kind::dot;
    if (after_dot) return fail(Kind::nothing_there, at_, 0);
    return true;
}

/// Multiplies the brackets out.
void FormulaReader::count_atoms() {
    const std::vector<FormulaPiece>& pieces = result_.formula.pieces;
    constexpr long long too_many = largest_atom_count + 1LL;
    const auto times = [](long long a, long long b) { return a * b < too_many ? a * b : too_many; };
    std::vector<long long> each(pieces.size());  // how often each piece is there
    std::vector<long long> outside{1};
    for (std::size_t i = pieces.size(); i-- > 0;) {
        const FormulaPiece& piece = pieces[i];
        each[i] = times(outside.back(), piece.count);
        if (piece.kind == FormulaPiece::Kind::close) outside.push_back(each[i]);
        if (piece.kind == FormulaPiece::Kind::open) outside.pop_back();
    }
    long long part = 1;
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        if (pieces[i].kind == FormulaPiece::Kind::dot) part = pieces[i].count;
        if (pieces[i].kind != FormulaPiece::Kind::element) continue;
        std::vector<ElementCount>& atoms = result_.formula.atoms;
        auto found = std::find_if(atoms.begin(), atoms.end(), [&](const ElementCount& one) {
            return one.atomic_number == pieces[i].atomic_number;
        });
        if (found == atoms.end()) {
            found = atoms.insert(found, {pieces[i].atomic_number, 0, piece_at_[i], piece_length_[i]});
        }
        const long long sum = found->count + times(each[i], part);
        if (sum > largest_atom_count) {
            fail(Kind::count_too_large, piece_at_[i], piece_length_[i]);
            return;
        }
        found->count = static_cast<int>(sum);
    }
}

void FormulaReader::add_piece(FormulaPiece piece, std::size_t length) {
    result_.formula.pieces.push_back(piece);
    piece_at_.push_back(at_);
    piece_length_.push_back(length);
    counted_ = false;
    at_ += length;
}

bool FormulaReader::fail(FormulaProblemKind kind, std::size_t at, std::size_t length) {
    result_.problem = {};
    result_.problem.kind = kind;
    result_.problem.at = at;
    result_.problem.length = length;
    return false;
}

}  // namespace overwater::formula_signs
