#include "core/result/collector.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace overwater {

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr std::size_t lanes = 8;
// Values handled in one slice at the end: well below a millisecond natively, about one in WebAssembly.
constexpr std::size_t slice = 16384;
// Pieces up to this size are sorted at once, the tiny ones by insertion; larger ones are cut in two first.
constexpr std::size_t small_piece = 2048;
constexpr std::size_t tiny_piece = 32;

/// q of JCGM 101, 7.7.1: 0.95 M, or the whole part of 0.95 M + 1/2.
std::size_t covered_of(std::size_t trials) { return (95 * trials + 50) / 100; }

}  // namespace

Collector::Collector(std::size_t trials) : trials_(std::max<std::size_t>(trials, 1)), covered_(covered_of(trials_)) {
    pilot_.reserve(std::min(trials_, pilot_trials));
}

inline std::size_t Collector::bin_of(double value) const {
    double x = (value - low_) * scale_ + 1.0;
    x = x < static_cast<double>(fine - 1) ? x : static_cast<double>(fine - 1);  // not a number: the last
    x = x > 0.0 ? x : 0.0;
    return static_cast<std::size_t>(static_cast<std::int32_t>(x));
}

void Collector::add(std::span<const double> values) {
    while (!values.empty() && wanted() > 0) {
        const std::size_t count = std::min({values.size(), block - in_block_, wanted()});
        std::copy_n(values.begin(), count, block_.begin() + static_cast<std::ptrdiff_t>(in_block_));
        values = values.subspan(count);
        in_block_ += count;
        taken_ += count;
        if (in_block_ < block && wanted() > 0) continue;
        work_off(in_block_);
        in_block_ = 0;
        if (wanted() == 0) all_taken();
    }
}

void Collector::work_off(std::size_t count) {
    switch (stage_) {
        case Stage::pilot:
            pilot_.insert(pilot_.end(), block_.begin(), block_.begin() + static_cast<std::ptrdiff_t>(count));
            if (pilot_.size() < pilot_trials && wanted() > 0) return;
            keep_windows();
            stage_ = Stage::counting;
            for (std::size_t i = 0; i < pilot_.size(); i += block) {
                const std::size_t part = std::min(block, pilot_.size() - i);
                std::copy_n(pilot_.begin() + static_cast<std::ptrdiff_t>(i), part, block_.begin());
                count_in(part);
            }
            pilot_ = {};
            return;
        case Stage::counting: count_in(count); return;
        case Stage::again: store(count); return;
        default: return;
    }
}

/// The range of the bins, and which of them are likely to be needed: five standard errors of the pilot's fractions more
/// than what is needed, so that one run in a million needs a second pass.
void Collector::keep_windows() {
    std::vector<double> sorted = pilot_;
    const auto finite_end =
        std::partition(sorted.begin(), sorted.end(), [](double value) { return std::isfinite(value); });
    std::sort(sorted.begin(), finite_end);
    const auto finite = static_cast<std::size_t>(finite_end - sorted.begin());
    const std::size_t all = sorted.size();
    for (std::size_t i = finite; i < all; ++i) sorted[i] = infinity;
    if (finite > 0) {
        double from = sorted[finite / 1000];
        double to = sorted[finite - 1 - finite / 1000];
        if (!(to > from)) {  // no doubt at all
            const double half = from == 0 ? 1.0 : 1e-3 * std::fabs(from);
            from -= half;
            to += half;
        }
        low_ = from - 0.1 * (to - from);
        high_ = to + 0.1 * (to - from);
        shift_ = sorted[finite / 2];
    }
    scale_ = static_cast<double>(fine - 2) / (high_ - low_);
    if (all == trials_) {
        keep_.fill(1);
        stored_.resize(trials_ + block);
        return;
    }
    const auto value_at = [&](double fraction) {
        const double place = fraction * static_cast<double>(all);
        return sorted[static_cast<std::size_t>(std::clamp(place, 0.0, static_cast<double>(all - 1)))];
    };
    const auto margin = [&](double p) { return 5 * std::sqrt(p * (1 - p) / static_cast<double>(all)); };
    const std::size_t low_end = bin_of(value_at(0.05 + margin(0.05)));
    const std::size_t middle_begin = bin_of(value_at(0.5 - margin(0.5)));
    const std::size_t middle_end = bin_of(value_at(0.5 + margin(0.5)));
    const std::size_t high_begin = bin_of(value_at(0.95 - margin(0.05)));
    for (std::size_t bin = 0; bin < fine; ++bin) {
        keep_[bin] = bin <= low_end || (bin >= middle_begin && bin <= middle_end) || bin >= high_begin ? 1 : 0;
    }
    // Usually enough; `store` makes room where it is not.
    stored_.resize(trials_ / 5 + block);
}

