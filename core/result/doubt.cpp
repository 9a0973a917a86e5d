#include "core/result/doubt.hpp"

#include <algorithm>
#include <cmath>

#include "core/bench/meniscus.hpp"
#include "core/bench/scale.hpp"
#include "core/matter/constants.hpp"
#include "core/matter/reaction.hpp"
#include "core/matter/water.hpp"
#include "core/quantity/gum.hpp"
#include "core/quantity/number_format.hpp"
#include "core/quantity/units.hpp"

namespace overwater {

namespace {

// Half-widths that no instrument gives (method.md, section 6, unless another source is named).
constexpr double level_by_eye = 2e-3;                 // m
constexpr double end_space_not_measured = 4e-6;       // m³, one-sided
constexpr double acid_label = 0.05;                   // of the concentration: common practice, no source
constexpr double mean_of_layer = 15.0;                // K
// Stated for the saturation pressure of IAPWS-IF97 (R7-97): from memory.
constexpr double vapour_formula = 0.00025;
constexpr double table_step = 0.1 * torr.factor;          // Pa: tables give tenths of a torr
// Between the equator and a pole at sea level: 9.780 to 9.832 m/s² (WGS84), about the standard 9.80665.
constexpr double gravity_half_width = 0.0264;
// Young-Laplace holds for clean glass; grease lowers the ring by up to a fifth: from memory.
constexpr double ring_half_width = 0.2;

class Collector {
public:
    explicit Collector(const Assessment& assessment) : all_(assessment), readings_(assessment.readings) {
        out_.measured = assessment.measured;
        out_.ready = assessment.outcome.ready;
    }

    Doubts collect() {
        metal();
        acid();
        vessel();
        room();
        vapour();
        typed(Input::accepted_value, setup().accepted_typed);
        return out_;
    }

private:
    Setup& setup() { return out_.measured.setup; }
    bool there(Field field) const { return all_.measured.setup.present.has(field); }
    const Reading& reading(Field field) const { return readings_[field]; }

    void row(Input input, DoubtKind kind, DoubtFrom from, Shape shape, double low, double high,
             double degrees = without_end) {
        if (!(high > low)) return;
        Doubt doubt;
        doubt.input = input;
        doubt.kind = kind;
        doubt.from = from;
        doubt.shape = shape;
        doubt.low = low;
        doubt.high = high;
        doubt.u = standard_uncertainty(shape, low, high);
        doubt.degrees = degrees;
        out_.add(doubt);
    }
    void even(Input input, DoubtKind kind, DoubtFrom from, Shape shape, double half_width) {
        row(input, kind, from, shape, -half_width, half_width);
    }

    /// The rows of one reading: what was typed for it, else the instrument chosen, else the one assumed. An instrument
    /// is widened by the digits: 21 °C says no more than whole degrees, however fine the thermometer.
    void of_reading(Input input, double assumed, Shape assumed_shape) {
        const Reading& read = reading(field_of(input));
        const TypedDoubt& typed = read.doubt;
        const double digit = widened(0.0, read) * per_base(input);
        if (typed.half_width) {
            even(input, DoubtKind::reading, DoubtFrom::typed, typed.shape.value_or(Shape::rectangular),
                 *typed.half_width * per_base(input));
        } else if (typed.instrument != nullptr) {
            const double wide = std::max(typed.instrument->reading, digit);
            even(input, DoubtKind::reading, wide > typed.instrument->reading ? DoubtFrom::digits : DoubtFrom::instrument,
                 typed.shape.value_or(typed.instrument->reading_shape), wide);
        } else {
            const double wide = std::max(assumed, digit);
            even(input, DoubtKind::reading, wide > assumed ? DoubtFrom::digits : DoubtFrom::assumed,
                 typed.shape.value_or(assumed_shape), wide);
        }
        scatter(input);
    }

    void scatter(Input input) {
        const TypedDoubt& typed = reading(field_of(input)).doubt;
        if (typed.count < 2 || !(typed.of_mean > 0)) return;
        const double of_mean = typed.of_mean * per_base(input);
        row(input, DoubtKind::scatter, DoubtFrom::repeated, Shape::student, -of_mean, of_mean, typed.count - 1);
    }

    /// The end space may be water weighed: its kilograms in the cubic metres of the model.
    double per_base(Input input) const {
        if (input != Input::end_space) return 1.0;
        const Reading& read = reading(Field::end_space);
        return info(read.unit).measure == Measure::mass && read.base > 0 ? out_.measured[input] / read.base : 1.0;
    }

    const Instrument* usual(Field field) const { return assumed_instrument(field, capacity(), readings_.apparatus); }

    void by_instrument(Input input) {
        const Field field = field_of(input);
        if (!there(field)) return;
        const Instrument* usual = this->usual(field);
        if (usual == nullptr) return typed_only(input);
        of_reading(input, usual->reading, usual->reading_shape);
    }

