// Must not compile: a bare number does not say its scale.
#include "core/matter/water.hpp"
#include "core/quantity/temperature.hpp"
#include "core/quantity/units.hpp"

using namespace overwater;

auto vapour() { return water_vapour_pressure<double>(21.4); }
