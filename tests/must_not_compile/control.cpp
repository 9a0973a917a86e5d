// Must compile: proves that the other files fail for what they say, not for a wrong path or flag.
#include "core/matter/water.hpp"
#include "core/quantity/temperature.hpp"
#include "core/quantity/units.hpp"

using namespace overwater;

Pressure sum(Pressure a, Pressure b) { return a + b; }
TemperatureDifference difference(Temperature<> a, Temperature<> b) { return a - b; }
Pressure vapour(Temperature<> t) { return water_vapour_pressure(t); }
double number(Pressure p) { return p.in(kilopascal); }
Mass mass() { return Mass::from(0.0412, gram); }
Amount amount(Mass m, MolarMass molar) { return m / molar; }
