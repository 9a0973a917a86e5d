#include "tests/fuzz/record.hpp"

#include "tests/fuzz/target.hpp"

OVERWATER_FUZZ_TARGET(overwater::fuzz::holds_for_record)
