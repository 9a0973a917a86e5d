#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <vector>

#include "core/pool/class_set.hpp"
#include "web/draw/class_pictures.hpp"

/// Words and tables that the page of the class set shares with its files and its report.

namespace overwater {

class App;

/// What a run comes to, as columns of its table.
enum class PoolColumn : std::uint8_t { amount, volume, molar_volume, half_width, difference };
inline constexpr std::array pool_columns{PoolColumn::amount, PoolColumn::volume, PoolColumn::molar_volume,
                                         PoolColumn::half_width, PoolColumn::difference};

const char* pool_column_key(PoolColumn column);
/// "Volume at standard conditions (mL)".
std::string pool_column_words(const App& app, PoolColumn column);
/// One number of a run, without its unit; empty where it has none.
std::string pool_number(const App& app, const ClassPoint& point, double half_width, PoolColumn column);

/// The whole class as rows of texts, the names of the columns first: group, run, the readings in which groups differ, why a
/// run is left out, and what each run comes to. It can be read again.
std::vector<std::vector<std::string>> pool_table(const App& app);

/// A molar volume with its unit, to the place of `half_width` (both m³/mol).
std::string pool_value(const App& app, double value, double half_width);

/// A number of the class with its name, and what it assumes.
struct PoolNumber {
    std::string name;
    std::string value;
    std::string note;
};
std::vector<PoolNumber> pool_numbers(const App& app);

/// What the class comes to, in one or two sentences.
std::string pool_sentence(const App& app);
/// The name of a point: "Group 3", or "Group 3, run 2".
std::string point_name(const App& app, const ClassPoint& point);
/// What the class pattern says, each with what is usually behind it and the groups it is about.
std::vector<std::string> pattern_sentences(const App& app);

/// The class for its pictures: the points that count, then those left out.
ClassView class_view(const App& app);

}  // namespace overwater
