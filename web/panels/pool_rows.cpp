#include "web/panels/pool_rows.hpp"

#include <algorithm>
#include <cmath>

#include "web/app/app.hpp"
#include "web/panels/page_column.hpp"
#include "web/panels/pool_words.hpp"
#include "web/panels/types.hpp"

namespace overwater {

namespace {

constexpr std::size_t all_drawn = 60;  ///< so many are all there, in view or not
constexpr float rows_around = 10;
constexpr float field_width = 96;

class PoolRows : private PageColumn {
public:
    PoolRows(App& app, Ui& ui, const Rect& area)
        : PageColumn(app, ui, area.y, 1100, 760), area_(area), desk_(app.pool_desk()) {
        margin_ = area.x;
        width_ = area.w;
        y_ = area.y;
        wide_ = area.w >= 700;
        height_ = ui.touch() ? 44.0f : 32.0f;
    }

    float draw() {
        if (wide_) {
            // What the list says of each row by itself.
            ui_.text("pool.head.group", {area_.x + 8, y_, 100, 0}, app_.say("marking.group"), soft);
            for (std::size_t i = 0; i < pool_columns.size(); ++i) {
                ui_.text("pool.head." + std::to_string(i), {column(i) - 150, y_, 150, 0},
                         pool_column_words(app_, pool_columns[i]), soft, Anchor::end);
            }
            y_ += 44;
        }
        ui_.open("pool.list", Role::list, {area_.x, y_, area_.w, 0}, app_.say("pool.list"));
        for (std::size_t i = 0; i < desk_.groups.size(); ++i) {
            const PoolGroup& group = desk_.groups[i];
            const float tall = height_ * static_cast<float>(group.runs.size());
            const Rect rect{area_.x, y_, area_.w, tall};
            const bool open = desk_.open == i;
            const bool drawn = desk_.groups.size() <= all_drawn || open || ui_.near_view(rect, rows_around * height_);
            if (drawn) ui_.rule({rect.x, y_}, {rect.right(), y_});
            y_ += tall;
            if (!drawn) continue;
            const std::string key = "pool.group." + std::to_string(i);
            ui_.open(key, Role::list_item, rect, {});
            row(key, rect, i, open);
            if (open) details(key, i);
            ui_.close();
        }
        ui_.close();
        ui_.rule({area_.x, y_}, {area_.x + area_.w, y_});
        ui_.reach(y_);
        return y_ + 6 - area_.y;
    }

private:
    /// Right edge of a column.
    float column(std::size_t i) const {
        return area_.x + 110 + static_cast<float>(i + 1) * std::min(150.0f, (area_.w - 330) / 5);
    }

    void row(const std::string& key, const Rect& rect, std::size_t place, bool open) {
        const PoolGroup& group = desk_.groups[place];
        if (open) ui_.fill(rect, Ink::copper_soft, 4);
        std::string name = app_.say(Message{"pool.point"}.text("group", group.name));
        float y = rect.y + (height_ - 20) / 2;
        const float text = y;
        for (std::size_t r = 0; r < group.runs.size(); ++r) {
            const PoolRun& run = group.runs[r];
            const std::string& own = group.record.runs[r].left_out;
            const bool out = group.left_out || !own.empty();
            const std::string& reason = group.left_out ? group.reason : own;
            const std::string remark = out ? app_.say(Message{"pool.out_because"}.text("reason", reason)) : run.why_not;
            std::string words = run.point ? pool_value(app_, run.point->ratio, run.half_width) : std::string();
            if (!words.empty()) name += app_.say("list.comma") + words;
            if (!remark.empty()) name += app_.say("list.comma") + remark;
            const Type number{Face::semibold, 16, out ? Ink::soft : Ink::text};
            if (wide_) {
                for (std::size_t i = 0; run.point && i < pool_columns.size(); ++i) {
                    const bool result = pool_columns[i] == PoolColumn::molar_volume;
                    ui_.draw_text({column(i), y}, pool_number(app_, *run.point, run.half_width, pool_columns[i]),
                                  result ? number : Type{Face::regular, 16, number.ink}, Anchor::end);
                }
                const float left = run.point ? column(pool_columns.size() - 1) + 16 : column(0) - 60;
                ui_.draw_text({left, y}, fitted(ui_, remark, soft, rect.right() - left), soft);
            } else {
                ui_.draw_text({rect.x + 110, y}, fitted(ui_, words.empty() || out ? remark : words, number, rect.w - 114),
                              out || words.empty() ? soft : number);
            }
            y += height_;
        }
        if (ui_.button(key + ".open", rect, {}, Ui::ButtonLook::plain, false, name)) app_.open_group(place);
        ui_.draw_text({rect.x + 8, text}, fitted(ui_, group.name, Type{}, 96), {Face::regular, 16, Ink::copper});
    }

