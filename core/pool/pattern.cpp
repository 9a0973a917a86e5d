#include "core/pool/pattern.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace overwater {
namespace {

constexpr std::size_t fewest_points = 3;
constexpr double too_good = 0.001;         // of the accepted value, in every run
constexpr double scatter_ratio = 2.5;      // small samples against large ones
constexpr std::size_t fewest_in_half = 4;  // to speak of scatter at all
constexpr double left_by_swap = 0.25;      // of the squares, once two volumes are exchanged
constexpr double near_factor = 0.06;       // how near a factor has to be

/// A pooled value that is the accepted one times a number says which conversion went wrong.
struct Factor {
    double factor;
    const char* key;
};
constexpr std::array factors{Factor{0.5, "suspects.two"},         Factor{2, "suspects.two"},
                             Factor{25.4, "suspects.inches"},     Factor{1 / 25.4, "suspects.inches"},
                             Factor{7.5006, "suspects.torr_kpa"}, Factor{1 / 7.5006, "suspects.torr_kpa"},
                             Factor{760, "suspects.torr_atm"},    Factor{1.0 / 760, "suspects.torr_atm"},
                             Factor{10, "suspects.ten"},          Factor{0.1, "suspects.ten"},
                             Factor{100, "suspects.ten"},         Factor{0.01, "suspects.ten"},
                             Factor{1000, "suspects.ten"},        Factor{0.001, "suspects.ten"}};

/// Where all runs are off by one percentage, what usually lies there.
struct Band {
    double low;  ///< percent
    double high;
    const char* key;
};
constexpr std::array bands{Band{2.4, 3.6, "suspects.vapour_left_in"}, Band{5, 7, "suspects.vapour_added"},
                           Band{9, 13, "suspects.not_reduced"}, Band{1.0, 1.6, "suspects.states_mixed"},
                           Band{-1.6, -1.0, "suspects.states_mixed"}};

class Finder {
public:
    explicit Finder(const ClassSet& set) : set_(set), n_(set.points.size()) {
        for (const ClassPoint& point : set.points) {
            if (point.accepted > 0) accepted_ = point.accepted;
        }
    }

    std::vector<Pattern> find() {
        if (n_ < fewest_points) return {};
        if (falls() || by_a_factor() || too_good_to_be_true()) return std::move(found_);
        // Exchanged rows explain what else would be seen: first mend them.
        if (swapped()) return std::move(found_);
        if (!offset()) percentage();
        scatter();
        far_off();
        return std::move(found_);
    }

private:
    const ClassPoint& point(std::size_t i) const { return set_.points[i]; }

    void say(Message message, std::string_view suspects, std::vector<std::size_t> points = {}) {
        found_.push_back({std::move(message), suspects, std::move(points)});
    }

    /// More metal, less gas, beyond chance: the scale was read as the gas though it counts from the other end.
    bool falls() {
        if (!set_.free || !(set_.free->degrees > 0)) return false;
        const double reach = student_quantile(0.95, set_.free->degrees) * set_.free->u_slope;
        if (!(set_.free->slope + reach < 0)) return false;
        say(Message{"pattern.falls"}, "suspects.falls");
        return true;
    }

    bool by_a_factor() {
        if (!(accepted_ > 0)) return false;
        for (const Factor& one : factors) {
            if (std::fabs(set_.ratios.median / accepted_ / one.factor - 1) > near_factor) continue;
            say(Message{"pattern.factor"}.figures("times", set_.ratios.median / accepted_, UnitId::none, 3), one.key);
            return true;
        }
        return false;
    }

    bool too_good_to_be_true() {
        const bool all = std::all_of(set_.points.begin(), set_.points.end(), [](const ClassPoint& one) {
            return one.accepted > 0 && std::fabs(one.ratio / one.accepted - 1) < too_good;
        });
        if (all) say(Message{"pattern.too_good"}.count("number", static_cast<long long>(n_)), "suspects.too_good");
        return all;
    }

