#include "core/lesson/sheet_table.hpp"

#include <algorithm>
#include <optional>

#include "core/lesson/marking.hpp"
#include "core/lesson/practice.hpp"
#include "core/lesson/sheet_column.hpp"
#include "core/lesson/text_table.hpp"

namespace overwater {

namespace {

constexpr std::size_t most_columns = 200;
constexpr std::size_t most_columns_named = 12;
constexpr std::size_t most_problems = 20;

/// The beginning of a cell, whole characters only.
std::string beginning(const std::string& cell) {
    std::string out = cell.substr(0, 40);
    while (out.size() < cell.size() && !out.empty() && (static_cast<unsigned char>(cell[out.size()]) & 0xc0) == 0x80) {
        out.pop_back();
    }
    return out;
}

std::optional<int> number_in(std::string_view text, int most) {
    int value = 0;
    if (text.empty() || text.size() > 6) return std::nullopt;
    for (const char c : text) {
        if (c < '0' || c > '9') return std::nullopt;
        value = 10 * value + (c - '0');
    }
    if (value < 1 || value > most) return std::nullopt;
    return value;
}

class SheetsReader {
public:
    SheetsReader(const std::vector<ColumnName>& names, const std::vector<ChoiceName>& choices, const Record& open,
                 SheetsFor purpose)
        : names_(names), choices_(choices), open_(open), purpose_(purpose) {}

    ClassTable read(std::string_view text) {
        if (text.size() > longest_table) {
            problem("table.too_long");
            return std::move(out_);
        }
        const TextTable table = read_table(text);
        if (table.rows.size() < 2) {
            problem(table.rows.empty() ? "table.empty" : "table.header_only");
            return std::move(out_);
        }
        if (table.open_quote) problem("table.open_quote");
        header(table.rows[0]);
        for (const SheetColumn& column : columns_) {
            if (column.kind == SheetColumn::Kind::answer) out_.asked.push_back(step_name(column.step));
            if (column.kind == SheetColumn::Kind::reading) out_.readings.push_back(column.field);
        }
        if (purpose_ == SheetsFor::marking ? out_.asked.empty() : out_.readings.empty()) {
            problem(purpose_ == SheetsFor::marking ? "table.no_answers" : "table.no_readings");
            return std::move(out_);
        }
        for (std::size_t i = 1; i < table.rows.size(); ++i) row(table.rows[i], table.lines[i]);
        if (by_open_) note_what_is_open();
        if (left_out_ > 0) tell(Message{"table.too_many"}.count("number", left_out_));
        if (untold_ > 0) out_.problems.push_back(Message{"table.more_problems"}.count("number", untold_));
        return std::move(out_);
    }

private:
    /// What was not in the table decides marks too, so it is named.
    void note_what_is_open() {
        for (std::size_t i = 0; i < field_count; ++i) {
            const auto field = static_cast<Field>(i);
            const bool column = std::any_of(columns_.begin(), columns_.end(), [field](const SheetColumn& one) {
                return one.kind == SheetColumn::Kind::reading && one.field == field;
            });
            if (!column && !entry_for(open_, 0, field).text.empty()) out_.from_open.push_back(field);
        }
    }
    /// Hostile text has a problem in each of its lines: so many are enough.
    void tell(Message problem) {
        if (out_.problems.size() < most_problems) {
            out_.problems.push_back(std::move(problem));
        } else {
            ++untold_;
        }
    }
    void problem(std::string_view key) { tell(Message{key}); }
    static Message at_line(std::string_view key, std::size_t line) {
        return Message{key}.count("line", static_cast<long long>(line));
    }

    void header(const std::vector<std::string>& cells) {
        std::string unknown;
        std::size_t count = 0;
        for (const std::string& cell : cells) {
            SheetColumn column = columns_.size() < most_columns ? column_of(cell) : SheetColumn{};
            // The same column again would overwrite the first.
            for (const SheetColumn& before : columns_) {
                const bool same =
                    before.kind == column.kind && before.field == column.field && before.step == column.step;
                if (same && column.kind != SheetColumn::Kind::unknown && column.kind != SheetColumn::Kind::passed_over)
                    column = SheetColumn{};
            }
            if (column.kind == SheetColumn::Kind::answer && purpose_ == SheetsFor::pooling)
                column.kind = SheetColumn::Kind::passed_over;
            columns_.push_back(column);
            if (column.kind != SheetColumn::Kind::unknown || cell.empty()) continue;
            if (++count > most_columns_named) continue;
            if (!unknown.empty()) (unknown += ';') += ' ';
            unknown += beginning(cell);
        }
        if (count > 0) {
            tell(Message{"table.unknown_columns"}
                     .text("columns", unknown)
                     .count("number", static_cast<long long>(count)));
        }
    }

