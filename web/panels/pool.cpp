// The page of a class: its groups taken in, pooled, and looked at together.

#include <algorithm>
#include <cmath>

#include "web/app/app.hpp"
#include "web/panels/page_column.hpp"
#include "web/panels/pool_rows.hpp"
#include "web/panels/pool_words.hpp"
#include "web/panels/table.hpp"
#include "web/panels/types.hpp"

namespace overwater {

namespace {

constexpr Type warning{Face::regular, 15, Ink::warning};
constexpr std::size_t no_dot = ~std::size_t{0};

class PoolPage : private PageColumn {
public:
    PoolPage(App& app, Ui& ui, float top) : PageColumn(app, ui, top, 1240, 860), desk_(app.pool_desk()) {}

    void draw() {
        begin("pool", app_.say("page.pool"));
        if (desk_.groups.empty()) paragraph("pool.about", app_.say("pool.about"), Type{}, 10);
        way_in();
        if (!desk_.groups.empty()) {
            result();
            pictures();
            ways_out();
            y_ += draw_pool_rows(app_, ui_, {margin_, y_, width_, 0}) + 16;
            numbers();
        }
        end();
    }

private:
    void way_in() {
        const std::string words = app_.say("pool.text");
        const float tall = static_cast<float>(ui_.lines(words, Type{}, width_).size()) * Ui::line_height(Type{});
        ui_.label("pool.text.label", "pool.text", {margin_, y_, width_, tall}, words);
        y_ += tall + 4;
        Ui::Field field;
        field.value = desk_.text;
        field.number = false;
        field.input_mode = "text";
        const bool told = desk_.groups.empty() || !desk_.problems.empty();
        field.lines = desk_.groups.empty() ? 6 : 2;
        if (told) field.described_by = "pool.columns";
        const float height = static_cast<float>(field.lines) * Ui::line_height(Type{}) + 14;
        ui_.field("pool.text", {margin_, y_, width_, height}, field);
        y_ += height + 8;
        Flow flow(margin_, y_, width_, row_ + 8, 10);
        if (press_in(flow, "pool.read", "pool.read")) app_.read_pool();
        press_in(flow, "pool.files", "marking.open");
        ui_.opens_file();
        if (press_in(flow, "pool.records", "pool.records")) app_.pool_from_records();
        if (desk_.groups.empty() && press_in(flow, "pool.copy_columns", "marking.copy_columns")) app_.copy_class_columns();
        if (press_in(flow, "pool.add", "pool.add")) app_.add_group();
        if (!desk_.groups.empty() && press_in(flow, "pool.clear", "marking.clear")) app_.clear_pool();
        if (desk_.removed && press_in(flow, "pool.undo", "pool.undo")) app_.undo_pool();
        y_ = flow.bottom() + 2;
        if (told) paragraph("pool.columns", app_.say("pool.columns"), soft, 6);
        if (!desk_.from_open.empty()) paragraph("pool.from_open", desk_.from_open, soft, 6);
        int number = 0;
        for (const std::string& problem : desk_.problems) {
            paragraph("pool.problem" + std::to_string(++number), problem, warning, 3);
        }
        if (desk_.not_kept && !desk_.groups.empty()) paragraph("pool.not_kept", app_.say("pool.not_kept"), soft, 3);
    }

    void result() {
        y_ += 4;
        ui_.rule({margin_, y_}, {margin_ + width_, y_});
        y_ += 10;
        paragraph("pool.sentence", pool_sentence(app_), {Face::semibold, 20, Ink::text}, 6);
        if (desk_.states_differ) {
            paragraph("pool.states_differ", app_.say("pool.states_differ"), warning, 4);
            Flow flow(margin_, y_, width_, row_ + 8, 10);
            if (press_in(flow, "pool.own_conventions", "pool.own_conventions")) app_.pool_by_own_conventions();
            y_ = flow.bottom() + 4;
        }
        int number = 0;
        for (const std::string& words : pattern_sentences(app_)) {
            paragraph("pool.pattern" + std::to_string(++number), words, Type{}, 4);
        }
    }

    /// The point that the pointer is at, or whose row has the focus.
    std::size_t pointed_at(const std::vector<std::pair<const ClassPicture*, Point>>& shown) const {
        for (const auto& [one, at] : shown) {
            const Point pointer = ui_.pointer();
            const std::size_t dot = dot_near(one->places, {pointer.x - at.x, pointer.y - at.y});
            if (dot != no_dot) return dot;
        }
        const ClassSet& set = desk_.set;
        for (std::size_t i = 0; i < set.points.size() + set.left_out.size(); ++i) {
            if (ui_.focused("pool.group." + std::to_string(point(i).group) + ".open")) return i;
        }
        return no_dot;
    }

    const ClassPoint& point(std::size_t i) const {
        const ClassSet& set = desk_.set;
        return i < set.points.size() ? set.points[i] : set.left_out[i - set.points.size()];
    }

