// The class report, for printing: what the class comes to, its pictures, every group, whoever was left out and why.

#include "web/app/app.hpp"
#include "web/app/html_page.hpp"
#include "web/browser/platform.hpp"
#include "web/draw/svg_painter.hpp"
#include "web/panels/panels.hpp"
#include "web/panels/pool_words.hpp"
#include "web/panels/wording.hpp"

namespace overwater {

namespace {

constexpr float picture_width = 640;
constexpr float picture_height = 380;

void add_row(HtmlPage& page, const char* cell, const std::vector<std::string>& cells) {
    page.add("<tr>");
    for (const std::string& words : cells) page.element(cell, words);
    page.add("</tr>");
}

/// The entry of a reading that every run of the class shares; else nothing.
const Entry* shared(const PoolDesk& desk, Field field) {
    const Entry* first = nullptr;
    for (const PoolGroup& group : desk.groups) {
        for (std::size_t run = 0; run < group.record.runs.size(); ++run) {
            const Entry& entry = entry_for(group.record, run, field);
            if (first == nullptr) first = &entry;
            if (entry.text.empty() || entry.text != first->text || entry.unit != first->unit) return nullptr;
        }
    }
    return first;
}

/// What the results refer to, and the readings that all runs share: those that differ are columns of the table.
std::string common_words(const App& app) {
    std::vector<std::string> words;
    const PoolDesk& desk = app.pool_desk();
    if (!desk.states_differ) words.push_back(conditions_words(app));
    for (std::size_t i = 0; i < static_cast<std::size_t>(first_choice); ++i) {
        const auto field = static_cast<Field>(i);
        const Entry* entry = shared(desk, field);
        if (entry == nullptr) continue;
        const UnitId unit = app.unit_of(*entry, field);
        words.push_back(app.say(Message{"print.pair"}
                                    .text("name", app.say("field." + std::string(name_of(field))))
                                    .text("value", Language::as_typed(entry->text, unit))));
    }
    return app.language().list(words);
}

}  // namespace

void App::print_class_report() {
    HtmlPage page(language_.tag(), say("pool.report"), Paper::portrait);
    page.element("p", say(Message{"print.pair"}.text("name", say("pool.report_of")).text("value", platform::iso_time().substr(0, 10))));
    page.element("p", pool_sentence(*this));
    page.element("p", common_words(*this));
    if (pool_.states_differ) page.element("p", say("pool.states_differ"));
    page.add("<ul>");
    for (const std::string& words : pattern_sentences(*this)) page.element("li", words);
    page.add("</ul>");
    if (!pool_.set.points.empty()) {
        const ClassView view = class_view(*this);
        const Theme& light = theme(ThemeName::light);
        page.add(
            to_markup(svg_of(draw_class_lines(view, picture_width, picture_height, ui_->measure()).picture, light)));
        page.add(to_markup(svg_of(draw_class_dots(view, picture_width, ui_->measure()).picture, light)));
        page.element("h2", say("pool.numbers"));
        page.add("<table><thead>");
        add_row(page, "th", {say("pool.number"), say("pool.value"), say("pool.note")});
        page.add("</thead><tbody>");
        for (const PoolNumber& row : pool_numbers(*this)) add_row(page, "td", {row.name, row.value, row.note});
        page.add("</tbody></table>");
    }
    page.element("h2", say("pool.list"));
    page.add("<table>");
    bool head = true;
    for (const std::vector<std::string>& row : pool_table(*this)) {
        if (head) page.add("<thead>");
        add_row(page, head ? "th" : "td", row);
        if (head) page.add("</thead><tbody>");
        head = false;
    }
    page.add("</tbody></table>");
    page.element("p", say("pool.caution"));
    platform::print_html(page.finished());
}

}  // namespace overwater
