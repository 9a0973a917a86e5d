// Prints what a class's values come to, for compare_pool.py to check with SciPy and NumPy. Standard input: a line a class,
// "n x1 y1 x2 y2 ...". Lines back, with 17 digits: mean median s half_width grubbs_index grubbs_statistic grubbs_critical
// dixon_statistic slope u residual r2 intercept slope u_intercept u_slope residual r2 band mean_of_ratios u
// ratio_of_totals u

#include <cstdio>
#include <vector>

#include "core/pool/line.hpp"
#include "core/pool/outlier.hpp"
#include "core/pool/summary.hpp"

using namespace overwater;

int main() {
    int count = 0;
    while (std::scanf("%d", &count) == 1) {
        std::vector<double> x(static_cast<std::size_t>(count));
        std::vector<double> y(x.size());
        for (std::size_t i = 0; i < x.size(); ++i) {
            if (std::scanf("%lf %lf", &x[i], &y[i]) != 2) return 1;
        }
        const Summary all = summary_of(y);
        const OutlierTest far = grubbs(y);
        const OriginLine origin = line_through_origin(x, y);
        const Line line = free_line(x, y).value_or(Line{});
        const PooledRatio ratios = mean_of_ratios(x, y);
        const PooledRatio totals = ratio_of_totals(x, y);
        const double numbers[]{all.mean,         all.median,       all.deviation,   all.half_width,
                               static_cast<double>(far.index),     far.statistic,   far.critical,
                               dixon(y).statistic, origin.slope,   origin.slope_u,  origin.residual,
                               origin.r_squared, line.intercept,   line.slope,      line.u_intercept,
                               line.u_slope,     line.residual,    r_squared(line, x, y), band_factor(line) * line.u_at(0),
                               ratios.value,     ratios.u,         totals.value,    totals.u};
        for (const double number : numbers) std::printf("%.17g ", number);
        std::printf("\n");
    }
    return 0;
}
