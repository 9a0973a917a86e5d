// The plan of a run: what is typed and chosen on its page, how it is kept, and what goes out from it.

#include "core/record/plan_json.hpp"
#include "web/app/app.hpp"
#include "web/app/control_key.hpp"
#include "web/app/fragment.hpp"
#include "web/app/without_numbers.hpp"
#include "web/browser/platform.hpp"
#include "web/panels/plan_card.hpp"

namespace overwater {

namespace {

constexpr std::string_view prefix = "plan.";
constexpr std::string_view link_name = "plan=";
constexpr std::string_view plan_setting = "plan";
constexpr std::string_view before_setting = "plan_before";
/// Of one plan, so that two of them leave room for other settings.
constexpr std::size_t most_kept = 12'000;

/// What each run reads anew, so that the numbers of the open record say nothing about tomorrow.
constexpr FieldSet of_a_run =
    FieldSet::of(Field::mass_of_metal, Field::mass_before, Field::mass_after, Field::ribbon_length, Field::acid_volume,
                 Field::start_reading, Field::starting_bubble, Field::start_level_difference, Field::scale_reading,
                 Field::level_difference);
/// What is a guess in the plan and a reading at the bench.
constexpr FieldSet guessed = FieldSet::of(Field::temperature, Field::barometer, Field::outdoor_temperature,
                                          Field::own_vapour_pressure, Field::liquid_stands);

}  // namespace

/// The plan kept on this computer.
void App::begin_plan() { take_plan(shelf_.setting(plan_setting)); }

std::optional<Message> App::take_plan(const std::string& json) {
    PlanLoad load = plan_from_json(json);
    if (!load.sheet) return load.problem;
    plan_.sheet = *std::move(load.sheet);
    plan_.own = true;
    plan_.known = false;
    ++interaction_.write;
    platform::wake(2);
    return std::nullopt;
}

/// Tube, room, metal, acid and instruments of the open record. What the page has no control for is left out, so that
/// nothing counts unseen.
void App::plan_like_record() {
    PlanSheet& sheet = plan_.sheet;
    sheet.conventions = record_.conventions;
    if (practice_) sheet.conventions.answers = Conventions::Answers::live;
    sheet.bench = Entries{};
    for (std::size_t i = 0; i < field_count; ++i) {
        const auto field = static_cast<Field>(i);
        const Entry& there = entry(field);
        Entry& planned = sheet.bench.edit(field);
        if (!of_a_run.has(field)) planned.text = there.text;
        planned.unit = there.unit;
        planned.instrument = there.instrument;
        sheet.bench.tidy(field);
    }
    // As in a new record.
    if (entry(Field::metal).text.empty()) sheet.bench.edit(Field::metal).text = "magnesium";
    if (entry(Field::acid).text.empty()) sheet.bench.edit(Field::acid).text = "hydrochloric";
    plan_.known = false;
}

const PlanDesk& App::plan_desk() {
    if (plan_.known) return plan_;
    if (!plan_.own) plan_like_record();
    plan_.plan = plan_run(plan_.sheet);
    plan_.known = true;
    return plan_;
}

void App::keep_plan() {
    plan_.own = true;
    plan_.known = false;
    platform::wake(2);
    const std::string text = plan_to_json(plan_.sheet);
    if (text.size() > most_kept) return;
    if (plan_.linked) {
        set_plan_before();
        platform::forget_fragment();
        plan_.linked = false;
    }
    shelf_.set_setting(plan_setting, text);
}

void App::set_plan_before() {
    if (const std::string kept = shelf_.setting(plan_setting); !kept.empty()) shelf_.set_setting(before_setting, kept);
}

bool App::plan_changed(const std::string& key, const std::string& text) {
    if (!key.starts_with(prefix)) return false;
    plan_desk();
    const std::string_view name = std::string_view(key).substr(prefix.size());
    const ControlField control = field_of_control(name);
    Entries& bench = plan_.sheet.bench;
    if (name == "show_reading") plan_.show_reading = text == "true";
    if (control.field != Field::count) {
        Entry& entry = bench.edit(control.field);
        if (control.is_unit) {
            entry.unit = unit_by_key(text).value_or(UnitId::none);
            // A unit typed with the number counts before the one chosen: the list has to show it again.
            ++interaction_.write;
        } else if (control.part == ControlPart::instrument) {
            entry.instrument = text;
            // One balance weighs all.
            if (control.field == Field::mass_of_metal) {
                for (const Field same : {Field::mass_before, Field::mass_after}) bench.edit(same).instrument = text;
            }
        } else {
            entry.text = text;
        }
        for (std::size_t i = 0; i < field_count; ++i) bench.tidy(static_cast<Field>(i));
    }
    for (std::size_t i = 0; i < plan_field_count; ++i) {
        if (name != plan_field_names[i]) continue;
        const bool consent = static_cast<PlanField>(i) == PlanField::consent;
        plan_.sheet.asked[i] = !consent ? text : text == "true" ? "yes" : "";
    }
    keep_plan();
    return true;
}

void App::plan_from_record() {
    set_plan_before();
    plan_like_record();
    ++interaction_.write;
    keep_plan();
}

bool App::has_plan_before() const { return !shelf_.setting(plan_.linked ? plan_setting : before_setting).empty(); }

void App::plan_before() {
    if (!plan_.linked) {
        const std::string before = shelf_.setting(before_setting);
        set_plan_before();
        shelf_.set_setting(plan_setting, before);
    }
    platform::forget_fragment();
    plan_.linked = false;
    take_plan(shelf_.setting(plan_setting));
}

void App::copy_plan_link() {
    platform::clipboard_put('#' + fragment_of(link_name, plan_to_json(plan_desk().sheet)));
    tell(say("plan.link_copied"));
}

/// The plan in a fragment is shown, not kept: what was kept stays until this one is changed. False where there is none.
bool App::follow_plan_link(const std::string& fragment) {
    const auto text = text_in_fragment(link_name, fragment);
    if (!text) return false;
    if (const auto problem = take_plan(*text)) {
        platform::forget_fragment();
        tell(say(Message{"plan.link.refused"}.text("reason", say(*problem))), true);
    } else {
        plan_.linked = true;
    }
    go(PageName::plan);
    return true;
}

void App::begin_planned_run() {
    const PlanDesk& desk = plan_desk();
    Record fresh;
    fresh.conventions = desk.sheet.conventions;
    fresh.runs.resize(static_cast<std::size_t>(desk.plan.asked.runs));
    for (std::size_t i = 0; i < field_count; ++i) {
        const auto field = static_cast<Field>(i);
        Entry entry = desk.sheet.bench.at(field);
        if ((of_a_run | guessed).has(field)) entry = without_numbers(std::move(entry));
        // The strength that was worked out stands on the bottle.
        if (field == Field::acid_concentration && desk.plan.has(PlanOutput::acid) && entry.text.empty()) {
            entry = desk.plan.expected_sheet.at(field);
        }
        if (entry.blank()) continue;
        if (info(field).shared) {
            fresh.shared.edit(field) = std::move(entry);
        } else {
            for (Run& run : fresh.runs) run.entries.edit(field) = entry;
        }
    }
    platform::forget_fragment();
    begin_record(std::move(fresh));
}

void App::print_cards() { platform::print_html(bench_cards_html(*this)); }

}  // namespace overwater
