#include "core/matter/elements.hpp"

#include <array>

namespace overwater {
namespace {

// IUPAC/CIAAW 2021: Prohaska et al., Pure Appl. Chem. 94 (2022) 573, Table 1: abridged value and its bounds; then the
// interval, or the unabridged value and its uncertainty.
constexpr AtomicWeight between(std::string_view symbol, double value, double plus_minus, int decimals, double lowest,
                               double highest) {
    return {symbol, value, plus_minus, decimals, lowest, highest, true};
}
constexpr AtomicWeight about(std::string_view symbol, double value, double plus_minus, int decimals, double unabridged,
                             double uncertainty) {
    return {symbol, value, plus_minus, decimals, unabridged - uncertainty, unabridged + uncertainty, false};
}

constexpr std::array<AtomicWeight, 23> table{
    between("H", 1.0080, 0.0002, 4, 1.00784, 1.00811),  between("Li", 6.94, 0.06, 2, 6.938, 6.997),
    between("C", 12.011, 0.002, 3, 12.0096, 12.0116),   between("N", 14.007, 0.001, 3, 14.00643, 14.00728),
    between("O", 15.999, 0.001, 3, 15.99903, 15.99977), about("Na", 22.990, 0.001, 3, 22.98976928, 0.00000002),
    between("Mg", 24.305, 0.002, 3, 24.304, 24.307),    about("Al", 26.982, 0.001, 3, 26.9815384, 0.0000003),
    between("Si", 28.085, 0.001, 3, 28.084, 28.086),    between("S", 32.06, 0.02, 2, 32.059, 32.076),
    between("Cl", 35.45, 0.01, 2, 35.446, 35.457),      about("K", 39.098, 0.001, 3, 39.0983, 0.0001),
    about("Ca", 40.078, 0.004, 3, 40.078, 0.004),       about("Mn", 54.938, 0.001, 3, 54.938043, 0.000002),
    about("Fe", 55.845, 0.002, 3, 55.845, 0.002),       about("Co", 58.933, 0.001, 3, 58.933194, 0.000003),
    about("Ni", 58.693, 0.001, 3, 58.6934, 0.0004),     about("Cu", 63.546, 0.003, 3, 63.546, 0.003),
    about("Zn", 65.38, 0.02, 2, 65.38, 0.02),           about("Ag", 107.87, 0.01, 2, 107.8682, 0.0002),
    about("Sn", 118.71, 0.01, 2, 118.710, 0.007),       about("Ba", 137.33, 0.01, 2, 137.327, 0.007),
    between("Pb", 207.2, 1.1, 1, 206.14, 207.94),
};

} // namespace

std::optional<AtomicWeight> element(std::string_view symbol) {
    for (const AtomicWeight& row : table) {
        if (row.symbol == symbol) return row;
    }
    return std::nullopt;
}

std::span<const AtomicWeight> elements() { return table; }

} // namespace overwater
