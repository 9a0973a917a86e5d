#pragma once

#include <array>
#include <cstdint>
#include <span>
#include <string_view>

#include "core/lesson/route_band.hpp"

namespace overwater {

/// How a mean of several runs comes out wrong.
enum class MeanSlip : std::uint8_t {
    none,
    not_divided,      ///< the sum
    divided_by_more,  ///< by one run too many
    one_left_out,     ///< the mean of all but one run, without a word
    one_run_alone,    ///< the result of one run
    percent_averaged  ///< the runs' percent errors without their signs
};

inline constexpr std::array<std::string_view, 6> mean_slip_names{"none",         "not_divided",   "divided_by_more",
                                                                "one_left_out", "one_run_alone", "percent_averaged"};
constexpr std::string_view name_of(MeanSlip slip) { return mean_slip_names[static_cast<std::size_t>(slip)]; }

/// What gives `value`, within `half_unit`, from the values that should have been averaged. Two values or more.
MeanSlip mean_slip_of(std::span<const double> values, double value, double half_unit);

}  // namespace overwater