void Collector::make_room() {
    if (stored_count_ + block > stored_.size()) stored_.resize(stored_.size() + stored_.size() / 2 + block);
}

/// The first `count` values of the block. Mean and deviation come from sums of deviations from a value near the mean, by
/// lanes, then by blocks: each rounding is small beside its sum, and the order is always the same.
void Collector::count_in(std::size_t count) {
    for (std::size_t i = count; i < block; ++i) block_[i] = shift_;
    std::array<std::int32_t, block> bin;
    std::array<double, lanes> sums{};
    std::array<double, lanes> squares{};
    const double shift = shift_;
    const double low = low_;
    const double scale = scale_;
    constexpr auto last = static_cast<double>(fine - 1);
    for (std::size_t i = 0; i < block; i += lanes) {
        for (std::size_t k = 0; k < lanes; ++k) {
            const double deviation = block_[i + k] - shift;
            sums[k] += deviation;
            squares[k] += deviation * deviation;
        }
    }
    for (std::size_t i = 0; i < block; ++i) {
        double x = (block_[i] - low) * scale + 1.0;  // as in bin_of
        x = x < last ? x : last;
        x = x > 0.0 ? x : 0.0;
        bin[i] = static_cast<std::int32_t>(x);
    }
    double sum = 0;
    double square = 0;
    for (std::size_t k = 0; k < lanes; ++k) {
        sum += sums[k];
        square += squares[k];
    }
    sum_ += sum;
    squares_ += square;

    make_room();
    double* stored = stored_.data();
    std::size_t stored_count = stored_count_;
    for (std::size_t i = 0; i < count; ++i) {
        const auto which = static_cast<std::size_t>(static_cast<std::uint32_t>(bin[i]));
        ++counts_[which];
        stored[stored_count] = block_[i];
        stored_count += keep_[which];  // without a branch: which values are kept cannot be foretold
    }
    stored_count_ = stored_count;
}

void Collector::store(std::size_t count) {
    make_room();
    for (std::size_t i = 0; i < count; ++i) {
        stored_[stored_count_] = block_[i];
        stored_count_ += keep_[bin_of(block_[i])];
    }
}

std::size_t Collector::bin_of_rank(std::size_t rank) const {
    std::size_t below = 0;
    std::size_t bin = 0;
    while (bin + 1 < fine && below + counts_[bin] <= rank) below += counts_[bin++];
    return bin;
}

void Collector::find_windows() {
    const std::size_t outside = trials_ - covered_;
    below_ = {0, bin_of_rank(outside == 0 ? 0 : outside - 1), 0, 0};
    middle_ = {bin_of_rank((trials_ - 1) / 2), bin_of_rank(trials_ / 2), 0, 0};
    above_ = {bin_of_rank(outside == 0 ? trials_ - 1 : covered_), fine - 1, 0, 0};
}

bool Collector::windows_kept() const {
    for (const Window& window : {below_, middle_, above_}) {
        for (std::size_t bin = window.first_bin; bin <= window.last_bin; ++bin) {
            if (keep_[bin] == 0 && counts_[bin] != 0) return false;
        }
    }
    return true;
}

void Collector::all_taken() {
    find_windows();
    const bool kept = stage_ == Stage::again || windows_kept();
    // From here on: what is needed, no more.
    keep_.fill(0);
    for (const Window& window : {below_, middle_, above_}) {
        for (std::size_t bin = window.first_bin; bin <= window.last_bin; ++bin) keep_[bin] = 1;
    }
    if (!kept) {
        stage_ = Stage::again;
        pass_ = 1;
        taken_ = 0;
        stored_count_ = 0;
        return;
    }
    next_place_.assign(fine, 0);
    std::size_t rank = 0;
    std::uint32_t place = 0;
    for (std::size_t bin = 0; bin < fine; ++bin) {
        for (Window* window : {&below_, &middle_, &above_}) {
            if (window->first_bin != bin) continue;
            window->first_rank = rank;
            window->place = place;
        }
        next_place_[bin] = place;
        rank += counts_[bin];
        if (keep_[bin] != 0) place += counts_[bin];
    }
    for (std::size_t bin = 0; bin < fine; ++bin) {
        if (keep_[bin] == 0) next_place_[bin] = place;  // nowhere: one place behind the last
    }
    sorted_.assign(place + 1, infinity);  // what is infinite has its place at the end already
    placed_ = 0;
    stage_ = Stage::placing;
}