    void typed_only(Input input) { of_reading(input, 0.0, Shape::rectangular); }
    void typed(Input input, bool asked) {
        if (asked && there(field_of(input))) typed_only(input);
    }

    double capacity() const {
        const Reading& read = reading(Field::tube_capacity);
        return read.there ? read.base : 0.0;
    }

    /// A balance counts with its last digit, for tare and load together.
    void weighed(Input input) {
        const Field field = field_of(input);
        if (there(field)) of_reading(input, 0.0, Shape::triangular);
    }

    void metal() {
        switch (setup().mass_from) {
            case MassFrom::weighed: weighed(Input::mass_of_metal); break;
            case MassFrom::by_difference:
                weighed(Input::mass_before);
                weighed(Input::mass_after);
                break;
            case MassFrom::ribbon:
                by_instrument(Input::ribbon_length);
                by_instrument(Input::mass_per_metre);
                break;
        }
        purity();
        if (readings_.sample && setup().target != Target::gas_molar_mass) molar_mass();
    }

    /// 100 % says that the metal is taken as pure, as a blank does; any other number is as good as its digits.
    void purity() {
        if (!there(Field::purity)) return;
        const Reading& read = reading(Field::purity);
        if (read.base != 1.0 || read.doubt.half_width) typed_only(Input::purity);
    }

    /// The weight taken against the bounds of any normal material; a class's shorter number is off by what was cut.
    void molar_mass() {
        if (setup().own_reaction) return typed(Input::molar_mass, true);
        const double taken = out_.measured[Input::molar_mass];
        const double off = std::fabs(taken - molar_mass_of(*readings_.sample).si());
        even(Input::molar_mass, DoubtKind::atomic_weight, DoubtFrom::published, Shape::rectangular,
             molar_mass_bounds_of(*readings_.sample).si() + off);
    }

    /// What the gas is measured in. A syringe is read along its own scale; it has no meniscus and no column.
    void vessel() {
        switch (setup().apparatus) {
            case Apparatus::displaced_water: return weighed(Input::displaced_mass);
            case Apparatus::pressure_sensor:
                by_instrument(Input::flask_volume);
                if (there(Field::acid_volume)) by_instrument(Input::acid_volume);
                return by_instrument(Input::pressure_after);
            default: break;
        }
        tube();
        typed(Input::tube_factor, true);
        if (there(Field::injected_volume)) by_instrument(Input::injected_volume);
        start();
        if (!has_column(setup())) return;
        meniscus();
        levels();
    }

    void acid() {
        if (!setup().acid_limits) return;
        if (setup().apparatus != Apparatus::pressure_sensor) by_instrument(Input::acid_volume);
        of_reading(Input::acid_concentration, acid_label * reading(Field::acid_concentration).base,
                   Shape::rectangular);
    }

    void tube() {
        if (there(Field::scale_reading)) {
            by_instrument(Input::scale_reading);
            const Instrument* chosen = reading(Field::scale_reading).doubt.instrument;
            const Instrument* tube = chosen != nullptr ? chosen : usual(Field::scale_reading);
            // Who types a half-width for the reading has said nothing about the tube's own scale.
            if (tube != nullptr) {
                even(Input::scale_reading, DoubtKind::class_limit,
                     chosen != nullptr ? DoubtFrom::instrument : DoubtFrom::assumed, tube->limit_shape, tube->limit);
            }
        }
        // With a start reading the end space counts only as far as the gas in it was under another pressure then.
        if (setup().closed_end != ClosedEnd::largest) return;
        if (there(Field::end_space)) {
            by_instrument(Input::end_space);
        } else {
            setup().present.add(Field::end_space);
            out_.measured[Input::end_space] = 0.0;
            row(Input::end_space, DoubtKind::not_measured, DoubtFrom::assumed, Shape::rectangular, 0.0,
                end_space_not_measured);
        }
    }

    void start() {
        if (setup().start == Start::bubble) return by_instrument(Input::starting_bubble);
        if (setup().start != Start::reading) return;
        by_instrument(Input::start_reading);
        if (setup().start_level_known) return by_instrument(Input::start_level_difference);
        // Taken as that of the end. Where the tube stood nearly full, the liquid inside stood higher by what the gas
        // has pushed down since.
        const auto scale = scale_length(readings_);
        const bool high = setup().liquid_stands == LiquidStands::higher_inside && there(Field::level_difference);
        if (!scale || !high || !there(Field::scale_reading)) return;
        const double pushed = std::fabs(out_.measured[Input::start_reading] - out_.measured[Input::scale_reading]) *
                              scale->per_volume;
        setup().start_level_known = true;
        out_.measured[Input::start_level_difference] = out_.measured[Input::level_difference];
        setup().present.add(Field::start_level_difference);
        if (out_.ready.has(Output::dry_gas_pressure)) out_.ready.add(Output::start_dry_pressure);
        row(Input::start_level_difference, DoubtKind::not_measured, DoubtFrom::assumed, Shape::rectangular, 0.0,
            pushed);
    }

