#pragma once

#include <cstddef>
#include <span>
#include <vector>

/// The machinery of JCGM 100:2008 (GUM), free of any one experiment.

namespace overwater {

/// Mean, standard deviation (n - 1) and standard deviation of the mean, by two passes. Fewer than two: deviation 0.
struct Sample {
    std::size_t count = 0;
    double mean = 0;
    double deviation = 0;
    double of_mean = 0;  ///< deviation / sqrt(count)
};
Sample sample_of(std::span<const double> values);

/// Covariance of the means of two series read together (GUM 5.2.3, eq. 17). Same length, 2 or more.
double covariance_of_means(std::span<const double> a, std::span<const double> b);

/// Combined standard uncertainty from sensitivities and a covariance matrix in rows (GUM 5.2.2, eq. 13).
double combined_uncertainty(std::span<const double> sensitivities, std::span<const double> covariances);

/// One part of a combined standard uncertainty.
struct Part {
    double u;        ///< |sensitivity| times standard uncertainty
    double degrees;  ///< degrees of freedom, infinite for a limit that is taken as sure
};
/// Effective degrees of freedom, not truncated (GUM G.4.1, eq. G.2b, Welch-Satterthwaite); infinite where no part is
/// finite.
double effective_degrees(std::span<const Part> parts);

/// Degrees of freedom of a standard uncertainty that is itself doubtful by the fraction `relative_doubt` (GUM G.4.2,
/// eq. G.3); infinite for 0.
double degrees_of_doubtful(double relative_doubt);

/// Two-sided quantile of Student's t: |t| <= result with probability `coverage` (0 < coverage < 1), `degrees` > 0 or
/// infinite.
double student_quantile(double coverage, double degrees);
/// k for 95 %: `degrees` truncated down to a whole number, at least 1 (GUM G.4.1 note 1); 1.96 where infinite.
double coverage_factor(double degrees);
/// Quantile of the standard normal, 0 < probability < 1.
double normal_quantile(double probability);

/// A straight line y = intercept + slope (x - origin) by least squares, with its uncertainties (GUM H.3).
struct Line {
    double intercept = 0, slope = 0;
    double u_intercept = 0, u_slope = 0;
    double correlation = 0;  ///< of intercept and slope
    double residual = 0;     ///< standard deviation of the residuals
    double degrees = 0;
    /// Value and standard uncertainty at `x - origin`.
    double at(double x) const { return intercept + slope * x; }
    double u_at(double x) const;
};
/// Two or more different x, three or more points for uncertainties.
Line fitted_line(std::span<const double> x, std::span<const double> y, double origin = 0);

/// `u` with `digits` significant digits as GUM 7.2.6 rounds it: to the nearest (28.05 -> 28), but up where the nearest
/// would be over 2.5 % too small (10.47 -> 11; the share is this program's choice, the GUM leaves it to common sense).
double rounded_uncertainty(double u, int digits = 2);
/// GUM 7.2.6: decimals (negative: tens) that show `u` with two significant digits, and the value to the same place.
int decimals_of_uncertainty(double u, int digits = 2);

}  // namespace overwater
