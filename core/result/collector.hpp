#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

namespace overwater {

/// An interval of coverage. Without an upper end (`open_above`) where so many trials have no denominator left; `high` is
/// infinite then.
struct CoverageInterval {
    double low = 0;
    double high = 0;
    bool open_above = false;
    bool holds(double value) const { return value >= low && (open_above || value <= high); }
};

struct MonteCarloResult {
    std::size_t trials = 0;
    double mean = 0;
    double u = 0;       ///< standard deviation of the trials
    double median = 0;  ///< infinite where half of the trials are
    CoverageInterval symmetric;  ///< probabilistically symmetric, 95 %
    CoverageInterval shortest;   ///< shortest, 95 %
    bool has_mean = true;        ///< false (mean and u are 0) where trials without a denominator make them meaningless
};

/// Takes the values of all trials, in any portions, and gives their mean, standard deviation and exact order statistics:
/// median and both intervals of JCGM 101:2008, 7.7. A value that is not a number counts as infinitely high.
///
/// Only what may be needed is kept. The first trials set a scale of fine bins; every value is counted in its bin, but
/// only values in bins near the ends of the intervals and near the median are stored, and sorted at the end. Where the
/// first trials misled, the counts tell which bins were needed, and the values have to be given once more (`pass`).
class Collector {
public:
    static constexpr std::size_t bins = 60;  ///< of the histogram
    /// Values are worked off in blocks of this size, counted from the first, whatever the portions.
    static constexpr std::size_t block = 256;

    explicit Collector(std::size_t trials);

    /// The next values; not more than `wanted`.
    void add(std::span<const double> values);
    /// How many values are still to come in this pass.
    std::size_t wanted() const { return trials_ - taken_; }
    /// How many different values were given.
    std::size_t taken() const { return pass_ == 0 ? taken_ : trials_; }
    /// 0; 1 once all values are to be given a second time from the first on.
    unsigned pass() const { return pass_; }

    /// When no more values are wanted: a slice of the sorting, about a millisecond. True when done.
    bool finish_slice();
    bool done() const { return stage_ == Stage::done; }
    const MonteCarloResult& result() const { return result_; }

    /// Counts between `histogram_low` and `histogram_high` in bins of one width; values outside are not in it. The range
    /// is that of the middle 99.8 % of the first trials, widened by a tenth to both sides.
    std::array<std::uint32_t, bins> histogram() const;
    double histogram_low() const { return low_; }
    double histogram_high() const { return high_; }

private:
    static constexpr std::size_t fine_in_bin = 256;
    static constexpr std::size_t fine = bins * fine_in_bin + 2;  // one more at each end for values outside
    static constexpr std::size_t pilot_trials = 8192;            // a whole number of blocks

    enum class Stage : std::uint8_t { pilot, counting, again, placing, sorting, done };

    /// Sorted places of one run of neighbouring bins.
    struct Window {
        std::size_t first_bin = 0, last_bin = 0;  // both included
        std::size_t first_rank = 0;               // of the lowest value in it, from 0
        std::size_t place = 0;                    // of that value in sorted_
    };

    struct Piece {
        std::size_t begin, end;
    };

    std::size_t bin_of(double value) const;
    void work_off(std::size_t count);
    void keep_windows();
    void count_in(std::size_t count);
    void store(std::size_t count);
    void make_room();
    void all_taken();
    void find_windows();
    bool windows_kept() const;
    std::size_t bin_of_rank(std::size_t rank) const;
    bool place_slice();
    bool sort_slice();
    void sort_piece(Piece piece);
    double at_rank(const Window& window, std::size_t rank) const;
    void conclude();

    std::size_t trials_;
    std::size_t covered_;  // q of JCGM 101, 7.7: trials in an interval
    std::size_t taken_ = 0;
    unsigned pass_ = 0;
    Stage stage_ = Stage::pilot;
    alignas(16) std::array<double, block> block_{};
    std::size_t in_block_ = 0;
    std::vector<double> pilot_;

    double low_ = 0, high_ = 1, scale_ = 1;
    double shift_ = 0;  // near the mean, so that the sums below lose no digits
    double sum_ = 0, squares_ = 0;
    std::array<std::uint32_t, fine> counts_{};
    std::array<std::uint8_t, fine> keep_{};

    std::vector<double> stored_;
    std::size_t stored_count_ = 0;
    std::size_t placed_ = 0;
    std::size_t infinite_ = 0;
    Window below_, middle_, above_;
    std::vector<double> sorted_;
    std::vector<std::uint32_t> next_place_;  // of each bin, while values are put into order of bins
    std::vector<Piece> pieces_;  // of the bin at hand, still to be sorted
    std::size_t sorted_bin_ = 0;
    std::size_t sorted_end_ = 0;  // place where the values of that bin begin
    MonteCarloResult result_;
};

}  // namespace overwater
