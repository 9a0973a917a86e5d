// The 0.1 torr tables of a class: standards.md, section 1.3, column "0.1 torr: new / old".

#include <doctest/doctest.h>

#include "core/matter/vapour_table.hpp"
#include "core/quantity/units.hpp"

using namespace overwater;

TEST_CASE("rows of the 0.1 torr tables from 15 to 30 °C") {
    struct Row {
        int celsius;
        double fresh;
        double older;
    };
    // New: (b) IAPWS-IF97 rounded. Older at 27 to 30 °C: (c) older handbooks, as method.md, section 2 has them.
    const Row rows[] = {{15, 12.8, 12.8}, {16, 13.6, 13.6}, {17, 14.5, 14.5}, {18, 15.5, 15.5},
                        {19, 16.5, 16.5}, {20, 17.5, 17.5}, {21, 18.7, 18.7}, {22, 19.8, 19.8},
                        {23, 21.1, 21.1}, {24, 22.4, 22.4}, {25, 23.8, 23.8}, {26, 25.2, 25.2},
                        {27, 26.8, 26.7}, {28, 28.4, 28.3}, {29, 30.1, 30.0}, {30, 31.9, 31.8}};
    for (const Row& row : rows) {
        CAPTURE(row.celsius);
        CHECK(*vapour_table_row(VapourTable::rounded_formula, row.celsius) ==
              doctest::Approx(row.fresh).epsilon(1e-12));
        CHECK(*vapour_table_row(VapourTable::older, row.celsius) == doctest::Approx(row.older).epsilon(1e-12));
    }
}

TEST_CASE("between the rows one interpolates, or takes the nearest") {
    const auto torrs = [](BetweenRows between, double celsius) {
        return Pressure::si(*vapour_from_table(VapourTable::rounded_formula, between, celsius)).in(torr);
    };
    CHECK(torrs(BetweenRows::interpolated, 21.4) == doctest::Approx(19.1).epsilon(1e-9));  // method.md, record A
    CHECK(torrs(BetweenRows::nearest, 21.4) == doctest::Approx(18.7).epsilon(1e-9));       // the row of 21 °C
    CHECK(torrs(BetweenRows::nearest, 21.6) == doctest::Approx(19.8).epsilon(1e-9));       // the row of 22 °C
    CHECK_FALSE(vapour_from_table(VapourTable::rounded_formula, BetweenRows::nearest, 50.6).has_value());
    CHECK_FALSE(vapour_from_table(VapourTable::older, BetweenRows::interpolated, -0.1).has_value());
}

TEST_CASE("the 0.1 torr tables go from 0 to 50 °C, both ends included, and differ at four rows alone") {
    for (const VapourTable table : {VapourTable::rounded_formula, VapourTable::older}) {
        // IAPWS-IF97 by python3-iapws: 4.584, 6.545, 55.388 and 92.642 torr at 0, 5, 40 and 50 °C.
        CHECK(*vapour_table_row(table, 0) == doctest::Approx(4.6).epsilon(1e-12));
        CHECK(*vapour_table_row(table, 5) == doctest::Approx(6.5).epsilon(1e-12));
        CHECK(*vapour_table_row(table, 40) == doctest::Approx(55.4).epsilon(1e-12));
        CHECK(*vapour_table_row(table, 50) == doctest::Approx(92.6).epsilon(1e-12));
        CHECK_FALSE(vapour_table_row(table, -1).has_value());
        CHECK_FALSE(vapour_table_row(table, 51).has_value());
        for (const BetweenRows between : {BetweenRows::interpolated, BetweenRows::nearest}) {
            CHECK(vapour_from_table(table, between, 0) == Pressure::from(*vapour_table_row(table, 0), torr).si());
            CHECK(vapour_from_table(table, between, 50) == Pressure::from(*vapour_table_row(table, 50), torr).si());
            CHECK_FALSE(vapour_from_table(table, between, 50.01).has_value());
            CHECK_FALSE(vapour_from_table(table, between, -0.01).has_value());
        }
    }
    for (int celsius = 0; celsius <= 50; ++celsius) {
        CAPTURE(celsius);
        const bool same =
            *vapour_table_row(VapourTable::older, celsius) == *vapour_table_row(VapourTable::rounded_formula, celsius);
        CHECK(same == (celsius < 27 || celsius > 30));
    }
}

TEST_CASE("halfway between two rows of the table the nearest is the upper one, and a whole degree is its own row") {
    const auto torrs = [](BetweenRows between, double celsius) {
        return Pressure::si(*vapour_from_table(VapourTable::rounded_formula, between, celsius)).in(torr);
    };
    // Rows 18.7 and 19.8 torr at 21 and 22 °C; common practice, no source: a half goes up.
    CHECK(torrs(BetweenRows::nearest, 21.5) == doctest::Approx(19.8).epsilon(1e-9));
    CHECK(torrs(BetweenRows::nearest, 21.49) == doctest::Approx(18.7).epsilon(1e-9));
    CHECK(torrs(BetweenRows::interpolated, 21) == doctest::Approx(18.7).epsilon(1e-9));
    CHECK(torrs(BetweenRows::interpolated, 22) == doctest::Approx(19.8).epsilon(1e-9));
    CHECK(torrs(BetweenRows::interpolated, 21.9) == doctest::Approx(19.7).epsilon(1e-9));  // 18.7 + 0.9 of 1.1 is 19.69
}
