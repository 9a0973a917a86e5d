#pragma once

#include <cstdint>
#include <optional>
#include <string>

#include "web/draw/tube.hpp"

/// Other vessels in which a class makes and catches its gas.

namespace overwater {

/// What the vessels look like, from the readings. A missing reading is a missing one, never a zero.
struct VesselView {
    enum class Kind : std::uint8_t {
        generator_flask,  ///< acid is injected into a flask, its gas goes into a tube over a trough
        gas_syringe,      ///< the gas pushes a plunger
        displaced_water,  ///< the gas pushes water out of a bottle, and the water is weighed
        pressure_sensor   ///< the gas stays in a closed flask
    };
    Kind kind = Kind::generator_flask;
    TubeView tube;  ///< generator_flask
    /// Of the syringe, or of the bottle up to its neck; not between 0 and a million: unknown, there is no scale.
    double capacity_mL = 100;
    std::optional<double> start_mL;    ///< where the plunger stood before
    std::optional<double> reading_mL;  ///< where it stands now; of the bottle: how much water has left it
    bool has_scale() const { return capacity_mL > 0 && capacity_mL < 1e6; }
};

/// A number with its unit and what it is, already worded; what is empty is left out.
struct VesselLabel {
    std::string number, word;
    bool empty() const { return number.empty() && word.empty(); }
};

struct VesselLabels {
    TubeLabels tube;             ///< generator_flask; its description is not used
    VesselLabel injected;        ///< generator_flask: the acid that went in
    VesselLabel sample;          ///< gas_syringe, pressure_sensor: what lies in the flask
    VesselLabel start, reading;  ///< gas_syringe
    /// gas_syringe: between both; pressure_sensor: the room above the liquid; displaced_water: the water in the beaker.
    VesselLabel gas;
    VesselLabel display, display_2;  ///< lines on the display of the balance (the first one), of the sensor (both)
    std::string decimal_sign = ".";  ///< of the scale's own numbers
    std::string description;
    float text_size = 0;  ///< px of the small words; 0: chosen by the picture's size
};

/// Where a scale lies, in px from the picture's upper left corner: of the syringe from left to right, of the bottle's
/// water from its neck down to its floor; for tests and for whoever points at it.
struct VesselScale {
    float zero = 0;
    float full = 0;            ///< at the capacity
    std::optional<float> now;  ///< at the reading, kept between both ends
    std::optional<float> start;
    bool beyond = false;  ///< the reading is outside of the scale
};
/// Of a gas syringe and of displaced water. The bottle counts as equally wide all the way.
VesselScale vessel_scale(const VesselView& view, float width, float height);

/// The vessels on their bench. What cannot be (a plunger beyond its barrel) is drawn at the end of the scale, with a
/// dashed mark. Made for 260 x 360 px and for 340 x 300 px, and more.
Picture draw_vessel(const VesselView& view, const VesselLabels& labels, float width, float height,
                    const TextMeasure& measure);

}  // namespace overwater
