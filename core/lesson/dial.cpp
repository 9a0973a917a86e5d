#include "core/lesson/dial.hpp"

#include <algorithm>
#include <cmath>

#include "core/bench/readings.hpp"
#include "core/quantity/number_format.hpp"

namespace overwater {

namespace {

/// Sums of decimals are off by some last bits: far less than any eye.
constexpr double grain = 1e-6;

std::string_view eye_key(DialKind kind) {
    switch (kind) {
    case DialKind::tube_scale: return "practice.eye.meniscus";
    case DialKind::thermometer: return "practice.eye.thermometer";
    case DialKind::barometer_dial: return "practice.eye.needle";
    case DialKind::mercury_column: return "practice.eye.mercury";
    case DialKind::ruler:
    case DialKind::balance_display:
    case DialKind::weather_report: break;
    }
    return "practice.eye.ruler";
}

}  // namespace

std::vector<double> numbers_of(const Dial& dial) {
    std::vector<double> numbers;
    if (shows_digits(dial.kind)) return numbers;
    const double apart = dial.division * dial.divisions_per_number;
    const auto count = static_cast<int>(std::floor((dial.high - dial.low) / apart + 0.5));
    for (int i = 0; i <= count; ++i) numbers.push_back(round_to_place(dial.low + i * apart, -dial.number_decimals));
    return numbers;
}

std::string perfect_reading(const Dial& dial) { return format_fixed(dial.position, dial.decimals, DecimalSign::point); }

bool is_read_right(const Dial& dial, const Entry& typed) {
    const Reading reading = read_entry(dial.field, typed);
    if (!reading.there) return false;
    const double off = from_base(reading.base, dial.unit) - dial.position;
    return std::fabs(off) <= dial.division * (0.5 + grain);
}

EyePlace eye_place(const Dial& dial) {
    EyePlace place;
    const double apart = dial.division * dial.divisions_per_number;
    const auto tenths = static_cast<int>(std::floor((dial.position - dial.low) / dial.division * 10 + 0.5));
    const int tenths_apart = 10 * dial.divisions_per_number;
    const auto last = static_cast<int>(std::floor((dial.high - dial.low) / apart + 0.5)) - 1;
    const int below = std::clamp(tenths / tenths_apart, 0, std::max(last, 0));
    place.below = round_to_place(dial.low + below * apart, -dial.number_decimals);
    place.above = round_to_place(dial.low + (below + 1) * apart, -dial.number_decimals);
    const int rest = tenths - below * tenths_apart;
    place.divisions = rest / 10;
    place.tenths = rest % 10;
    return place;
}

Message eye_words(const Dial& dial) {
    if (shows_digits(dial.kind)) {
        const bool balance = dial.kind == DialKind::balance_display;
        return Message{balance ? "practice.eye.display" : "practice.eye.report"}.quantity(
            "shown", to_base(dial.position, dial.unit), dial.unit, dial.decimals);
    }
    const EyePlace place = eye_place(dial);
    Message message{eye_key(dial.kind)};
    message.quantity("below", to_base(place.below, dial.unit), dial.unit, dial.number_decimals);
    message.quantity("above", to_base(place.above, dial.unit), dial.unit, dial.number_decimals);
    message.count("between", dial.divisions_per_number);
    message.count("divisions", place.divisions);
    message.count("tenths", place.tenths);
    return message;
}

}  // namespace overwater
