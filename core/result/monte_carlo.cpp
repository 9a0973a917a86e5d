#include "core/result/monte_carlo.hpp"

#include <algorithm>
#include <cstring>
#include <limits>
#include <vector>

#include "core/result/evaluate.hpp"
#include "core/result/random.hpp"

namespace overwater {

namespace {

// Trials evaluated side by side: as many as vector registers serve well; in the page half of that, which is as fast there and
// a kilobyte less to load. The bits are the same with any number.
#if defined(__wasm__)
constexpr std::size_t width = 4;
#else
constexpr std::size_t width = 8;
#endif
using Numbers = Pack<width>;
using Block = std::array<double, Collector::block>;

/// The output with all it needs, and nothing else.
OutputSet closure_of(Output output, const Setup& setup) {
    OutputSet closure;
    closure.add(output);
    for (bool grew = true; grew;) {
        grew = false;
        for (std::size_t i = 0; i < output_count; ++i) {
            if (!closure.has(static_cast<Output>(i))) continue;
            const OutputSet needed = needs_of(static_cast<Output>(i), setup).outputs;
            for (std::size_t k = 0; k < output_count; ++k) {
                if (!needed.has(static_cast<Output>(k)) || closure.has(static_cast<Output>(k))) continue;
                closure.add(static_cast<Output>(k));
                grew = true;
            }
        }
    }
    return closure;
}

/// Draws the readings and evaluates the model, a pack at a time.
class Trials {
public:
    Trials(const Doubts& doubts, Output output, std::uint64_t seed)
        : output_(output),
          values_(doubts.measured),
          ready_(closure_of(output, values_.setup)),
          by_amount_(output != Output::amount_of_gas && ready_.has(Output::amount_of_gas)),
          measured_(values_.lifted<Numbers>([](Input, double value) { return Numbers(value); })),
          model_(measured_, method_, ready_),
          random_(seed) {
        std::array<bool, input_count> seen{};
        for (const Doubt& doubt : doubts.all()) {
            const auto input = static_cast<std::size_t>(doubt.input);
            const bool limited = doubt.shape == Shape::rectangular || doubt.shape == Shape::triangular;
            // Student's t is the normal distribution from a million degrees on.
            const Shape shape = doubt.shape == Shape::student && !(doubt.degrees < 1e6) ? Shape::normal : doubt.shape;
            sources_.push_back(Source{input, shape, limited ? doubt.low : 0.0,
                                      limited ? doubt.high - doubt.low : doubt.u, doubt.degrees, words_of_trial_,
                                      !seen[input]});
            words_of_trial_ += shape == Shape::triangular || shape == Shape::student ? 2 : 1;
            if (!seen[input]) doubtful_.push_back(input);
            seen[input] = true;
        }
        words_.resize(words_of_trial_ * portion);
    }
    Trials(const Trials&) = delete;
    Trials& operator=(const Trials&) = delete;

    void start_again(std::uint64_t seed) { random_ = Random(seed); }

    void fill(Block& block) {
#if defined(__x86_64__)
        if (has_wide_) return fill_wide(*this, block);
#endif
        fill_narrow(*this, block);
    }

private:
    static constexpr std::size_t portion = 64;  ///< trials drawn at once: their numbers stay in the nearest cache

    /// One doubt as it is drawn.
    struct Source {
        std::size_t input;
        Shape shape;
        double start;  ///< what a draw is added to: the lowest deviation, or 0
        double scale;  ///< what a draw is multiplied by: the width, or the standard uncertainty
        double degrees;
        std::size_t word;  ///< the first of its words in those of a trial
        bool first;  ///< of its input
    };

    // Everything is put in line in one function, which a compiler may then make for wider vectors too. The bits stay the
    // same: no multiplication is fused with an addition, and lanes do not meet.
    [[gnu::flatten]] static void fill_narrow(Trials& trials, Block& block) { trials.make(block); }
#if defined(__x86_64__)
    [[gnu::flatten, gnu::target("avx2")]] static void fill_wide(Trials& trials, Block& block) { trials.make(block); }
    bool has_wide_ = __builtin_cpu_supports("avx2") != 0;
#endif

    /// A portion at a time: all random words, then one doubt after the other, then the model. Each trial gets the words
    /// that drawing it by itself, doubt after doubt, would give it.
    void make(Block& block) {
        for (std::size_t i = 0; i < block.size(); i += portion) {
            random_.fill(words_.data(), portion / Random::lanes, words_of_trial_);
            for (const Source& source : sources_) deviate(source);
            for (std::size_t k = 0; k < portion; k += width) {
                for (const std::size_t input : doubtful_) {
                    std::memcpy(static_cast<void*>(&measured_.base[input]), &readings_[input][k], sizeof(Numbers));
                }
                evaluate_into(block.data() + i + k);
            }
        }
    }

