// The working page: every step in letters and numbers with its reason, and every value in full.

#include <algorithm>
#include <cmath>
#include <span>

#include "core/explain/figures.hpp"
#include "core/matter/constants.hpp"
#include "core/matter/reaction.hpp"
#include "core/quantity/units.hpp"
#include "core/result/known_value.hpp"
#include "web/app/app.hpp"
#include "web/panels/full_values.hpp"
#include "web/panels/panels.hpp"
#include "web/panels/wording.hpp"
#include "web/panels/working_rows.hpp"

namespace overwater {

namespace {

constexpr Output of_the_gas[] = {
    Output::gas_at_end,            Output::gas_at_start,      Output::absolute_temperature,
    Output::water_vapour_pressure, Output::water_density,     Output::pressure_at_bench,
    Output::column_pressure,       Output::dry_gas_pressure,  Output::start_dry_pressure,
    Output::gas_volume,            Output::mass};
constexpr Output of_the_mass[] = {Output::amount_of_metal, Output::acid_needed, Output::amount_of_gas};
constexpr Output molar_volumes[] = {Output::molar_volume_bench, Output::dry_gas_at_barometer, Output::compression_factor,
                                    Output::standard_compression_factor, Output::molar_volume_standard};
constexpr Output by_the_volume[] = {Output::volume_at_standard, Output::amount_by_volume};
constexpr Output last_lines[] = {Output::molar_mass_found, Output::purity_found, Output::equivalent_mass,
                                 Output::alloy_share, Output::gas_molar_mass};

/// All steps in an order in which each comes after what it takes; so many of them lead to what is sought, the others are
/// other results from the same readings.
struct Order {
    std::vector<Output> all;
    std::size_t leading = 0;
};

Order order_for(Output sought) {
    Order order;
    const auto add = [&](std::span<const Output> some) {
        for (const Output output : some) {
            if (std::find(order.all.begin(), order.all.end(), output) == order.all.end()) order.all.push_back(output);
        }
    };
    const Output end[]{sought, Output::percent_error};
    add(of_the_gas);
    if (is_by_volume(sought)) {
        constexpr Output compressions[]{Output::compression_factor, Output::standard_compression_factor};
        add(compressions);
        add(by_the_volume);
    } else {
        add(of_the_mass);
        if (is_molar_volume(sought)) add(molar_volumes);
    }
    add(end);
    order.leading = order.all.size();
    add(of_the_mass);
    add(molar_volumes);
    constexpr Output constant[]{Output::gas_constant};
    add(constant);
    add(by_the_volume);
    add(last_lines);
    return order;
}

/// "known: 8.31446 J/(mol·K), percent error −0.13 %"
std::string compared(const App& app, std::string_view key, double found, double known, UnitId unit, int decimals) {
    const Conventions& conventions = app.record().conventions;
    const std::string number =
        format_fixed(from_base(known, unit), decimals, conventions.decimal_sign, conventions.rounding);
    return app.say(Message{key}
                       .text("value", app.language().with_unit(number, unit))
                       .text("percent", percent_error_words(app, found / known - 1, conventions, 2)));
}

/// What stands below a row: what limits the result, what another result compares with.
std::vector<std::string> remarks_on(const App& app, Output output) {
    std::vector<std::string> remarks;
    const Assessment& all = app.assessment();
    const auto value = all.value(output);
    if (!value) return remarks;
    if (output == app.sought()) {
        const std::string limit = limit_words(app, output);
        if (!limit.empty()) remarks.push_back(app.say(Message{"working.limited"}.text("limit", limit)));
    } else if (output == Output::gas_constant) {
        remarks.push_back(compared(app, "working.constant_known", *value, gas_constant.si(),
                                   UnitId::joule_per_mole_kelvin, 5));
    } else if (const auto known = output == Output::molar_mass_found ? known_value(all, output) : std::nullopt) {
        remarks.push_back(compared(app, "working.molar_mass_known", *value, *known, UnitId::gram_per_mole, 3));
    } else if (output == Output::purity_found && *value > 1) {
        remarks.push_back(app.say("working.purity_above"));
    }
    return remarks;
}

float draw_rows(App& app, Ui& ui, Rect area, std::span<const Output> outputs) {
    float y = area.y;
    int number = 0;
    for (const Output output : outputs) {
        if (app.assessment().state(output).kind == OutputState::Kind::not_asked) continue;
        if (number > 0) ui.rule({area.x, y}, {area.x + area.w, y});
        ++number;
        y += draw_working_row(app, ui, {area.x, y + 3, area.w, 0}, output, number, "working.row.", RowDetail::full,
                              remarks_on(app, output)) +
             3;
    }
    return y - area.y;
}

float draw_steps(App& app, Ui& ui, Rect area) {
    const Order order = order_for(app.sought());
    float y = area.y;
    y += ui.heading("working.heading", 2, {area.x, y, area.w, 0}, app.say("working.heading"),
                    {Face::semibold, 20, Ink::text});
    y += ui.text("working.about", {area.x, y + 2, area.w, 0}, app.say("working.about"), {Face::regular, 14, Ink::soft}) + 10;
    ui.open("working.steps", Role::list, {area.x, y, area.w, 0}, app.say("working.heading"));
    y += draw_rows(app, ui, {area.x, y, area.w, 0}, std::span(order.all).first(order.leading));
    ui.close();
    y += 30;
    y += ui.heading("working.other", 2, {area.x, y, area.w, 0}, app.say("working.other"),
                    {Face::semibold, 20, Ink::text});
    if (app.assessment().measured.setup.converted) {
        y += ui.text("working.other_about", {area.x, y + 2, area.w, 0}, app.say("working.other_about"),
                     {Face::regular, 14, Ink::soft}) +
             10;
    }
    ui.open("working.others", Role::list, {area.x, y, area.w, 0}, app.say("working.other"));
    y += draw_rows(app, ui, {area.x, y, area.w, 0}, std::span(order.all).subspan(order.leading));
    ui.close();
    return y - area.y;
}

}  // namespace

std::vector<Output> leading_steps(const App& app) {
    Order order = order_for(app.sought());
    order.all.resize(order.leading);
    return std::move(order.all);
}

void draw_working_page(App& app, Ui& ui, float top) {
    const float margin = page_margin(ui);
    const float inner = ui.width() - 2 * margin;
    if (draw_withheld_page(app, ui, top)) return;
    if (ui.width() >= 1000) {
        const float left = std::round(inner * 0.56f);
        draw_steps(app, ui, {margin, top + 18, left, 0});
        const float x = margin + left + 48;
        draw_full_values(app, ui, {x, top + 18, ui.width() - margin - x, 0});
    } else {
        const float tall = draw_steps(app, ui, {margin, top + 14, inner, 0});
        draw_full_values(app, ui, {margin, top + 14 + tall + 28, inner, 0});
    }
    ui.reach(ui.lowest() + 28);
}

}  // namespace overwater