    void labelled(Flow& flow, const std::string& key, const std::string& words, const std::string& value, float wide,
                  bool is_number, const std::string& behind = {}) {
        const float label = std::ceil(ui_.text_width(words, Type{})) + 8;
        const float unit = behind.empty() ? 0 : std::ceil(ui_.text_width(behind, Type{})) + 8;
        const Rect place = flow.next(std::min(label + wide + unit, width_ - 24));
        ui_.label(key + ".label", key, {place.x, place.y, label, row_}, words);
        Ui::Field field;
        field.value = value;
        field.number = is_number;
        if (!is_number) field.input_mode = "text";
        ui_.field(key, {place.x + label, place.y, place.w - label - unit, row_}, field);
        if (unit > 0) ui_.draw_text({place.x + place.w - unit + 6, place.y + (row_ - 20) / 2}, behind, Type{});
    }

    void details(const std::string& key, std::size_t place) {
        const PoolGroup& group = desk_.groups[place];
        y_ += 8;
        for (std::size_t run = 0; run < group.record.runs.size(); ++run) {
            const std::string of_run = key + '.' + std::to_string(run);
            if (group.record.runs.size() > 1) {
                const std::string words =
                    app_.say(Message{"runs.run"}.count("number", static_cast<long long>(run) + 1));
                y_ += ui_.text(of_run, {margin_ + 8, y_, width_, 0}, words, soft) + 2;
            }
            Flow flow(margin_ + 8, y_, width_ - 16, row_ + 6, 20);
            for (const Field field : desk_.fields) {
                const Entry& entry = entry_for(group.record, run, field);
                const UnitId unit = app_.unit_of(entry, field);
                labelled(flow, of_run + '.' + std::string(name_of(field)),
                         app_.say("field." + std::string(name_of(field))), entry.text, field_width, true,
                         std::string(info(unit).symbol));
            }
            y_ = flow.bottom() + 4;
        }
        Flow flow(margin_ + 8, y_, width_ - 16, row_ + 6, 20);
        labelled(flow, key + ".name", app_.say("marking.group"), group.name, field_width, false);
        const std::string words = app_.say("pool.leave_out");
        Rect box = flow.next(std::min(std::ceil(ui_.text_width(words, Type{})) + 34, width_ - 24));
        box.h = row_;
        if (ui_.check_box(key + ".out", box, words, group.left_out)) app_.leave_group_out(place);
        if (group.left_out) labelled(flow, key + ".reason", app_.say("pool.reason"), group.reason, 260, false);
        if (press_in(flow, key + ".run", "pool.add_run")) app_.add_run_to_group(place);
        if (press_in(flow, key + ".bench", "pool.to_bench")) app_.group_to_bench(place);
        if (press_in(flow, key + ".remove", "pool.remove")) app_.remove_group(place);
        y_ = flow.bottom() + 8;
        if (desk_.open == place && group.left_out && group.reason.empty()) {
            paragraph(key + ".say_why", app_.say("pool.say_why"), {Face::regular, 15, Ink::warning}, 6);
        }
    }

    Rect area_;
    const PoolDesk& desk_;
    bool wide_ = false;
    float height_ = 32;
};

}  // namespace

float draw_pool_rows(App& app, Ui& ui, const Rect& area) { return PoolRows(app, ui, area).draw(); }

}  // namespace overwater