    /// Two volumes that, exchanged, take most of the scatter away.
    bool swapped() {
        if (n_ < 4 || !(set_.origin.slope > 0)) return false;
        const double slope = set_.ratios.median;
        double squares = 0;
        for (const ClassPoint& one : set_.points) squares += square(one.volume - slope * one.amount);
        double best = left_by_swap * squares;
        std::vector<std::size_t> pair;
        for (std::size_t i = 0; i < n_; ++i) {
            for (std::size_t k = i + 1; k < n_; ++k) {
                const double before = square(point(i).volume - slope * point(i).amount) +
                                      square(point(k).volume - slope * point(k).amount);
                const double after = square(point(k).volume - slope * point(i).amount) +
                                     square(point(i).volume - slope * point(k).amount);
                if (squares - before + after < best) {
                    best = squares - before + after;
                    pair = {i, k};
                }
            }
        }
        if (pair.empty()) return false;
        say(Message{"pattern.swapped"}, "suspects.swapped", std::move(pair));
        return true;
    }

    /// The same number of millilitres in every run.
    bool offset() {
        if (!(set_.intercept_half_width > 0) || std::fabs(set_.intercept_in_tube) <= set_.intercept_half_width)
            return false;
        say(Message{set_.intercept_in_tube < 0 ? "pattern.short_by" : "pattern.too_much_by"}
                .figures("volume", std::fabs(set_.intercept_in_tube), UnitId::millilitre, 2)
                .figures("half_width", set_.intercept_half_width, UnitId::millilitre, 2),
            set_.intercept_in_tube < 0 ? "suspects.short_by" : "suspects.too_much_by");
        return true;
    }

    /// The same percentage in every run, beyond chance.
    void percentage() {
        if (!(accepted_ > 0) || std::fabs(set_.ratios.mean - accepted_) <= set_.ratios.half_width) return;
        const double percent = 100 * (set_.ratios.mean / accepted_ - 1);
        const auto band = std::find_if(bands.begin(), bands.end(),
                                       [&](const Band& one) { return percent >= one.low && percent <= one.high; });
        const char* key = band != bands.end() ? band->key : percent > 0 ? "suspects.all_high" : "suspects.all_low";
        say(Message{percent > 0 ? "pattern.all_high" : "pattern.all_low"}.figures("percent", std::fabs(percent) / 100,
                                                                                  UnitId::percent, 2),
            key);
    }

    /// Small samples scatter more: what is lost or misread is the same for all, so it weighs more in them.
    void scatter() {
        const std::size_t half = n_ / 2;
        if (half < fewest_in_half) return;
        std::vector<double> amounts;
        for (const ClassPoint& one : set_.points) amounts.push_back(one.amount);
        std::sort(amounts.data(), amounts.data() + n_);
        // Equal amounts belong to both halves, so that a class of one amount has no small samples.
        const auto deviation = [&](double from, double to) {
            std::vector<double> ratios;
            for (const ClassPoint& one : set_.points) {
                if (one.amount >= from && one.amount <= to) ratios.push_back(one.ratio);
            }
            return summary_of(ratios).deviation;
        };
        const double small = deviation(amounts.front(), amounts[half - 1]);
        const double large = deviation(amounts[n_ - half], amounts.back());
        if (large > 0 && small > scatter_ratio * large) {
            say(Message{"pattern.small_scatter"}.figures("times", small / large, UnitId::none, 2),
                "suspects.small_scatter");
        }
    }

    void far_off() {
        if (!set_.grubbs.far_off()) return;
        const std::size_t i = set_.grubbs.index;
        const bool low = point(i).ratio < set_.ratios.median;
        say(Message{low ? "pattern.one_low" : "pattern.one_high"}, low ? "suspects.one_low" : "suspects.one_high", {i});
    }

    static double square(double v) { return v * v; }

    const ClassSet& set_;
    std::size_t n_;
    double accepted_ = 0;
    std::vector<Pattern> found_;
};

}  // namespace

std::vector<Pattern> patterns_of(const ClassSet& set) { return Finder(set).find(); }

}  // namespace overwater