    SheetColumn column_of(std::string_view cell) const {
        std::string_view unit;
        SheetColumn column = by_words(cell);
        const std::size_t open = cell.find_last_of("([");
        if (column.kind == SheetColumn::Kind::unknown && open != std::string_view::npos && open > 0) {
            unit = cell.substr(open + 1);
            if (!unit.empty() && (unit.back() == ')' || unit.back() == ']')) unit.remove_suffix(1);
            column = by_words(cell.substr(0, open));
        }
        if (unit.empty() || column.kind == SheetColumn::Kind::unknown) return column;
        const bool reading = column.kind == SheetColumn::Kind::reading;
        if (!reading && column.kind != SheetColumn::Kind::answer) return SheetColumn{};
        const Measure measure = reading ? info(column.field).measure : info(unit_of(column.step.output)).measure;
        const auto known = unit_by_typed_text(unit, measure);
        if (!known) return SheetColumn{};
        column.unit = *known;
        return column;
    }

    SheetColumn by_words(std::string_view words) const {
        const std::string wanted = folded_name(words);
        for (const ColumnName& name : names_) {
            if (folded_name(name.words) == wanted) return column_named(name.name);
        }
        const auto named = [&](std::string_view name) { return folded_name(name) == wanted; };
        for (const std::string_view name : {"group", "run", "practice_code", "mean", "left_out"}) {
            if (named(name)) return column_named(name);
        }
        const auto field = std::find_if(field_names.begin(), field_names.end(), named);
        if (field != field_names.end()) return column_named(*field);
        const auto output = std::find_if(output_names.begin(), output_names.end(), named);
        return output == output_names.end() ? SheetColumn{} : column_named(*output);
    }

    void row(const std::vector<std::string>& cells, std::size_t line) {
        if (cells.size() > columns_.size() &&
            std::any_of(cells.begin() + static_cast<std::ptrdiff_t>(columns_.size()), cells.end(),
                        [](const std::string& cell) { return !cell.empty(); })) {
            tell(at_line("table.too_many_cells", line));
            return;
        }
        const auto cell = [&](SheetColumn::Kind kind) -> std::string {
            for (std::size_t i = 0; i < std::min(columns_.size(), cells.size()); ++i) {
                if (columns_[i].kind == kind) return cells[i];
            }
            return {};
        };
        const std::string group_text = cell(SheetColumn::Kind::group);
        const std::string code = cell(SheetColumn::Kind::practice_code);
        const auto group = number_in(group_text, 99999);
        if (!group && !group_text.empty()) tell(at_line("table.no_group", line));
        Place* place = place_of(group.value_or(0), code, line);
        if (place == nullptr) return;
        const std::string run_text = cell(SheetColumn::Kind::run);
        const auto run =
            run_text.empty() ? std::optional<int>(place->rows + 1) : number_in(run_text, static_cast<int>(most_runs));
        if (!run || *run > static_cast<int>(most_runs)) {
            tell(at_line("table.no_run", line));
            return;
        }
        ++place->rows;
        fill(out_.sheets[place->sheet].record, static_cast<std::size_t>(*run - 1), cells, line);
    }

    struct Place {
        int group = 0;
        std::string code;
        std::size_t sheet = 0;
        int rows = 0;
    };

    /// The sheet that a row belongs to, a new one where it is the first; nothing where the code is none.
    Place* place_of(int group, const std::string& code, std::size_t line) {
        const auto decoded = code.empty() ? std::optional<PracticeSettings>() : decode_practice(code).settings;
        if (!code.empty() && !decoded) {
            tell(at_line("table.no_code", line).text("code", beginning(code)));
            return nullptr;
        }
        const std::string own = decoded ? code_of(*decoded) : std::string();
        for (Place& place : places_) {
            const bool same = group > 0 ? place.group == group && (own.empty() || place.code == own)
                                        : !own.empty() && place.code == own && place.group == 0;
            if (same) return &place;
        }
        if (out_.sheets.size() >= most_sheets) {
            ++left_out_;
            return nullptr;
        }
        ClassSheet sheet;
        sheet.group = group > 0 ? group : static_cast<int>(out_.sheets.size()) + 1;
        if (decoded) {
            sheet.record = practice_run(*decoded).truth;
            sheet.record.conventions.decimal_sign = open_.conventions.decimal_sign;
        } else {
            by_open_ = true;
            sheet.record.shared = open_.shared;
            sheet.record.conventions = open_.conventions;
            sheet.record.runs[0].entries = open_.runs[0].entries;
            if (purpose_ == SheetsFor::pooling) {
                take_out_own(sheet.record);
                first_run_ = sheet.record.runs[0].entries;
            }
        }
        out_.sheets.push_back(std::move(sheet));
        places_.push_back({group, own, out_.sheets.size() - 1, 0});
        return &places_.back();
    }

    /// What every group reads for itself is never another record's: an empty cell stays empty.
    void take_out_own(Record& record) const {
        std::vector<Field> own{Field::mass_of_metal, Field::mass_before, Field::mass_after, Field::ribbon_length,
                               Field::scale_reading};
        own.insert(own.end(), out_.readings.begin(), out_.readings.end());
        for (const Field field : own) {
            record.shared.edit(field).text.clear();
            record.runs[0].entries.edit(field).text.clear();
        }
    }

