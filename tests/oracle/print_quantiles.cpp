// Prints quantiles as core/result/gum.cpp finds them, for compare_quantiles.py to check with SciPy.
// Lines: student,coverage,degrees,quantile or normal,probability,quantile; numbers with 17 digits.

#include <cstdio>
#include <limits>

#include "core/quantity/gum.hpp"

using namespace overwater;

int main() {
    const double coverages[] = {1e-6, 0.01,   0.1,  0.3,    0.4999, 0.5,      0.6827,     0.9,
                                0.95, 0.9545, 0.99, 0.9973, 0.9999, 0.999999, 0.999999999};
    for (const double coverage : coverages) {
        for (double degrees = 1; degrees < 3e12; degrees *= 1.37) {
            std::printf("student,%.17g,%.17g,%.17g\n", coverage, degrees, student_quantile(coverage, degrees));
        }
        for (int degrees = 1; degrees <= 120; ++degrees) {
            std::printf("student,%.17g,%d,%.17g\n", coverage, degrees, student_quantile(coverage, degrees));
        }
        for (const double degrees :
             {0.1, 0.5, 1.0 + 1e-9, 16.76, 99999.5, 1e5, 100000.5, std::numeric_limits<double>::infinity()}) {
            std::printf("student,%.17g,%.17g,%.17g\n", coverage, degrees, student_quantile(coverage, degrees));
        }
    }
    for (double probability = 1e-300; probability < 1e-3; probability *= 7.3) {
        std::printf("normal,%.17g,%.17g\n", probability, normal_quantile(probability));
    }
    for (int i = 1; i < 2000; ++i) {
        const double probability = i / 2000.0;
        std::printf("normal,%.17g,%.17g\n", probability, normal_quantile(probability));
    }
    return 0;
}
