#pragma once

#include <cstdint>
#include <optional>

namespace overwater {

/// The tables a class looks the vapour pressure up in, whole degrees from 0 to 50 °C, to 0.1 torr.
enum class VapourTable : std::uint8_t {
    rounded_formula,  ///< IAPWS-IF97 rounded to 0.1 torr
    older             ///< the same, but 26.7 28.3 30.0 31.8 at 27 to 30 °C, as handbooks before IAPWS had it
};
enum class BetweenRows : std::uint8_t { interpolated, nearest };

/// The entry of the table at a whole number of degrees, in torr.
std::optional<double> vapour_table_row(VapourTable table, int celsius);

/// The vapour pressure in Pa that one takes from the table at `celsius` °C; nothing outside 0 to 50 °C.
/// Source: method.md, section 2; handbook rows as in standards.md, section 1.3.
std::optional<double> vapour_from_table(VapourTable table, BetweenRows between, double celsius);

}  // namespace overwater
