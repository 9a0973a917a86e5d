#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <span>

#include "core/bench/instrument.hpp"
#include "core/result/assess.hpp"

/// Where the doubt of a run comes from (method.md, section 6): every number of the model with how far it may be off.

namespace overwater {

/// What kind of doubt a row is. One reading may have several rows.
enum class DoubtKind : std::uint8_t {
    reading,        ///< how well the instrument is read, or its limit where both are one
    class_limit,    ///< of the tube's scale, once for the volume of gas
    scatter,        ///< of repeated readings
    meniscus,       ///< liquid above the lowest point of the meniscus, in the inverted tube
    not_measured,   ///< what nobody measured: the end space, the level at the start
    rounding,       ///< of a value from a table
    formula,        ///< of a published formula
    atomic_weight,
    gravity,        ///< the local one against the standard one
    count
};
inline constexpr std::array<std::string_view, 9> doubt_kind_names{
    "reading", "class_limit", "scatter", "meniscus", "not_measured", "rounding", "formula", "atomic_weight", "gravity"};
constexpr std::string_view name_of(DoubtKind kind) { return doubt_kind_names[static_cast<std::size_t>(kind)]; }

/// Who says how large it is.
enum class DoubtFrom : std::uint8_t { assumed, instrument, typed, digits, repeated, published, count };
inline constexpr std::array<std::string_view, 6> doubt_from_names{"assumed", "instrument", "typed",
                                                                  "digits",  "repeated",   "published"};
constexpr std::string_view name_of(DoubtFrom from) { return doubt_from_names[static_cast<std::size_t>(from)]; }

inline constexpr double without_end = __builtin_huge_val();

/// One source of doubt: a deviation of one number of the model, in the base unit of that number.
struct Doubt {
    Input input = Input::count;
    DoubtKind kind = DoubtKind::reading;
    DoubtFrom from = DoubtFrom::assumed;
    Shape shape = Shape::rectangular;
    double low = 0;   ///< lowest deviation of the number from its value; -high unless the doubt is one-sided
    double high = 0;  ///< highest; for `student` s/sqrt n
    double u = 0;     ///< standard uncertainty, about the middle of low and high
    double degrees = without_end;  ///< degrees of freedom
};

inline constexpr std::size_t most_doubts = 40;

/// All sources of doubt of one run. `measured` gives the same values as the assessment's, but has a place in the model
/// for each deviation (the ring of the meniscus, a level that was taken as equal, the value of the vapour formula).
struct Doubts {
    Measured<double> measured;
    OutputSet ready;
    std::array<Doubt, most_doubts> rows{};
    std::size_t count = 0;

    std::span<const Doubt> all() const { return {rows.data(), count}; }
    void add(const Doubt& doubt) {
        if (count < most_doubts) rows[count++] = doubt;
    }
};

/// The doubts of a run. Readings that are not there have none.
Doubts doubts_of(const Assessment& assessment);

/// The doubt of how well the reading of `field` is read, or nothing where it has none.
const Doubt* doubt_of_reading(const Doubts& doubts, Field field);
/// Decimals that show a half-width as people write one: one significant digit, or two where one would change it
/// (0.05 -> 2, 0.15 -> 2, 0.2667 -> 2). Above zero.
int decimals_of_half_width(double half_width);

/// Standard uncertainty of a deviation between `low` and `high` with this shape, about their middle (GUM 4.3.7, 4.3.9).
double standard_uncertainty(Shape shape, double low, double high);

/// The half-width that counts for a typed digit: max(`half_width`, one unit of the last digit typed).
double widened(double half_width, const Reading& reading);

}  // namespace overwater
