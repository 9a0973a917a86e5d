// Must not compile: a volume is not read in a unit of pressure.
#include "core/matter/water.hpp"
#include "core/quantity/temperature.hpp"
#include "core/quantity/units.hpp"

using namespace overwater;

double number(Volume v) { return v.in(kilopascal); }
