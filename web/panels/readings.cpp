#include <cmath>

#include "web/app/app.hpp"
#include "web/panels/panels.hpp"
#include "web/panels/page_column.hpp"
#include "web/panels/readings_rows.hpp"
#include "web/panels/types.hpp"

namespace overwater {

namespace {

constexpr Type link{Face::regular, 14, Ink::copper};

class ReadingsColumn {
public:
    ReadingsColumn(App& app, Ui& ui, Rect area, bool hints)
        : app_(app), ui_(ui), area_(area), rows_(app, ui, area, hints) {}

    float draw() {
        ui_.open("bench.readings", Role::region, {area_.x, area_.y, area_.w, 0}, app_.say("bench.readings"));
        runs();
        metal();
        acid();
        tube();
        after();
        room();
        ui_.close();
        return rows_.y() - area_.y;
    }

private:
    /// Which run is at hand, where there are several, and whether room and tube are its own.
    void runs() {
        if (app_.record().runs.size() < 2) return;
        const float tall = ui_.touch() ? 44.0f : 30.0f;
        const float top = rows_.y() + 4;
        Flow flow(area_.x, top, area_.w, tall, 4);
        ui_.open("runs", Role::group, {area_.x, top, area_.w, tall}, app_.say("runs.name"));
        run_buttons(app_, ui_, flow, "runs.", 18);
        if (app_.practice() != nullptr) {
            // Its runs are those of its code.
            ui_.close();
            rows_.go_to(flow.bottom() + 4);
            return;
        }
        const std::string remove = app_.say("runs.remove");
        if (ui_.button("runs.remove", flow.next(std::ceil(ui_.text_width(remove, Type{})) + 10), remove)) {
            app_.remove_run();
        }
        ui_.close();
        const float y = flow.bottom() + 2;
        const std::string own = app_.say("runs.own_room");
        if (ui_.check_box("runs.own_room", {area_.x, y, area_.w, tall}, own, app_.own_room())) {
            app_.set_own_room(!app_.own_room());
        }
        rows_.go_to(y + tall + 2);
    }

    void metal() {
        const bool open = group("metal", {}, "choice.mass_from." + mass_from());
        if (open) rows_.radios(Field::mass_from);
        switch (run().readings.mass_from) {
            case MassFrom::by_difference:
                rows_.typed(Field::mass_before);
                rows_.typed(Field::mass_after);
                break;
            case MassFrom::ribbon:
                rows_.typed(Field::ribbon_length);
                rows_.typed(Field::mass_per_metre);
                break;
            case MassFrom::weighed: rows_.typed(Field::mass_of_metal); break;
        }
        const Target target = run().readings.target;
        if (target == Target::gas_molar_mass) {
            rows_.listed(Field::gas);
        } else {
            rows_.listed(Field::metal);
            if (run().readings.sample == Substance::own) own_reaction();
        }
        if (target == Target::alloy) rows_.listed(Field::second_metal);
        if (open || there(Field::purity)) rows_.typed(Field::purity);
        if (open || target != Target::molar_volume) rows_.listed(Field::target);
    }

    void own_reaction() {
        // Of an unknown metal it is sought, not asked.
        if (!is_unknown(run().measured.setup) || there(Field::molar_mass)) rows_.typed(Field::molar_mass);
        rows_.listed(Field::gas);
        rows_.typed(Field::gas_per_mole);
        rows_.typed(Field::acid_per_mole);
    }

    void acid() {
        const Setup& setup = run().measured.setup;
        if (setup.target == Target::gas_molar_mass) return;
        // How much acid an own reaction takes may not be known; what was typed stays in sight.
        const bool in_use = !app_.entry(Field::acid_volume).text.empty() || !app_.entry(Field::acid_concentration).text.empty();
        if (setup.acid_per_sample <= 0 && !(setup.own_reaction && in_use)) {
            // The liquid in a closed flask takes room, whatever it is.
            if (setup.apparatus == Apparatus::pressure_sensor) rows_.typed(Field::acid_volume);
            return;
        }
        group("acid", acid_remark(), {});
        rows_.radios(Field::acid);
        rows_.typed(Field::acid_volume);
        rows_.typed(Field::acid_concentration);
    }

