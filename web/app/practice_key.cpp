#include "web/app/practice_key.hpp"

#include <vector>

#include "core/explain/working.hpp"
#include "core/lesson/practice.hpp"
#include "core/quantity/number_format.hpp"
#include "web/app/html_page.hpp"
#include "web/panels/practice_words.hpp"

namespace overwater {

namespace {

constexpr Output shown_outputs[] = {Output::gas_volume, Output::dry_gas_pressure, Output::amount_of_gas,
                                    Output::molar_volume_standard, Output::percent_error};

std::string title_of(const Language& language, const PracticeSettings& of_class) {
    return language.say(Message{"key.title"}.text("code", code_of(of_class)));
}

class Key {
public:
    Key(const Language& language, const PracticeSettings& of_class)
        : language_(language),
          class_(of_class),
          html_(language.tag(), title_of(language, of_class), Paper::landscape) {}

    std::string write(int students) {
        html_.element("p", practice_kind_words(language_, class_));
        if (class_.release == Release::by_word) {
            html_.element("p", language_.say(Message{"key.word"}.text("word", release_word(class_))));
        }
        html_.add("<table><thead><tr>");
        for (const char* key : {"key.number", "key.code", "key.run", "key.readings"}) html_.element("th", language_.say(key));
        for (const Output output : shown_outputs) html_.element("th", name(output));
        if (class_.mishap) html_.element("th", language_.say("key.mishap"));
        html_.add("</tr></thead><tbody>");
        PracticeSettings own = class_;
        for (own.student = 1; can_be_coded(own) && own.student <= students; ++own.student) rows(practice_run(own));
        html_.add("</tbody></table>");
        return html_.finished();
    }

private:
    void rows(const PracticeRun& practice) {
        for (std::size_t run = 0; run < practice.expected.size(); ++run) {
            html_.add("<tr>");
            html_.element("td", std::to_string(practice.settings.student));
            // Read as one word: it does not break at its hyphen.
            html_.add("<td>");
            html_.element("code", practice.record.practice_code);
            html_.add("</td>");
            html_.element("td", std::to_string(run + 1));
            html_.element("td", readings(practice, static_cast<int>(run)));
            const Working working(practice.expected[run], practice.truth.conventions);
            for (const Output output : shown_outputs) html_.element("td", number(working, output));
            if (class_.mishap) html_.element("td", mishap(practice, static_cast<int>(run)));
            html_.add("</tr>");
        }
    }

    std::string readings(const PracticeRun& practice, int run) const {
        std::string list;
        const auto add = [&](Field field, const std::string& number, UnitId unit) {
            if (!list.empty()) list += "; ";
            list += language_.say("field." + std::string(name_of(field))) + ' ' + language_.with_unit(number, unit);
        };
        // What the student is told, then what the instruments show.
        for (std::size_t i = 0; i < static_cast<std::size_t>(first_choice); ++i) {
            const auto field = static_cast<Field>(i);
            const Entry& told = entry_for(practice.record, static_cast<std::size_t>(run), field);
            if (!told.text.empty()) add(field, told.text, told.unit != UnitId::none ? told.unit : info(field).usual_unit);
        }
        for (const Dial& dial : practice.dials) {
            if (dial.run >= 0 && dial.run != run) continue;
            add(dial.field, format_fixed(dial.position, dial.decimals, language_.decimal_sign()), dial.unit);
        }
        return list;
    }

    std::string name(Output output) const {
        const std::string step = "step." + std::string(name_of(output));
        return language_.say(Language::knows(step) ? step : "output." + std::string(name_of(output)));
    }

    std::string number(const Working& working, Output output) const {
        const WorkingStep* step = working.step(output);
        if (step == nullptr) return {};
        return language_.with_unit(format_fixed(in_unit(output, step->value, step->unit), step->shown_decimals,
                                                language_.decimal_sign()),
                                   step->unit);
    }

    std::string mishap(const PracticeRun& practice, int run) const {
        const bool here = practice.mishap && (practice.mishap->run < 0 || practice.mishap->run == run);
        return here ? mishap_words(language_, *practice.mishap) : std::string();
    }

    const Language& language_;
    PracticeSettings class_;
    HtmlPage html_;
};

}  // namespace

std::string practice_key_html(const Language& language, const PracticeSettings& of_class, int students) {
    return Key(language, of_class).write(students);
}

}  // namespace overwater
