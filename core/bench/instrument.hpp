#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <span>
#include <string_view>

#include "core/bench/apparatus.hpp"
#include "core/bench/field.hpp"

/// What a reading is taken with, and how far it may be off (standards.md, section 9; the source stands at each row of
/// instrument.cpp).

namespace overwater {

/// The distribution of a deviation between its limits.
enum class Shape : std::uint8_t {
    rectangular,  ///< any deviation within the limits is as likely as any other: u = a/sqrt 3
    triangular,   ///< small deviations are likelier: u = a/sqrt 6
    normal,       ///< the half-width is that of 95 %: u = a/1.96
    student       ///< the mean of repeated readings: t with n - 1 degrees of freedom, u = s/sqrt n
};

/// Names in records and keys.
inline constexpr std::array<std::string_view, 4> shape_names{"rectangular", "triangular", "normal", "student"};
constexpr std::string_view name_of(Shape shape) { return shape_names[static_cast<std::size_t>(shape)]; }
/// A shape a person may choose (not `student`), or nothing.
std::optional<Shape> shape_by_name(std::string_view name);

struct Instrument {
    std::string_view key;   ///< in records and message keys: "balance_1mg"
    double reading;         ///< half-width of one reading, in the base unit of the measure (°C, Pa, m³, kg, m); 0: none
    Shape reading_shape;
    double limit;           ///< half-width of the scale itself (class limit), base unit; 0: none or in `reading`
    Shape limit_shape;
    double capacity;        ///< m³ of the vessels it is for; 0: any
};

/// The instruments that `field` may be read with, the one assumed first; empty where only a typed half-width serves.
std::span<const Instrument> instruments_for(Field field);

/// The instrument of `field` with this key, or nothing.
const Instrument* instrument_by_key(Field field, std::string_view key);

/// The one assumed where none was chosen: for the tube by its capacity in m³ (0: not known); nothing where the field has
/// none.
const Instrument* assumed_instrument(Field field, double capacity, Apparatus apparatus = Apparatus::tube_over_water);

}  // namespace overwater
