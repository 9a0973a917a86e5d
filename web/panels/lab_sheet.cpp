#include "web/panels/lab_sheet.hpp"

#include <algorithm>

#include "core/explain/reason.hpp"
#include "web/app/app.hpp"
#include "web/app/html_page.hpp"
#include "web/draw/mathml.hpp"
#include "web/draw/svg_painter.hpp"
#include "web/panels/doubt_row.hpp"
#include "web/panels/doubt_words.hpp"
#include "web/panels/gap_words.hpp"
#include "web/panels/bench_order.hpp"
#include "web/panels/panels.hpp"
#include "web/panels/wording.hpp"

namespace overwater {

namespace {

constexpr std::size_t most_causes = 5;
constexpr float tube_width = 300;
constexpr float tube_height = 330;

class Sheet {
public:
    Sheet(App& app, const TextMeasure& measure, bool blank)
        : app_(app),
          measure_(measure),
          blank_(blank),
          html_(app.language().tag(), blank || app.record().name.empty() ? app.say("print.title") : app.record().name) {}

    std::string write() {
        // Rows of an article are high enough to write in.
        if (blank_) html_.add("<article>");
        html_.add("<p>");
        for (const char* key : {"print.names", "print.group", "print.date"}) {
            html_.element("span", app_.say(key));
            html_.add("&emsp;");
        }
        html_.add("</p>");
        print_cautions(app_, html_);
        section("bench.readings");
        const bool drawn = !blank_ && app_.assessment().measured.setup.closed_end != ClosedEnd::unknown;
        const bool other = app_.assessment().readings.apparatus != Apparatus::tube_over_water;
        std::optional<Picture> vessel;
        if ((drawn || (other && !blank_)) && app_.practice() == nullptr) {
            vessel = bench_picture(app_, tube_width, tube_height, measure_);
        }
        if (vessel) html_.add("<section>"); // table and tube side by side
        readings();
        if (vessel) {
            html_.add(to_markup(svg_of(*vessel, theme(ThemeName::light))));
            html_.add("</section>");
        }
        if (!blank_) {
            if (app_.reveals()) {
                working();
                result();
            } else {
                section("print.result");
                html_.element("p", app_.say("print.withheld"));
            }
        } else {
            section("print.working");
            lines(6);
        }
        section("print.remarks");
        if (!blank_ && !app_.record().notes.empty()) html_.element("p", app_.record().notes);
        lines(4);
        if (blank_) html_.add("</article>");
        return html_.finished();
    }

private:
    void section(const char* key) { html_.element("h2", app_.say(key)); }

    void lines(int count) {
        for (int i = 0; i < count; ++i) html_.add("<hr>");
    }

    /// What the run asks for, and of a tube what it may do without.
    FieldSet asked() const {
        const Setup& setup = app_.assessment().measured.setup;
        FieldSet fields = readings_asked_for(setup);
        if (!has_column(setup)) return fields;
        fields.add(Field::tube_capacity);
        if (setup.closed_end != ClosedEnd::zero) fields.add(Field::end_space);
        return fields;
    }

    std::string read(std::size_t run, Field field) const {
        const Entry& entry = entry_for(app_.record(), run, field);
        const std::string& text = entry.text;
        if (text.empty()) return {};
        if (is_choice(field)) return choice_words(app_, field, text);
        const Reading& reading = app_.assessments()[run].readings[field];
        // A unit typed behind the number stands in the text.
        const bool says_unit = !reading.there || reading.number.unit != UnitId::none;
        return says_unit ? text : Language::as_typed(text, app_.unit_of(entry, reading.unit));
    }

    void readings() {
        const std::size_t runs = app_.record().runs.size();
        html_.add("<table><thead><tr>");
        html_.element("th", app_.say("print.reading"));
        for (std::size_t run = 0; run < runs; ++run) {
            html_.element("th", runs > 1 ? app_.say(Message{"print.run"}.count("number", static_cast<long long>(run) + 1))
                                         : app_.say("print.value"));
        }
        html_.element("th", app_.say("print.doubt"));
        html_.add("</tr></thead><tbody>");
        const FieldSet wanted = asked();
        for (const Field field : bench_order) {
            bool any = false;
            for (std::size_t run = 0; run < runs; ++run) any = any || !entry_for(app_.record(), run, field).text.empty();
            if (!any && !wanted.has(field)) continue;
            html_.add("<tr>");
            html_.element("th", field_name(app_, field));
            for (std::size_t run = 0; run < runs; ++run) html_.element("td", blank_ ? std::string() : read(run, field));
            html_.element("td", blank_ || is_choice(field) ? std::string() : reading_doubt(app_, field).with_unit);
            html_.add("</tr>");
        }
        html_.add("</tbody></table>");
    }

