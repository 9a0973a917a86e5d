#include "core/matter/null_space.hpp"

#include <limits>
#include <numeric>
#include <utility>

namespace overwater {
namespace {

/// a·b; nothing if that overflows, or is the one number without an opposite.
std::optional<std::int64_t> product(std::int64_t a, std::int64_t b) {
    std::int64_t result = 0;
    if (__builtin_mul_overflow(a, b, &result) || result == std::numeric_limits<std::int64_t>::min()) {
        return std::nullopt;
    }
    return result;
}

std::optional<std::int64_t> difference(std::int64_t a, std::int64_t b) {
    std::int64_t result = 0;
    if (__builtin_sub_overflow(a, b, &result) || result == std::numeric_limits<std::int64_t>::min()) {
        return std::nullopt;
    }
    return result;
}

void divide_by_common_factor(WholeRow& row) {
    std::int64_t factor = 0;
    for (const std::int64_t number : row) factor = std::gcd(factor, number);
    if (factor < 2) return;
    for (std::int64_t& number : row) number /= factor;
}

/// Makes `row` zero in `column` by adding a multiple of `pivot`, after multiplying it by a positive number. False if a
/// number overflowed. `pivot` is not zero there.
bool clear(WholeRow& row, const WholeRow& pivot, std::size_t column) {
    if (row[column] == 0) return true;
    const std::int64_t factor = std::gcd(row[column], pivot[column]);
    std::int64_t of_row = pivot[column] / factor;
    std::int64_t of_pivot = row[column] / factor;
    if (of_row < 0) of_row = -of_row, of_pivot = -of_pivot;
    for (std::size_t i = 0; i < row.size(); ++i) {
        const auto a = product(row[i], of_row);
        const auto b = product(pivot[i], of_pivot);
        if (!a || !b) return false;
        const auto c = difference(*a, *b);
        if (!c) return false;
        row[i] = *c;
    }
    divide_by_common_factor(row);
    return true;
}

bool clear_others(std::vector<WholeRow>& rows, std::size_t pivot, std::size_t column) {
    for (std::size_t i = 0; i < rows.size(); ++i) {
        if (i != pivot && !clear(rows[i], rows[pivot], column)) return false;
    }
    return true;
}

/// The vector of the basis that belongs to a column without pivot. `pivots` are the columns of the rows' pivots.
std::optional<WholeRow> vector_for(const std::vector<WholeRow>& rows, const std::vector<std::size_t>& pivots,
                                   std::size_t free_column, std::size_t columns) {
    std::int64_t multiple = 1;  // of all denominators
    for (std::size_t i = 0; i < pivots.size(); ++i) {
        const std::int64_t pivot = rows[i][pivots[i]];
        const std::int64_t denominator = pivot / std::gcd(pivot, rows[i][free_column]);
        const std::int64_t size = denominator < 0 ? -denominator : denominator;
        const auto next = product(multiple / std::gcd(multiple, size), size);
        if (!next) return std::nullopt;
        multiple = *next;
    }
    WholeRow vector(columns, 0);
    vector[free_column] = multiple;
    for (std::size_t i = 0; i < pivots.size(); ++i) {
        const std::int64_t pivot = rows[i][pivots[i]];
        const std::int64_t factor = std::gcd(pivot, rows[i][free_column]);
        const auto number = product(-(rows[i][free_column] / factor), multiple / (pivot / factor));
        if (!number) return std::nullopt;
        vector[pivots[i]] = *number;
    }
    divide_by_common_factor(vector);
    for (const std::int64_t number : vector) {
        if (number == 0) continue;
        if (number < 0) {
            for (std::int64_t& each : vector) each = -each;
        }
        break;
    }
    return vector;
}

/// The row that limits how far the variable of `column` may grow; the one whose own variable has the lowest number among
/// equals, without which the search could go round in circles. Nothing if none limits it.
struct Limit {
    std::optional<std::size_t> row{};
    bool overflow = false;
};
Limit limiting_row(const std::vector<WholeRow>& rows, const std::vector<std::size_t>& basis, std::size_t column) {
    Limit limit;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        if (rows[i][column] <= 0) continue;
        if (!limit.row) {
            limit.row = i;
            continue;
        }
        const WholeRow& best = rows[*limit.row];
        const auto mine = product(rows[i].back(), best[column]);
        const auto theirs = product(best.back(), rows[i][column]);
        if (!mine || !theirs) return {std::nullopt, true};
        if (*mine < *theirs || (*mine == *theirs && basis[i] < basis[*limit.row])) limit.row = i;
    }
    return limit;
}

}  // namespace

std::optional<std::vector<WholeRow>> null_space(std::vector<WholeRow> rows, std::size_t columns) {
    std::vector<std::size_t> pivots;
    for (WholeRow& row : rows) divide_by_common_factor(row);
    for (std::size_t column = 0; column < columns && pivots.size() < rows.size(); ++column) {
        const std::size_t next = pivots.size();
        std::size_t found = next;
        while (found < rows.size() && rows[found][column] == 0) ++found;
        if (found == rows.size()) continue;
        std::swap(rows[next], rows[found]);
        if (!clear_others(rows, next, column)) return std::nullopt;
        pivots.push_back(column);
    }
    std::vector<WholeRow> basis;
    std::size_t pivot = 0;
    for (std::size_t column = 0; column < columns; ++column) {
        if (pivot < pivots.size() && pivots[pivot] == column) {
            ++pivot;
            continue;
        }
        auto vector = vector_for(rows, pivots, column, columns);
        if (!vector) return std::nullopt;
        basis.push_back(*std::move(vector));
    }
    return basis;
}

// As any solution may be multiplied, positive is 1 or more. With x = z + 1 it is the question whether A z = −A·1 has a
// z of no negative number, which the first phase of the simplex method answers; Bland's rule ends it always.
std::optional<bool> has_positive_solution(std::vector<WholeRow> rows, std::size_t columns) {
    WholeRow missing(columns + 1, 0);  // what is still missing in all rows together, by column
    std::vector<std::size_t> basis(rows.size());
    for (std::size_t i = 0; i < rows.size(); ++i) {
        basis[i] = columns + i;
        std::int64_t sum = 0;
        for (const std::int64_t number : rows[i]) {
            const auto next = difference(sum, number);
            if (!next) return std::nullopt;
            sum = *next;
        }
        rows[i].push_back(sum);
        if (sum < 0) {
            for (std::int64_t& number : rows[i]) number = -number;
        }
        for (std::size_t k = 0; k <= columns; ++k) {
            const auto next = difference(missing[k], -rows[i][k]);
            if (!next) return std::nullopt;
            missing[k] = *next;
        }
    }
    while (true) {
        std::size_t entering = 0;
        while (entering < columns && missing[entering] <= 0) ++entering;
        if (entering == columns) return missing.back() == 0;
        const Limit limit = limiting_row(rows, basis, entering);
        if (limit.overflow || !limit.row) return std::nullopt;
        const std::size_t row = *limit.row;
        basis[row] = entering;
        if (!clear_others(rows, row, entering) || !clear(missing, rows[row], entering)) return std::nullopt;
    }
}

}  // namespace overwater
