#include <algorithm>
#include <cmath>

#include "core/bench/scale.hpp"
#include "web/app/app.hpp"
#include "web/app/control_key.hpp"
#include "web/draw/tube.hpp"
#include "web/panels/panels.hpp"
#include "web/panels/second_part.hpp"
#include "web/panels/types.hpp"
#include "web/panels/wording.hpp"

namespace overwater {

namespace {

constexpr Type smallest{Face::regular, 13, Ink::soft};

std::string hint_key(const App& app, Field field) {
    return field == Field::count ? "hint.start" : key_for_run(app, "hint." + std::string(name_of(field)));
}

void draw_hint(App& app, Ui& ui, Rect area) {
    const std::string hint = hint_key(app, app.attended());
    if (Language::knows(hint)) ui.text("bench.hint", {area.x, area.y, area.w, 0}, app.say(hint), small);
}

/// What the longest hint needs, so that nothing moves when another reading is attended to.
float height_of_hints(App& app, Ui& ui, float width) {
    std::size_t most = 0;
    for (std::size_t i = 0; i <= field_count; ++i) {
        const std::string hint = hint_key(app, static_cast<Field>(i));
        if (Language::knows(hint)) most = std::max(most, ui.lines(app.say(hint), small, width).size());
    }
    return Ui::line_height(small) * static_cast<float>(most);
}

}  // namespace

TubeView tube_view(const App& app) {
    const Readings& readings = app.assessment().readings;
    TubeView view;
    view.direction_known = readings.closed_end != ClosedEnd::unknown;
    view.closed_end_has_largest = readings.closed_end == ClosedEnd::largest;
    const auto millilitres = [&](Field f) { return from_base(readings[f].base, UnitId::millilitre); };
    view.capacity_mL = readings[Field::tube_capacity].there ? millilitres(Field::tube_capacity) : 0;
    if (readings[Field::end_space].there && view.closed_end_has_largest) {
        view.end_space_known = true;
        view.end_space_mL = std::max(0.0, millilitres(Field::end_space));
    }
    if (readings[Field::scale_reading].there) view.reading_mL = millilitres(Field::scale_reading);
    const bool level = readings.liquid_stands == LiquidStands::level;
    if (level) view.level_difference_mm = 0.0;
    if (!level && readings[Field::level_difference].there && readings.liquid_stands != LiquidStands::unknown) {
        const double height = from_base(readings[Field::level_difference].base, UnitId::millimetre);
        view.level_difference_mm = readings.liquid_stands == LiquidStands::higher_inside ? height : -height;
    }
    if (const auto scale = scale_length(readings)) {
        view.length_of_scale_mm =
            from_base(scale->per_volume * readings[Field::tube_capacity].base, UnitId::millimetre);
    }
    return view;
}

TubeLabels tube_labels(const App& app) {
    const Readings& readings = app.assessment().readings;
    const DecimalSign sign = app.language().decimal_sign();
    const auto typed = [&](Field f) {
        return format_fixed(readings[f].number.value, std::clamp(-readings[f].last_place, 0, 6), sign);
    };
    TubeLabels labels;
    labels.decimal_sign = sign == DecimalSign::comma ? "," : ".";
    if (app.assessment().has(Output::gas_volume) && app.reveals()) {
        labels.gas_volume_number = app.shown_number(Output::gas_volume);
        labels.gas_volume_unit = app.say("tube.gas");
    }
    if (readings.closed_end == ClosedEnd::largest) {
        labels.end_space_word = app.say("tube.end_space");
        labels.end_space_value = readings[Field::end_space].there
                                     ? app.language().with_unit(typed(Field::end_space), readings[Field::end_space].unit)
                                     : app.say("tube.not_measured");
    }
    if (readings[Field::level_difference].there && readings.liquid_stands != LiquidStands::level) {
        labels.level_number = typed(Field::level_difference);
        labels.level_unit = info(readings[Field::level_difference].unit).symbol;
    }
    if (readings[Field::scale_reading].there) {
        labels.reading_number = typed(Field::scale_reading);
        labels.meniscus_word = app.say("tube.meniscus");
    }
    const std::string end = choice_words(app, Field::number_at_closed_end,
                                         readings.closed_end == ClosedEnd::zero ? "zero" : "largest");
    labels.description =
        app.reveals()
            ? app.say(Message{"tube.description"}
                          .text("end", end)
                          .text("reading", labels.reading_number)
                          .text("volume", app.shown(Output::gas_volume)))
            : app.say(Message{"tube.description_withheld"}.text("end", end).text("reading", labels.reading_number));
    return labels;
}

std::optional<Picture> bench_picture(App& app, float width, float height, const TextMeasure& measure) {
    if (app.assessment().readings.apparatus == Apparatus::tube_over_water) {
        return draw_tube(tube_view(app), tube_labels(app), width, height, measure);
    }
    const auto there = app.second_part();
    return there ? std::optional(second_part::vessel_picture(*there, app, width, height, measure)) : std::nullopt;
}

const char* short_cautions(const Setup& setup) {
    if (setup.apparatus == Apparatus::pressure_sensor) return "cautions.short.pressure_sensor";
    const bool inert = setup.gas == Gas::carbon_dioxide || setup.gas == Gas::nitrogen || setup.gas == Gas::helium;
    return inert ? "cautions.short.other_gas" : "cautions.short";
}

float draw_short_cautions(App& app, Ui& ui, Rect area, const char* which) {
    return ui.text("cautions.short", area, app.say(which), smallest);
}

float draw_closed_end_question(App& app, Ui& ui, Rect area) {
    float y = area.y + 4;
    y += ui.heading("closed_end.question", 2, {area.x, y, area.w, 0}, app.say("closed_end.question"),
                    {Face::semibold, 18, Ink::text});
    y += ui.text("closed_end.why", {area.x, y + 4, area.w, 0}, app.say("closed_end.why"), small) + 14;
    const float width = std::min(125.0f, (area.w - 16) / 2);
    const float height = std::round(width * 1.45f);
    const Type type{Face::semibold, 15, Ink::copper};
    std::size_t most = 1;
    for (const std::string_view value : choices_of(Field::number_at_closed_end)) {
        const std::string words = choice_words(app, Field::number_at_closed_end, value);
        most = std::max(most, ui.lines(words, type, width - 8).size());
    }
    const float below = 24 * static_cast<float>(most) + 6;
    // Without a capacity the largest number has a name too long for the drawing; the 0 says enough.
    const bool known = app.assessment().readings[Field::tube_capacity].there;
    const std::string number = known ? choice_words(app, Field::number_at_closed_end, "largest") : std::string();
    float x = area.x + (area.w - 2 * width - 16) / 2;
    const std::string key = key_of_control(Field::number_at_closed_end);
    for (const std::string_view value : choices_of(Field::number_at_closed_end)) {
        const std::string words = choice_words(app, Field::number_at_closed_end, value);
        const std::string name =
            app.say(Message{"closed_end.choose"}.text("number", words));
        const Rect rect{x, y, width, height + below};
        ui.frame(rect, Ink::line, 1, 6);
        ui.draw_picture({x, y + 6}, draw_scale_choice(value == "largest", number, {}, width, height, ui.measure()));
        const std::string button = "closed_end." + std::string(value);
        if (ui.button(button, rect, {}, Ui::ButtonLook::plain, false, name)) {
            app.handle({Event::Kind::change, key, std::string(value)});
        }
        float line = y + height + 6;
        for (const std::string& part : ui.lines(words, type, width - 8)) {
            ui.draw_text({x + width / 2, line}, part, type, Anchor::middle);
            line += 24;
        }
        x += width + 16;
    }
    y += height + below + 14;
    return y - area.y;
}

float draw_tube_column(App& app, Ui& ui, Rect area, float picture_height, bool with_hint) {
    float y = area.y;
    ui.open("bench.tube", Role::region, {area.x, area.y, area.w, 0}, app.say("bench.tube"));
    const Setup& setup = app.assessment().measured.setup;
    const bool question = has_column(setup) && setup.closed_end == ClosedEnd::unknown;
    // What stands below the tube: the hint for the reading at hand, and the cautions.
    const std::string caution = app.say(short_cautions(setup));
    const float cautions =
        Ui::line_height(smallest) * static_cast<float>(ui.lines(caution, smallest, area.w).size());
    const float hints = with_hint ? height_of_hints(app, ui, area.w) + 8 : 0;
    const float tall = picture_height > 0 ? picture_height : area.h - cautions - hints - 10;
    if (app.practice() != nullptr) {
        y += draw_dial_at_hand(app, ui, {area.x, y, area.w, tall}, tall) + 8;
    } else if (question) {
        y += draw_closed_end_question(app, ui, {area.x, y, area.w, 0}) + 8;
    } else {
        if (const auto picture = bench_picture(app, area.w, tall, ui.measure())) {
            ui.picture("tube.picture", {area.x, y}, *picture);
        } else if (app.second_part_missing()) {
            ui.text("tube.missing", {area.x, y + 8, area.w, 0}, app.say("part.no_picture"), small);
        }
        y += tall + 8;
    }
    if (with_hint) draw_hint(app, ui, {area.x, y, area.w, 0});
    y += hints;
    if (picture_height == 0) y = std::max(y, area.bottom() - cautions - 4);
    y += draw_short_cautions(app, ui, {area.x, y, area.w, 0}, short_cautions(setup));
    ui.close();
    return y - area.y;
}

}  // namespace overwater
