// Must not compile: a mass is read in a unit that is named.
#include "core/matter/water.hpp"
#include "core/quantity/temperature.hpp"
#include "core/quantity/units.hpp"

using namespace overwater;

double number(Mass m) { return m; }
