#pragma once

#include <optional>
#include <vector>

#include "core/result/doubt.hpp"

/// The uncertainty budget (JCGM 100:2008, sections 5 and 6, annex G).

namespace overwater {

struct BudgetRow {
    Doubt doubt;
    double sensitivity = 0;   ///< of the output by the input, both in SI
    double contribution = 0;  ///< |sensitivity| u, SI unit of the output
    double share = 0;         ///< of the variance, 0 to 1
};

struct Budget {
    Output output = Output::count;
    double value = 0;  ///< SI
    /// What the one-sided doubts move the value by on average. It is not put on the value, as nobody measured them; the
    /// interval is value + offset ± expanded (GUM 4.3.8, F.2.4.5).
    double offset = 0;
    std::vector<BudgetRow> rows;  ///< those that contribute, the largest share first
    double u = 0;        ///< combined standard uncertainty, SI
    double degrees = 0;  ///< effective degrees of freedom (Welch-Satterthwaite); infinite where none is finite
    double k = 0;        ///< t for 95 % and the degrees of freedom, truncated; 1.96 where they are infinite
    double expanded = 0; ///< U = k u, SI
};

/// Exact partial derivatives of every output by every input, at the values of `doubts`.
class Sensitivities {
public:
    explicit Sensitivities(const Doubts& doubts);
    double value(Output output) const { return values_[static_cast<std::size_t>(output)]; }
    double of(Output output, Input input) const {
        return slopes_[static_cast<std::size_t>(output)][static_cast<std::size_t>(input)];
    }
    bool has(Output output) const { return ready_.has(output); }

private:
    OutputSet ready_;
    std::array<double, output_count> values_{};
    std::array<std::array<double, input_count>, output_count> slopes_{};
};

/// The budget of one output; empty (no rows, u = 0) where it has no value.
Budget budget_of(const Doubts& doubts, const Sensitivities& sensitivities, Output output);

/// What would help first: the reading with the largest share that a person can do something about, done better, and the
/// expanded uncertainty that would then be left.
struct Improvement {
    enum class Way : std::uint8_t {
        finer_instrument,   ///< `better` instead of what is assumed or chosen
        measure_it,         ///< the end space or the bore, which nobody measured
        ribbon_by_length,   ///< a longer ribbon weighed once and cut by length, for a balance that is too coarse
        more_metal,
        read_again          ///< repeated readings, or half the half-width
    };
    Input input = Input::count;
    DoubtKind kind = DoubtKind::reading;
    Way way = Way::read_again;
    const Instrument* better = nullptr;
    double share = 0;
    double expanded = 0;  ///< afterwards, SI unit of the output
};
/// Up to three ways, the most helpful first; a way that gains less than a twentieth is not offered.
std::vector<Improvement> improvements(const Assessment& assessment, const Budget& budget);

}  // namespace overwater
