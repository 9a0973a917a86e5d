#pragma once

#include <array>
#include <string_view>

#include "core/matter/elements.hpp"

/// The numbers behind elements.hpp and periodic_table.hpp, which are what the rest of the program uses. Source: IUPAC/CIAAW
/// 2021, Prohaska et al., Pure Appl. Chem. 94 (2022) 573, Table 1, from second-hand copies. (In 2024 CIAAW gave Zr, Gd and
/// Lu other values, each within the abridged bounds here.)

namespace overwater::weight_table {

/// Abridged value and its bounds; then the interval ...
constexpr AtomicWeight between(std::string_view symbol, double value, double plus_minus, int decimals, double lowest,
                               double highest) {
    return {symbol, value, plus_minus, decimals, lowest, highest, true};
}
/// ... or the unabridged value and its uncertainty.
constexpr AtomicWeight about(std::string_view symbol, double value, double plus_minus, int decimals, double unabridged,
                             double uncertainty) {
    return {symbol, value, plus_minus, decimals, unabridged - uncertainty, unabridged + uncertainty, false};
}

/// Every element that has a standard atomic weight, by atomic number.
inline constexpr std::array<AtomicWeight, 84> rows{
    between("H", 1.0080, 0.0002, 4, 1.00784, 1.00811),
    about("He", 4.0026, 0.0001, 4, 4.002602, 0.000002),
    between("Li", 6.94, 0.06, 2, 6.938, 6.997),
    about("Be", 9.0122, 0.0001, 4, 9.0121831, 0.0000005),
    between("B", 10.81, 0.02, 2, 10.806, 10.821),
    between("C", 12.011, 0.002, 3, 12.0096, 12.0116),
    between("N", 14.007, 0.001, 3, 14.00643, 14.00728),
    between("O", 15.999, 0.001, 3, 15.99903, 15.99977),
    about("F", 18.998, 0.001, 3, 18.998403162, 0.000000005),
    about("Ne", 20.180, 0.001, 3, 20.1797, 0.0006),
    about("Na", 22.990, 0.001, 3, 22.98976928, 0.00000002),
    between("Mg", 24.305, 0.002, 3, 24.304, 24.307),
    about("Al", 26.982, 0.001, 3, 26.9815384, 0.0000003),
    between("Si", 28.085, 0.001, 3, 28.084, 28.086),
    about("P", 30.974, 0.001, 3, 30.973761998, 0.000000005),
    between("S", 32.06, 0.02, 2, 32.059, 32.076),
    between("Cl", 35.45, 0.01, 2, 35.446, 35.457),
    between("Ar", 39.95, 0.16, 2, 39.792, 39.963),
    about("K", 39.098, 0.001, 3, 39.0983, 0.0001),
    about("Ca", 40.078, 0.004, 3, 40.078, 0.004),
    about("Sc", 44.956, 0.001, 3, 44.955907, 0.000004),
    about("Ti", 47.867, 0.001, 3, 47.867, 0.001),
    about("V", 50.942, 0.001, 3, 50.9415, 0.0001),
    about("Cr", 51.996, 0.001, 3, 51.9961, 0.0006),
    about("Mn", 54.938, 0.001, 3, 54.938043, 0.000002),
    about("Fe", 55.845, 0.002, 3, 55.845, 0.002),
    about("Co", 58.933, 0.001, 3, 58.933194, 0.000003),
    about("Ni", 58.693, 0.001, 3, 58.6934, 0.0004),
    about("Cu", 63.546, 0.003, 3, 63.546, 0.003),
    about("Zn", 65.38, 0.02, 2, 65.38, 0.02),
    about("Ga", 69.723, 0.001, 3, 69.723, 0.001),
    about("Ge", 72.630, 0.008, 3, 72.630, 0.008),
    about("As", 74.922, 0.001, 3, 74.921595, 0.000006),
    about("Se", 78.971, 0.008, 3, 78.971, 0.008),
    between("Br", 79.904, 0.003, 3, 79.901, 79.907),
    about("Kr", 83.798, 0.002, 3, 83.798, 0.002),
    about("Rb", 85.468, 0.001, 3, 85.4678, 0.0003),
    about("Sr", 87.62, 0.01, 2, 87.62, 0.01),
    about("Y", 88.906, 0.001, 3, 88.905838, 0.000002),
    about("Zr", 91.224, 0.002, 3, 91.224, 0.002),
    about("Nb", 92.906, 0.001, 3, 92.90637, 0.00001),
    about("Mo", 95.95, 0.01, 2, 95.95, 0.01),
    about("Ru", 101.07, 0.02, 2, 101.07, 0.02),
    about("Rh", 102.91, 0.01, 2, 102.90549, 0.00002),
    about("Pd", 106.42, 0.01, 2, 106.42, 0.01),
    about("Ag", 107.87, 0.01, 2, 107.8682, 0.0002),
    about("Cd", 112.41, 0.01, 2, 112.414, 0.004),
    about("In", 114.82, 0.01, 2, 114.818, 0.001),
    about("Sn", 118.71, 0.01, 2, 118.710, 0.007),
    about("Sb", 121.76, 0.01, 2, 121.760, 0.001),
    about("Te", 127.60, 0.03, 2, 127.60, 0.03),
    about("I", 126.90, 0.01, 2, 126.90447, 0.00003),
    about("Xe", 131.29, 0.01, 2, 131.293, 0.006),
    about("Cs", 132.91, 0.01, 2, 132.90545196, 0.00000006),
    about("Ba", 137.33, 0.01, 2, 137.327, 0.007),
    about("La", 138.91, 0.01, 2, 138.90547, 0.00007),
    about("Ce", 140.12, 0.01, 2, 140.116, 0.001),
    about("Pr", 140.91, 0.01, 2, 140.90766, 0.00001),
    about("Nd", 144.24, 0.01, 2, 144.242, 0.003),
    about("Sm", 150.36, 0.02, 2, 150.36, 0.02),
    about("Eu", 151.96, 0.01, 2, 151.964, 0.001),
    about("Gd", 157.25, 0.03, 2, 157.25, 0.03),
    about("Tb", 158.93, 0.01, 2, 158.925354, 0.000007),
    about("Dy", 162.50, 0.01, 2, 162.500, 0.001),
    about("Ho", 164.93, 0.01, 2, 164.930329, 0.000005),
    about("Er", 167.26, 0.01, 2, 167.259, 0.003),
    about("Tm", 168.93, 0.01, 2, 168.934219, 0.000005),
    about("Yb", 173.05, 0.02, 2, 173.045, 0.010),
    about("Lu", 174.97, 0.01, 2, 174.9668, 0.0001),
    about("Hf", 178.49, 0.01, 2, 178.486, 0.006),
    about("Ta", 180.95, 0.01, 2, 180.94788, 0.00002),
    about("W", 183.84, 0.01, 2, 183.84, 0.01),
    about("Re", 186.21, 0.01, 2, 186.207, 0.001),
    about("Os", 190.23, 0.03, 2, 190.23, 0.03),
    about("Ir", 192.22, 0.01, 2, 192.217, 0.002),
    about("Pt", 195.08, 0.02, 2, 195.084, 0.009),
    about("Au", 196.97, 0.01, 2, 196.966570, 0.000004),
    about("Hg", 200.59, 0.01, 2, 200.592, 0.003),
    between("Tl", 204.38, 0.01, 2, 204.382, 204.385),
    between("Pb", 207.2, 1.1, 1, 206.14, 207.94),
    about("Bi", 208.98, 0.01, 2, 208.98040, 0.00001),
    about("Th", 232.04, 0.01, 2, 232.0377, 0.0004),
    about("Pa", 231.04, 0.01, 2, 231.03588, 0.00001),
    about("U", 238.03, 0.01, 2, 238.02891, 0.00003),
};

}  // namespace overwater::weight_table
