#pragma once

#include <string_view>

#include "core/matter/formula_problem.hpp"

namespace overwater {

/// Puts into `problem`, an unknown symbol of `text`, how the whole run of letters around it is likely meant, if other
/// capitals alone make it symbols of elements: NACL -> NaCl, mg -> Mg. Where there are several ways the one of the elements
/// met at school is taken (caco -> CaCO, not CaCo). Leaves it as it is if there is none.
void add_likely_spelling(std::string_view text, FormulaProblem& problem);

}  // namespace overwater
