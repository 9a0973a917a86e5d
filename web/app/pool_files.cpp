// A class set taken in, from a pasted table or from files of any of three kinds, and given out.

#include <algorithm>

#include "core/lesson/practice_code.hpp"
#include "core/lesson/sheet_table.hpp"
#include "core/lesson/text_table.hpp"
#include "core/record/text_guard.hpp"
#include "web/app/app.hpp"
#include "web/app/incoming.hpp"
#include "web/app/record_title.hpp"
#include "web/browser/platform.hpp"
#include "web/panels/pool_words.hpp"

namespace overwater {

namespace {

/// One group's sheet twice: two records that came from the same place, or the same readings under the same number.
bool same_sheet(const PoolGroup& one, const PoolGroup& other) {
    const Record& a = one.record;
    const Record& b = other.record;
    if (!a.id.empty() && a.id == b.id && a.created == b.created) return true;
    if (one.name != other.name || a.runs.size() != b.runs.size()) return false;
    for (std::size_t run = 0; run < a.runs.size(); ++run) {
        for (std::size_t i = 0; i < field_count; ++i) {
            const auto field = static_cast<Field>(i);
            if (entry_for(a, run, field).text != entry_for(b, run, field).text) return false;
        }
    }
    return true;
}

/// What left all runs of a group out is the group's, and comes off when the group counts again.
void take_reason(PoolGroup& group) {
    group.left_out = true;
    for (const Run& run : group.record.runs) {
        group.left_out = group.left_out && !run.left_out.empty();
        group.reason = run.left_out;
    }
    for (Run& run : group.record.runs) {
        if (group.left_out) run.left_out.clear();
    }
    if (!group.left_out) group.reason.clear();
}

std::string file_name(std::string_view ending) {
    return "overwater-class-" + platform::iso_time().substr(0, 10) + std::string(ending);
}

}  // namespace

/// One group more, or, of those that come from outside, in place of the one whose sheet it is again. False where there is no
/// room.
bool App::take_group(PoolGroup group, bool from_outside) {
    take_reason(group);
    assess_group(group);
    // Of the class that was kept nothing is lost, however alike two groups are.
    const auto before = !from_outside ? pool_.groups.end()
                                      : std::find_if(pool_.groups.begin(), pool_.groups.end(),
                                                     [&](const PoolGroup& one) { return same_sheet(one, group); });
    if (before != pool_.groups.end()) {
        pool_.problems.push_back(say(Message{"pool.came_again"}.text("group", group.name)));
        *before = std::move(group);
    } else if (pool_.groups.size() < most_sheets) {
        pool_.groups.push_back(std::move(group));
    } else {
        pool_.problems.push_back(say(Message{"table.too_many"}.count("number", 1)));
        return false;
    }
    return true;
}

/// Records of a file, one a group. `file` names those that have no name of their own.
void App::take_groups(const std::string& text, const std::string& file, bool from_outside) {
    Incomings all = records_in(text);
    if (all.problem) {
        pool_.problems.push_back(say(Message{"import.refused"}.text("file", file).text("reason", say(*all.problem))));
    }
    for (Incoming& incoming : all.records) {
        PoolGroup group;
        group.record = std::move(incoming.record);
        complete_from_code(group.record);
        const auto code = decode_practice(group.record.practice_code).settings;
        const bool numbered = code && code->student > 0 && !file.empty();
        group.name = numbered ? std::to_string(code->student) : group.record.name.empty() ? file : group.record.name;
        if (!take_group(std::move(group), from_outside)) break;
    }
}

void App::take_class_table(const std::string& text, bool pasted) {
    std::vector<ColumnName> columns = sheet_columns(*this);
    for (const PoolColumn column : pool_columns) add_column(columns, *this, pool_column_key(column), "passed_over");
    add_column(columns, *this, "pool.left_out", "left_out");
    ClassTable table = read_sheets(text, columns, sheet_choices(*this), record_, SheetsFor::pooling);
    // A table of which nothing can be used takes nothing away.
    if (pasted && !table.sheets.empty()) {
        pool_.removed = std::erase_if(pool_.groups, [](const PoolGroup& group) { return group.pasted; }) > 0;
    }
    for (ClassSheet& sheet : table.sheets) {
        PoolGroup group;
        group.name = std::to_string(sheet.group);
        group.record = std::move(sheet.record);
        group.pasted = pasted;
        if (!take_group(std::move(group), true)) break;
    }
    for (const Message& problem : table.problems) pool_.problems.push_back(say(problem));
    pool_.from_open.clear();
    if (table.from_open.empty()) return;
    std::vector<std::string> names;
    for (const Field field : table.from_open) names.push_back(say("field." + std::string(name_of(field))));
    pool_.from_open = say(Message{"marking.from_open"}
                              .text("name", record_title(language_, record_.name))
                              .text("readings", language_.list(names)));
}

void App::read_pool() {
    pool_.problems.clear();
    before_pool_step({});
    pool_.open = ~std::size_t{0};
    take_class_table(pool_.text, true);
    ++interaction_.write;
    class_changed();
    status_ = say(Message{"pool.groups"}.count("number", static_cast<long long>(pool_.groups.size())));
}

void App::pool_file(const std::string& name, const std::string& text) {
    // What is said about many files stays together.
    if (platform::now_ms() - notice_ms_ > 2000) pool_.problems.clear();
    notice_ms_ = platform::now_ms();
    before_pool_step({});
    if (is_json(text)) {
        take_groups(text, name, true);
    } else {
        take_class_table(text, false);
    }
    ++interaction_.write;
    class_changed();
    status_ = say(Message{"pool.groups"}.count("number", static_cast<long long>(pool_.groups.size())));
}

void App::pool_from_records() {
    pool_.problems.clear();
    before_pool_step({});
    for (const Shelf::Card& card : shelf_.cards()) {
        if (card.invented) continue;
        if (const auto text = shelf_.file_text(card.id)) take_groups(*text, card.name, true);
    }
    ++interaction_.write;
    class_changed();
}

void App::save_pool_json() { platform::save_file(file_name(".json"), "application/json", pool_json()); }

void App::save_pool_table() {
    const char separator = record_.conventions.decimal_sign == DecimalSign::comma ? ';' : ',';
    platform::save_file(file_name(".csv"), "text/csv", delimited(pool_table(*this), separator));
}

}  // namespace overwater
