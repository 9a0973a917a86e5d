#pragma once

#include <cstdint>

/// How each step is done. The first value of each enumeration is the right way; every other value is a slip that people
/// really make. The right method is one point of this space and each slip is another, computed by the same model.

namespace overwater {

struct Method {
    enum class Volume : std::uint8_t {
        right,
        reading_taken_as_gas,  ///< an upside-down scale read as if 0 were at the closed end: reading + end space
        end_space_ignored
    };
    enum class Vapour : std::uint8_t { subtracted, ignored, added };
    enum class Column : std::uint8_t { right, ignored, wrong_side };
    enum class GasRatio : std::uint8_t { right, half, twice };
    enum class Conversion : std::uint8_t { right, temperature_upside_down, pressure_upside_down, none };

    Volume volume = Volume::right;
    Vapour vapour = Vapour::subtracted;
    Column column = Column::right;
    GasRatio gas_ratio = GasRatio::right;
    Conversion conversion = Conversion::right;
};

}  // namespace overwater
