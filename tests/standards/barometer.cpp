// A column of mercury in a brass scale, and the acceleration that it stands under: standards.md, sections 6.1 and 6.2.

#include <doctest/doctest.h>

#include <cmath>
#include <cstddef>

#include "core/matter/barometer.hpp"

using namespace overwater;

TEST_CASE("the temperature of a mercury barometer: the CRC Handbook's table") {
    constexpr double millimetres[] = {750, 760, 770, 790};
    struct Row {
        double celsius;
        double table[4];     ///< (a) CRC barometer temperature-correction table (excerpt), mm to subtract
        double computed[3];  ///< (b) the formula with 1.818e-4 and 1.84e-5 1/K, own computation
    };
    // The public copy heads its last column 780: by the formula it is that of 790 mm (2.572, 2.700, 2.829, 2.957).
    constexpr Row rows[] = {
        {20, {2.44, 2.47, 2.51, 2.57}, {2.442, 2.475, 2.507}},
        {21, {2.56, 2.60, 2.63, 2.70}, {2.564, 2.598, 2.632}},
        {22, {2.69, 2.72, 2.76, 2.83}, {2.685, 2.721, 2.757}},
        {23, {2.81, 2.84, 2.88, 2.96}, {2.807, 2.844, 2.882}},
    };
    for (const Row& row : rows) {
        for (std::size_t i = 0; i < 4; ++i) {
            const double off = millimetres[i] * (1 - mercury_to_zero(row.celsius));
            CAPTURE(row.celsius);
            CAPTURE(millimetres[i]);
            CHECK(std::fabs(off - row.table[i]) <= 0.0055);
            if (i < 3) CHECK(std::fabs(off - row.computed[i]) <= 0.00051);
        }
    }
    CHECK(mercury_to_zero(0.0) == 1.0);
    CHECK(mercury_to_zero(-5.0) > 1.0);
}

TEST_CASE("local gravity: the National Physical Laboratory's form against the ellipsoids") {
    struct Row {
        double latitude;
        double npl;    ///< (b) the same formula (International Gravity Formula 1980), own computation
        double wgs84;  ///< (b) WGS84, Somigliana's closed form
    };
    constexpr Row rows[] = {{0, 9.780327, 9.780325}, {30, 9.793249, 9.793247}, {45, 9.806200, 9.806198},
                            {50, 9.810704, 9.810702}, {60, 9.819179, 9.819177}, {90, 9.832186, 9.832185}};
    for (const Row& row : rows) {
        CAPTURE(row.latitude);
        CHECK(std::fabs(local_gravity(row.latitude, 0) - row.npl) <= 6e-7);
        // The two differ by the ellipsoid: 2e-6 m/s²; the note states 5e-5 for its own.
        CHECK(std::fabs(local_gravity(row.latitude, 0) - row.wgs84) <= 2.6e-6);
        CHECK(local_gravity(-row.latitude, 0) == local_gravity(row.latitude, 0));
    }
    // (a) WGS84, at the equator and the poles: 9.7803253359 and 9.8321849378.
    CHECK(std::fabs(local_gravity(0, 0) - 9.7803253359) <= 5e-5);
    CHECK(std::fabs(local_gravity(90, 0) - 9.8321849378) <= 5e-5);
    // (b) The standard acceleration is that of 45.4996°: own computation by WGS84; 2e-6 m/s² are 0.002°.
    CHECK(local_gravity(45.49, 0) < 9.80665);
    CHECK(local_gravity(45.51, 0) > 9.80665);
}

TEST_CASE("local gravity with the height, and what it makes of 760 mm") {
    struct Row {
        double latitude;
        double height;
        double gravity;      ///< (b) own computation, m/s²
        double millimetres;  ///< (b) mmHg that 760 mm stand for; 0: not printed
    };
    constexpr Row rows[] = {{45, 1000, 9.80311, 0}, {0, 2240, 9.77341, 757.42}, {40, 1609, 9.79673, 0}, {50, 0, 9.81070, 760.31}};
    for (const Row& row : rows) {
        CAPTURE(row.latitude);
        CHECK(std::fabs(local_gravity(row.latitude, row.height) - row.gravity) <= 6e-6);
        if (row.millimetres > 0) {
            CHECK(std::fabs(760 * gravity_to_standard(row.latitude, row.height) - row.millimetres) <= 0.006);
        }
    }
}
