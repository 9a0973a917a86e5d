// The vessel of the run at hand where it is another one than the tube over water: from the readings to its drawing.

#include "web/draw/vessel.hpp"

#include <algorithm>

#include "web/app/app.hpp"
#include "web/panels/panels.hpp"
#include "web/panels/second_part.hpp"
#include "web/panels/wording.hpp"

namespace overwater {

namespace {

class VesselWords {
public:
    explicit VesselWords(const App& app) : app_(app), readings_(app.assessment().readings) {}

    VesselLabels labels() const {
        VesselLabels labels;
        labels.tube = tube_labels(app_);
        labels.decimal_sign = labels.tube.decimal_sign;
        labels.injected.number = of(Field::injected_volume).number;  // no room for what it is
        labels.tube.meniscus_word.clear();
        labels.start = of(Field::start_reading);
        labels.reading = of(Field::scale_reading);
        if (readings_.apparatus == Apparatus::displaced_water) {
            labels.display.number = of(Field::displaced_mass).number;  // what it weighs is seen
        }
        if (readings_.apparatus == Apparatus::pressure_sensor) {
            labels.display = of(Field::barometer);
            labels.display_2 = of(Field::pressure_after);
        }
        if (readings_.sample) labels.sample.word = choice_words(app_, Field::metal, key_of(*readings_.sample));
        if (app_.assessment().has(Output::gas_volume) && app_.reveals()) {
            labels.gas = {app_.shown_number(Output::gas_volume), app_.say("tube.gas")};
        }
        labels.description = description(labels);
        return labels;
    }

private:
    VesselLabel of(Field field) const {
        const Reading& reading = readings_[field];
        if (!reading.there) return {};
        const std::string number = format_fixed(reading.number.value, std::clamp(-reading.last_place, 0, 6),
                                                app_.language().decimal_sign());
        return {app_.language().with_unit(number, reading.unit), field_name(app_, field)};
    }

    /// The vessel, and what can be read on it.
    std::string description(const VesselLabels& labels) const {
        std::vector<std::string> parts;
        for (const VesselLabel* label : {&labels.injected, &labels.start, &labels.reading, &labels.display, &labels.display_2,
                                         &labels.gas}) {
            if (!label->number.empty()) {
                parts.push_back(label->word.empty() ? label->number : label->word + ' ' + label->number);
            }
        }
        const std::string vessel = choice_words(app_, Field::apparatus, name_of(readings_.apparatus));
        return parts.empty() ? vessel : app_.say(Message{"vessel.description"}.text("vessel", vessel).text(
                                            "readings", app_.language().list(parts)));
    }

    const App& app_;
    const Readings& readings_;
};

}  // namespace

Picture second_part::vessel_picture(SecondPartThere, const App& app, float width, float height, const TextMeasure& measure) {
    const Readings& readings = app.assessment().readings;
    VesselView view;
    view.kind = static_cast<VesselView::Kind>(static_cast<int>(readings.apparatus) - 1);
    view.tube = tube_view(app);
    const auto millilitres = [&](Field field) -> std::optional<double> {
        if (!readings[field].there) return std::nullopt;
        return from_base(readings[field].base, UnitId::millilitre);
    };
    view.capacity_mL = millilitres(Field::tube_capacity).value_or(0);
    view.start_mL = millilitres(Field::start_reading);
    view.reading_mL = millilitres(Field::scale_reading);
    if (readings.apparatus == Apparatus::displaced_water) {
        view.reading_mL = app.assessment().has(Output::gas_volume) && app.reveals()
                              ? std::optional(from_base(app.assessment().outcome[Output::gas_volume], UnitId::millilitre))
                              : std::nullopt;
        // Nobody says how much the bottle holds: the next usual size, so that the level shows that some has gone.
        view.capacity_mL = 250;
        while (view.reading_mL && view.capacity_mL < *view.reading_mL && view.capacity_mL < 1e5) view.capacity_mL *= 2;
    }
    return draw_vessel(view, VesselWords(app).labels(), width, height, measure);
}

}  // namespace overwater
