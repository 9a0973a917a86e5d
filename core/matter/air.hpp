#pragma once

/// The air above the bench, for pressures of a weather report. US Standard Atmosphere 1976, equal to ICAO Doc 7488 and
/// ISO 2533 below 32 km: temperature falls by 6.5 K a kilometre from 15 °C and 101 325 Pa at sea level.

namespace overwater {

inline constexpr double atmosphere_sea_level_kelvin = 288.15;
inline constexpr double atmosphere_lapse_rate = 0.0065;         ///< K/m
inline constexpr double atmosphere_air_gas_constant = 287.05287;  ///< J/(kg K)
/// g0/(R L) = 5.255880.
inline constexpr double atmosphere_exponent = 9.80665 / (atmosphere_air_gas_constant * atmosphere_lapse_rate);

}  // namespace overwater