    /// Adds one doubt to its number, in every trial of the portion.
    void deviate(const Source& source) {
        double* number = readings_[source.input].data();
        const std::uint64_t* word = words_.data() + source.word * portion;
        const double start = source.start;
        const double scale = source.scale;
        if (source.first) std::fill_n(number, portion, values_.base[source.input]);
        switch (source.shape) {
            case Shape::rectangular:
                for (std::size_t k = 0; k < portion; ++k) number[k] += start + scale * Random::uniform_of(word[k]);
                break;
            case Shape::triangular:
                for (std::size_t k = 0; k < portion; ++k) {
                    const double mean = 0.5 * (Random::uniform_of(word[k]) + Random::uniform_of(word[portion + k]));
                    number[k] += start + scale * mean;
                }
                break;
            case Shape::normal:
                for (std::size_t k = 0; k < portion; ++k) {
                    number[k] += start + scale * normal_by_rationals(Random::uniform_of(word[k]));
                }
                break;
            case Shape::student:
                for (std::size_t k = 0; k < portion; ++k) {
                    const double t = student_of(Random::uniform_of(word[k]), Random::uniform_of(word[portion + k]),
                                                source.degrees);
                    number[k] += start + scale * t;
                }
                break;
        }
    }

    void evaluate_into(double* out) {
        const Outcome<Numbers>& outcome = model_.run();
        const Numbers& value = outcome[output_];
        for (std::size_t k = 0; k < width; ++k) out[k] = value[k];
        if (!by_amount_) return;
        // Without a denominator there is no value; what is divided by very little is very high.
        const Numbers& amount = outcome[Output::amount_of_gas];
        for (std::size_t k = 0; k < width; ++k) {
            out[k] = amount[k] > 0 ? out[k] : std::numeric_limits<double>::infinity();
        }
    }

    Output output_;
    Measured<double> values_;
    OutputSet ready_;
    bool by_amount_;  ///< the amount of gas is in the denominator
    std::vector<Source> sources_;
    Measured<Numbers> measured_;
    RightMethod method_;
    Model<Numbers, RightMethod> model_;  ///< of `measured_`
    Random random_;
    std::size_t words_of_trial_ = 0;
    std::vector<std::uint64_t> words_;
    std::vector<std::size_t> doubtful_;
    std::array<std::array<double, portion>, input_count> readings_{};  ///< the doubtful numbers of a portion
};

}  // namespace

struct MonteCarlo::State {
    State(const Doubts& doubts, Output output, std::size_t count, std::uint64_t first_seed)
        : seed(first_seed), trials(doubts, output, first_seed), collector(count) {}

    void one_block() {
        Block block;
        trials.fill(block);
        const unsigned pass = collector.pass();
        collector.add(block);
        if (collector.pass() != pass) trials.start_again(seed);
    }

    std::uint64_t seed;
    Trials trials;
    Collector collector;
};

MonteCarlo::MonteCarlo(const Doubts& doubts, Output output, std::size_t trials, std::uint64_t seed)
    : state_(std::make_unique<State>(doubts, output, trials, seed)) {}
MonteCarlo::~MonteCarlo() = default;
MonteCarlo::MonteCarlo(MonteCarlo&&) noexcept = default;
MonteCarlo& MonteCarlo::operator=(MonteCarlo&&) noexcept = default;

bool MonteCarlo::step(std::size_t trials) {
    Collector& collector = state_->collector;
    if (collector.wanted() == 0) return collector.finish_slice();
    for (std::size_t made = 0; made < trials && collector.wanted() > 0; made += Collector::block) state_->one_block();
    return false;
}

bool MonteCarlo::done() const { return state_->collector.done(); }
std::size_t MonteCarlo::made() const { return state_->collector.taken(); }
const MonteCarloResult& MonteCarlo::result() const { return state_->collector.result(); }
std::array<std::uint32_t, MonteCarlo::bins> MonteCarlo::histogram() const { return state_->collector.histogram(); }
double MonteCarlo::histogram_low() const { return state_->collector.histogram_low(); }
double MonteCarlo::histogram_high() const { return state_->collector.histogram_high(); }

}  // namespace overwater
