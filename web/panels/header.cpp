#include <algorithm>
#include <cmath>

#include "web/app/app.hpp"
#include "web/app/record_title.hpp"
#include "web/panels/language_choice.hpp"
#include "web/panels/panels.hpp"

namespace overwater {

namespace {

constexpr float wide_header = 1000;
constexpr float wide_gap = 4;
/// Around a name, both sides together.
constexpr float most_air = 22;
constexpr float usual_air = 11;
constexpr float least_air = 4;

struct Press {
    std::string_view key;
    std::string_view words;
    PageName page;
};
constexpr Press left_pages[] = {
    {"header.bench", "page.bench", PageName::bench},          {"header.working", "page.working", PageName::working},
    {"header.how_sure", "page.how_sure", PageName::how_sure}, {"header.gap", "page.gap", PageName::gap},
    {"header.answers", "page.answers", PageName::answers},    {"header.practice", "page.practice", PageName::practice},
    {"header.equations", "page.equations", PageName::equations}};
constexpr Press right_pages[] = {{"header.class", "page.class", PageName::pool},
                                 {"header.cautions", "page.cautions", PageName::cautions},
                                 {"header.conventions", "page.conventions", PageName::conventions},
                                 {"header.projector", "page.projector", PageName::projector}};

/// The pages of a class, in the order of their work.
constexpr Press class_pages[] = {{"class.plan", "page.plan", PageName::plan},
                                 {"class.codes", "page.codes", PageName::codes},
                                 {"class.pool", "page.pool", PageName::pool},
                                 {"class.marking", "page.marking", PageName::marking}};

bool is_of_class(PageName page) {
    return std::any_of(std::begin(class_pages), std::end(class_pages),
                       [page](const Press& press) { return press.page == page; });
}

class Header {
public:
    Header(App& app, Ui& ui) : app_(app), ui_(ui), row_(ui.touch() ? 44.0f : 36.0f) {}

    float draw() {
        const float margin = page_margin(ui_);
        const bool wide = ui_.width() >= wide_header;
        const float pad = wide ? 8.5f : 5;
        if (wide) settle_air(margin);
        // The background needs the height, which is known only when everything has its place: rows are counted first.
        const float bottom = place(margin, pad, wide, false);
        ui_.fill({0, 0, ui_.width(), bottom}, Ink::card);
        ui_.rule({0, bottom}, {ui_.width(), bottom});
        ui_.open("header", Role::navigation, {0, 0, ui_.width(), bottom}, app_.say("header.name"));
        place(margin, pad, wide, true);
        ui_.close();
        return bottom + 1;
    }

private:
    /// Names have their usual room; they come closer together where that makes one row of the header.
    void settle_air(float margin) {
        air_ = 0;
        drawing_ = false;
        float names = 0;
        Flow flow(0, 0, 1e6f, row_, wide_gap);
        brand(flow);
        record(flow);
        rescue(flow);
        const auto add = [&](std::string_view words) {
            flow.next(width_of(words));
            ++names;
        };
        for (const Press& press : left_pages) add(press.words);
        for (const Press& press : right_pages) add(press.words);
        add("header.undo");
        add("header.redo");
        const float used = flow.next(0).x + wide_gap + language_tag_width(app_, ui_);
        const float air = std::floor((ui_.width() - 2 * margin - used) / names);
        air_ = air >= most_air ? most_air : air >= usual_air || air < least_air ? usual_air : air;
    }

    float place(float margin, float pad, bool wide, bool draw) {
        drawing_ = draw;
        Flow flow(margin, pad, ui_.width() - 2 * margin, row_, wide ? wide_gap : 2.0f);
        brand(flow);
        record(flow);
        rescue(flow);
        for (const Press& press : left_pages) page(flow, press);
        const float right = ui_.width() - margin;
        float total = width_of("header.undo") + width_of("header.redo") + wide_gap;
        for (const Press& press : right_pages) total += width_of(press.words) + wide_gap;
        total += wide_gap + language_tag_width(app_, ui_);
        const Rect next = flow.next(0);
        if (wide && next.y == pad && next.x + total <= right + wide_gap) {
            // What belongs to the whole record stands at the right edge.
            Flow edge(std::max(next.x, right - total), pad, total + 1, row_, wide_gap);
            steps(edge);
            for (const Press& press : right_pages) page(edge, press);
            language(edge);
        } else {
            // In the same order, which a longer name of the record must not change.
            steps(flow);
            for (const Press& press : right_pages) page(flow, press);
            language(flow);
        }
        return flow.bottom() + pad;
    }

    float width_of(std::string_view key) const {
        return std::ceil(ui_.text_width(app_.say(key), Type{Face::semibold, 16, Ink::text})) + air_;
    }

    void brand(Flow& flow) {
        const Type type{Face::semibold, 18, Ink::text};
        const std::string words = app_.say("brand");
        const Rect rect = flow.next(std::ceil(ui_.text_width(words, type)) + 14);
        if (drawing_) ui_.heading("header.brand", 1, {rect.x, rect.y + (row_ - 24) / 2, rect.w, 24}, words, type);
    }

