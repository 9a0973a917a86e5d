// Must not compile: a pressure and a volume have no sum.
#include "core/matter/water.hpp"
#include "core/quantity/temperature.hpp"
#include "core/quantity/units.hpp"

using namespace overwater;

auto sum(Pressure p, Volume v) { return p + v; }
