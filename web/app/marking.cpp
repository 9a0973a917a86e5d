// A class's sheets taken in, marked in slices, and given out as a table.

#include <algorithm>

#include "core/lesson/practice_code.hpp"
#include "core/lesson/text_table.hpp"
#include "core/record/text_guard.hpp"
#include "web/app/app.hpp"
#include "web/app/html_page.hpp"
#include "web/app/incoming.hpp"
#include "web/app/record_title.hpp"
#include "web/browser/platform.hpp"
#include "web/panels/answer_words.hpp"
#include "web/panels/marking_words.hpp"
#include "web/panels/wording.hpp"

namespace overwater {

namespace {

constexpr std::string_view prefix = "marking.";
constexpr std::string_view rules_setting = "marking_rules";
constexpr std::array<std::string_view, marking_rule_names.size()> usual{"1", "1", "1", "0", "0", "1"};
constexpr double slice_ms = 8;

}  // namespace

void add_column(std::vector<ColumnName>& names, const App& app, const std::string& key, std::string_view name) {
    names.push_back({app.say(key), name});
    for (std::size_t language = 0; language < languages; ++language) {
        const std::string_view words = app.language().sentence_in(language, key);
        if (!words.empty()) names.push_back({std::string(words), name});
    }
}

std::vector<ColumnName> sheet_columns(const App& app) {
    std::vector<ColumnName> names;
    add_column(names, app, "marking.group", "group");
    add_column(names, app, "marking.run", "run");
    add_column(names, app, "practice.code", "practice_code");
    add_column(names, app, "sheet.mean", "mean");
    for (const std::string_view field : field_names) add_column(names, app, "field." + std::string(field), field);
    for (const std::string_view output : output_names) {
        for (const char* beginning : {"output.", "step."}) {
            const std::string key = beginning + std::string(output);
            if (Language::knows(key)) add_column(names, app, key, output);
        }
    }
    return names;
}

std::vector<ChoiceName> sheet_choices(const App& app) {
    std::vector<ChoiceName> names;
    for (std::size_t i = static_cast<std::size_t>(first_choice); i < field_count; ++i) {
        const auto field = static_cast<Field>(i);
        for (const std::string_view value : choices_of(field)) {
            names.push_back({choice_words(app, field, value), field, value});
            const std::string key = "choice." + std::string(name_of(field)) + '.' + std::string(value);
            for (std::size_t language = 0; language < languages; ++language) {
                const std::string_view words = app.language().sentence_in(language, key);
                if (!words.empty()) names.push_back({std::string(words), field, value});
            }
        }
    }
    return names;
}

bool is_json(std::string_view text) {
    text = without_byte_order_mark(text);
    const std::size_t first = text.find_first_not_of(" \t\r\n");
    return first != std::string_view::npos && text[first] == '{';
}

std::optional<double> marking_rule(std::string_view text, std::size_t rule) {
    const NumberText number = parse_number(text, Measure::number);
    const bool whole = rule + 1 == marking_rule_names.size();
    if (number.state != NumberText::State::number || number.value < 0 || number.value > 100) return std::nullopt;
    if (whole && (number.value > 5 || number.value != static_cast<int>(number.value))) return std::nullopt;
    return number.value;
}

MarkingRules marking_rules(const MarkingDesk& desk) {
    const auto rule = [&](std::size_t i) {
        return marking_rule(desk.rules[i], i).value_or(static_cast<double>(usual[i][0] - '0'));
    };
    MarkingRules rules;
    rules.points_per_step = rule(0);
    rules.points_carried = rule(1);
    rules.points_off_unit = rule(2);
    rules.points_off_figures = rule(3);
    rules.tolerance = rule(4) / 100;
    rules.spare_figures = static_cast<int>(rule(5));
    return rules;
}

void App::begin_marking() {
    std::string kept = shelf_.setting(rules_setting);
    for (std::size_t i = 0; i < usual.size(); ++i) {
        const std::size_t end = std::min(kept.find(';'), kept.size());
        marking_.rules[i] = kept.empty() ? std::string(usual[i]) : kept.substr(0, end);
        kept.erase(0, end + 1);
    }
}

bool App::marking_typed(const std::string& key, const std::string& text) {
    if (!key.starts_with(prefix)) return false;
    const std::string_view name = std::string_view(key).substr(prefix.size());
    if (name == "text") marking_.text = text;
    std::string all;
    for (std::size_t i = 0; i < usual.size(); ++i) {
        if (name == marking_rule_names[i]) {
            marking_.rules[i] = text;
            marking_.marked = 0;
        }
        all += marking_.rules[i] + ';';
    }
    if (name != "text") shelf_.set_setting(rules_setting, all);
    platform::wake(2);
    return true;
}

void App::add_sheet(std::size_t at, Record record, std::string group, std::vector<std::string_view> asked) {
    complete_from_code(record);
    const auto place = static_cast<std::ptrdiff_t>(at);
    MarkedRow row;
    row.group = std::move(group);
    row.asked = std::move(asked);
    row.misread = misread(record);
    marking_.rows.insert(marking_.rows.begin() + place, std::move(row));
    marking_.records.insert(marking_.records.begin() + place, std::move(record));
}

void App::add_table(const std::string& text, bool pasted) {
    ClassTable table = read_sheets(text, sheet_columns(*this), sheet_choices(*this), record_);
    for (ClassSheet& sheet : table.sheets) {
        const std::size_t at = pasted ? marking_.pasted++ : marking_.rows.size();
        add_sheet(at, std::move(sheet.record), std::to_string(sheet.group), table.asked);
    }
    for (const Message& problem : table.problems) marking_.problems.push_back(say(problem));
    marking_.from_open.clear();
    if (table.from_open.empty()) return;
    std::vector<std::string> names;
    for (const Field field : table.from_open) names.push_back(say("field." + std::string(name_of(field))));
    marking_.from_open = say(Message{"marking.from_open"}
                                 .text("name", record_title(language_, record_.name))
                                 .text("readings", language_.list(names)));
}

/// What was read from the text before makes room.
void App::read_class() {
    marking_.problems.clear();
    const auto end = static_cast<std::ptrdiff_t>(marking_.pasted);
    marking_.records.erase(marking_.records.begin(), marking_.records.begin() + end);
    marking_.rows.erase(marking_.rows.begin(), marking_.rows.begin() + end);
    marking_.pasted = 0;
    add_table(marking_.text, true);
    begin_to_mark();
}

void App::begin_to_mark() {
    marking_.marked = 0;
    marking_.open = ~std::size_t{0};
    status_ = say(Message{"marking.sheets"}.count("number", static_cast<long long>(marking_.rows.size())));
    platform::wake(2);
}

void App::marking_file(const std::string& name, const std::string& text) {
    marking_.problems.clear();
    if (is_json(text)) {
        Incomings all = records_in(text);
        if (all.problem) {
            marking_.problems.push_back(
                say(Message{"import.refused"}.text("file", name).text("reason", say(*all.problem))));
        }
        for (Incoming& incoming : all.records) {
            if (marking_.rows.size() >= most_sheets) break;
            const auto code = decode_practice(incoming.record.practice_code).settings;
            const bool numbered = code && code->student > 0;
            const std::string own = incoming.record.name.empty() ? name : incoming.record.name;
            add_sheet(marking_.rows.size(), std::move(incoming.record), numbered ? std::to_string(code->student) : own);
        }
    } else {
        add_table(text, false);
    }
    begin_to_mark();
}

void App::copy_columns() {
    std::string line = say("marking.group") + '\t' + say("marking.run") + '\t' + say("practice.code");
    for (const std::string_view field : field_names) line += '\t' + say("field." + std::string(field));
    for (std::size_t i = 0; i < output_count; ++i) {
        const auto output = static_cast<Output>(i);
        if (is_on_a_sheet(output)) line += '\t' + overwater::step_name(*this, output);
    }
    platform::clipboard_put(line + '\t' + say("sheet.mean") + '\n');
    tell(say("marking.columns_copied"));
}

void App::copy_class_columns() {
    std::string line = say("marking.group");
    for (const Field field : {Field::mass_of_metal, Field::scale_reading, Field::level_difference, Field::temperature,
                              Field::barometer}) {
        const UnitId unit = unit_of(entry(field), field);
        line += '\t' + say("field." + std::string(name_of(field))) + " (" + std::string(info(unit).symbol) + ')';
    }
    platform::clipboard_put(line + '\n');
    tell(say("marking.columns_copied"));
}

void App::clear_class() {
    auto rules = std::move(marking_.rules);
    marking_ = {};
    marking_.rules = std::move(rules);
    ++interaction_.write;
    platform::wake(2);
}

void App::open_sheet(std::size_t row) {
    marking_.open = marking_.open == row ? ~std::size_t{0} : row;
    platform::wake(2);
}

bool App::run_marking() {
    if (page_ != PageName::marking || marking_.marked >= marking_.rows.size()) return false;
    const MarkingRules rules = marking_rules(marking_);
    const double end = platform::now_ms() + slice_ms;
    do {
        mark(marking_.rows[marking_.marked], marking_.records[marking_.marked], rules);
    } while (++marking_.marked < marking_.rows.size() && platform::now_ms() < end);
    return true;
}

/// The whole class as rows of texts, the names of the columns first.
std::vector<std::vector<std::string>> App::marks_table() const {
    const DecimalSign sign = record_.conventions.decimal_sign;
    const std::vector<SheetStep> steps = all_steps(marking_.rows);
    const bool several = std::any_of(steps.begin(), steps.end(), [](const SheetStep& step) { return step.run > 0; });
    std::vector<std::vector<std::string>> table;
    table.push_back({say("marking.group"), say("marking.points"), say("marking.most")});
    for (const SheetStep& step : steps) table[0].push_back(sheet_step_name(language_, step, several));
    table[0].push_back(say("marking.remark"));
    for (const MarkedRow& row : marking_.rows) {
        auto& cells = table.emplace_back();
        cells = {row.group, points_text(row.sheet.points, sign), points_text(row.sheet.most_points, sign)};
        for (const SheetStep& step : steps) {
            const auto of_sheet = std::find_if(row.sheet.steps.begin(), row.sheet.steps.end(),
                                               [&](const MarkedStep& one) { return one.step == step; });
            cells.emplace_back(of_sheet == row.sheet.steps.end() ? std::string_view() : sign_of(of_sheet->judgement));
        }
        cells.push_back(all_remarks(language_, row));
    }
    return table;
}

void App::save_marks() {
    const char separator = record_.conventions.decimal_sign == DecimalSign::comma ? ';' : ',';
    platform::save_file("overwater-marks-" + platform::iso_time().substr(0, 10) + ".csv", "text/csv",
                        delimited(marks_table(), separator));
}

void App::print_marks() {
    HtmlPage page(language_.tag(), say("marking.heading"), Paper::landscape);
    page.add("<table>");
    bool head = true;
    for (const auto& row : marks_table()) {
        page.add(head ? "<thead><tr>" : "<tr>");
        for (const std::string& cell : row) page.element(head ? "th" : "td", cell);
        page.add(head ? "</tr></thead>" : "</tr>");
        head = false;
    }
    page.add("</table>");
    platform::print_html(page.finished());
}

}  // namespace overwater
