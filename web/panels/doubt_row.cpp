#include "web/panels/doubt_row.hpp"

#include <algorithm>

#include "web/app/app.hpp"
#include "web/app/control_key.hpp"
#include "web/panels/doubt_words.hpp"
#include "web/panels/wording.hpp"

namespace overwater {

const Instrument* assumed_for(const App& app, Field field) {
    const Readings& readings = app.assessment().readings;
    const Reading& capacity = readings[Field::tube_capacity];
    return assumed_instrument(field, capacity.there ? capacity.base : 0.0, readings.apparatus);
}

const Instrument* instrument_of(const App& app, Field field) {
    const Field at = chooses_instrument(field);
    const Instrument* chosen = instrument_by_key(at, app.entry(at).instrument);
    return chosen != nullptr ? chosen : assumed_for(app, at);
}

std::string instrument_words(const App& app, const Instrument& instrument) {
    return app.say("instrument." + std::string(instrument.key));
}

const Doubt* class_limit(const App& app) {
    for (const Doubt& doubt : app.certainty().doubts().all()) {
        if (doubt.kind == DoubtKind::class_limit) return &doubt;
    }
    return nullptr;
}

const Doubt* doubt_shown(const App& app, Field field) {
    if (field == Field::tube_capacity) return class_limit(app);
    return doubt_of_reading(app.certainty().doubts(), field);
}

bool in_unit_of_row(const App& app, Field field) {
    const Reading& reading = app.assessment().readings[field];
    return info(reading.unit).measure == info(field).measure;
}

namespace {

/// Digits as typed behind ± with the reading's unit or none; else as many as a half-width needs.
int decimals_of(const App& app, Field field, double half_width) {
    const Reading& reading = app.assessment().readings[field];
    if (!reading.doubt.half_width) return decimals_of_half_width(half_width);
    const std::string& own = app.entry(field).plus_minus;
    if (own.empty()) return std::clamp(-reading.number.plus_minus_last_place, 0, 12);
    const NumberText typed = parse_number(own, info(reading.unit).measure);
    const bool as_typed = typed.state == NumberText::State::number && typed.unit == UnitId::none;
    return as_typed ? std::clamp(-typed.last_place, 0, 12) : decimals_of_half_width(half_width);
}

std::string with_sign(const std::string& number) { return "±\u00a0" + number; }

}  // namespace

std::string number_in_row(const App& app, Field field, const Doubt& doubt) {
    const UnitId unit = app.assessment().readings[field].unit;
    const double half_width = difference_from_base(doubt.high, unit);
    return format_fixed(half_width, decimals_of(app, field, half_width), app.language().decimal_sign());
}

std::string class_words(const App& app) {
    const Instrument* tube = instrument_of(app, Field::scale_reading);
    if (tube == nullptr) return {};
    if (tube->key.ends_with("_a")) return app.say("reading_doubt.class_a");
    return tube->key.ends_with("_b") ? app.say("reading_doubt.class_b") : std::string();
}

std::string size_in_row(const App& app, Field field, const Doubt& doubt) {
    if (!in_unit_of_row(app, field)) return doubt_size(app, doubt);
    return with_sign(app.language().with_unit(number_in_row(app, field, doubt), app.assessment().readings[field].unit));
}

ReadingDoubt reading_doubt(const App& app, Field field) {
    ReadingDoubt words;
    const bool open = app.open_doubt() == field;
    const Doubt* doubt = doubt_shown(app, field);
    if (doubt == nullptr && !open) return words;
    std::string from;
    if (doubt == nullptr) {
        // What was opened stays open while its reading is typed anew.
        words.number = words.with_unit = "±";
        from = app.say("reading_doubt.none");
    } else {
        const bool of_tube = field == Field::tube_capacity;
        words.with_unit = of_tube ? doubt_size(app, *doubt) : size_in_row(app, field, *doubt);
        from = doubt_source(app, *doubt);
        words.number = of_tube ? class_words(app) : std::string();
        if (words.number.empty()) {
            const bool plain = !of_tube && in_unit_of_row(app, field);
            words.number = plain ? with_sign(number_in_row(app, field, *doubt)) : words.with_unit;
        } else {
            words.with_unit = words.number + "\u00a0" + words.with_unit;
        }
    }
    words.spoken = app.say(Message{open ? "reading_doubt.close_name" : "reading_doubt.open_name"}
                               .text("reading", field_name(app, field))
                               .text("doubt", words.with_unit)
                               .text("from", from));
    return words;
}

}  // namespace overwater
