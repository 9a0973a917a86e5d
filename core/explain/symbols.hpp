#pragma once

#include "core/explain/formula.hpp"
#include "core/quantity/number_format.hpp"
#include "core/result/measured.hpp"
#include "core/result/tags.hpp"

namespace overwater {

struct Readings;

/// The letters of the formulas; the same in every language but for the chemical symbols put in.
Formula symbol_of(Output output, const Readings& readings);
Formula symbol_of(Input input, const Readings& readings);
/// A constant that is a number stands there as one: 273.15, or 273,15.
Formula symbol_of(Constant constant, double value, const Readings& readings, DecimalSign decimal_sign);

/// A formula of chemistry in plain ASCII with its numbers below the line: "Al2(SO4)3" -> "Al₂(SO₄)₃".
std::string lowered(std::string_view formula);

}  // namespace overwater
