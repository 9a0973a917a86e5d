#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "core/lesson/marking.hpp"

/// Columns of a class's table and how their names are recognized.

namespace overwater {

/// What one column of a class's table holds.
struct SheetColumn {
    enum class Kind : std::uint8_t { unknown, group, run, practice_code, left_out, passed_over, reading, answer };
    Kind kind = Kind::unknown;
    Field field = Field::count;
    SheetStep step;
    UnitId unit = UnitId::none;
};

/// The column of a name of the program: "group", "scale_reading", "molar_volume_standard" ...; of kind `unknown` where there is
/// none.
SheetColumn column_named(std::string_view name);

/// Names are compared without capitals, accents (of U+00C0 to U+00FF), spaces, and the signs between words.
std::string folded_name(std::string_view words);

}  // namespace overwater
