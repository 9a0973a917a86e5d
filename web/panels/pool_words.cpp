#include "web/panels/pool_words.hpp"

#include <algorithm>
#include <cmath>

#include "core/quantity/gum.hpp"
#include "core/quantity/units.hpp"
#include "web/app/app.hpp"
#include "web/panels/wording.hpp"

namespace overwater {

namespace {

std::string number(const App& app, double value, int decimals) {
    return format_fixed(value, decimals, app.record().conventions.decimal_sign, app.record().conventions.rounding);
}

double litres_per_mole(double si) { return from_base(si, UnitId::litre_per_mole); }

/// Decimals that show a molar volume to two digits of its half-width; two where nothing is known.
int decimals_for(double half_width) {
    return half_width > 0 ? std::clamp(decimals_of_uncertainty(litres_per_mole(half_width), 2), 0, 4) : 2;
}

/// ± in the units of the value, or nothing.
std::string plus_minus(const App& app, const std::string& value, const std::string& half) {
    return half.empty() ? value : app.say(Message{"pool.plus_minus"}.text("value", value).text("half_width", half));
}

std::string molar(const App& app, double value, double half_width) {
    const int decimals = decimals_for(half_width);
    return app.language().with_unit(
        plus_minus(app, number(app, litres_per_mole(value), decimals),
                   half_width > 0 ? number(app, litres_per_mole(half_width), decimals) : std::string()),
        UnitId::litre_per_mole);
}

std::string millilitres(const App& app, double value, double half_width) {
    const double half = from_base(half_width, UnitId::millilitre);
    const int decimals = half > 0 ? std::clamp(decimals_of_uncertainty(half, 2), 0, 3) : 2;
    return app.language().with_unit(plus_minus(app, number(app, from_base(value, UnitId::millilitre), decimals),
                                               half > 0 ? number(app, half, decimals) : std::string()),
                                    UnitId::millilitre);
}

double reach(double u, double degrees) { return u > 0 && degrees > 0 ? student_quantile(0.95, degrees) * u : 0; }

}  // namespace

std::string pool_value(const App& app, double value, double half_width) { return molar(app, value, half_width); }

const char* pool_column_key(PoolColumn column) {
    switch (column) {
    case PoolColumn::amount: return "pool.amount";
    case PoolColumn::volume: return "pool.volume";
    case PoolColumn::molar_volume: return "pool.molar_volume";
    case PoolColumn::half_width: return "pool.half_width";
    case PoolColumn::difference: break;
    }
    return "pool.difference";
}

std::string pool_column_words(const App& app, PoolColumn column) { return app.say(pool_column_key(column)); }

std::string pool_number(const App& app, const ClassPoint& point, double half_width, PoolColumn column) {
    switch (column) {
    case PoolColumn::amount: return number(app, from_base(point.amount, UnitId::millimole), 4);
    case PoolColumn::volume: return number(app, from_base(point.volume, UnitId::millilitre), 2);
    case PoolColumn::molar_volume: return number(app, litres_per_mole(point.ratio), decimals_for(half_width));
    case PoolColumn::half_width:
        return half_width > 0 ? number(app, litres_per_mole(half_width), decimals_for(half_width)) : std::string();
    case PoolColumn::difference: break;
    }
    if (!(point.accepted > 0)) return {};
    const double percent = 100 * (point.ratio / point.accepted - 1);
    return signed_number(number(app, percent, 1), percent);
}

std::vector<std::vector<std::string>> pool_table(const App& app) {
    const PoolDesk& desk = app.pool_desk();
    std::vector<std::vector<std::string>> table;
    std::vector<UnitId> units;
    table.push_back({app.say("marking.group"), app.say("marking.run")});
    for (const Field field : desk.fields) {
        const UnitId unit =
            app.unit_of(desk.groups.empty() ? Entry{} : entry_for(desk.groups[0].record, 0, field), field);
        units.push_back(unit);
        table[0].push_back(app.say(Message{"print.noted"}
                                       .text("words", app.say("field." + std::string(name_of(field))))
                                       .text("note", std::string(info(unit).symbol))));
    }
    table[0].push_back(app.say("pool.left_out"));
    for (const PoolColumn column : pool_columns) table[0].push_back(pool_column_words(app, column));
    for (const PoolGroup& group : desk.groups) {
        for (std::size_t run = 0; run < group.record.runs.size(); ++run) {
            std::vector<std::string> cells{group.name, std::to_string(run + 1)};
            for (std::size_t i = 0; i < desk.fields.size(); ++i) {
                const Entry& entry = entry_for(group.record, run, desk.fields[i]);
                const UnitId unit = app.unit_of(entry, desk.fields[i]);
                cells.push_back(unit == units[i] || entry.text.empty() ? entry.text
                                                                       : Language::as_typed(entry.text, unit));
            }
            const std::string& own = group.record.runs[run].left_out;
            const bool no_reason = group.left_out && group.reason.empty();
            cells.push_back(no_reason ? app.say("pool.no_reason") : group.left_out ? group.reason : own);
            for (const PoolColumn column : pool_columns) {
                const PoolRun& of_run = group.runs[run];
                cells.push_back(of_run.point ? pool_number(app, *of_run.point, of_run.half_width, column)
                                             : std::string());
            }
            table.push_back(std::move(cells));
        }
    }
    return table;
}

std::vector<PoolNumber> pool_numbers(const App& app) {
    const ClassSet& set = app.pool_desk().set;
    std::vector<PoolNumber> rows;
    const auto add = [&](const char* name, std::string value, const char* note = nullptr) {
        rows.push_back({app.say(name), std::move(value), note == nullptr ? std::string() : app.say(note)});
    };
    const double degrees = static_cast<double>(set.ratios.count) - 1;
    add("pool.mean", molar(app, set.ratios.mean, set.ratios.half_width), "pool.mean.note");
    add("pool.median", molar(app, set.ratios.median, 0));
    if (set.ratios.count > 1) {
        add("pool.deviation", molar(app, set.ratios.deviation, 0));
        add("pool.standard_error", molar(app, set.ratios.standard_error, 0));
    }
    add("pool.ratio_of_totals", molar(app, set.ratio_of_totals.value, reach(set.ratio_of_totals.u, degrees)),
        "pool.ratio_of_totals.note");
    add("pool.origin", molar(app, set.origin.slope, reach(set.origin.slope_u, degrees)), "pool.origin.note");
    if (set.free) {
        const Line& line = *set.free;
        add("pool.free", molar(app, line.slope, reach(line.u_slope, line.degrees)), "pool.free.note");
        add("pool.intercept", millilitres(app, line.intercept, reach(line.u_intercept, line.degrees)),
            "pool.intercept.note");
        add("pool.intercept_in_tube", millilitres(app, set.intercept_in_tube, set.intercept_half_width),
            "pool.intercept_in_tube.note");
    }
    const auto test = [&](const char* name, const OutlierTest& of) {
        if (!of.possible) return;
        rows.push_back({app.say(name),
                        app.say(Message{"pool.statistic"}
                                    .text("value", number(app, of.statistic, 3))
                                    .text("critical", number(app, of.critical, 3))),
                        app.say(Message{of.far_off() ? "pool.far_off" : "pool.not_far_off"}.text(
                            "point", point_name(app, set.points[of.index])))});
    };
    test("pool.grubbs", set.grubbs);
    test("pool.dixon", set.dixon);
    return rows;
}

std::string point_name(const App& app, const ClassPoint& point) {
    const PoolGroup& group = app.pool_desk().groups[point.group];
    if (group.record.runs.size() == 1) return app.say(Message{"pool.point"}.text("group", group.name));
    return app.say(
        Message{"pool.point_run"}.text("group", group.name).count("run", static_cast<long long>(point.run) + 1));
}

std::string pool_sentence(const App& app) {
    const ClassSet& set = app.pool_desk().set;
    const auto runs = static_cast<long long>(set.points.size());
    if (runs == 0) return app.say("pool.nothing");
    Message message{set.ratios.half_width > 0 ? "pool.result" : "pool.result_of_one"};
    message.text("value", molar(app, set.ratios.mean, set.ratios.half_width)).count("number", runs);
    std::string words = app.say(message);
    const double accepted = set.points[0].accepted;
    if (!(accepted > 0) || app.pool_desk().states_differ || !(set.ratios.half_width > 0)) return words;
    const double off = std::fabs(set.ratios.mean - accepted);
    Message compared{off <= set.ratios.half_width ? "pool.inside"
                     : set.ratios.mean > accepted ? "pool.above"
                                                  : "pool.below"};
    compared.text("accepted", app.language().with_unit(number(app, litres_per_mole(accepted),
                                                              std::max(2, decimals_for(set.ratios.half_width))),
                                                       UnitId::litre_per_mole));
    return words + ' ' + app.say(compared);
}

std::vector<std::string> pattern_sentences(const App& app) {
    const PoolDesk& desk = app.pool_desk();
    std::vector<std::string> out;
    for (const Pattern& pattern : desk.patterns) {
        std::string words = app.say(pattern.message);
        if (!pattern.points.empty()) {
            std::vector<std::string> names;
            for (const std::size_t i : pattern.points) names.push_back(point_name(app, desk.set.points[i]));
            words += ' ' + app.say(Message{"pool.concerns"}.text("groups", app.language().list(names)));
        }
        out.push_back(words + ' ' + app.say(pattern.suspects));
    }
    if (desk.set.masses_doubtful) out.push_back(app.say("pool.masses_doubtful"));
    return out;
}

ClassView class_view(const App& app) {
    const PoolDesk& desk = app.pool_desk();
    const ClassSet& set = desk.set;
    ClassView view;
    view.set = &set;
    const auto add = [&](const ClassPoint& point, bool left_out) {
        ClassDot dot;
        dot.name = desk.groups[point.group].name;
        dot.amount = from_base(point.amount, UnitId::millimole);
        dot.volume = from_base(point.volume, UnitId::millilitre);
        dot.ratio = litres_per_mole(point.ratio);
        dot.half_width = litres_per_mole(desk.groups[point.group].runs[point.run].half_width);
        dot.left_out = left_out;
        view.dots.push_back(std::move(dot));
    };
    for (const ClassPoint& point : set.points) add(point, false);
    for (const ClassPoint& point : set.left_out) add(point, true);
    if (!set.points.empty() && !desk.states_differ) view.accepted = litres_per_mole(set.points[0].accepted);
    view.number = [sign = app.language().decimal_sign()](double value, int decimals) {
        return format_fixed(value, decimals, sign);
    };
    view.amount_words = app.say("pool.amount");
    view.volume_words = app.say("pool.volume");
    view.ratio_words = app.say("pool.molar_volume");
    view.residual_words = app.say("pool.residual");
    if (view.accepted > 0)
        view.accepted_words = app.say(Message{"pool.accepted"}.text("value", number(app, view.accepted, 2)));
    view.origin_words = app.say("pool.legend_origin");
    view.free_words = app.say("pool.legend_free");
    view.description = pool_sentence(app);
    return view;
}

}  // namespace overwater
