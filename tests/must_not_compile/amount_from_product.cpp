// Must not compile: mass times molar mass is no amount.
#include "core/matter/water.hpp"
#include "core/quantity/temperature.hpp"
#include "core/quantity/units.hpp"

using namespace overwater;

Amount amount(Mass m, MolarMass molar) { return m * molar; }
