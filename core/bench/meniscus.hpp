#pragma once

#include <optional>

namespace overwater {

/// Volume of the ring of liquid above the lowest point of the meniscus, in m³, in a tube of `bore` m at zero contact
/// angle; nothing outside the bores for which it is known.
/// Range: bores of 9.5 to 25 mm; linear between the rows.
/// Source: Young-Laplace equation for water, own computation (method.md, section 1).
std::optional<double> meniscus_ring(double bore);

/// The most that the meniscus takes off the volume read on an upside-down scale whose bore nobody measured: two rings, in
/// m³; `capacity` in m³, 0 where it is not known.
/// 0.25 mL for 50 mL, 0.45 mL for 100 mL (method.md, section 1); between the two a tube counts with the nearer one.
double most_of_meniscus(double capacity);

}  // namespace overwater