    void tube() {
        const Apparatus vessel = apparatus();
        const bool usual = vessel == Apparatus::tube_over_water;
        const bool on_scale = has_scale(run().measured.setup);
        const bool open = group("tube", {}, on_scale ? "bench.more_tube" : "");
        if (open || !usual) rows_.listed(Field::apparatus);
        if (vessel == Apparatus::displaced_water) return;
        if (vessel == Apparatus::pressure_sensor) return rows_.typed(Field::flask_volume);
        if (vessel == Apparatus::gas_syringe) {
            rows_.typed(Field::tube_capacity);
            rows_.radios(Field::gas_is);
        } else {
            rows_.radios(Field::number_at_closed_end);
            rows_.typed(Field::tube_capacity);
            end_space();
            for (const Field field : {Field::length_of_scale, Field::tube_bore}) {
                if (open || there(field)) rows_.typed(field);
            }
        }
        if (open || there(Field::tube_factor)) rows_.typed(Field::tube_factor);
    }

    void end_space() {
        if (run().readings.closed_end != ClosedEnd::zero) return rows_.typed(Field::end_space);
        // A scale with 0 at the closed end has counted the end already: there is nothing to type.
        rows_.line("bench.end_space.counted", app_.say("bench.end_space_counted"));
    }

    void after() {
        const Apparatus vessel = apparatus();
        if (vessel == Apparatus::displaced_water || vessel == Apparatus::pressure_sensor) {
            group("after", {}, {}, another_run());
            if (vessel == Apparatus::displaced_water) return rows_.typed(Field::displaced_mass);
            rows_.typed(Field::barometer);
            return rows_.typed(Field::pressure_after);
        }
        const bool column = has_column(run().measured.setup);
        const bool start = there(Field::start_reading) || (column && there(Field::starting_bubble));
        // Without a column there are so few of them that all are always shown.
        const bool open = group("after", {}, column ? "bench.gas_at_start" : "", another_run()) || start || !column;
        const bool level = !column || run().readings.liquid_stands == LiquidStands::level;
        if (open) {
            rows_.typed(Field::start_reading);
            if (column) rows_.typed(Field::starting_bubble);
            if (!level) rows_.typed(Field::start_level_difference);
        }
        if (vessel != Apparatus::tube_over_water) rows_.typed(Field::injected_volume);
        rows_.typed(Field::scale_reading);
        if (column) rows_.radios(Field::liquid_stands);
        if (!level) rows_.typed(Field::level_difference);
    }

    void room() {
        const bool in_flask = apparatus() == Apparatus::pressure_sensor;
        const PressureKind kind = in_flask ? PressureKind::at_the_bench : run().readings.pressure_kind;
        const std::string& chosen = app_.entry(Field::pressure_kind).text;
        std::string more = "choice.pressure_kind." + (chosen.empty() ? std::string("at_the_bench") : chosen);
        if (in_flask) more.clear();
        const bool open = group("room", {}, more);
        const bool mercury = kind == PressureKind::mercury_column;
        rows_.typed(Field::temperature);
        if (open && !in_flask) rows_.radios(Field::pressure_kind);
        if (!in_flask) rows_.typed(Field::barometer);
        if (mercury) rows_.typed(Field::barometer_temperature);
        if (mercury || there(Field::latitude)) rows_.typed(Field::latitude);
        if (!in_flask && (open || kind != PressureKind::at_the_bench || there(Field::height_above_sea_level))) {
            rows_.typed(Field::height_above_sea_level);
        }
        if (kind == PressureKind::reduced_to_sea_level) rows_.typed(Field::outdoor_temperature);
        const Conventions& conventions = app_.record().conventions;
        if (conventions.vapour == Conventions::Vapour::own_value) rows_.typed(Field::own_vapour_pressure);
        if (open || there(Field::water_activity)) rows_.typed(Field::water_activity);
        if (run().measured.setup.accepted_typed) rows_.typed(Field::accepted_value);
    }

    const Assessment& run() const { return app_.assessment(); }
    Apparatus apparatus() const { return run().readings.apparatus; }

