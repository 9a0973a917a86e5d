#include "core/bench/instrument.hpp"

#include "core/quantity/units.hpp"

namespace overwater {

namespace {

// Half-widths as they are printed: grams, millilitres, millimetres, hectopascals.
constexpr double g(double value) { return value * gram.factor; }
constexpr double ml(double value) { return value * millilitre.factor; }
constexpr double mm(double value) { return value * millimetre.factor; }
constexpr double hpa(double value) { return value * hectopascal.factor; }

/// An instrument whose limit and reading are one.
constexpr Instrument simple(std::string_view key, double half_width, Shape shape = Shape::rectangular) {
    return {key, half_width, shape, 0, Shape::rectangular, 0};
}

/// A scale for volumes: half a division of reading, and the limit of the scale itself. The limit is rectangular and not
/// the triangle that some laboratories take: only so the class limit and the end space of the method's record A, both
/// 0.10 mL, have equal shares of its variance (24 % each).
constexpr Instrument scale(std::string_view key, double capacity, double division, double limit) {
    return {key, ml(division) / 2, Shape::rectangular, ml(limit), Shape::rectangular, ml(capacity)};
}

/// Which of the rows below is assumed; the first of `tubes` where the capacity is not known.
constexpr std::size_t burette_50_b = 0;
constexpr std::size_t burette_100_b = 2;
constexpr std::size_t burette_25_01_b = 4;
constexpr std::size_t burette_10_005_b = 8;
constexpr std::size_t gas_syringe_100 = 14;

// ISO 385: ISO 385:2005, Table 1, from a second-hand copy. ISO 4788: ISO 4788:2005, from memory;
// its divisions: the usual ones, from memory. Gas measuring tubes have no ISO class: usual ones, from memory.
constexpr std::array<Instrument, 25> tubes{{
    scale("burette_50_b", 50, 0.1, 0.10),       // ISO 385
    scale("burette_50_a", 50, 0.1, 0.05),       // ISO 385
    scale("burette_100_b", 100, 0.2, 0.20),     // ISO 385
    scale("burette_100_a", 100, 0.2, 0.10),     // ISO 385
    scale("burette_25_01_b", 25, 0.1, 0.10),    // ISO 385
    scale("burette_25_01_a", 25, 0.1, 0.05),    // ISO 385
    scale("burette_25_005_b", 25, 0.05, 0.05),  // ISO 385; not twice class A
    scale("burette_25_005_a", 25, 0.05, 0.03),  // ISO 385
    scale("burette_10_005_b", 10, 0.05, 0.05),  // ISO 385; not twice class A
    scale("burette_10_005_a", 10, 0.05, 0.03),  // ISO 385
    scale("burette_10_002_b", 10, 0.02, 0.05),  // ISO 385; not twice class A
    scale("burette_10_002_a", 10, 0.02, 0.02),  // ISO 385
    scale("gas_tube_50", 50, 0.1, 0.10),        // from memory
    scale("gas_tube_100", 100, 0.2, 0.20),      // from memory
    scale("gas_syringe_100", 100, 1, 1.0),      // common practice, no source: friction and a division
    scale("cylinder_10_b", 10, 0.2, 0.20),      // ISO 4788; ASTM E1272-02 (2012), Table 1, prints the same limit
    scale("cylinder_10_a", 10, 0.2, 0.10),      // ISO 4788; ASTM E1272-02 (2012), Table 1, prints the same limit
    scale("cylinder_25_b", 25, 0.5, 0.50),      // ISO 4788; wider than ASTM E1272
    scale("cylinder_25_a", 25, 0.5, 0.25),      // ISO 4788; wider than ASTM E1272
    scale("cylinder_50_b", 50, 1, 1.0),         // ISO 4788; wider than ASTM E1272
    scale("cylinder_50_a", 50, 1, 0.5),         // ISO 4788; wider than ASTM E1272
    scale("cylinder_100_b", 100, 1, 1.0),       // ISO 4788; ASTM E1272-02 (2012), Table 1, prints the same limit
    scale("cylinder_100_a", 100, 1, 0.5),       // ISO 4788; ASTM E1272-02 (2012), Table 1, prints the same limit
    scale("cylinder_250_b", 250, 2, 2.0),       // ISO 4788; ASTM E1272-02 (2012), Table 1, prints the same limit
    scale("cylinder_250_a", 250, 2, 1.0),       // ISO 4788; ASTM E1272-02 (2012), Table 1, prints the same limit
}};
static_assert(tubes[burette_50_b].key == "burette_50_b" && tubes[burette_100_b].key == "burette_100_b" &&
              tubes[burette_25_01_b].key == "burette_25_01_b" && tubes[burette_10_005_b].key == "burette_10_005_b" &&
              tubes[gas_syringe_100].key == "gas_syringe_100");

// A display that shows steps of d is off by up to d/2 (GUM F.2.2.1), at the load and at the tare: together a triangle of
// half-width d.
constexpr std::array<Instrument, 4> balances{{
    simple("balance_1mg", g(0.001), Shape::triangular),
    simple("balance_10mg", g(0.01), Shape::triangular),
    simple("balance_100mg", g(0.1), Shape::triangular),
    simple("balance_100ug", g(0.0001), Shape::triangular),
}};

constexpr std::array<Instrument, 3> end_spaces{{
    simple("poured_into_cylinder", ml(0.10)),  // method.md, section 6
    simple("weighed_water", ml(0.02)),         // common practice, no source: 0.01 g and a drop left on the glass
    simple("estimated_with_ruler", ml(0.5)),   // common practice, no source
}};

constexpr std::array<Instrument, 2> levels{{
    simple("ruler", mm(1)),         // method.md, section 6: both levels, each to half a millimetre
    simple("tape_by_hand", mm(3)),  // common practice, no source: held beside the tube, not along it
}};

constexpr std::array<Instrument, 1> lengths{{
    simple("ruler", mm(0.5)),  // common practice, no source: half a division
}};

constexpr std::array<Instrument, 2> bores{{
    simple("caliper", mm(0.1)),  // common practice, no source: the jaws reach the mouth alone
    simple("ruler", mm(0.5)),    // common practice, no source: half a division
}};

constexpr std::array<Instrument, 5> thermometers{{
    simple("thermometer_1", 0.5),            // method.md, section 6: half a division of 1 °C
    simple("thermometer_01", 0.2),           // common practice, no source: the scale's error, not the division
    simple("temperature_probe", 0.5),        // common practice, no source
    simple("temperature_probe_lab", 0.2),    // common practice, no source
    simple("temperature_probe_cheap", 1.0),  // common practice, no source
}};

constexpr std::array<Instrument, 5> barometers{{
    simple("aneroid_barometer", hpa(1)),    // method.md, section 6
    simple("pressure_sensor", hpa(1)),      // common practice, no source
    simple("mercury_barometer", hpa(0.5)),  // common practice, no source: read to 0.1 mm and corrected
    simple("weather_report", hpa(1)),       // common practice, no source: the distance and the hour
    simple("telephone_sensor", hpa(1)),     // from memory
}};

constexpr std::array<Instrument, 2> heights{{
    simple("map", 20),    // method.md, section 2
    simple("survey", 5),  // common practice, no source
}};

constexpr std::array<Instrument, 2> acid_volumes{{
    simple("cylinder_10", ml(0.2)),          // ISO 4788:2005 class B, from memory
    simple("pipette_or_burette", ml(0.05)),  // ISO 385:2005, Table 1, burette of 10 mL class B, from a second-hand copy
}};

constexpr std::array<Instrument, 2> ribbons{{
    simple("one_metre_weighed", 0.01 * gram_per_metre.factor),  // common practice, no source: on a balance to 0.01 g
    simple("label", 0.1 * gram_per_metre.factor),               // common practice, no source
}};

constexpr std::array<Instrument, 2> bubbles{{
    simple("read_on_scale", ml(0.1)),  // common practice, no source: a division of a 50 mL tube
    simple("guessed", ml(0.3)),        // common practice, no source
}};

}  // namespace

std::optional<Shape> shape_by_name(std::string_view name) {
    for (const Shape shape : {Shape::rectangular, Shape::triangular, Shape::normal}) {
        if (name_of(shape) == name) return shape;
    }
    return std::nullopt;
}

std::span<const Instrument> instruments_for(Field field) {
    switch (field) {
    case Field::mass_of_metal:
    case Field::mass_before:
    case Field::mass_after:
    case Field::displaced_mass: return balances;
    case Field::scale_reading:
    case Field::start_reading: return tubes;
    case Field::end_space: return end_spaces;
    case Field::level_difference:
    case Field::start_level_difference: return levels;
    case Field::ribbon_length: return lengths;
    case Field::tube_bore: return bores;
    case Field::temperature: return thermometers;
    case Field::pressure_after:
    case Field::barometer: return barometers;
    case Field::height_above_sea_level: return heights;
    case Field::injected_volume:
    case Field::flask_volume:
    case Field::acid_volume: return acid_volumes;
    case Field::mass_per_metre: return ribbons;
    case Field::starting_bubble: return bubbles;
    default: return {};
    }
}

const Instrument* instrument_by_key(Field field, std::string_view key) {
    for (const Instrument& instrument : instruments_for(field)) {
        if (instrument.key == key) return &instrument;
    }
    return nullptr;
}

const Instrument* assumed_instrument(Field field, double capacity, Apparatus apparatus) {
    const std::span<const Instrument> all = instruments_for(field);
    // The last digit typed says what a balance shows; nothing is assumed by name.
    if (all.empty() || all.data() == balances.data()) return nullptr;
    if (all.data() != tubes.data()) return all.data();
    // A syringe is read and moves like one, whatever its size.
    if (apparatus == Apparatus::gas_syringe) return &tubes[gas_syringe_100];
    if (capacity <= 0) return &tubes[burette_50_b];
    if (capacity <= ml(15)) return &tubes[burette_10_005_b];
    if (capacity <= ml(30)) return &tubes[burette_25_01_b];
    if (capacity <= ml(75)) return &tubes[burette_50_b];
    return &tubes[burette_100_b];
}

}  // namespace overwater
