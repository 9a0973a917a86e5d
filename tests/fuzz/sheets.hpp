#pragma once

#include "core/lesson/sheet_table.hpp"
#include "tests/fuzz/record.hpp"

/// A class's sheets. The first byte says whether they are to be marked or pooled.

namespace overwater::fuzz {

/// What a class has in common (invented).
inline Record common_record() {
    Record record;
    const auto type = [&](Field field, const char* text) { record.shared.edit(field).text = text; };
    type(Field::metal, "magnesium");
    type(Field::acid, "hydrochloric");
    type(Field::number_at_closed_end, "largest");
    type(Field::tube_capacity, "50");
    type(Field::end_space, "2.4 mL");
    type(Field::temperature, "70 °F");
    type(Field::barometer, "29.42 inHg");
    record.runs[0].entries.edit(Field::mass_of_metal).text = "0.0400";
    return record;
}

inline std::string_view holds_for_sheets(std::string_view bytes) {
    static const std::vector<ColumnName> columns{{"Gruppe", "group"}, {"Écart", "percent_error"}};
    static const std::vector<ChoiceName> choices{{"innen höher", Field::liquid_stands, "higher_inside"}};
    static const Record open = common_record();
    Bytes in{bytes};
    const SheetsFor purpose = in.choice(2) == 0 ? SheetsFor::marking : SheetsFor::pooling;
    const ClassTable table = read_sheets(in.left, columns, choices, open, purpose);

    if (table.sheets.size() > most_sheets) return "a class has an end";
    for (const Message& problem : table.problems) {
        if (!is_said(problem)) return "each problem has its sentence";
    }
    if (table.problems.size() > 22) return "so many problems are enough";
    if (table.sheets.empty() && table.problems.empty()) return "a table without a sheet says why";
    for (const ClassSheet& sheet : table.sheets) {
        if (sheet.group < 1) return "groups are counted from 1";
        if (sheet.record.runs.empty() || sheet.record.runs.size() > most_runs) return "a record has 1 to 6 runs";
    }
    if (table.sheets.empty()) return kept;
    // Cells may hold bytes that are no text, which become U+FFFD in a record's file.
    const LoadResult file = record_from_json(record_to_json(table.sheets.front().record, JsonLayout::compact));
    return file.record ? comes_back(*file.record) : "a sheet can be kept as a record";
}

}  // namespace overwater::fuzz