    void formula(const Formula& symbol, const Formula& right_side) {
        html_.add(to_markup(mathml_of(Formula::of(
            Formula::Kind::row, {symbol, Formula::leaf(Formula::Kind::operation, "="), right_side}))));
    }

    void working() {
        section("print.working");
        if (app_.record().runs.size() > 1) {
            html_.element("p", app_.say(Message{"print.run"}.count("number", static_cast<long long>(app_.run()) + 1)));
        }
        const std::string equation = equation_words(app_, app_.assessment().readings);
        if (!equation.empty()) html_.element("p", equation);
        html_.add("<ol>");
        for (const Output output : leading_steps(app_)) {
            const WorkingStep* step = app_.working().step(output);
            if (step == nullptr) continue;
            html_.add("<li>");
            html_.element("b", pair(step_name(app_, output), app_.shown(output)));
            formula(step->symbol, step->letters);
            formula(step->symbol, step->numbers);
            for (const Formula& line : step->conversions) html_.add(to_markup(mathml_of(line)));
            const std::string_view reason = reason_of(app_.assessment(), output);
            if (!reason.empty()) html_.element("small", app_.say(reason));
            html_.add("</li>");
        }
        html_.add("</ol>");
    }

    std::string pair(const std::string& name, const std::string& value) const {
        return app_.say(Message{"print.pair"}.text("name", name).text("value", value));
    }
    std::string noted(const std::string& words, const std::string& note) const {
        return app_.say(Message{"print.noted"}.text("words", words).text("note", note));
    }

    void paragraph(const std::string& words) {
        if (!words.empty()) html_.element("p", words);
    }

    void result() {
        section("print.result");
        const Output wanted = app_.sought();
        paragraph(noted(output_name(app_, wanted), conditions_words(app_)));
        html_.element("h3", app_.shown(wanted));
        for (std::size_t run = 0; app_.record().runs.size() > 1 && run < app_.record().runs.size(); ++run) {
            paragraph(app_.say(Message{"results.run"}
                                   .count("number", static_cast<long long>(run) + 1)
                                   .text("value", app_.run_result(run))));
        }
        paragraph(app_.mean_words());
        const Certainty& certainty = app_.certainty();
        if (certainty.known()) {
            paragraph(doubt_beside_value(app_, certainty));
            paragraph(caution_words(app_, certainty));
            paragraph(verdict_words(app_, certainty));
        }
        const auto error = app_.assessment().value(Output::percent_error);
        if (error) {
            paragraph(pair(output_name(app_, Output::percent_error),
                           percent_error_words(app_, *error, app_.record().conventions, 2)));
        }
        const std::optional<Gap>& gap = app_.gap();
        if (!gap) return;
        section("page.gap");
        paragraph(gap_statement(app_, *gap));
        if (gap->nothing_to_explain) return;
        html_.add("<ul>");
        for (std::size_t i = 0; i < std::min(gap->explanations.size(), most_causes); ++i) {
            const Explanation& one = gap->explanations[i];
            html_.element("li", noted(pair(app_.say("cause." + std::string(name_of(one.cause))), needs_words(app_, one)),
                                      plausible_words(app_, one)));
        }
        html_.add("</ul>");
    }

    App& app_;
    const TextMeasure& measure_;
    bool blank_;
    HtmlPage html_;
};

}  // namespace

void print_cautions(const App& app, HtmlPage& html) {
    html.element("h2", app.say("page.cautions"));
    html.add("<ul>");
    for (const std::string_view key : caution_keys()) {
        html.add("<li>");
        html.element("b", app.say(std::string(key) + ".head"));
        html.add("<br>");
        html.element("span", app.say(std::string(key) + ".text"));
        html.add("</li>");
    }
    html.add("</ul>");
}

std::string lab_sheet_html(App& app, const TextMeasure& measure, LabSheet kind) {
    return Sheet(app, measure, kind == LabSheet::blank).write();
}

}  // namespace overwater
