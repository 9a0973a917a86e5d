#include "web/panels/ruled_table.hpp"

#include <algorithm>

#include "web/panels/table.hpp"

namespace overwater {

namespace {

constexpr Type head{Face::regular, 14, Ink::soft};
constexpr const char* no_break = "\u00a0";
constexpr float first_share = 0.24f;  ///< of the width, for the first column

}  // namespace

RuledTable::RuledTable(Ui& ui, const Rect& area, const std::string& caption, const std::vector<std::string>& columns)
    : ui_(ui), area_(area), y_(area.y), table_(table_of(caption, columns)) {
    line(columns, head, head);
}

void RuledTable::row(const std::vector<std::string>& cells) {
    line(cells, {Face::semibold, 16, Ink::text}, Type{});
    body_.add(table_row(cells[0], {cells.begin() + 1, cells.end()}));
}

float RuledTable::end(const TextView& key) {
    table_.add(std::move(body_));
    ui_.table(key, {area_.x, area_.y, area_.w, y_ - area_.y}, std::move(table_));
    return y_ - area_.y;
}

void RuledTable::line(const std::vector<std::string>& cells, const Type& first, const Type& others) {
    const float room = area_.w * first_share;
    const float wide = (area_.w - room) / static_cast<float>(cells.size() - 1);
    float bottom = y_;
    for (std::size_t i = 0; i < cells.size(); ++i) {
        const Type& type = i == 0 ? first : others;
        float below = y_ + 5;
        const float most = (i == 0 ? room : wide) - 8;
        std::string cell = cells[i];
        // Where there is little room a unit stands below its number.
        if (ui_.text_width(cell, type) > most) {
            for (std::size_t at = cell.find(no_break); at != std::string::npos; at = cell.find(no_break)) {
                cell.replace(at, 2, 1, ' ');
            }
        }
        for (const std::string& words : ui_.lines(cell, type, most)) {
            const float right = area_.x + room + wide * static_cast<float>(i);
            ui_.draw_text({i == 0 ? area_.x : right, below}, words, type, i == 0 ? Anchor::start : Anchor::end);
            below += Ui::line_height(type);
        }
        bottom = std::max(bottom, below);
    }
    y_ = bottom + 3;
    ui_.rule({area_.x, y_}, {area_.x + area_.w, y_});
}

}  // namespace overwater
