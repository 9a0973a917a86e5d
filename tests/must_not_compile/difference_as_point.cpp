// Must not compile: a difference of 5 K is not a temperature of 5 K.
#include "core/matter/water.hpp"
#include "core/quantity/temperature.hpp"
#include "core/quantity/units.hpp"

using namespace overwater;

auto vapour(TemperatureDifference d) { return water_vapour_pressure(d); }
