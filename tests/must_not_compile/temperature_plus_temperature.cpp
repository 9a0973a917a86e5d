// Must not compile: two points on a scale have no sum.
#include "core/matter/water.hpp"
#include "core/quantity/temperature.hpp"
#include "core/quantity/units.hpp"

using namespace overwater;

auto sum(Temperature<> a, Temperature<> b) { return a + b; }
