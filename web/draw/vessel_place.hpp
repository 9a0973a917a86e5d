#pragma once

#include "web/draw/vessel.hpp"

/// Where the vessels stand in their pictures.

namespace overwater {

/// The table's top, as high as the bottom of the tube's trough.
float bench_of(float height);

/// Of the syringe's scale.
struct SyringePlace {
    explicit SyringePlace(float width);
    float zero, length;
};

/// Generator, bottle and balance in a row, 300 units wide; the first two stand higher where there is room.
struct RowPlace {
    RowPlace(float width, float height);
    float across, up;  ///< px of a unit
    float left;
    float floor;  ///< under flask and bottle
    float neck;   ///< of the bottle: how high the water can stand
};

}  // namespace overwater
