#include "web/panels/plan_card.hpp"

#include "core/lesson/plan_expected.hpp"
#include "core/quantity/number_format.hpp"
#include "web/app/app.hpp"
#include "web/app/html_page.hpp"
#include "web/panels/doubt_row.hpp"
#include "web/panels/lab_sheet.hpp"
#include "web/panels/plan_words.hpp"

namespace overwater {

namespace {

/// In the order in which they are taken.
constexpr Field order[] = {Field::mass_of_metal,  Field::mass_before,   Field::mass_after,         Field::ribbon_length,
                           Field::mass_per_metre, Field::acid_volume,   Field::acid_concentration, Field::end_space,
                           Field::scale_reading,  Field::liquid_stands, Field::level_difference,   Field::temperature,
                           Field::barometer};

class Cards {
public:
    explicit Cards(App& app)
        : app_(app),
          sheet_(app.plan_desk().sheet),
          plan_(app.plan_desk().plan),
          show_(app.plan_desk().show_reading),
          html_(app.language().tag(), app.say("plan.card"), Paper::cards) {}

    std::string write() {
        // A demonstration has no groups.
        const PlanState& of_class = plan_.state(PlanOutput::class_metal);
        const bool alone = of_class.kind == OutputState::Kind::not_possible || !plan_.asked.groups;
        const int cards = alone ? 1 : *plan_.asked.groups;
        for (int group = 1; group <= cards; ++group) {
            html_.add("<article>");
            html_.element("h1",
                          alone ? app_.say("plan.card") : app_.say(Message{"plan.card_of"}.count("group", group)));
            card();
            html_.add("</article>");
        }
        return html_.finished();
    }

private:
    void card() {
        html_.add("<p>");
        for (const char* key : {"print.names", "print.date"}) {
            html_.element("span", app_.say(key));
            html_.add("&emsp;");
        }
        html_.add("</p>");
        print_cautions(app_, html_);
        planned();
        html_.element("h2", app_.say("bench.readings"));
        readings();
        html_.element("h2", app_.say("print.remarks"));
        html_.add("<hr>");
    }

    std::string said(std::string_view key) const {
        for (const Message& message : plan_.says) {
            if (message.key == key) return app_.say(message);
        }
        return {};
    }

    std::string choice(Field field) const {
        const std::string& value = sheet_.bench.at(field).text;
        return value.empty() ? std::string() : app_.say("choice." + std::string(name_of(field)) + '.' + value);
    }

    void planned() {
        const bool gas = plan_.has(PlanOutput::gas);
        const bool acid = plan_.has(PlanOutput::acid);
        if (!gas) return;
        html_.element("h2", app_.say("plan.card.planned"));
        html_.add("<ul>");
        std::string mass = reading_words(app_, plan_.expected_sheet, Field::mass_of_metal);
        if (mass.empty()) {
            mass = app_.language().with_unit(
                format_significant(from_base(plan_.chosen.mass, UnitId::gram), 3, app_.language().decimal_sign()),
                UnitId::gram);
        }
        const std::string ribbon = reading_words(app_, plan_.expected_sheet, Field::ribbon_length);
        item(Message{"print.pair"}
                 .text("name", choice(Field::metal))
                 .text("value", ribbon.empty()
                                    ? mass
                                    : app_.say(Message{"print.noted"}.text("words", ribbon).text("note", mass))));
        if (acid) {
            item(Message{"print.pair"}
                     .text("name", choice(Field::acid))
                     .text("value",
                           app_.say(Message{"plan.amount.acid_of"}
                                        .figures("volume", plan_.acid.volume, UnitId::millilitre, 3)
                                        .figures("strength", plan_.acid.concentration, UnitId::mole_per_litre, 2))));
        }
        for (const Field field : {Field::tube_capacity, Field::end_space}) {
            const std::string words = reading_words(app_, sheet_.bench, field);
            if (!words.empty())
                item(Message{"print.pair"}.text("name", app_.say("field." + std::string(name_of(field)))).text("value", words));
        }
        html_.add("</ul>");
        const std::string reading = said("plan.reading");
        if (show_ && !reading.empty()) html_.element("p", reading);
    }

    void item(const Message& message) { html_.element("li", app_.say(message)); }

    bool wanted(Field field) const {
        const auto text = [this](Field of) -> const std::string& { return sheet_.bench.at(of).text; };
        const std::string& from = text(Field::mass_from);
        switch (field) {
        case Field::mass_of_metal: return from != "ribbon" && from != "by_difference";
        case Field::mass_before:
        case Field::mass_after: return from == "by_difference";
        case Field::ribbon_length: return from == "ribbon";
        case Field::mass_per_metre: return from == "ribbon" && text(field).empty();
        case Field::acid_concentration: return text(field).empty() && !plan_.has(PlanOutput::acid);
        case Field::end_space: return text(Field::number_at_closed_end) != "zero" && text(field).empty();
        case Field::level_difference: return text(Field::liquid_stands) != "level";
        default: return true;
        }
    }

    void readings() {
        const int runs = plan_.asked.runs;
        html_.add("<table><thead><tr>");
        html_.element("th", app_.say("print.reading"));
        for (int run = 1; run <= runs; ++run) {
            html_.element("th",
                          runs > 1 ? app_.say(Message{"print.run"}.count("number", run)) : app_.say("print.value"));
        }
        html_.element("th", app_.say("plan.card.unit"));
        html_.element("th", app_.say("plan.card.to"));
        html_.add("</tr></thead><tbody>");
        int number = 0;
        for (const Field field : order) {
            if (!wanted(field)) continue;
            html_.add("<tr>");
            html_.element("th",
                          std::to_string(++number) + ".\u00a0" + app_.say("field." + std::string(name_of(field))));
            for (int run = 0; run < runs; ++run) html_.element("td", {});
            const Reading planned = read_entry(field, sheet_.bench.at(field));
            const UnitId unit = app_.unit_of(sheet_.bench.at(field), planned.unit, planned.number.unit != UnitId::none);
            html_.element("td", is_choice(field) ? std::string_view("–") : info(unit).symbol);
            html_.element("td", is_choice(field) ? options(field) : division(field, unit));
            html_.add("</tr>");
        }
        html_.add("</tbody></table>");
    }

    std::string options(Field field) const {
        std::string words;
        for (const std::string_view value : choices_of(field)) {
            if (!words.empty()) words += '/';
            words += app_.say("choice." + std::string(name_of(field)) + '.' + std::string(value));
        }
        return words;
    }

    /// As fine as the instrument chosen or assumed is read.
    std::string division(Field field, UnitId unit) const {
        if (instruments_for(field).empty()) return {};
        const double half = difference_from_base(half_width_of(sheet_.bench, field), unit);
        return app_.language().with_unit(
            format_fixed(half, decimals_of_half_width(half), app_.language().decimal_sign()), unit);
    }

    App& app_;
    const PlanSheet& sheet_;
    const Plan& plan_;
    bool show_;
    HtmlPage html_;
};

}  // namespace

std::string bench_cards_html(App& app) { return Cards(app).write(); }

}  // namespace overwater
