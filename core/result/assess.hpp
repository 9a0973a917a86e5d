#pragma once

#include <array>
#include <optional>
#include <vector>

#include "core/bench/readings.hpp"
#include "core/quantity/message.hpp"
#include "core/result/conventions.hpp"
#include "core/result/measured.hpp"
#include "core/result/method.hpp"
#include "core/result/outcome.hpp"

namespace overwater {

/// An output has a value, waits for readings, or is made impossible by one that was typed; or a run of this kind has no
/// such step.
struct OutputState {
    enum class Kind : std::uint8_t { value, waiting, not_possible, not_asked };
    Kind kind = Kind::waiting;
    FieldSet waiting_for;  ///< the readings missing or not understood
    Message reason{""};    ///< why it is not possible
};

/// A remark that belongs below one field.
struct Check {
    enum class Weight : std::uint8_t {
        note,      ///< something to know
        doubt,     ///< probably a slip; nothing is stopped
        refusal    ///< what depends on this reading is not possible
    };
    Field field;
    Weight weight;
    Message message;
};

/// Everything said about one run.
struct Assessment {
    Readings readings;
    Conventions conventions;
    Measured<double> measured;
    std::array<OutputState, output_count> states;
    Outcome<double> outcome;
    std::vector<Check> checks;

    const OutputState& state(Output o) const { return states[static_cast<std::size_t>(o)]; }
    bool has(Output o) const { return outcome.ready.has(o); }
    /// There is less acid than `times` what the metal needs. Acid that is just enough is not called too little for the
    /// last bit of a quotient.
    bool acid_is_below(double times) const {
        return measured.setup.acid_limits && has(Output::acid_excess) && outcome[Output::acid_excess] < times * (1 - 1e-12);
    }
    /// Metal is left over, and the acid sets the gas.
    bool acid_gives_out() const { return acid_is_below(1); }
    /// The value in SI units, where there is one.
    std::optional<double> value(Output o) const { return has(o) ? std::optional<double>(outcome[o]) : std::nullopt; }
};

/// The numbers of the model for what was typed, chosen and agreed; nothing is refused here.
Measured<double> measured_from(const Readings& readings, const Conventions& conventions);

/// Settles what is there, refuses what cannot be, and evaluates the rest. Every value in the outcome is finite.
Assessment assess(const Readings& readings, const Conventions& conventions);

/// The output that is the result: converted, or as collected.
Output headline_output(const Conventions& conventions);
/// The last line that is sought, which is the molar volume unless another target was chosen. Without a conversion to
/// standard conditions only the molar volume as collected and the gas constant can be had.
Output sought_output(const Conventions& conventions, Target target);

/// The outcome of the same readings by another method; only what the right method gives too is ready.
Outcome<double> outcome_by(const Assessment& assessment, const Method& method);

/// What an output needs: readings of its own, and other outputs.
struct Needs {
    FieldSet fields;
    OutputSet outputs;
};
Needs needs_of(Output output, const Setup& setup);
/// Every reading that some output of such a run needs.
FieldSet readings_asked_for(const Setup& setup);
/// Whether the liquid inside and outside may stand at different heights: in a tube over water, not in a syringe.
bool has_column(const Setup& setup);
/// Whether the volume is read on a scale: of a tube or of a syringe.
bool has_scale(const Setup& setup);
/// Whether a run set up like this has the step at all: no start volume without gas at the start, no pressure at the
/// bench from a weather report where the barometer stands on the bench.
bool is_asked(Output output, const Setup& setup);
/// What was weighed is itself what is sought: an own reaction whose molar mass is looked for and not typed. Nothing that
/// would follow from its molar mass is asked.
bool is_unknown(const Setup& setup);

}  // namespace overwater
