#include "core/result/refusals.hpp"

#include <algorithm>
#include <cmath>
#include <string>

#include "core/matter/water.hpp"

namespace overwater {

namespace {

using Weight = Check::Weight;

/// A reading shown as it was typed: its own unit and its own decimals.
Message with_reading(std::string_view key, const Reading& reading) {
    Message message{key};
    message.quantity("reading", reading.base, reading.unit, std::clamp(-reading.last_place, 0, 6));
    return message;
}

class Refusals {
public:
    explicit Refusals(const Readings& readings) : readings_(readings) {}

    std::vector<Check> list() {
        for (std::size_t i = 0; i < static_cast<std::size_t>(first_choice); ++i) text(static_cast<Field>(i));
        for (const Field field : {Field::mass_of_metal, Field::acid_volume, Field::acid_concentration,
                                  Field::tube_capacity, Field::barometer, Field::purity, Field::molar_mass,
                                  Field::gas_per_mole, Field::tube_factor, Field::flask_volume, Field::displaced_mass,
                                  Field::pressure_after, Field::water_activity}) {
            if (there(field) && base(field) <= 0) refuse(field, "refusal.not_above_zero");
        }
        for (const Field field : {Field::end_space, Field::scale_reading, Field::injected_volume, Field::acid_per_mole}) {
            if (there(field) && base(field) < 0) refuse(field, "refusal.below_zero");
        }
        if (there(Field::level_difference) && base(Field::level_difference) < 0) {
            refuse(Field::level_difference, "refusal.negative_level");
        }
        if (there(Field::purity) && base(Field::purity) > 1) refuse(Field::purity, "refusal.above_100_percent");
        if (there(Field::water_activity) && base(Field::water_activity) > 1) {
            refuse(Field::water_activity, "refusal.activity_above_one");
        }
        if (there(Field::latitude) && !(std::fabs(base(Field::latitude)) <= 90)) {
            refuse(Field::latitude, "refusal.latitude");
        }
        temperature();
        scale();
        return std::move(checks_);
    }

private:
    bool there(Field field) const { return readings_[field].there; }
    double base(Field field) const { return readings_[field].base; }

    void refuse(Field field, std::string_view key) {
        checks_.push_back({field, Weight::refusal, with_reading(key, readings_[field])});
    }

    void text(Field field) {
        const NumberText& number = readings_[field].number;
        if (number.state != NumberText::State::not_a_number) return;
        checks_.push_back({field, Weight::doubt, Message{key_of_text(number.problem)}});
    }

    void temperature() {
        if (!there(Field::temperature)) return;
        const double t = base(Field::temperature);
        if (t < water_vapour_pressure_range.lowest || t > water_vapour_pressure_range.highest) {
            refuse(Field::temperature, "refusal.water_not_liquid");
        }
    }

    void scale() {
        if (!there(Field::scale_reading) || !there(Field::tube_capacity)) return;
        const Reading& reading = readings_[Field::scale_reading];
        const Reading& capacity = readings_[Field::tube_capacity];
        if (capacity.base <= 0 || reading.base <= capacity.base) return;
        Message message = with_reading("refusal.beyond_scale", reading);
        message.quantity("capacity", capacity.base, capacity.unit, std::clamp(-capacity.last_place, 0, 6));
        checks_.push_back({Field::scale_reading, Weight::refusal, std::move(message)});
    }

    const Readings& readings_;
    std::vector<Check> checks_;
};

}  // namespace

std::string_view key_of_text(Problem problem) {
    switch (problem) {
        case Problem::no_digits: return "text.no_digits";
        case Problem::sign_alone: return "text.sign_alone";
        case Problem::two_decimal_signs: return "text.two_decimal_signs";
        case Problem::unknown_unit: return "text.unknown_unit";
        case Problem::wrong_kind_of_unit: return "text.wrong_kind_of_unit";
        case Problem::too_large: return "text.too_large";
        case Problem::too_small: return "text.too_small";
        case Problem::too_long: return "text.too_long";
        case Problem::missing_plus_minus: return "text.missing_plus_minus";
        case Problem::stray_character:
        case Problem::none:
        case Problem::count: break;
    }
    return "text.stray_character";
}

std::vector<Check> refusals(const Readings& readings) { return Refusals(readings).list(); }

}  // namespace overwater
