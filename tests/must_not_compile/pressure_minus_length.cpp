// Must not compile: a column of water is no pressure until it is multiplied by density and gravity.
#include "core/matter/water.hpp"
#include "core/quantity/temperature.hpp"
#include "core/quantity/units.hpp"

using namespace overwater;

auto difference(Pressure p, Length h) { return p - h; }
