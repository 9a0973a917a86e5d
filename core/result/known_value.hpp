#pragma once

#include <optional>

#include "core/result/assess.hpp"

namespace overwater {

/// What a result is compared with, in SI units: the accepted molar volume; the gas constant (CODATA); the molar mass of what
/// was weighed and its equivalent mass, or that of the gas, from abridged standard atomic weights. Nothing for an output
/// that nobody knows beforehand: a purity, an alloy, the gas of an own reaction, anything that has no value itself.
std::optional<double> known_value(const Assessment& assessment, Output output);

/// The same for another last line than the molar volume, whether it has a value or not; 0: nobody knows it beforehand.
double known_otherwise(const Readings& readings, const Setup& setup, Output output);

}  // namespace overwater