bool Collector::place_slice() {
    const std::size_t end = std::min(stored_count_, placed_ + slice);
    for (; placed_ < end; ++placed_) {
        const double value = stored_[placed_];
        if (!(value < infinity)) {
            ++infinite_;
            continue;
        }
        const std::size_t bin = bin_of(value);
        const std::uint32_t place = next_place_[bin];
        sorted_[place] = value;
        next_place_[bin] = place + keep_[bin];
    }
    if (placed_ < stored_count_) return false;
    stored_ = {};
    return true;
}

/// What stands in one bin is sorted; the bins are in order already.
bool Collector::sort_slice() {
    for (std::size_t handled = 0; handled < slice;) {
        if (pieces_.empty()) {
            while (sorted_bin_ < fine && keep_[sorted_bin_] == 0) ++sorted_bin_;
            if (sorted_bin_ == fine) return true;
            // Up to where the last value was put: what is infinite comes behind it.
            pieces_.push_back({sorted_end_, next_place_[sorted_bin_]});
            sorted_end_ += counts_[sorted_bin_++];
        }
        const Piece piece = pieces_.back();
        pieces_.pop_back();
        sort_piece(piece);
        handled += piece.end - piece.begin + 1;
    }
    return false;
}

void Collector::sort_piece(Piece piece) {
    double* begin = sorted_.data() + piece.begin;
    double* end = sorted_.data() + piece.end;
    const std::size_t size = piece.end - piece.begin;
    if (size <= tiny_piece) {
        for (double* next = begin; next < end; ++next) {
            const double value = *next;
            double* place = next;
            for (; place > begin && value < place[-1]; --place) *place = place[-1];
            *place = value;
        }
    } else if (size <= small_piece) {
        std::sort(begin, end);
    } else if (!std::is_sorted(begin, end)) {
        std::nth_element(begin, begin + size / 2, end);
        pieces_.push_back({piece.begin, piece.begin + size / 2});
        pieces_.push_back({piece.begin + size / 2, piece.end});
    }
}

bool Collector::finish_slice() {
    switch (stage_) {
        case Stage::placing:
            if (place_slice()) stage_ = Stage::sorting;
            break;
        case Stage::sorting:
            if (!sort_slice()) break;
            conclude();
            stage_ = Stage::done;
            break;
        default: break;
    }
    return done();
}

double Collector::at_rank(const Window& window, std::size_t rank) const {
    return sorted_[window.place + (rank - window.first_rank)];
}

void Collector::conclude() {
    const auto number = static_cast<double>(trials_);
    result_.trials = trials_;
    result_.has_mean = infinite_ == 0;
    if (result_.has_mean) {
        result_.mean = shift_ + sum_ / number;
        const double rest = std::max(0.0, squares_ - sum_ * (sum_ / number));
        result_.u = trials_ > 1 ? std::sqrt(rest / (number - 1)) : 0.0;
    }
    const double lower = at_rank(middle_, (trials_ - 1) / 2);
    const double upper = at_rank(middle_, trials_ / 2);
    result_.median = std::isinf(upper) ? upper : lower + (upper - lower) / 2;

    // JCGM 101, 7.7.2 and 7.7.4; ranks there count from 1.
    const std::size_t outside = trials_ - covered_;
    if (outside == 0) {
        const double high = at_rank(above_, trials_ - 1);
        result_.symmetric = result_.shortest = {at_rank(below_, 0), high, std::isinf(high)};
        return;
    }
    const std::size_t r = (outside + 1) / 2;
    const double high = at_rank(above_, r + covered_ - 1);
    result_.symmetric = {at_rank(below_, r - 1), high, std::isinf(high)};
    const double* lows = sorted_.data() + below_.place;
    const double* highs = sorted_.data() + above_.place + (covered_ - above_.first_rank);
    double shortest = infinity;
    // Where none has an upper end, the one that begins highest.
    std::size_t best = outside - 1;
    for (std::size_t i = 0; i < outside; ++i) {
        const double width = highs[i] - lows[i];
        if (width < shortest) {
            shortest = width;
            best = i;
        }
    }
    result_.shortest = {lows[best], highs[best], std::isinf(highs[best])};
}

std::array<std::uint32_t, Collector::bins> Collector::histogram() const {
    std::array<std::uint32_t, bins> out{};
    for (std::size_t i = 0; i < bins * fine_in_bin; ++i) out[i / fine_in_bin] += counts_[i + 1];
    return out;
}

}  // namespace overwater
