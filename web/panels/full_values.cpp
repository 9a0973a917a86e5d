#include "web/panels/full_values.hpp"

#include <algorithm>

#include "core/quantity/units.hpp"
#include "web/app/app.hpp"
#include "web/panels/table.hpp"
#include "web/panels/wording.hpp"

namespace overwater {

namespace {

struct FullValue {
    std::string name;
    std::string value;
    std::string also;
};

class FullValues {
public:
    explicit FullValues(App& app) : app_(app), all_(app.assessment()) {}

    std::vector<FullValue> rows() {
        row(Output::gas_volume, UnitId::millilitre, 2);
        row(Output::water_vapour_pressure, UnitId::pascal, 2, UnitId::torr, 3);
        row(Output::water_density, UnitId::kilogram_per_cubic_metre, 3);
        row(Output::column_pressure, UnitId::pascal, 2, UnitId::torr, 3);
        row(Output::dry_gas_pressure, UnitId::pascal, 1, UnitId::torr, 2);
        row(Output::mass, UnitId::gram, 5);
        row(Output::amount_of_metal, UnitId::millimole, 5);
        row(Output::amount_of_gas, UnitId::millimole, 5);
        row(Output::acid_needed, UnitId::millimole, 3);
        row(Output::molar_volume_bench, UnitId::litre_per_mole, 4);
        row(Output::dry_gas_at_barometer, UnitId::litre_per_mole, 4);
        row(Output::gas_constant, UnitId::joule_per_mole_kelvin, 5);
        standards();
        row(Output::percent_error, UnitId::percent, 3);
        other_results();
        other_ways();
        return std::move(rows_);
    }

private:
    std::string number(double value, int decimals, UnitId unit) const {
        const Conventions& conventions = app_.record().conventions;
        return app_.language().with_unit(format_fixed(value, decimals, conventions.decimal_sign, conventions.rounding),
                                         unit);
    }

    void row(Output output, UnitId unit, int decimals, UnitId other = UnitId::none, int other_decimals = 0) {
        if (all_.state(output).kind == OutputState::Kind::not_asked) return;
        FullValue full;
        full.name = output_name(app_, output);
        const auto value = all_.value(output);
        if (value) {
            full.value = number(in_unit(output, *value, unit), decimals, unit);
            if (other != UnitId::none) full.also = number(in_unit(output, *value, other), other_decimals, other);
        } else {
            full.value = app_.shown(output);
        }
        rows_.push_back(std::move(full));
    }

    /// The molar volume at each standard state that classes use.
    void standards() {
        for (std::size_t i = 0; i < static_cast<std::size_t>(StandardConditions::own); ++i) {
            Conventions other = app_.record().conventions;
            other.standard = static_cast<StandardConditions>(i);
            const StandardState state = standard_state(other);
            Measured<double> measured = all_.measured;
            measured.setup.standard_celsius = state.temperature.in_celsius();
            measured.setup.standard_pressure = state.pressure.si();
            Assessment moved = all_;
            moved.measured = measured;
            const Outcome<double> outcome = outcome_by(moved, Method{});
            if (!outcome.ready.has(Output::molar_volume_standard)) return;
            FullValue full;
            full.name = app_.say(Message{"full.molar_volume_at"}.text(
                "conditions", app_.say("conditions." + std::string(standard_conditions_names[i]))));
            full.value = number(from_base(outcome[Output::molar_volume_standard], UnitId::litre_per_mole), 4,
                                UnitId::litre_per_mole);
            full.also = app_.say(Message{"full.ideal"}.text(
                "value", number(from_base(outcome[Output::accepted_value], UnitId::litre_per_mole), 4,
                                UnitId::litre_per_mole)));
            rows_.push_back(std::move(full));
        }
    }

