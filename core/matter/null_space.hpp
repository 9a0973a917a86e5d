#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

/// Whole-number linear algebra for balancing: exact, and told where numbers grow beyond 64 bits instead of being wrong.

namespace overwater {

using WholeRow = std::vector<std::int64_t>;

/// A basis of all x with A x = 0, where `rows` are the rows of A and each has `columns` numbers. Each vector of the basis is
/// whole, without a common factor, and its first number that is not zero is positive. Nothing if a number overflowed.
std::optional<std::vector<WholeRow>> null_space(std::vector<WholeRow> rows, std::size_t columns);

/// Whether there is an x with A x = 0 and every number of it positive. Nothing if a number overflowed.
std::optional<bool> has_positive_solution(std::vector<WholeRow> rows, std::size_t columns);

}  // namespace overwater
