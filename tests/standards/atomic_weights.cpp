#include <doctest/doctest.h>

#include <cmath>
#include <string>

#include "core/matter/elements.hpp"
#include "core/matter/periodic_table.hpp"
#include "core/quantity/number_format.hpp"

using namespace overwater;

namespace {

/// One line of Table 1 of Prohaska et al., Pure Appl. Chem. 94 (2022) 573 (IUPAC/CIAAW 2021), as printed.
struct Row {
    const char* symbol;
    const char* abridged;
    double plus_minus;
    bool is_interval;
    double first;   ///< lower end of the interval, or the standard value
    double second;  ///< upper end, or its uncertainty
};

const Row rows[] = {
    {"H", "1.0080", 0.0002, true, 1.00784, 1.00811},  {"Li", "6.94", 0.06, true, 6.938, 6.997},
    {"C", "12.011", 0.002, true, 12.0096, 12.0116},   {"N", "14.007", 0.001, true, 14.00643, 14.00728},
    {"O", "15.999", 0.001, true, 15.99903, 15.99977}, {"Na", "22.990", 0.001, false, 22.98976928, 0.00000002},
    {"Mg", "24.305", 0.002, true, 24.304, 24.307},    {"Al", "26.982", 0.001, false, 26.9815384, 0.0000003},
    {"Si", "28.085", 0.001, true, 28.084, 28.086},    {"S", "32.06", 0.02, true, 32.059, 32.076},
    {"Cl", "35.45", 0.01, true, 35.446, 35.457},      {"K", "39.098", 0.001, false, 39.0983, 0.0001},
    {"Ca", "40.078", 0.004, false, 40.078, 0.004},    {"Mn", "54.938", 0.001, false, 54.938043, 0.000002},
    {"Fe", "55.845", 0.002, false, 55.845, 0.002},    {"Co", "58.933", 0.001, false, 58.933194, 0.000003},
    {"Ni", "58.693", 0.001, false, 58.6934, 0.0004},  {"Cu", "63.546", 0.003, false, 63.546, 0.003},
    {"Zn", "65.38", 0.02, false, 65.38, 0.02},        {"Ag", "107.87", 0.01, false, 107.8682, 0.0002},
    {"Sn", "118.71", 0.01, false, 118.710, 0.007},    {"Ba", "137.33", 0.01, false, 137.327, 0.007},
    {"Pb", "207.2", 1.1, true, 206.14, 207.94},
};

}  // namespace

TEST_CASE("standard atomic weights against IUPAC/CIAAW 2021") {
    CHECK(elements().size() == std::size(rows));
    for (const Row& row : rows) {
        INFO(row.symbol);
        const auto found = element(row.symbol);
        REQUIRE(found.has_value());
        CHECK(format_fixed(found->value, found->decimals, DecimalSign::point) == row.abridged);
        CHECK(found->plus_minus == row.plus_minus);
        CHECK(found->is_interval == row.is_interval);
        CHECK(found->lowest == doctest::Approx(row.is_interval ? row.first : row.first - row.second).epsilon(1e-15));
        CHECK(found->highest == doctest::Approx(row.is_interval ? row.second : row.first + row.second).epsilon(1e-15));
        CHECK(found->molar_mass().si() * 1e3 == doctest::Approx(found->value).epsilon(1e-15));
    }
}

TEST_CASE("the abridged bounds cover what they abridge") {
    for (const AtomicWeight& row : elements()) {
        INFO(std::string(row.symbol));
        const double rounding = 1e-12;
        CHECK(row.value - row.plus_minus <= row.lowest + rounding);
        CHECK(row.value + row.plus_minus >= row.highest - rounding);
    }
}

TEST_CASE("an abridged weight is printed to the last digit of its bound, and no further") {
    // So is Table 1: 87.62 ± 0.01, 207.2 ± 1.1, 1.0080 ± 0.0002. The fewest decimals that hold both numbers are those printed.
    const auto whole = [](double number, int decimals) {
        const double scaled = number * std::pow(10.0, decimals);
        return std::fabs(scaled - std::round(scaled)) < 1e-6;
    };
    for (const AtomicWeight& row : standard_atomic_weights()) {
        INFO(std::string(row.symbol));
        int decimals = 0;
        while (!whole(row.value, decimals) || !whole(row.plus_minus, decimals)) ++decimals;
        CHECK(row.decimals == decimals);
    }
}

TEST_CASE("elements are found by their symbol only") {
    CHECK_FALSE(element(""));
    CHECK_FALSE(element("mg"));
    CHECK_FALSE(element("MG"));
    CHECK_FALSE(element("Xx"));
}