    void other_results() {
        if (!all_.measured.setup.converted) return;
        row(Output::volume_at_standard, UnitId::millilitre, 3);
        row(Output::amount_by_volume, UnitId::millimole, 5);
        row(Output::molar_mass_found, UnitId::gram_per_mole, 4);
        row(Output::purity_found, UnitId::percent, 3);
        row(Output::equivalent_mass, UnitId::gram_per_mole, 4);
        row(Output::alloy_share, UnitId::percent, 3);
        row(Output::gas_molar_mass, UnitId::gram_per_mole, 4);
    }

    /// What the same readings give when one step is done another way: slips that can be recognised by it.
    void other_ways() {
        const auto add = [this](std::string_view key, const Method& method) {
            const Outcome<double> outcome = outcome_by(all_, method);
            if (!outcome.ready.has(Output::molar_volume_standard)) return;
            const double value = from_base(outcome[Output::molar_volume_standard], UnitId::litre_per_mole);
            rows_.push_back({app_.say(key), number(value, 3, UnitId::litre_per_mole), {}});
        };
        Method method;
        if (all_.measured.setup.closed_end == ClosedEnd::largest) {
            method.volume = Method::Volume::reading_taken_as_gas;
            add("other_way.reading_taken_as_gas", method);
        }
        method = {};
        method.vapour_use = Method::VapourUse::ignored;
        add("other_way.vapour_ignored", method);
        if (all_.measured.setup.liquid_stands == LiquidStands::higher_inside ||
            all_.measured.setup.liquid_stands == LiquidStands::higher_outside) {
            method = {};
            method.column = Method::Column::ignored;
            add("other_way.column_ignored", method);
        }
        method = {};
        method.conversion = Method::Conversion::none;
        add("other_way.not_converted", method);
    }

    App& app_;
    const Assessment& all_;
    std::vector<FullValue> rows_;
};

}  // namespace

float draw_full_values(App& app, Ui& ui, Rect area) {
    float y = area.y;
    y += ui.heading("full.heading", 2, {area.x, y, area.w, 0}, app.say("full.heading"),
                    {Face::semibold, 20, Ink::text});
    y += ui.text("full.about", {area.x, y + 2, area.w, 0}, app.say("full.about"), {Face::regular, 14, Ink::soft}) + 10;
    const std::vector<FullValue> rows = FullValues(app).rows();
    Element table = table_of(app.say("full.heading"), {app.say("full.column.name"), app.say("full.column.value"),
                                                       app.say("full.column.also")});
    Element body = Element::named("tbody");
    const float top = y;
    const Type name_type{};
    const Type value_type{Face::semibold, 16, Ink::text};
    const Type also_type{Face::regular, 14, Ink::soft};
    for (const FullValue& row : rows) {
        const float value_width = ui.text_width(row.value, value_type);
        const bool waits = value_width > area.w * 0.6f;
        const float name_room = waits ? area.w : area.w - value_width - 16;
        const auto name_lines = ui.lines(row.name, name_type, name_room);
        float line = y + 5;
        for (const std::string& text : name_lines) {
            ui.draw_text({area.x, line + 3}, text, name_type);
            line += 22;
        }
        if (waits) {
            for (const std::string& text : ui.lines(row.value, also_type, area.w - 16)) {
                ui.draw_text({area.x + 16, line + 3}, text, also_type);
                line += 20;
            }
        } else {
            ui.draw_text({area.x + area.w, y + 8}, row.value, value_type, Anchor::end);
            if (!row.also.empty()) {
                line = std::max(line, y + 27);
                ui.draw_text({area.x + area.w, line + 1}, row.also, also_type, Anchor::end);
                line += 20;
            }
        }
        y = line + 5;
        ui.rule({area.x, y}, {area.x + area.w, y});
        body.add(table_row(row.name, {row.value, row.also}));
    }
    table.add(std::move(body));
    ui.table("full.table", {area.x, top, area.w, y - top}, std::move(table));
    return y - area.y;
}

}  // namespace overwater
