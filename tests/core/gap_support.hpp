#pragma once

#include <string>

#include "core/explain/cause_model.hpp"
#include "core/explain/gap.hpp"
#include "core/quantity/units.hpp"
#include "tests/core/check_support.hpp"

/// A run with round numbers, for which the effects of mistakes were worked out apart from this program.

namespace overwater::test {

inline Conventions one_atmosphere() {
    Conventions conventions;
    conventions.standard = StandardConditions::zero_celsius_1_atmosphere;
    return conventions;
}

/// 37.44 mL over water at 22.0 °C and 748.0 mmHg from 0.0360 g of magnesium: 22.41 L/mol at 0 °C and 1 atm.
inline Sheet invented_run() {
    return Sheet()
        .with({{Field::metal, "magnesium"},
               {Field::acid, "hydrochloric"},
               {Field::mass_of_metal, "0.0360"},
               {Field::number_at_closed_end, "largest"},
               {Field::tube_capacity, "50"},
               {Field::end_space, "1.50"},
               {Field::scale_reading, "14.06"},
               {Field::liquid_stands, "level"},
               {Field::temperature, "22.0"},
               {Field::barometer, "748.0 mmHg"}})
        .by(one_atmosphere());
}

/// The same result, compared with an accepted value typed in L/mol.
inline Sheet compared_with(const Sheet& sheet, double accepted, Conventions conventions = one_atmosphere()) {
    conventions.accepted = Conventions::Accepted::typed;
    return sheet.with({{Field::accepted_value, std::to_string(accepted * 1e3).c_str()}}).by(conventions);
}

inline double found_by(const Assessment& run) { return result_of(bench_of(run)).value(); }

/// The change of the result by a cause, in percent.
inline double effect(const Assessment& run, Cause cause, double size) {
    const auto with = result_with(run, cause, size);
    return with ? 100 * (*with / found_by(run) - 1) : __builtin_nan("");
}
inline double effect(const Sheet& sheet, Cause cause, double size) { return effect(sheet.assessed(), cause, size); }

inline const Explanation* of(const Gap& gap, Cause cause) {
    for (const Explanation& explanation : gap.explanations) {
        if (explanation.cause == cause) return &explanation;
    }
    return nullptr;
}

}  // namespace overwater::test
