// The list of records: one press opens one; what can be done with each stands beside it.

#include <algorithm>
#include <cmath>

#include "web/app/app.hpp"
#include "web/app/record_title.hpp"
#include "web/panels/panels.hpp"
#include "web/panels/types.hpp"

namespace overwater {

namespace {

constexpr float wide_list = 760;

struct Entry {
    std::string id;
    std::string name;
    std::string result;
    std::string detail;
    bool stored = true;  ///< there is something to copy, export and delete
    bool newer = false;
};

class List {
public:
    List(App& app, Ui& ui, Rect area) : app_(app), ui_(ui), area_(area), y_(area.y), wide_(area.w >= wide_list) {
        for (const Press& press : presses) actions_ += width_of(press.words);
    }

    float draw() {
        ui_.rule({area_.x, y_}, {area_.right(), y_});
        // A copy: a press may change the list while it is drawn.
        const std::vector<Shelf::Card> cards = app_.shelf().cards();
        bool example_listed = false;
        for (const Shelf::Card& card : cards) {
            if (card.id == "example") example_listed = true;
            Entry entry;
            entry.id = card.id;
            entry.name = record_title(app_.language(), card.name);
            entry.result = app_.result_of(card);
            entry.detail = card.invented ? app_.say("records.invented") : card.saved.substr(0, 10);
            if (card.held) entry.detail = app_.say("records.in_memory");
            entry.newer = card.newer;
            row(entry);
        }
        if (!example_listed) {
            Entry example;
            example.id = "example";
            example.name = app_.say("example.name");
            example.detail = app_.say("records.invented");
            example.stored = false;
            row(example);
        }
        return y_ - area_.y;
    }

private:
    struct Press {
        std::string_view key;
        std::string_view words;
        std::string_view name;
    };
    static constexpr Press presses[] = {{"records.duplicate.", "records.duplicate", "records.duplicate_name"},
                                        {"records.export.", "records.export", "records.export_name"},
                                        {"records.delete.", "records.delete", "records.delete_name"}};

    float width_of(std::string_view words) const {
        return std::ceil(ui_.text_width(app_.say(words), {Face::regular, 15, Ink::copper})) + 18;
    }

    void row(const Entry& entry) {
        const float least = ui_.touch() ? 48.0f : 42.0f;
        const bool current = entry.id == app_.record().id;
        const Type type{Face::regular, 16, current ? Ink::text : Ink::copper};
        const float detail = ui_.text_width(entry.detail, soft);
        const float open_width = wide_ ? area_.w - actions_ - 12 : area_.w;
        const float result_left = std::round(open_width * 0.44f);
        const float name_width = wide_ ? result_left - 24 : area_.w - detail - 40;
        const float result_width = wide_ ? open_width - result_left - detail - 28 : area_.w - 24;
        // A long name takes more lines, never the place of what stands beside it.
        const auto names = ui_.lines(entry.name, type, name_width);
        const auto results =
            entry.result.empty() ? std::vector<std::string>{} : ui_.lines(entry.result, soft, result_width);
        const float name_tall = Ui::line_height(type) * static_cast<float>(names.size());
        const float result_tall = Ui::line_height(soft) * static_cast<float>(results.size());
        const float open_tall =
            wide_ ? std::max({least, name_tall + 18, result_tall + 18}) : std::max(least, name_tall + result_tall + 12);
        const Rect rect{area_.x, y_, open_width, open_tall};
        const float action_row = ui_.touch() ? 44.0f : 32.0f;
        const float tall = wide_ || !entry.stored ? open_tall : open_tall + action_row;
        if (current) ui_.fill({area_.x, y_, area_.w, tall}, Ink::copper_soft, 5);

        // `top` is that of the first line; the letters stand in its middle.
        const auto text = [&](float x, float top, const std::vector<std::string>& lines, Type set, bool underlined) {
            for (const std::string& line : lines) {
                const float letters = top + (Ui::line_height(set) - set.size) / 2;
                ui_.draw_text({x, letters}, line, set);
                if (underlined) {
                    const float end = x + ui_.text_width(line, set);
                    ui_.rule({x, letters + set.size * 1.02f}, {end, letters + set.size * 1.02f}, Ink::copper);
                }
                top += Ui::line_height(set);
            }
        };
        const float first = wide_ ? y_ + (open_tall - name_tall) / 2 : y_ + 6;
        text(area_.x + 12, first, names, type, !current);
        const float result_top = wide_ ? y_ + (open_tall - result_tall) / 2 : first + name_tall + 1;
        text(wide_ ? area_.x + result_left : area_.x + 12, result_top, results, soft, false);
        const float detail_y =
            wide_ ? y_ + (open_tall - soft.size) / 2 : first + (Ui::line_height(type) - soft.size) / 2;
        ui_.draw_text({rect.right() - 12, detail_y}, entry.detail, soft, Anchor::end);
        const std::string said =
            entry.result.empty() ? entry.detail : entry.result + app_.say("list.comma") + entry.detail;
        if (ui_.button("records.open." + entry.id, rect, {}, Ui::ButtonLook::plain, current,
                       app_.say(Message{"records.open"}.text("name", entry.name).text("detail", said)))) {
            app_.open_record(entry.id);
        }
        if (entry.stored) {
            float x = wide_ ? area_.right() - actions_ : area_.x + 3;
            const float top = wide_ ? y_ + (open_tall - action_row) / 2 : y_ + open_tall;
            for (const Press& press : presses) {
                const float width = width_of(press.words);
                // A copy of what a newer program wrote would lose what is not understood here.
                const bool possible = !entry.newer || press.words != "records.duplicate";
                if (possible &&
                    ui_.button(std::string(press.key) + entry.id, {x, top, width, action_row}, app_.say(press.words),
                               Ui::ButtonLook::link, false, app_.say(named(press.name, entry.name)), 15)) {
                    act(press.words, entry.id);
                }
                x += width;
            }
        }
        y_ += tall;
        ui_.rule({area_.x, y_}, {area_.right(), y_});
    }

    static Message named(std::string_view key, const std::string& name) {
        if (key == "records.duplicate_name") return Message{"records.duplicate_name"}.text("name", name);
        if (key == "records.export_name") return Message{"records.export_name"}.text("name", name);
        return Message{"records.delete_name"}.text("name", name);
    }

    void act(std::string_view what, const std::string& id) {
        if (what == "records.duplicate") {
            app_.duplicate_record(id);
        } else if (what == "records.export") {
            app_.export_record(id);
        } else {
            app_.delete_record(id);
        }
    }

    App& app_;
    Ui& ui_;
    Rect area_;
    float y_;
    bool wide_;
    float actions_ = 0;
};

}  // namespace

float draw_records_list(App& app, Ui& ui, Rect area) { return List(app, ui, area).draw(); }

}  // namespace overwater