    void fill(Record& record, std::size_t run, const std::vector<std::string>& cells, std::size_t line) {
        while (record.runs.size() <= run) {
            const std::size_t next = record.runs.size();
            record.runs.emplace_back();
            if (record.practice_code.empty() && next < open_.runs.size()) {
                record.runs[next].entries = open_.runs[next].entries;
            }
            if (record.practice_code.empty() && purpose_ == SheetsFor::pooling) record.runs[next].entries = first_run_;
        }
        for (std::size_t i = 0; i < std::min(columns_.size(), cells.size()); ++i) {
            const SheetColumn& column = columns_[i];
            if (cells[i].empty()) continue;
            if (column.kind == SheetColumn::Kind::reading) reading(record, run, column, cells[i], line);
            if (column.kind == SheetColumn::Kind::left_out) record.runs[run].left_out = cells[i];
            if (column.kind == SheetColumn::Kind::answer) answer(record, run, column, cells[i], line);
        }
    }

    void reading(Record& record, std::size_t run, const SheetColumn& column, const std::string& cell, std::size_t line) {
        Entry entry = entry_for(record, run, column.field);
        if (is_choice(column.field)) {
            const std::string_view value = choice_of(column.field, cell);
            if (value.empty()) {
                tell(at_line("table.no_choice", line).text("cell", beginning(cell)));
                return;
            }
            entry.text = value;
        } else {
            // A number without a unit is in the one that the open record's reading has.
            const UnitId typed = parse_number(entry.text, info(column.field).measure).unit;
            if (typed != UnitId::none) entry.unit = typed;
            if (column.unit != UnitId::none) entry.unit = column.unit;
            entry.text = cell;
            entry.repeats.clear();
        }
        Entries& entries = record.runs[run].entries;
        entries.edit(column.field) = std::move(entry);
        // A mass is found as it was put down.
        std::string_view from;
        if (column.field == Field::mass_of_metal) from = "weighed";
        if (column.field == Field::mass_before || column.field == Field::mass_after) from = "by_difference";
        if (column.field == Field::ribbon_length) from = "ribbon";
        if (!from.empty()) entries.edit(Field::mass_from).text = from;
    }

    std::string_view choice_of(Field field, std::string_view cell) const {
        const std::string wanted = folded_name(cell);
        for (const std::string_view value : choices_of(field)) {
            if (folded_name(value) == wanted) return value;
        }
        for (const ChoiceName& choice : choices_) {
            if (choice.field == field && folded_name(choice.words) == wanted) return choice.value;
        }
        return {};
    }

    void answer(Record& record, std::size_t run, const SheetColumn& column, const std::string& cell, std::size_t line) {
        SheetStep step = column.step;
        if (!step.mean && step.output != Output::percent_error) step.run = static_cast<int>(run);
        std::vector<Answer>& answers = answers_of(record, step);
        const std::string_view name = step_name(step);
        if (const Answer* before = answer_to(answers, name)) {
            // Of the whole sheet it may stand in each of its rows.
            if (before->text != cell) tell(at_line("table.answer_twice", line).text("cell", beginning(cell)));
            return;
        }
        Answer one;
        one.step = name;
        one.text = cell;
        one.unit = column.unit;
        answers.push_back(std::move(one));
    }

    const std::vector<ColumnName>& names_;
    const std::vector<ChoiceName>& choices_;
    const Record& open_;
    SheetsFor purpose_;
    std::vector<SheetColumn> columns_;
    std::vector<Place> places_;
    Entries first_run_;  ///< of a sheet to be pooled, before its row was read
    ClassTable out_;
    bool by_open_ = false;
    long long left_out_ = 0;
    long long untold_ = 0;
};

}  // namespace

ClassTable read_sheets(std::string_view text, const std::vector<ColumnName>& columns,
                       const std::vector<ChoiceName>& choices, const Record& open, SheetsFor purpose) {
    return SheetsReader(columns, choices, open, purpose).read(text);
}

std::vector<Misread> misread(const Record& record) {
    std::vector<Misread> wrong;
    const auto settings = practice_settings_of(record);
    if (!settings) return wrong;
    for (const Dial& dial : practice_run(*settings).dials) {
        const auto run = static_cast<std::size_t>(std::max(dial.run, 0));
        if (run >= record.runs.size()) continue;
        const Entry& entry = entry_for(record, run, dial.field);
        if (!entry.text.empty() && !is_read_right(dial, entry)) wrong.push_back({dial.field, dial.run});
    }
    return wrong;
}

bool complete_from_code(Record& record) {
    const auto settings = practice_settings_of(record);
    if (!settings) return false;
    const PracticeRun practice = practice_run(*settings);
    for (const Dial& dial : practice.dials) {
        const auto run = static_cast<std::size_t>(std::max(dial.run, 0));
        if (run >= record.runs.size() || !entry_for(record, run, dial.field).text.empty()) continue;
        Entries& into = dial.run < 0 ? record.shared : record.runs[run].entries;
        into.edit(dial.field) = entry_for(practice.truth, run, dial.field);
    }
    return true;
}

}  // namespace overwater