    void record(Flow& flow) {
        const Type name_type{};
        const Type state_type{Face::regular, 15, Ink::soft};
        std::string name = record_title(app_.language(), app_.record().name);
        const std::string state = app_.say(app_.keeping());
        const float most = std::min(ui_.width() - 40, 330.0f);
        const float state_width = ui_.text_width(state, state_type);
        while (name.size() > 4 && ui_.text_width(name, name_type) + state_width + 44 > most) {
            // Whole characters only: a UTF-8 trail byte never stands alone.
            do name.pop_back();
            while (!name.empty() && (static_cast<unsigned char>(name.back()) & 0xc0) == 0x80);
            if (!name.empty() && static_cast<unsigned char>(name.back()) >= 0xc0) name.pop_back();
        }
        const float width = std::ceil(ui_.text_width(name, name_type) + state_width + 44);
        const Rect rect = flow.next(width);
        if (!drawing_) return;
        const Rect box{rect.x, rect.y + 1, rect.w, row_ - 2};
        ui_.frame(box, Ink::line, 1, 6);
        const float y = rect.y + row_ / 2 - 8;
        const float wide = ui_.text_width(name, name_type);
        ui_.text("header.record.name", {rect.x + 12, rect.y + row_ / 2 - 11, wide + 1, 0}, name, name_type);
        ui_.draw_text({rect.x + 22 + wide, y + 0.5f}, state, state_type);
        const std::string spoken =
            app_.say(Message{"header.records"}.text("name", app_.record().name).text("state", state));
        if (ui_.button("header.record", box, {}, Ui::ButtonLook::plain, app_.page() == PageName::records, spoken)) {
            app_.go(PageName::records);
        }
    }

    /// Where storage does not hold what is shown, a file is what is left.
    void rescue(Flow& flow) {
        if (!app_.unsaved()) return;
        const std::string words = app_.say("records.export");
        const Rect rect = flow.next(std::ceil(ui_.text_width(words, Type{})) + 18);
        if (drawing_ &&
            ui_.button("header.export", {rect.x, rect.y + 1, rect.w, row_ - 2}, words, Ui::ButtonLook::link)) {
            app_.export_record(app_.record().id);
        }
    }

    void page(Flow& flow, const Press& press) {
        const Rect rect = flow.next(width_of(press.words));
        if (!drawing_) return;
        if (ui_.button(std::string(press.key), {rect.x, rect.y + 1, rect.w, row_ - 2}, app_.say(press.words),
                       Ui::ButtonLook::page,
                       app_.page() == press.page || (is_of_class(app_.page()) && press.page == PageName::pool))) {
            if (press.page == PageName::projector) {
                app_.enter_projector();
            } else {
                app_.go(press.page);
            }
        }
    }

    /// On every page: who does not read the language of the page has to find it without knowing the way.
    void language(Flow& flow) {
        const Rect rect = flow.next(language_tag_width(app_, ui_));
        if (!drawing_) return;
        draw_language_choice(app_, ui_, "header.language", {rect.x, rect.y + 1, rect.w, row_ - 2}, false,
                             app_.say("language.name"));
    }

    void steps(Flow& flow) {
        const Rect undo = flow.next(width_of("header.undo"));
        const Rect redo = flow.next(width_of("header.redo"));
        if (!drawing_) return;
        const auto inner = [this](Rect r) { return Rect{r.x, r.y + 1, r.w, row_ - 2}; };
        const auto step = [&](const char* key, Rect rect, bool possible) {
            const auto look = possible ? Ui::ButtonLook::page : Ui::ButtonLook::off;
            const bool pressed = ui_.button(key, inner(rect), app_.say(key), look);
            if (!possible) ui_.disable_last();
            return pressed && possible;
        };
        if (step("header.undo", undo, app_.can_undo())) app_.undo();
        if (step("header.redo", redo, app_.can_redo())) app_.redo();
    }

    App& app_;
    Ui& ui_;
    float row_;
    float air_ = usual_air;
    bool drawing_ = false;
};

}  // namespace

float draw_header(App& app, Ui& ui) { return Header(app, ui).draw(); }

float draw_class_pages(App& app, Ui& ui, float top) {
    if (!is_of_class(app.page())) return 0;
    const float margin = page_margin(ui);
    const float row = ui.touch() ? 44.0f : 34.0f;
    const float width = ui.width() - 2 * margin;
    Flow flow(margin, top + 10, width, row, 6);
    ui.open("class", Role::navigation, {margin, top + 10, width, row}, app.say("page.class"));
    for (const Press& press : class_pages) {
        const std::string words = app.say(press.words);
        const float wide = std::ceil(ui.text_width(words, Type{Face::semibold, 16, Ink::text})) + 22;
        if (ui.button(press.key, flow.next(wide), words, Ui::ButtonLook::page, app.page() == press.page))
            app.go(press.page);
    }
    ui.close();
    return flow.bottom() - top;
}

}  // namespace overwater
