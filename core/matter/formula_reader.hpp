#pragma once

#include <cstddef>
#include <string_view>
#include <vector>

#include "core/matter/charge_text.hpp"
#include "core/matter/chemical_formula.hpp"

/// Reads the formula that begins somewhere in a text. The inner part of parse_formula and parse_equation.

namespace overwater::formula_signs {

class FormulaReader {
public:
    FormulaReader(std::string_view text, std::size_t at, Within within) : text_(text), at_(at), within_(within) {}

    /// The formula that begins here. In an equation it ends before a plus between substances and before an arrow.
    FormulaReading read();

    /// Behind the formula and the spaces after it.
    std::size_t at() const { return at_; }

private:
    bool at_end() const;
    bool nothing_yet() const { return result_.formula.pieces.empty() && !electron_; }
    bool read_piece();
    bool read_element();
    bool read_bracket(const CodePoint& sign);
    bool read_number(const Number& number);
    bool read_dot(const CodePoint& sign);
    bool read_charge(const ChargeText& charge);
    bool read_electron();
    bool read_state(const StateSign& state);
    bool is_charge_number(const Number& number) const;
    bool take_count(const Number& number, int count);
    bool check_end();
    void count_atoms();
    void add_piece(FormulaPiece piece, std::size_t length);
    bool fail(FormulaProblemKind kind, std::size_t at, std::size_t length);

    std::string_view text_;
    std::size_t at_;
    Within within_;

    FormulaReading result_{};
    std::vector<std::size_t> piece_at_{};
    std::vector<std::size_t> piece_length_{};
    std::vector<std::size_t> open_{};  ///< which pieces are brackets not closed yet
    bool counted_ = false;             ///< the last piece has its count
    bool after_space_ = false;
    bool charged_ = false;
    bool electron_ = false;
    std::size_t charge_at_ = 0;
    std::size_t charge_length_ = 0;
    std::size_t state_at_ = 0;
    std::size_t state_length_ = 0;
};

}  // namespace overwater::formula_signs
