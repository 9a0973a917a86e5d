#include "core/lesson/sheet_column.hpp"

#include <algorithm>

namespace overwater {

namespace {

/// Capitals A to Z and U+00C0 to U+00FF without accent; a point where two letters stand for one.
constexpr std::string_view plain_letters = "aaaaaa.ceeeeiiii.nooooo.ouuuuy..aaaaaa.ceeeeiiii.nooooo.ouuuuy.y";

}  // namespace

std::string folded_name(std::string_view words) {
    constexpr std::string_view between = "_-.'\n\r\t";
    std::string out;
    for (std::size_t i = 0; i < words.size(); ++i) {
        const char c = words[i];
        const std::string_view rest = words.substr(i);
        if (c >= 'A' && c <= 'Z') {
            out += static_cast<char>(c - 'A' + 'a');
        } else if (c == '\xc3' && rest.size() > 1) {
            const char plain = plain_letters[static_cast<unsigned char>(words[++i]) & 0x3fU];
            out += plain == '.' ? words[i] : plain;
        } else if (rest.starts_with("\u00a0")) {
            ++i;
        } else if (rest.starts_with("\u202f") || rest.starts_with("\u2019") || rest.starts_with("\u2011")) {
            i += 2;
        } else if (c != ' ' && between.find(c) == std::string_view::npos) {
            out += c;
        }
    }
    return out;
}

SheetColumn column_named(std::string_view name) {
    using Kind = SheetColumn::Kind;
    SheetColumn column;
    if (name == "group") column.kind = Kind::group;
    if (name == "run") column.kind = Kind::run;
    if (name == "practice_code") column.kind = Kind::practice_code;
    if (name == "left_out") column.kind = Kind::left_out;
    if (name == "passed_over") column.kind = Kind::passed_over;
    if (column.kind != Kind::unknown) return column;
    column.step.mean = name == "mean";
    if (column.step.mean) column.step.output = Output::molar_volume_standard;
    for (std::size_t i = 0; i < output_count; ++i) {
        const auto output = static_cast<Output>(i);
        if (name == name_of(output) && is_on_a_sheet(output)) column.step.output = output;
    }
    if (column.step.output != Output::count) {
        column.kind = Kind::answer;
        return column;
    }
    const auto field = std::find(field_names.begin(), field_names.end(), name);
    if (field != field_names.end()) {
        column.kind = Kind::reading;
        column.field = static_cast<Field>(field - field_names.begin());
    }
    return column;
}

}  // namespace overwater
