#include "web/panels/plan_fields.hpp"

#include <algorithm>
#include <cmath>

#include "web/app/app.hpp"
#include "web/panels/panels.hpp"
#include "web/panels/plan_rows.hpp"

namespace overwater {

namespace {

class PlanFields : private PlanRows {
public:
    PlanFields(App& app, Ui& ui, const Rect& area) : PlanRows(app, ui, area) {}

    float draw() {
        const bool two = width_ < area_.w;
        float bottom = y_;
        metal();
        if (two) {
            lesson();
            bottom = y_;
            x_ += width_ + column_gap;
            y_ = area_.y;
        }
        tube();
        room();
        x_ = area_.x;
        y_ = std::max(y_, bottom);
        instruments();
        if (!two) lesson();
        leftover();
        return y_ - area_.y;
    }

private:
    void metal() {
        group("plan.metal");
        choice(Field::metal);
        form();
        choice(Field::mass_from);
        const std::string& from = sheet_.bench.at(Field::mass_from).text;
        if (from == "ribbon") {
            typed(Field::ribbon_length);
        } else if (from == "by_difference") {
            typed(Field::mass_before);
            typed(Field::mass_after);
        } else {
            typed(Field::mass_of_metal);
        }
        asked(PlanField::share, "%", number_in(PlanAsked{}.share, UnitId::percent));
        typed(Field::mass_per_metre);
        typed(Field::purity, number_in(1, UnitId::percent));
        choice(Field::acid);
        typed(Field::acid_concentration);
        typed(Field::acid_volume);
        asked(PlanField::excess, {}, number_in(PlanAsked{}.excess, UnitId::none));
        if (plan_.acid.needs_consent || plan_.asked.consent) {
            const std::string words = app_.say(label_of(PlanField::consent));
            const float wide = std::min(width_, std::ceil(ui_.text_width(words, Type{})) + 30);
            // Answered by App::plan_changed.
            ui_.check_box(key_of(PlanField::consent), {x_, y_, wide, row_}, words, plan_.asked.consent);
            y_ += row_ + 4;
        }
    }

    void lesson() {
        group("plan.lesson");
        asked(PlanField::groups);
        asked(PlanField::runs, {}, number_in(PlanAsked{}.runs, UnitId::none));
        asked(PlanField::spare, "%", number_in(PlanAsked{}.spare, UnitId::percent));
    }

    void tube() {
        group("plan.tube");
        choice(Field::number_at_closed_end);
        typed(Field::tube_capacity);
        typed(Field::end_space);
        asked(PlanField::least_share, "%", number_in(PlanAsked{}.least_share, UnitId::percent));
        asked(PlanField::most_share, "%", number_in(PlanAsked{}.most_share, UnitId::percent));
        asked(PlanField::mouth_space, info(app_.language().named(UnitId::millilitre)).symbol, number_in(0, UnitId::none));
        choice(Field::liquid_stands);
        const std::string& stands = sheet_.bench.at(Field::liquid_stands).text;
        if (stands != "level") typed(Field::level_difference);
        if (stands == "higher_inside") typed(Field::length_of_scale);
    }

    void room() {
        group("plan.room");
        typed(Field::temperature);
        within(PlanField::temperature_within, Field::temperature, PlanAsked{}.temperature_within);
        choice(Field::pressure_kind);
        typed(Field::barometer);
        within(PlanField::pressure_within, Field::barometer, PlanAsked{}.pressure_within);
        typed(Field::height_above_sea_level);
        if (sheet_.bench.at(Field::pressure_kind).text == "reduced_to_sea_level") typed(Field::outdoor_temperature);
        const Conventions& by = sheet_.conventions;
        if (by.vapour == Conventions::Vapour::own_value) typed(Field::own_vapour_pressure);
        if (by.accepted == Conventions::Accepted::typed) typed(Field::accepted_value);
    }

    void instruments() {
        width_ = area_.w;
        group("plan.instruments");
        const bool ribbon = sheet_.bench.at(Field::mass_from).text == "ribbon";
        const Field fields[] = {ribbon ? Field::mass_per_metre : Field::mass_of_metal,
                                Field::scale_reading,
                                Field::end_space,
                                Field::temperature,
                                Field::barometer,
                                Field::level_difference};
        float wide = area_.w >= least_of_two ? (area_.w - column_gap) / 2 : area_.w;
        for (const Field field : fields) {
            if (room_for(instruments_of(field), smallest) > wide) wide = area_.w;
        }
        Flow flow(x_, y_, area_.w, row_ + 22, column_gap);
        const bool level = sheet_.bench.at(Field::liquid_stands).text != "level";
        for (const Field field : fields) {
            if (field != Field::level_difference || level) instrument(field, flow.next(wide));
        }
        y_ = flow.bottom() + 6;
    }
};

}  // namespace

float draw_plan_fields(App& app, Ui& ui, const Rect& area) { return PlanFields(app, ui, area).draw(); }

}  // namespace overwater
