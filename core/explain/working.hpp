#pragma once

#include <span>
#include <string>
#include <vector>

#include "core/explain/formula.hpp"
#include "core/result/assess.hpp"
#include "core/result/traced.hpp"

namespace overwater {

/// One step of the working: made from the traced tree of the evaluation and from nothing else.
struct WorkingStep {
    Output output;
    Formula symbol;   ///< what is found: V, p(dry), n(Mg)
    Formula letters;  ///< how, in symbols
    Formula numbers;  ///< how, with the numbers put in
    std::vector<Formula> conversions;  ///< of units, for this step, each a line: 29.92 inHg = ... = 101.32 kPa
    double value = 0;      ///< SI, unrounded
    UnitId unit = UnitId::none;
    int figures = 0;       ///< significant figures of the result
    int decimals = 0;      ///< decimals that show just these figures in `unit`
    int shown_decimals = 0;  ///< with the guard digit
};

/// What somebody came to in a step, in SI units: right or not, later steps go on with it.
struct StatedStep {
    Output output = Output::count;
    double value = 0;
    double last_digit = 0;  ///< the value of its last digit

    friend bool operator==(const StatedStep&, const StatedStep&) = default;
};

/// The whole working of a run, in the order of the outputs; only those that have a value.
class Working {
public:
    /// Steps in `stated` stand as they are, and the others follow from them.
    Working(const Assessment& assessment, const Conventions& conventions, std::span<const StatedStep> stated = {});

    const std::vector<WorkingStep>& steps() const { return steps_; }
    const WorkingStep* step(Output output) const;
    const Trace& trace() const { return trace_; }

private:
    Trace trace_;
    std::vector<WorkingStep> steps_;
};

/// The symbol of an output, as it is set in a formula.
Formula symbol_of(Output output, const Readings& readings);

/// An output's value as a number in `unit`. Kelvin is what the outcome holds already.
double in_unit(Output output, double value, UnitId unit);

/// How many significant figures the value has when shown in `unit` with so many decimals.
int figures_shown(Output output, double value, UnitId unit, int decimals);

/// The unit an output is shown in: pressures follow the barometer unless the conventions name a unit, volumes have the name
/// that these give them.
UnitId shown_unit(Output output, const Readings& readings, const Conventions& conventions);

}  // namespace overwater
