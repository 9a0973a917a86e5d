#include "web/panels/ruled_table.hpp"

#include <algorithm>
#include <cmath>

#include "web/panels/table.hpp"

namespace overwater {

namespace {

constexpr Type head{Face::regular, 14, Ink::soft};
constexpr Type first{Face::semibold, 16, Ink::text};
constexpr Type others{};
constexpr float between = 8;  ///< columns

/// Where a cell may be broken.
std::string with_spaces(std::string cell) {
    constexpr const char* no_break = "\u00a0";
    for (std::size_t at = cell.find(no_break); at != std::string::npos; at = cell.find(no_break)) {
        cell.replace(at, 2, 1, ' ');
    }
    return cell;
}

/// The names of columns may stand in several lines.
float longest_word(const Ui& ui, std::string_view name) {
    float most = 0;
    while (!name.empty()) {
        const std::size_t end = std::min(name.find(' '), name.size());
        most = std::max(most, ui.text_width(name.substr(0, end), head));
        name.remove_prefix(std::min(end + 1, name.size()));
    }
    return std::ceil(most);
}

}  // namespace

float draw_ruled_table(Ui& ui, const TextView& key, const Rect& area, const std::string& caption,
                       const std::vector<std::vector<std::string>>& rows) {
    const std::size_t columns = rows.front().size();
    std::vector<float> wide(columns, 0.0f);
    for (std::size_t row = 0; row < rows.size(); ++row) {
        for (std::size_t i = 0; i < columns; ++i) {
            const float room = row == 0   ? longest_word(ui, rows[row][i])
                               : i == 0 ? ui.text_width(rows[row][i], first)
                                        : ui.text_width(rows[row][i], others);
            wide[i] = std::max(wide[i], room + between);
        }
    }
    float spare = area.w;
    for (const float one : wide) spare -= one;
    // What is left is for all; where it is too little, each takes the same less.
    for (float& one : wide) one += spare / static_cast<float>(columns);
    Element table = table_of(caption, rows.front());
    Element body = Element::named("tbody");
    float y = area.y;
    for (std::size_t row = 0; row < rows.size(); ++row) {
        float bottom = y;
        float right = area.x;
        for (std::size_t i = 0; i < columns; ++i) {
            const Type& type = row == 0 ? head : i == 0 ? first : others;
            right += wide[i];
            const bool broken = ui.text_width(rows[row][i], type) > wide[i];
            float below = y + 5;
            for (const std::string& words :
                 ui.lines(broken ? with_spaces(rows[row][i]) : rows[row][i], type, wide[i] - (row == 0 ? between : 0))) {
                ui.draw_text({i == 0 ? area.x : right, below}, words, type, i == 0 ? Anchor::start : Anchor::end);
                below += Ui::line_height(type);
            }
            bottom = std::max(bottom, below);
        }
        y = bottom + 3;
        ui.rule({area.x, y}, {area.x + area.w, y});
        if (row > 0) body.add(table_row(rows[row][0], {rows[row].begin() + 1, rows[row].end()}));
    }
    table.add(std::move(body));
    ui.table(key, {area.x, area.y, area.w, y - area.y}, std::move(table));
    return y - area.y;
}

}  // namespace overwater
