#include "core/bench/scale.hpp"

#include "core/quantity/units.hpp"

namespace overwater {

namespace {

// m/m³; the quotient of the factors is more by its last bit, and 2 mm a mL would be too little.
constexpr double millimetre_a_millilitre = 1000;
constexpr double shortest_scale = 2 * millimetre_a_millilitre;
constexpr double longest_scale = 40 * millimetre_a_millilitre;

}  // namespace

double usual_scale(double capacity) {
    return (capacity > 75 * millilitre.factor ? 6 : 11) * millimetre_a_millilitre;
}

bool is_possible_scale(double per_volume) { return per_volume >= shortest_scale && per_volume <= longest_scale; }

std::optional<ScaleLength> scale_length(const Readings& readings) {
    const Reading& capacity = readings[Field::tube_capacity];
    if (!capacity.there || capacity.base <= 0) return std::nullopt;
    const Reading& length = readings[Field::length_of_scale];
    if (length.there && is_possible_scale(length.base / capacity.base)) {
        return ScaleLength{length.base / capacity.base, false};
    }
    return ScaleLength{usual_scale(capacity.base), true};
}

}  // namespace overwater
