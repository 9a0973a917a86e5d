#include "tests/fuzz/course.hpp"

#include "tests/fuzz/target.hpp"

OVERWATER_FUZZ_TARGET(overwater::fuzz::holds_for_course)
