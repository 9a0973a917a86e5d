#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "core/bench/entry.hpp"
#include "core/quantity/message.hpp"

/// What a student of a practice run reads: an instrument with its marks, not a number.

namespace overwater {

enum class DialKind : std::uint8_t {
    tube_scale,  ///< the meniscus in the inverted tube
    thermometer,
    barometer_dial,  ///< a needle before a round scale
    mercury_column,
    ruler,
    balance_display,  ///< shows digits
    weather_report    ///< prints digits
};
inline constexpr std::array<std::string_view, 7> dial_kind_names{
    "tube_scale", "thermometer", "barometer_dial", "mercury_column", "ruler", "balance_display", "weather_report"};
constexpr std::string_view name_of(DialKind kind) { return dial_kind_names[static_cast<std::size_t>(kind)]; }

/// One instrument of a practice run. The numbers are in `unit`.
struct Dial {
    Field field = Field::scale_reading;  ///< the reading that is taken from it
    int run = -1;                        ///< index of the run; -1: of all runs
    DialKind kind = DialKind::tube_scale;
    UnitId unit = UnitId::none;
    double low = 0;                 ///< first numbered mark of what is drawn; in a tube of either kind the number 0
    double high = 0;                ///< last numbered mark
    double division = 0;            ///< from one line to the next; for digits, one of the last digit
    int divisions_per_number = 10;  ///< a number stands at `low` and at every so many lines
    int number_decimals = 0;        ///< of the numbers on the scale
    double position = 0;            ///< where the meniscus, the needle ... truly stands: a whole number of tenths of a
                                    ///< division; for digits, what is shown
    int decimals = 0;               ///< of a reading to a tenth of a division, or of the digits shown

    friend bool operator==(const Dial&, const Dial&) = default;
};

/// Whether it shows digits: nothing is estimated between lines.
constexpr bool shows_digits(DialKind kind) {
    return kind == DialKind::balance_display || kind == DialKind::weather_report;
}

/// The numbers printed on the scale, from `low` to `high`; none where digits are shown.
std::vector<double> numbers_of(const Dial& dial);

/// The reading of a perfect eye, as it would be typed with a decimal point: to a tenth of a division, or the digits.
std::string perfect_reading(const Dial& dial);

/// Whether what was typed, in any unit, is within half a division of where it truly stands. Blank or no number: no.
bool is_read_right(const Dial& dial, const Entry& typed);

/// The place of the position as an eye finds it.
struct EyePlace {
    double below = 0;   ///< numbered mark at or below the position, in the dial's unit
    double above = 0;   ///< the next one
    int divisions = 0;  ///< whole divisions from `below`
    int tenths = 0;     ///< tenths of the next one
};
/// For dials with a scale.
EyePlace eye_place(const Dial& dial);

/// What an eye sees, for the description of the picture: the numbered marks on both sides, the divisions between them
/// and the place in divisions and tenths - not the reading. A display is said as it stands, since it shows the
/// digits.
Message eye_words(const Dial& dial);

}  // namespace overwater