    void pictures() {
        if (desk_.set.points.empty() && desk_.set.left_out.empty()) return;
        const ClassView view = class_view(app_);
        const bool beside = width_ >= 820;
        const float wide = beside ? std::floor((width_ - 32) / 2) : width_;
        y_ += 8;
        ClassPicture dots = draw_class_dots(view, wide, ui_.measure());
        ClassPicture lines =
            draw_class_lines(view, wide, beside ? std::max(340.0f, dots.picture.height) : 340.0f, ui_.measure());
        const Point at_dots{margin_, y_};
        const Point at_lines{beside ? margin_ + wide + 32 : margin_, beside ? y_ : y_ + dots.picture.height + 16};
        const std::size_t pointed = pointed_at({{&dots, at_dots}, {&lines, at_lines}});
        if (pointed != no_dot) {
            ring(dots.picture, dots.places[pointed]);
            if (!lines.places.empty()) ring(lines.picture, lines.places[pointed]);
        }
        ui_.picture("pool.dots", at_dots, dots.picture);
        ui_.picture("pool.lines", at_lines, lines.picture);
        y_ = std::max(at_dots.y + dots.picture.height, at_lines.y + lines.picture.height) + 4;
        // Its room is there before anything is pointed at, so that nothing jumps: a row that moved away below the pointer
        // would lose the press that gave it the focus.
        const std::string words = pointed == no_dot ? app_.say("pool.point_at") : told(point(pointed));
        const float below = y_ + room_to_tell();
        paragraph("pool.pointed", words, soft, 8);
        y_ = std::max(y_, below);
    }

    /// The height of the longest words about a dot: those of the longest name, with room for a few digits more.
    float room_to_tell() const {
        const std::size_t count = desk_.set.points.size() + desk_.set.left_out.size();
        std::size_t longest = 0;
        for (std::size_t i = 1; i < count; ++i) {
            if (desk_.groups[point(i).group].name.size() > desk_.groups[point(longest).group].name.size()) longest = i;
        }
        const std::size_t lines = ui_.lines(told(point(longest)) + "0000000000", soft, text_width_).size();
        return Ui::line_height(soft) * static_cast<float>(lines) + 8;
    }

    std::string told(const ClassPoint& of) const {
        const double half_width = desk_.groups[of.group].runs[of.run].half_width;
        std::string words = point_name(app_, of);
        for (const PoolColumn column : pool_columns) {
            const std::string number = pool_number(app_, of, half_width, column);
            if (!number.empty())
                words +=
                    app_.say("list.comma") +
                    app_.say(Message{"print.pair"}.text("name", pool_column_words(app_, column)).text("value", number));
        }
        return words;
    }

    void ways_out() {
        Flow flow(margin_, y_, width_, row_ + 8, 10);
        if (press_in(flow, "pool.print", "pool.print")) app_.print_class_report();
        if (press_in(flow, "pool.save_table", "pool.save_table")) app_.save_pool_table();
        if (press_in(flow, "pool.save_json", "pool.save_json")) app_.save_pool_json();
        if (press_in(flow, "pool.mark", "pool.mark")) app_.pool_to_marking();
        y_ = flow.bottom() + 6;
    }

    void numbers() {
        if (desk_.set.points.empty()) return;
        y_ += ui_.heading("pool.numbers", 3, {margin_, y_, width_, 0}, app_.say("pool.numbers"),
                          {Face::semibold, 18, Ink::text}) +
              4;
        const float top = y_;
        const bool wide = width_ >= 820;
        Element table = table_of(app_.say("pool.numbers"),
                                 {app_.say("pool.number"), app_.say("pool.value"), app_.say("pool.note")});
        Element body = Element::named("tbody");
        for (const PoolNumber& row : pool_numbers(app_)) {
            ui_.draw_text({margin_, y_ + 6}, row.name, Type{});
            ui_.draw_text({margin_ + (wide ? 470.0f : width_), y_ + 6}, row.value, {Face::semibold, 16, Ink::text},
                          Anchor::end);
            float line = y_ + 6;
            const float left = wide ? margin_ + 494 : margin_;
            if (!wide) line += 22;
            for (const std::string& words : ui_.lines(row.note, soft, margin_ + width_ - left)) {
                if (!words.empty()) ui_.draw_text({left, line}, words, soft);
                line += 20;
            }
            y_ = std::max(y_ + 26, line) + 6;
            ui_.rule({margin_, y_}, {margin_ + width_, y_});
            body.add(table_row(row.name, {row.value, row.note}));
        }
        table.add(std::move(body));
        ui_.table("pool.numbers.table", {margin_, top, width_, y_ - top}, std::move(table));
    }

    const PoolDesk& desk_;
};

}  // namespace

void draw_pool_page(App& app, Ui& ui, float top) { PoolPage(app, ui, top).draw(); }

}  // namespace overwater
