// Must not compile: a bare number does not say its unit.
#include "core/matter/water.hpp"
#include "core/quantity/temperature.hpp"
#include "core/quantity/units.hpp"

using namespace overwater;

Mass mass() { return 0.0412; }
