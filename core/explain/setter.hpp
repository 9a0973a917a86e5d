#pragma once

#include <array>
#include <string>
#include <vector>

#include "core/explain/conversion.hpp"
#include "core/explain/working.hpp"

namespace overwater {

/// Turns the trees of the steps into formulas, in letters or with numbers, and notes what had to be converted for them.
class Setter {
public:
    Setter(const Trace& trace, const Assessment& assessment, const Conventions& conventions,
           const std::vector<WorkingStep>& earlier)
        : trace_(trace),
          readings_(assessment.readings),
          measured_(assessment.measured),
          conventions_(conventions),
          earlier_(earlier) {}

    /// The formula of a step in letters, of the expression at `index`.
    Formula letters(std::int32_t index) const;

    /// Sets `numbers` and `conversions` of a step; its other members are there already. Steps are set in their order: a
    /// reading is converted where it is used first.
    void set_numbers(WorkingStep& step, std::int32_t index);

private:
    Formula numbers(std::int32_t index, UnitId unit, int decimals);
    Formula terms(std::int32_t index, UnitId unit, int decimals);
    std::string term(const TraceNode& node, UnitId unit, int decimals);
    Formula leaf(const TraceNode& node);
    Formula input_leaf(const TraceNode& node);
    Formula step_leaf(const WorkingStep& step);
    Formula constant_leaf(const TraceNode& node) const;
    void convert_result(const WorkingStep& step);

    std::string converted(Input input, const Reading& reading, UnitId unit, int decimals);
    const Reading* typed_reading(const TraceNode& node) const;
    const WorkingStep* earlier(Output output) const;
    std::int32_t chosen(const TraceNode& node) const;
    UnitId unit_of_node(std::int32_t index, UnitId fallback) const;
    int decimals_of_node(std::int32_t index, int fallback) const;
    Formula with_number(double value, int decimals, UnitId unit) const;
    Formula trimmed_with_unit(double value, int decimals, std::string unit) const;
    std::string number(double value, int decimals) const;
    std::string trimmed(double value, int decimals) const;
    std::string typed(const Reading& reading) const;

    const Trace& trace_;
    const Readings& readings_;
    const Measured<double>& measured_;
    const Conventions& conventions_;
    const std::vector<WorkingStep>& earlier_;
    UnitId pressure_unit_ = UnitId::kilopascal;  ///< of the step at hand
    UnitId amount_unit_ = UnitId::millimole;
    std::array<UnitId, input_count> converted_{};  ///< the unit each input was converted to
    std::vector<Formula> conversions_;             ///< of the step at hand
};

}  // namespace overwater
