#include <doctest/doctest.h>

#include "core/quantity/number_format.hpp"

using namespace overwater;

namespace {

struct Row {
    const char* source;
    double value;
    int place; ///< power of ten rounded to
    Rounding rounding;
    double expected;
    const char* text;
};

constexpr Rounding even = Rounding::half_to_even;
constexpr Rounding up = Rounding::half_up;

const Row rows[] = {
    // Examples from memory; each equals Python's decimal module with ROUND_HALF_EVEN or ROUND_HALF_UP.
    {"ISO 80000-1 Annex B rule A", 12.223, -1, even, 12.2, "12.2"},
    {"ISO 80000-1 Annex B rule A", 12.251, -1, even, 12.3, "12.3"},
    {"ISO 80000-1 Annex B rule A", 12.275, -1, even, 12.3, "12.3"},
    {"ISO 80000-1 Annex B rule A", 12.25, -1, even, 12.2, "12.2"},
    {"ISO 80000-1 Annex B rule A", 12.35, -1, even, 12.4, "12.4"},
    {"ISO 80000-1 Annex B rule A", 1225.0, 1, even, 1220.0, "1220"},
    {"ISO 80000-1 Annex B rule A", 1235.0, 1, even, 1240.0, "1240"},
    {"ISO 80000-1 Annex B rule B", 12.25, -1, up, 12.3, "12.3"},
    {"ISO 80000-1 Annex B rule B", 12.35, -1, up, 12.4, "12.4"},
    {"ISO 80000-1 Annex B rule B", 1225.0, 1, up, 1230.0, "1230"},
    {"ISO 80000-1 Annex B rule B, away from zero", -12.25, -1, up, -12.3, "−12.3"},
    // GUM 7.2.6, quoted in open metrology software.
    {"GUM 7.2.6", 28.05, 0, up, 28.0, "28"},
    {"GUM 7.2.6", 10.05762, -3, up, 10.058, "10.058"},
    // The binary trap: 2.675 is 2.674999999999999822... in a double (Python decimal).
    {"decimal text, not binary value", 2.675, -2, up, 2.68, "2.68"},
    {"decimal text, not binary value", 2.675, -2, even, 2.68, "2.68"},
    {"decimal text, not binary value", 1.005, -2, up, 1.01, "1.01"},
    {"decimal text, not binary value", 1.005, -2, even, 1.00, "1.00"},
    {"decimal text, not binary value", 0.285, -2, up, 0.29, "0.29"},
    // Vapour pressure of water at 21 °C in an older table, 18.650 mmHg: 18.7 in class tables, 18.6 by rule A.
    {"older handbook", 18.650, -1, up, 18.7, "18.7"},
    {"older handbook", 18.650, -1, even, 18.6, "18.6"},
};

} // namespace

TEST_CASE("rounding by published rules") {
    for (const Row& row : rows) {
        INFO(row.source, ": ", row.value);
        CHECK(round_to_place(row.value, row.place, row.rounding) == row.expected);
        CHECK(format_fixed(row.value, -row.place, DecimalSign::point, row.rounding) == row.text);
    }
}
