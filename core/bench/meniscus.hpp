#pragma once

#include <optional>

namespace overwater {

/// Volume of the ring of liquid above the lowest point of the meniscus, in m³, in a tube of `bore` m at zero contact
/// angle; nothing outside the bores for which it is known.
/// Range: bores of 9.5 to 25 mm; linear between the rows.
/// Source: Young-Laplace equation for water, own computation (method.md, section 1).
std::optional<double> meniscus_ring(double bore);

}  // namespace overwater
