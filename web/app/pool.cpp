// A class's runs together: readings changed, groups left out by hand with a reason, everything pooled anew.

#include "web/app/pool_desk.hpp"

#include <algorithm>
#include <cmath>

#include "core/record/json.hpp"
#include "core/result/budget.hpp"
#include "web/app/app.hpp"
#include "web/app/practice_desk.hpp"
#include "web/browser/platform.hpp"

namespace overwater {

namespace {

constexpr std::string_view prefix = "pool.";
constexpr std::string_view group_prefix = "pool.group.";
constexpr std::string_view storage_key = "overwater.class";
constexpr std::size_t no_group = ~std::size_t{0};
constexpr std::size_t most_fields = 8;
/// So large a class is not written with each letter, but a little later.
constexpr std::size_t small_class = 60;
constexpr int written_after_ms = 1500;
/// Groups in all steps that can be taken back.
constexpr std::size_t most_groups_kept = 3000;

constexpr FieldSet ways_to_the_mass =
    FieldSet::of(Field::mass_of_metal, Field::mass_before, Field::mass_after, Field::ribbon_length);

/// The part of `key` up to the next point, taken off it.
std::string_view next_part(std::string_view& key) {
    const std::size_t end = std::min(key.find('.'), key.size());
    const std::string_view part = key.substr(0, end);
    key.remove_prefix(std::min(end + 1, key.size()));
    return part;
}

/// u(m)/m: what the doubts of the mass do to a molar volume, which goes as 1/m.
double relative_mass_u_of(const Budget& budget) {
    double squares = 0;
    for (const BudgetRow& row : budget.rows) {
        const Input input = row.doubt.input;
        if (input == Input::mass_of_metal || input == Input::mass_before || input == Input::mass_after ||
            input == Input::ribbon_length || input == Input::mass_per_metre) {
            squares += row.contribution * row.contribution;
        }
    }
    return budget.value > 0 ? std::sqrt(squares) / budget.value : 0;
}

}  // namespace

void App::assess_group(PoolGroup& group) {
    group.runs.clear();
    for (std::size_t run = 0; run < group.record.runs.size(); ++run) {
        const Assessment assessment = assess(readings_of(group.record, run), group.record.conventions);
        PoolRun& out = group.runs.emplace_back();
        out.point = point_of(assessment);
        if (out.point) {
            const Doubts doubts = doubts_of(assessment);
            const Budget budget = budget_of(doubts, Sensitivities(doubts), Output::molar_volume_standard);
            out.half_width = budget.expanded;
            out.relative_mass_u = relative_mass_u_of(budget);
            continue;
        }
        // What was typed and cannot be says more than what is missing.
        for (const Check& check : assessment.checks) {
            const bool misread =
                assessment.readings[check.field].number.state == NumberText::State::not_a_number;
            if ((check.weight != Check::Weight::refusal && !misread) || !out.why_not.empty()) continue;
            out.why_not = say(Message{"print.pair"}
                                  .text("name", say("field." + std::string(name_of(check.field))))
                                  .text("value", say(check.message)));
        }
        for (const Output output : {Output::amount_of_gas, Output::volume_at_standard}) {
            if (assessment.has(output) || !out.why_not.empty()) continue;
            const OutputState& state = assessment.state(output);
            out.why_not =
                state.kind == OutputState::Kind::not_possible ? say(state.reason) : waiting_words(state.waiting_for, 3);
        }
    }
}

void App::pool_again() {
    std::vector<ClassPoint> points;
    std::vector<ClassPoint> left_out;
    std::vector<double> mass_doubts;
    for (std::size_t g = 0; g < pool_.groups.size(); ++g) {
        const PoolGroup& group = pool_.groups[g];
        for (std::size_t r = 0; r < group.runs.size(); ++r) {
            if (!group.runs[r].point) continue;
            ClassPoint point = *group.runs[r].point;
            point.group = g;
            point.run = r;
            const bool out = group.left_out || !group.record.runs[r].left_out.empty();
            (out ? left_out : points).push_back(point);
            if (!out) mass_doubts.push_back(group.runs[r].relative_mass_u);
        }
    }
    pool_.states_differ = std::any_of(points.begin(), points.end(), [&](const ClassPoint& one) {
        return std::fabs(one.accepted - points[0].accepted) > 1e-6 * std::fabs(points[0].accepted);
    });
    pool_.set = pooled(std::move(points), std::move(left_out), mass_doubts);
    pool_.patterns = patterns_of(pool_.set);
    platform::wake(2);
}

/// Readings that are worth a field: those in which groups differ, and what every group has of its own.
void App::find_pool_fields() {
    FieldSet wanted = FieldSet::of(Field::scale_reading);
    FieldSet masses;
    for (std::size_t i = 0; i < static_cast<std::size_t>(first_choice); ++i) {
        const auto field = static_cast<Field>(i);
        const std::string* first = nullptr;
        for (const PoolGroup& group : pool_.groups) {
            for (std::size_t run = 0; run < group.record.runs.size(); ++run) {
                const std::string& text = entry_for(group.record, run, field).text;
                if (first == nullptr) first = &text;
                if (*first != text) wanted.add(field);
                if (!text.empty() && ways_to_the_mass.has(field)) masses.add(field);
            }
        }
    }
    wanted = wanted | (masses.empty() ? FieldSet::of(Field::mass_of_metal) : masses);
    pool_.fields.clear();
    for (std::size_t i = 0; i < field_count && pool_.fields.size() < most_fields; ++i) {
        if (wanted.has(static_cast<Field>(i))) pool_.fields.push_back(static_cast<Field>(i));
    }
}

void App::class_changed() {
    find_pool_fields();
    pool_again();
    keep_pool();
}

/// The class as a file of records: a group's number is the name of its record, and a reason why it is left out that of each
/// of its runs.
std::string App::pool_json() const {
    std::string all = R"({"overwater":"records","version":1,"records":[)";
    for (const PoolGroup& group : pool_.groups) {
        if (all.back() != '[') all += ",\n";
        Record record = group.record;
        record.name = group.name;
        for (Run& run : record.runs) {
            if (group.left_out) run.left_out = group.reason.empty() ? say("pool.no_reason") : group.reason;
        }
        all += record_to_json(record, JsonLayout::compact);
    }
    return all + "]}\n";
}

void App::keep_pool() {
    if (pool_.groups.size() <= small_class) return write_pool();
    pool_.not_kept = true;
    platform::start_timer("class", written_after_ms);
}

void App::write_pool() {
    if (pool_.groups.empty()) {
        platform::store_remove(storage_key);
        pool_.not_kept = false;
        return;
    }
    pool_.not_kept = !shelf_.keeping() || platform::store_put(storage_key, pool_json()) != platform::StoreResult::ok;
    platform::wake(2);
}

void App::begin_pool() {
    if (const auto kept = platform::store_get(storage_key)) {
        take_groups(*kept, {}, false);
        find_pool_fields();
        pool_again();
    }
}

/// Before the groups change. Letters typed into one field after the other are one step.
void App::before_pool_step(const std::string& field) {
    pool_.removed = false;
    if (!field.empty() && field == pool_.open_step) return;
    pool_.open_step = field;
    pool_.undone.clear();
    pool_.done.push_back(pool_.groups);
    std::size_t kept = 0;
    std::size_t steps = 0;
    for (auto step = pool_.done.rbegin(); step != pool_.done.rend(); ++step) {
        kept += step->size() + 1;
        if (kept > most_groups_kept && steps > 0) break;
        ++steps;
    }
    pool_.done.erase(pool_.done.begin(), pool_.done.end() - static_cast<std::ptrdiff_t>(steps));
}

/// The groups of the last step in `from` come back, and those of now go to `to`.
void App::pool_step(std::vector<std::vector<PoolGroup>>& from, std::vector<std::vector<PoolGroup>>& to) {
    if (from.empty()) return;
    to.push_back(std::move(pool_.groups));
    pool_.groups = std::move(from.back());
    from.pop_back();
    pool_.removed = false;
    pool_.open_step.clear();
    pool_.open = no_group;
    ++interaction_.write;
    status_ = say(Message{"pool.groups"}.count("number", static_cast<long long>(pool_.groups.size())));
    class_changed();
}

void App::undo_pool() { pool_step(pool_.done, pool_.undone); }
void App::redo_pool() { pool_step(pool_.undone, pool_.done); }

bool App::pool_typed(const std::string& key, const std::string& text) {
    if (!key.starts_with(prefix)) return false;
    platform::wake(2);
    if (key == "pool.text") pool_.text = text;
    if (!key.starts_with(group_prefix)) return true;
    std::string_view rest = std::string_view(key).substr(group_prefix.size());
    const auto place = whole_number(next_part(rest), 0, static_cast<int>(pool_.groups.size()) - 1);
    if (!place) return true;
    before_pool_step(key);
    PoolGroup& group = pool_.groups[static_cast<std::size_t>(*place)];
    if (rest == "name") group.name = text;
    if (rest == "reason") group.reason = text;
    if (rest != "name" && rest != "reason") {
        const auto run = whole_number(next_part(rest), 0, static_cast<int>(group.record.runs.size()) - 1);
        const auto field = std::find(field_names.begin(), field_names.end(), rest);
        if (!run || field == field_names.end()) return true;
        const auto at = static_cast<std::size_t>(*run);
        const auto which = static_cast<Field>(field - field_names.begin());
        Entry entry = entry_for(group.record, at, which);
        entry.text = text;
        entry.repeats.clear();
        group.record.runs[at].entries.edit(which) = std::move(entry);
        // Who looks at the record later sees that a reading was changed, and when.
        auto& history = group.record.history;
        if (!history.empty() && history.back().run == *run && history.back().field == rest) history.pop_back();
        history.push_back({platform::iso_time(), *run, std::string(rest), text, {}});
        assess_group(group);
        pool_again();
    }
    keep_pool();
    return true;
}

void App::add_group() {
    before_pool_step({});
    int number = 0;
    for (const PoolGroup& group : pool_.groups)
        number = std::max(number, whole_number(group.name, 1, 99999).value_or(0));
    PoolGroup group;
    group.name = std::to_string(number + 1);
    group.record.shared = record_.shared;
    group.record.conventions = record_.conventions;
    // Room, tube and acid are those of the open record; what each group reads for itself is its own.
    group.record.runs[0].entries = record_.runs[0].entries;
    for (std::size_t i = 0; i < static_cast<std::size_t>(first_choice); ++i) {
        const auto field = static_cast<Field>(i);
        if (!ways_to_the_mass.has(field) && field != Field::scale_reading) continue;
        group.record.shared.edit(field).text.clear();
        group.record.runs[0].entries.edit(field).text.clear();
    }
    assess_group(group);
    pool_.groups.push_back(std::move(group));
    class_changed();
    open_group(pool_.groups.size() - 1);
}

void App::open_group(std::size_t place) {
    pool_.open = pool_.open == place ? no_group : place;
    if (pool_.open != no_group && !pool_.fields.empty()) {
        platform::focus(
            std::string(group_prefix) + std::to_string(place) + ".0." + std::string(name_of(pool_.fields[0])), -1);
    }
    platform::wake(2);
}

void App::leave_group_out(std::size_t place) {
    before_pool_step({});
    PoolGroup& group = pool_.groups[place];
    group.left_out = !group.left_out;
    if (group.left_out) platform::focus(std::string(group_prefix) + std::to_string(place) + ".reason", -1);
    pool_again();
    keep_pool();
}

void App::add_run_to_group(std::size_t place) {
    PoolGroup& group = pool_.groups[place];
    if (group.record.runs.size() >= most_runs) return;
    before_pool_step({});
    // The next run has the same tube and room; its mass and its scale reading are its own.
    Run run;
    run.entries = group.record.runs.back().entries;
    for (const Field field : pool_.fields) run.entries.edit(field).text.clear();
    group.record.runs.push_back(std::move(run));
    assess_group(group);
    pool_again();
    keep_pool();
    platform::focus(std::string(group_prefix) + std::to_string(place) + '.' +
                        std::to_string(group.record.runs.size() - 1) + '.' + std::string(name_of(pool_.fields[0])),
                    -1);
}

void App::remove_group(std::size_t place) {
    before_pool_step({});
    pool_.groups.erase(pool_.groups.begin() + static_cast<std::ptrdiff_t>(place));
    pool_.removed = true;
    pool_.open = no_group;
    ++interaction_.write;
    class_changed();
    platform::focus("pool.undo", -1);
}

void App::clear_pool() {
    before_pool_step({});
    pool_.groups.clear();
    pool_.removed = true;
    pool_.open = no_group;
    pool_.problems.clear();
    pool_.from_open.clear();
    ++interaction_.write;
    class_changed();
    platform::focus("pool.undo", -1);
}

void App::pool_by_own_conventions() {
    before_pool_step({});
    for (PoolGroup& group : pool_.groups) {
        group.record.conventions = record_.conventions;
        assess_group(group);
    }
    class_changed();
}

void App::group_to_bench(std::size_t place) {
    Record copy = pool_.groups[place].record;
    copy.name = say(Message{"pool.record_name"}.text("group", pool_.groups[place].name));
    copy.id = Shelf::new_id();
    copy.created = platform::iso_time();
    take(std::move(copy));
    keep_now();
    go(PageName::bench);
}

void App::pool_to_marking() {
    for (const PoolGroup& group : pool_.groups) {
        if (marking_.rows.size() < most_sheets) add_sheet(marking_.rows.size(), group.record, group.name);
    }
    go(PageName::marking);
    begin_to_mark();
}

}  // namespace overwater
