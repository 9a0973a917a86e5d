#include "core/lesson/plan_sheet.hpp"

#include <algorithm>
#include <cmath>

#include "core/record/record.hpp"
#include "core/result/refusals.hpp"
#include "core/result/sense_checks.hpp"

namespace overwater {

namespace {

constexpr std::array<std::string_view, plan_field_count> labels{
    "plan.field.least_share",     "plan.field.most_share",  "plan.field.share", "plan.field.temperature_within",
    "plan.field.pressure_within", "plan.field.mouth_space", "plan.field.form",  "plan.field.excess",
    "plan.field.consent",         "plan.field.groups",      "plan.field.runs",  "plan.field.spare"};

constexpr double most_excess = 1000;

class Reader {
public:
    explicit Reader(const PlanSheet& sheet) : sheet_(sheet) {}

    PlanAsked read() {
        share(PlanField::least_share, out_.least_share);
        share(PlanField::most_share, out_.most_share);
        share(PlanField::share, out_.share);
        range();
        // As half-widths of the readings: a difference of 5 °F is no 5 °F.
        out_.temperature_within =
            half_width(PlanField::temperature_within, Field::temperature, out_.temperature_within);
        out_.pressure_within = half_width(PlanField::pressure_within, Field::barometer, out_.pressure_within);
        mouth_space();
        excess();
        out_.consent = sheet_.at(PlanField::consent) == "yes";
        if (sheet_.at(PlanField::form) == metal_form_names[3]) {
            out_.powder = true;
            rule_out(PlanField::form, Message{"plan.refusal.powder"});
        }
        out_.groups = whole(PlanField::groups, most_groups);
        out_.runs = whole(PlanField::runs, static_cast<int>(most_runs)).value_or(out_.runs);
        spare();
        return std::move(out_);
    }

private:
    void rule_out(PlanField field, Message message) { say(field, Check::Weight::refusal, std::move(message)); }
    void say(PlanField field, Check::Weight weight, Message message) {
        if (weight == Check::Weight::refusal) out_.unusable.push_back(field);
        out_.checks.push_back({field, weight, std::move(message)});
    }

    /// A text that is no number has the same sentence as in a reading.
    void not_understood(PlanField field, const Reading& reading) {
        Readings lone;
        lone.typed[0] = reading;
        out_.unusable.push_back(field);
        out_.checks.push_back({field, Check::Weight::doubt, refusals(lone).front().message});
    }

    /// The text of a field as a number of its measure, in `usual` where no unit was typed; not there where blank or
    /// not understood, which is said.
    Reading number(PlanField field, Measure measure, UnitId usual) {
        Reading reading;
        reading.number = parse_number(sheet_.at(field), measure);
        reading.unit = reading.number.unit != UnitId::none ? reading.number.unit : usual;
        reading.last_place = reading.number.last_place;
        if (reading.number.state == NumberText::State::number) {
            reading.there = true;
            reading.base = to_base(reading.number.value, reading.unit);
        } else if (reading.number.state == NumberText::State::not_a_number) {
            not_understood(field, reading);
        }
        return reading;
    }

    void share(PlanField field, double& into) {
        const Reading reading = number(field, Measure::fraction, UnitId::percent);
        if (!reading.there) return;
        if (!(reading.base > 0) || reading.base > 1) {
            rule_out(field, as_typed("plan.refusal.share", reading));
            return;
        }
        if (reading.number.unit == UnitId::none && reading.number.value <= 1) {
            say(field, Check::Weight::doubt,
                as_typed("check.purity_fraction", reading)
                    .quantity("other", reading.number.value, UnitId::percent, std::max(0, decimals_of(reading) - 2)));
        }
        into = reading.base;
    }

    void range() {
        if (!(out_.least_share < out_.most_share)) {
            // The one that was typed is the one to be changed.
            rule_out(sheet_.at(PlanField::least_share).empty() ? PlanField::most_share : PlanField::least_share,
                     Message{"plan.refusal.range"});
        } else if (out_.share < out_.least_share || out_.share > out_.most_share) {
            say(PlanField::share, Check::Weight::note,
                Message{"plan.note.share_outside"}
                    .quantity("least", out_.least_share, UnitId::percent, 0)
                    .quantity("most", out_.most_share, UnitId::percent, 0));
        }
    }

    double half_width(PlanField field, Field of, double usual) {
        const std::string& text = sheet_.at(field);
        Entry entry = sheet_.bench.at(of);
        // Only the unit of the reading counts here, and a height may stand in its place.
        if (!read_entry(of, entry).there) entry.text.assign(1, '1');
        entry.plus_minus = text;
        entry.repeats.clear();
        const TypedDoubt doubt = read_entry(of, entry).doubt;
        if (doubt.problem == Problem::none) return text.empty() ? usual : doubt.half_width.value_or(usual);
        const bool unit = doubt.problem == Problem::unknown_unit || doubt.problem == Problem::wrong_kind_of_unit;
        out_.unusable.push_back(field);
        out_.checks.push_back(
            {field, Check::Weight::doubt, unit ? Message{"check.doubt.unit"} : Message{"check.doubt.number"}});
        return usual;
    }

    void mouth_space() {
        const Reading reading = number(PlanField::mouth_space, Measure::volume, UnitId::millilitre);
        if (!reading.there) return;
        if (reading.base < 0) {
            rule_out(PlanField::mouth_space, as_typed("refusal.below_zero", reading));
        } else {
            out_.mouth_space = reading.base;
        }
    }

    void excess() {
        const Reading reading = number(PlanField::excess, Measure::number, UnitId::none);
        if (!reading.there) return;
        if (!within(reading.base, 1, most_excess)) {
            rule_out(PlanField::excess, Message{"plan.refusal.excess"});
        } else {
            out_.excess = reading.base;
        }
    }

    std::optional<int> whole(PlanField field, int most) {
        const Reading reading = number(field, Measure::number, UnitId::none);
        if (!reading.there) return std::nullopt;
        if (!within(reading.base, 1, most) || reading.base != std::floor(reading.base)) {
            rule_out(field, Message{"plan.refusal.count"}.count("most", most));
            return std::nullopt;
        }
        return static_cast<int>(reading.base);
    }

    void spare() {
        const Reading reading = number(PlanField::spare, Measure::fraction, UnitId::percent);
        if (!reading.there) return;
        if (!within(reading.base, 0, 2)) {
            rule_out(PlanField::spare, Message{"plan.refusal.spare"});
        } else {
            out_.spare = reading.base;
        }
    }

    const PlanSheet& sheet_;
    PlanAsked out_;
};

}  // namespace

std::string_view label_of(PlanField field) { return labels[static_cast<std::size_t>(field)]; }

bool PlanAsked::usable(PlanField field) const {
    return std::find(unusable.begin(), unusable.end(), field) == unusable.end();
}

PlanAsked read_asked(const PlanSheet& sheet) { return Reader(sheet).read(); }

}  // namespace overwater
