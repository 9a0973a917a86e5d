#include <algorithm>
#include <cmath>

#include "core/bench/meniscus.hpp"
#include "core/lesson/practice_bench.hpp"
#include "core/matter/air.hpp"
#include "core/matter/constants.hpp"
#include "core/matter/water.hpp"
#include "core/quantity/units.hpp"

// From what is drawn to what the instruments show. Only + - * / and square roots, whose bits are the same everywhere,
// and what comes out is a whole number of tenths of a division. Units here: mL, Pa, mmol, mg, K.

namespace overwater {

namespace {

int nearest(double x) { return static_cast<int>(std::floor(x + 0.5)); }
int nearest_multiple(double x, int step) { return step * nearest(x / step); }

/// (1 + x)^exponent by the binomial series, |x| up to 0.1: the first term left out is below 1e-17.
double power_near_one(double x, double exponent) {
    double sum = 1;
    double term = 1;
    for (int k = 1; k <= 20; ++k) {
        term = term * (exponent - (k - 1)) / k * x;
        sum = sum + term;
    }
    return sum;
}

/// exp(x) by its series, |x| up to 0.5.
double exponential_near_zero(double x) {
    double sum = 1;
    double term = 1;
    for (int k = 1; k <= 20; ++k) {
        term = term * x / k;
        sum = sum + term;
    }
    return sum;
}

/// Pressure at `height` m under an altimeter setting in Pa: the standard atmosphere.
double under_altimeter_setting(double reported, double height) {
    const double p0 = standard_atmosphere.si();
    const double share = power_near_one(reported / p0 - 1, 1 / atmosphere_exponent);
    const double fallen = share - atmosphere_lapse_rate * height / atmosphere_sea_level_kelvin;
    return p0 * power_near_one(fallen - 1, atmosphere_exponent);
}

/// Pressure at `height` m where `reported` Pa was reduced to sea level by the temperature outside.
double under_reduced(double reported, double height, double celsius) {
    const double mean = celsius + celsius_zero_in_kelvin + atmosphere_lapse_rate * height / 2;
    return reported * exponential_near_zero(-(standard_gravity.si() * height / (atmosphere_air_gas_constant * mean)));
}

/// Books have these, and the page would ask whether one was read at all: 1013 hPa, 101.3 kPa, 760 mmHg, 29.92 inHg.
int not_from_a_book(int steps, PressureShown shown) {
    int book = 10130;
    if (shown == PressureShown::mercury_column) book = 7600;
    if (shown == PressureShown::aneroid_inch) book = 5984;
    if (shown == PressureShown::report_inch) book = 2992;
    return steps == book ? steps + 1 : steps;
}

int pressure_steps(double pascal, PressureShown shown) {
    switch (shown) {
    case PressureShown::mercury_column: return nearest(pascal / millimetre_of_mercury.factor * 10);
    case PressureShown::aneroid_inch: return nearest(pascal / inch_of_mercury.factor * 200);
    case PressureShown::report_inch: return nearest(pascal / inch_of_mercury.factor * 100);
    default: return nearest(pascal / 10);
    }
}

/// Pressure of the air at the bench, and what is read of it.
class Air {
public:
    explicit Air(const PracticeBench& b) {
        const bool report = b.pressure_kind != PressureKind::at_the_bench;
        const int told = report ? b.pressure : b.pressure + b.pressure_error;
        shown = not_from_a_book(pressure_steps(told, b.pressure_shown), b.pressure_shown);
        if (report) {
            const bool inch = b.pressure_shown == PressureShown::report_inch;
            const double reported = inch ? shown / 100.0 * inch_of_mercury.factor : shown * 10.0;
            const bool altimeter = b.pressure_kind == PressureKind::altimeter_setting;
            at_bench = b.pressure_error + (altimeter ? under_altimeter_setting(reported, b.height)
                                                     : under_reduced(reported, b.height, b.outdoor));
        } else if (b.mishap && b.mishap->cause == Cause::sea_level_pressure) {
            at_bench = under_altimeter_setting(b.pressure, b.mishap->size);
        } else {
            at_bench = b.pressure;
        }
    }
    double at_bench;
    int shown;
};

class Runner {
public:
    Runner(const PracticeBench& bench, const DrawnRun& run, bool struck, double air)
        : b_(bench),
          run_(run),
          cause_(struck ? bench.mishap->cause : Cause::count),
          size_(struck ? bench.mishap->size : 0),
          air_(air) {
        const double molar = molar_mass_of(b_.sample).in(gram_per_mole);
        gas_a_milligram_ = reaction(b_.sample, b_.acid).gas_per_sample / molar;
        if (b_.inverted()) {
            const double ring = meniscus_ring(b_.bore * 1e-4).value_or(0.0) * 1e6;
            beyond_ = b_.end_space / 100.0 - 2 * ring;
        }
    }

