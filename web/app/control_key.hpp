#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

#include "core/bench/field.hpp"

namespace overwater {

/// Fields for further readings of the same thing.
inline constexpr std::size_t most_repeats = 5;

/// What of a reading a control holds: its text, its unit, or a part of its doubt.
enum class ControlPart : std::uint8_t { text, unit, doubt, instrument, plus_minus, shape, repeat };

/// The fixed key of a reading's control: bench.scale_reading; that of its unit ends in .unit.
inline std::string key_of_control(Field field) { return "bench." + std::string(name_of(field)); }

/// The key of the sentence below it with this number, from 0 in the order of the checks.
inline std::string key_of_remark(Field field, int number) { return key_of_control(field) + ".remark" + std::to_string(number); }

/// Keys of the parts of its doubt: bench.scale_reading.plus_minus, bench.scale_reading.repeat.0. `doubt` is the button
/// that shows them.
std::string key_of_control(Field field, ControlPart part, std::size_t repeat = 0);

struct ControlField {
    Field field = Field::count;  ///< count: the key is of no reading
    bool is_unit = false;
    ControlPart part = ControlPart::text;
    std::size_t repeat = 0;  ///< which of the further readings, from 0

    /// Something of the doubt that stands in the record.
    bool is_doubt() const {
        return part == ControlPart::instrument || part == ControlPart::plus_minus || part == ControlPart::shape ||
               part == ControlPart::repeat;
    }
};

/// The reading with which the instrument of this one is kept: a tube has one scale.
Field chooses_instrument(Field field);

/// The reading a control's key belongs to. Radio buttons have their value behind the field's name.
ControlField field_of_control(std::string_view key);

}  // namespace overwater