    bool another_run() const { return app_.practice() == nullptr && app_.record().runs.size() < most_runs; }

    float width_of_add_run() const { return std::ceil(ui_.text_width(app_.say("runs.add"), link)) + 4; }

    void add_run(Rect place) {
        const std::string words = app_.say("runs.add");
        if (ui_.button("runs.add", place, words, Ui::ButtonLook::link, false, {}, 14)) app_.add_run();
    }

    std::string mass_from() const {
        const std::string& chosen = app_.entry(Field::mass_from).text;
        return chosen.empty() ? "weighed" : chosen;
    }

    /// Whether anything was put down for a reading that is not asked of everybody, or a practice run asks for it.
    bool there(Field field) const {
        const bool has_dial = app_.practice() != nullptr && dial_for(*app_.practice(), app_.run(), field) != nullptr;
        return has_dial || !app_.entry(field).text.empty();
    }

    /// A heading; at its right a remark, or what of the group is chosen, to be pressed for more, and before it the button
    /// for another run where asked. Returns whether the further readings of the group are shown.
    bool group(const std::string& name, const std::string& remark, const std::string& more, bool with_add_run = false) {
        rows_.skip(ui_.touch() ? 12.0f : 3.0f);
        const float y = rows_.y();
        const std::string key = "bench.group." + name;
        const Type type{Face::semibold, 13, Ink::soft};
        std::string heading = "bench.group." + name;
        if (name == "tube" && apparatus() != Apparatus::tube_over_water) heading = "bench.group.vessel";
        if (name == "metal" && !weighs_metal(run().readings)) heading = "bench.group.sample";
        const std::string words = app_.say(heading);
        const float left = ui_.text_width(words, type) + 20;
        ui_.heading(key, 2, {area_.x, y + 3, left, 18}, words, type);
        if (!remark.empty()) {
            ui_.text(key + ".remark", {area_.x + left, y + 2, area_.w - left, 18}, remark, small, Anchor::end);
        }
        bool open = app_.details_open(name);
        float right = area_.x + area_.w + 16;
        const float tall = ui_.touch() ? 36.0f : 24.0f;
        const float top = y - (tall - 24) / 2 - 1;
        if (!more.empty()) {
            const std::string what = app_.say(more);
            // On a narrow page the underline alone says that it can be pressed.
            const bool says_change = more.starts_with("choice.") && area_.w > 380;
            const std::string press = says_change ? app_.say(Message{"bench.change"}.text("what", what)) : what;
            const float wide = std::ceil(ui_.text_width(press, link)) + 4;
            const Rect place{area_.x + area_.w - wide, top, wide, tall};
            const std::string spoken = app_.say(Message{open ? "bench.less" : "bench.more"}.text("what", press));
            if (ui_.button("bench.details." + name, place, press, Ui::ButtonLook::link, false, spoken, 14)) {
                app_.toggle_details(name);
                open = !open;
            }
            right = place.x;
        }
        const float wide = width_of_add_run();
        const bool beside = right - 16 - wide >= area_.x + left;
        if (with_add_run && beside) add_run({right - 16 - wide, top, wide, tall});
        rows_.skip(ui_.touch() && (with_add_run || !more.empty()) ? 31.0f : 23.0f);
        // Where it has no room beside the heading it stands below, so that it has the same place for whoever hears the page.
        if (with_add_run && !beside) {
            add_run({area_.x + area_.w - wide, rows_.y(), wide, tall});
            rows_.skip(tall + 4);
        }
        return open;
    }

    std::string acid_remark() const {
        const auto excess = app_.assessment().value(Output::acid_excess);
        if (!excess || !app_.reveals()) return {};
        return app_.say(Message{"bench.acid_excess"}.figures("times", *excess, UnitId::none, 2));
    }

    App& app_;
    Ui& ui_;
    Rect area_;
    ReadingsRows rows_;
};

}  // namespace

float draw_readings(App& app, Ui& ui, Rect area, bool with_hints) {
    return ReadingsColumn(app, ui, area, with_hints).draw();
}

}  // namespace overwater