    ShownRun shown() {
        const double celsius = b_.temperature / 10.0;
        const double dry = dry_pressure(celsius, run_.level);
        const double start_room = b_.start ? run_.start_gas * b_.scale_step() / 100.0 + beyond_ : 0.0;
        const double start_gas = b_.start ? dry_pressure(celsius, run_.start_level) * start_room : 0.0;
        const double room = b_.capacity * run_.share / 1000.0 + beyond_;
        const double gas = (dry * room - start_gas) / (gas_constant.si() * (celsius + celsius_zero_in_kelvin)) / 1000;
        const double metal = weigh(gas / gas_a_milligram_ / (b_.purity / 1000.0));
        const double made = react(metal) * gas_a_milligram_ * (1 - run_.dissolved / 10000.0);
        const double warm = celsius + (cause_ == Cause::gas_warm ? size_ / 10.0 : 0.0);
        const int level = run_.level + (cause_ == Cause::levels_not_equal ? size_ : 0);
        const double volume =
            (made * gas_constant.si() * (warm + celsius_zero_in_kelvin) * 1000 + start_gas) / dry_pressure(warm, level);
        read(volume + added_gas());
        return out_;
    }

private:
    double dry_pressure(double celsius, int level) const {
        const double room = b_.temperature / 10.0;
        const double column =
            water_density(Temperature<>::celsius(room)).si() * standard_gravity.si() * (level / 10000.0);
        const double moist = b_.stands == LiquidStands::higher_outside ? air_ + column : air_ - column;
        return moist - water_vapour_pressure(Temperature<>::celsius(celsius)).si();
    }

    /// Of the metal wanted (mg), what is on the balance or along the ruler; returns what is really there.
    double weigh(double wanted) {
        if (b_.mass_from == MassFrom::ribbon) {
            const double per_millimetre = b_.mass_per_metre / 100.0;
            out_.length = nearest(wanted / per_millimetre * 10);
            return (out_.length + run_.length_error) / 10.0 * (per_millimetre * (1 + b_.ribbon_error / 10000.0));
        }
        out_.balance_digit = b_.coarse_balance && wanted >= 80 ? 10 : 1;
        const int digit = out_.balance_digit;
        out_.mass = nearest_multiple(wanted * 10, digit);
        const double there = (out_.mass + run_.weighing_error * digit / 100.0) / 10;
        if (cause_ == Cause::wet_metal || cause_ == Cause::balance_off) {
            const int off = nearest_multiple(out_.mass * (size_ / 1000.0), digit);
            out_.mass += cause_ == Cause::wet_metal ? off : -b_.mishap->sign * off;
            out_.mishap_size = off * (0.1 * milligram.factor);
        }
        out_.mass_after = run_.dish / digit * digit;
        out_.mass_before = out_.mass_after + out_.mass;
        return there;
    }

    /// Metal that gives gas, mg.
    double react(double metal) const {
        double pure = metal * (b_.purity / 1000.0);
        if (cause_ == Cause::metal_left || cause_ == Cause::oxide_coat) pure = pure * (1 - size_ / 1000.0);
        return pure;
    }

    double added_gas() const {
        if (cause_ == Cause::air_bubble) return size_ / 100.0;
        if (cause_ == Cause::gas_lost) return -(size_ * b_.scale_step() / 100.0);
        return 0;
    }

    void read(double volume) {
        const int step = b_.scale_step();
        const double mark = b_.inverted() ? b_.capacity - (volume - beyond_) : volume;
        out_.scale = nearest_multiple(mark * 100 + run_.scale_error * step, step);
        out_.start_scale = b_.capacity * 100 - run_.start_gas * step;
        out_.level = run_.level + run_.level_error;
        out_.start_level = run_.start_level + run_.start_level_error;
    }

    const PracticeBench& b_;
    const DrawnRun& run_;
    Cause cause_;
    int size_;
    double air_;
    double gas_a_milligram_;  ///< mmol
    double beyond_ = 0;       ///< gas that the scale does not show: end space less the liquid above the meniscus, mL
    ShownRun out_;
};

/// The size of a mishap in the base of its unit, where the run does not decide it.
double size_in_base(const PracticeBench& b, int size) {
    switch (b.mishap->cause) {
    case Cause::gas_lost: return size * b.scale_step() / 100.0 * millilitre.factor;
    case Cause::air_bubble:
    case Cause::end_space_off: return size / 100.0 * millilitre.factor;
    case Cause::metal_left:
    case Cause::oxide_coat: return size / 1000.0;
    case Cause::gas_warm:
    case Cause::hot_liquid: return size / 10.0;
    case Cause::levels_not_equal: return size / 10.0 * millimetre.factor;
    default: return size;
    }
}

}  // namespace

ShownBench shown_on(const PracticeBench& b) {
    const Air air(b);
    ShownBench shown;
    shown.pressure = air.shown;
    int tenths = b.temperature + b.temperature_error;
    int end_space = b.end_space + b.end_space_error;
    int size = 0;
    if (b.mishap) {
        size = b.mishap->size;
        if (b.mishap->cause == Cause::hot_liquid) tenths += size;
        if (b.mishap->cause == Cause::end_space_off) {
            // Some of it was found.
            if (b.mishap->sign < 0) size = std::min(size, b.end_space - 20);
            end_space += b.mishap->sign * size;
        }
    }
    // °F in steps of 0.2: (1.8 t + 32)/0.2.
    shown.temperature = b.fahrenheit ? (tenths * 9 + 5) / 10 + 160 : tenths;
    shown.end_space = (end_space + 2) / 5 * 5;
    for (std::size_t i = 0; i < b.runs.size(); ++i) {
        const bool struck = b.mishap && (b.mishap->run < 0 || b.mishap->run == static_cast<int>(i));
        ShownRun run = Runner(b, b.runs[i], struck, air.at_bench).shown();
        if (struck && run.mishap_size == 0) run.mishap_size = size_in_base(b, size);
        shown.runs.push_back(run);
    }
    return shown;
}

}  // namespace overwater
