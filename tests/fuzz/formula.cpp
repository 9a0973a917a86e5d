#include "tests/fuzz/formula.hpp"

#include "tests/fuzz/target.hpp"

OVERWATER_FUZZ_TARGET(overwater::fuzz::holds_for_formula)
