// Must not compile: a mass is not made from a unit of volume.
#include "core/matter/water.hpp"
#include "core/quantity/temperature.hpp"
#include "core/quantity/units.hpp"

using namespace overwater;

Mass mass() { return Mass::from(36.8, millilitre); }
