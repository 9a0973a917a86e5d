#pragma once

#include "core/explain/formula.hpp"
#include "web/draw/picture.hpp"

namespace overwater {

/// A formula as a picture, its first text at `size` px. The picture is just as large as the formula; `baseline`, where
/// given, receives the distance of its baseline from the picture's top. Fractions stand on the height of the minus
/// sign, indices have 0.7 of the size, parentheses grow with what they hold. What `changed` is underlined in the colour of what can be pressed. Text sizes are whole pixels of at
/// least 9.
Picture typeset(const Formula& formula, float size, Ink ink, const TextMeasure& measure, float* baseline = nullptr);

}  // namespace overwater