    /// The ring cancels where the start was read on the same scale.
    void meniscus() {
        if (setup().start == Start::reading || !there(Field::scale_reading)) return;
        const double ring = out_.measured[Input::meniscus_ring];
        if (setup().ring_known) {
            even(Input::meniscus_ring, DoubtKind::meniscus, DoubtFrom::assumed, Shape::rectangular,
                 ring_half_width * ring);
            return;
        }
        // One-sided: gas = scale volume - 2 rings, and nobody knows the bore (method.md, section 1).
        setup().ring_known = true;
        out_.measured[Input::meniscus_ring] = 0.0;
        row(Input::meniscus_ring, DoubtKind::meniscus, DoubtFrom::assumed, Shape::rectangular, 0.0,
            most_of_meniscus(capacity()) / 2);
    }

    void levels() {
        if (setup().liquid_stands == LiquidStands::level) {
            if (!out_.ready.has(Output::dry_gas_pressure) || !there(Field::temperature)) return;
            setup().liquid_stands = LiquidStands::higher_inside;
            out_.measured[Input::level_difference] = 0.0;
            setup().present.add(Field::level_difference);
            out_.ready.add(Output::water_density);
            even(Input::level_difference, DoubtKind::reading, DoubtFrom::assumed, Shape::rectangular, level_by_eye);
        } else if (setup().liquid_stands != LiquidStands::unknown) {
            by_instrument(Input::level_difference);
            if (there(Field::level_difference) && setup().gravity_to_standard == 1.0) {
                even(Input::gravity, DoubtKind::gravity, DoubtFrom::published, Shape::rectangular,
                     gravity_half_width);
            }
        }
    }

    void room() {
        by_instrument(Input::temperature);
        by_instrument(Input::barometer);
        if (setup().pressure_kind == PressureKind::at_the_bench || setup().pressure_kind == PressureKind::mercury_column) {
            return;
        }
        by_instrument(Input::height_above_sea_level);
        if (setup().pressure_kind == PressureKind::reduced_to_sea_level) {
            if (there(Field::outdoor_temperature)) {
                typed_only(Input::outdoor_temperature);
            } else {
                even(Input::outdoor_temperature, DoubtKind::not_measured, DoubtFrom::assumed, Shape::rectangular,
                     mean_of_layer);
            }
        }
    }

    /// A value from a table carries the table's rounding; the formula its own stated doubt. Both keep the formula's
    /// slope by temperature in the model.
    void vapour() {
        if (!is_taken_off(setup().vapour) || !out_.ready.has(Output::water_vapour_pressure)) return;
        typed(Input::water_activity, true);
        if (setup().vapour == VapourFrom::looked_up) {
            if (reading(Field::own_vapour_pressure).there) {
                const Reading& own = reading(Field::own_vapour_pressure);
                of_reading(Input::vapour_value, widened(0.0, own) / 2, Shape::rectangular);
            } else {
                even(Input::vapour_value, DoubtKind::rounding, DoubtFrom::published, Shape::rectangular,
                     table_step / 2);
            }
            return;
        }
        const double celsius = out_.measured[Input::temperature];
        const double formula = water_vapour_pressure(Temperature<>::celsius(celsius)).si();
        setup().vapour = VapourFrom::looked_up;
        setup().vapour_looked_up_at = celsius;
        setup().present.add(Field::own_vapour_pressure);
        out_.measured[Input::vapour_value] = formula;
        even(Input::vapour_value, DoubtKind::formula, DoubtFrom::published, Shape::rectangular,
             vapour_formula * formula);
    }

    const Assessment& all_;
    const Readings& readings_;
    Doubts out_;
};

}  // namespace

double standard_uncertainty(Shape shape, double low, double high) {
    switch (shape) {
        case Shape::rectangular: return (high - low) / std::sqrt(12.0);
        case Shape::triangular: return (high - low) / std::sqrt(24.0);
        case Shape::normal: return (high - low) / 2 / 1.959963984540054;
        case Shape::student: break;
    }
    return high;
}

double widened(double half_width, const Reading& reading) {
    if (!reading.there) return half_width;
    return std::max(half_width, difference_to_base(std::pow(10.0, reading.last_place), reading.unit));
}

Doubts doubts_of(const Assessment& assessment) { return Collector(assessment).collect(); }

const Doubt* doubt_of_reading(const Doubts& doubts, Field field) {
    for (const Doubt& doubt : doubts.all()) {
        if (field_of(doubt.input) == field && doubt.kind == DoubtKind::reading) return &doubt;
    }
    return nullptr;
}

int decimals_of_half_width(double half_width) {
    const int decimals = std::clamp(decimals_of_uncertainty(half_width, 1), 0, 12);
    const double one = round_to_place(half_width, -decimals);
    return std::fabs(one - half_width) < 1e-6 * half_width ? decimals : decimals + 1;
}

}  // namespace overwater
