#include "core/quantity/decimal.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <limits>

namespace overwater {
namespace {

constexpr std::size_t most_digits = 800; // a midpoint between two doubles has at most 767 digits
constexpr std::uint32_t billion = 1000000000;

/// A whole number of up to 5,120 bits, which is more than 800 digits times the powers a double can have.
class Natural {
public:
    explicit Natural(std::uint64_t value) {
        push(static_cast<std::uint32_t>(value));
        push(static_cast<std::uint32_t>(value >> 32U));
        trim();
    }
    explicit Natural(std::string_view digits) {
        for (const char digit : digits) times_plus(10, static_cast<std::uint32_t>(digit - '0'));
    }

    void times_plus(std::uint32_t factor, std::uint32_t carry) {
        std::uint64_t rest = carry;
        for (std::size_t i = 0; i < size_; ++i) {
            rest += std::uint64_t{words_[i]} * factor;
            words_[i] = static_cast<std::uint32_t>(rest);
            rest >>= 32U;
        }
        if (rest != 0) push(static_cast<std::uint32_t>(rest));
    }
    void times_power_of_five(int power) {
        constexpr std::uint32_t five_to_13 = 1220703125;
        for (; power >= 13; power -= 13) times_plus(five_to_13, 0);
        for (; power > 0; --power) times_plus(5, 0);
    }
    void times_power_of_two(int power) {
        for (; power >= 31; power -= 31) times_plus(1U << 31U, 0);
        if (power > 0) times_plus(1U << static_cast<unsigned>(power), 0);
    }
    /// Divides by 10^9; what remains.
    std::uint32_t take_nine_digits() {
        std::uint64_t rest = 0;
        for (std::size_t i = size_; i-- > 0;) {
            rest = rest << 32U | words_[i];
            words_[i] = static_cast<std::uint32_t>(rest / billion);
            rest %= billion;
        }
        trim();
        return static_cast<std::uint32_t>(rest);
    }
    /// How often 2^`power` goes in, and whether what is left is below (-1), at (0) or above (1) half of it. power >= 1;
    /// false where that is more than 64 bits.
    bool divide_by_power_of_two(int power, std::uint64_t& whole, int& rest) const {
        const auto bits = static_cast<std::size_t>(power);
        whole = 0;
        for (std::size_t at = size_; at-- > bits / 32;) {
            const std::size_t low = 32 * at;
            if (low >= bits + 64) return false;
            whole |= low >= bits ? std::uint64_t{words_[at]} << (low - bits) : std::uint64_t{words_[at]} >> (bits - low);
        }
        const std::size_t half = bits - 1;
        const std::uint32_t middle = half / 32 < size_ ? words_[half / 32] : 0;
        if ((middle >> half % 32 & 1U) == 0) {
            rest = -1;
            return true;
        }
        rest = (middle & ((1U << half % 32) - 1)) != 0 ? 1 : 0;
        for (std::size_t at = 0; at < half / 32 && rest == 0; ++at) rest = words_[at] != 0 ? 1 : 0;
        return true;
    }
    bool is_zero() const { return size_ == 0; }
    /// Negative, zero or positive as this is below, equal to or above `other`.
    int compare(const Natural& other) const {
        if (size_ != other.size_) return size_ < other.size_ ? -1 : 1;
        for (std::size_t i = size_; i-- > 0;) {
            if (words_[i] != other.words_[i]) return words_[i] < other.words_[i] ? -1 : 1;
        }
        return 0;
    }

private:
    void push(std::uint32_t word) { words_[size_++] = word; }
    void trim() {
        while (size_ > 0 && words_[size_ - 1] == 0) --size_;
    }

    std::array<std::uint32_t, 160> words_{};
    std::size_t size_ = 0;
};

/// A finite double as mantissa x 2^power, both whole.
struct Binary {
    std::uint64_t mantissa;
    int power;
};

Binary binary_of(double magnitude) {
    constexpr int lowest = std::numeric_limits<double>::min_exponent - std::numeric_limits<double>::digits;
    if (magnitude == 0.0) return {0, lowest};
    int exponent = 0;
    std::frexp(magnitude, &exponent);
    const int power = std::max(exponent - std::numeric_limits<double>::digits, lowest);
    return {static_cast<std::uint64_t>(std::ldexp(magnitude, -power)), power};
}

/// `digits` x 10^`place` against `mantissa` x 2^`power`.
int compare(std::string_view digits, int place, std::uint64_t mantissa, int power) {
    Natural decimal(digits);
    Natural binary(mantissa);
    decimal.times_power_of_five(place);
    binary.times_power_of_five(-place);
    decimal.times_power_of_two(place - power);
    binary.times_power_of_two(power - place);
    return decimal.compare(binary);
}

/// The double nearest to the digits, from one that is a few steps away at most.
double settled(std::string_view digits, int place, double nearby) {
    constexpr double infinity = std::numeric_limits<double>::infinity();
    for (;;) {
        const Binary near = binary_of(nearby);
        const bool odd = near.mantissa % 2 != 0;
        const int above = compare(digits, place, 2 * near.mantissa + 1, near.power - 1);
        if (above > 0 || (above == 0 && odd)) {
            nearby = std::nextafter(nearby, infinity);
            if (nearby == infinity) return nearby;
            continue;
        }
        if (near.mantissa == 0) return nearby;
        // Below a power of two doubles lie twice as close.
        const bool closer = near.mantissa == std::uint64_t{1} << 52U && nearby > std::numeric_limits<double>::min();
        const int below = closer ? compare(digits, place, 4 * near.mantissa - 1, near.power - 2)
                                 : compare(digits, place, 2 * near.mantissa - 1, near.power - 1);
        if (below > 0 || (below == 0 && !odd)) return nearby;
        nearby = std::nextafter(nearby, 0.0);
    }
}

double power_of_ten(int power) {
    double result = 1.0;
    for (; power > 0; --power) result *= 10.0; // exact up to 10^22
    return result;
}

/// The number times 10^n as one whole number, which has `figures` digits: one multiplication and one division. False for
/// what a bench does not have (very large or small, or many figures).
bool quick_decimal(Binary binary, double magnitude, int figures, Decimal& decimal) {
    if (figures > 17) return false;
    std::uint64_t least = 1;
    for (int i = 1; i < figures; ++i) least *= 10;
    for (int first_place = static_cast<int>(std::floor(std::log10(magnitude)));;) {
        const int scale = figures - 1 - first_place;
        const int power = -(binary.power + scale);
        if (scale < 0 || scale > 40 || power < 1) return false;
        Natural whole(binary.mantissa);
        whole.times_power_of_five(scale);
        std::uint64_t digits = 0;
        int rest = 0;
        if (!whole.divide_by_power_of_two(power, digits, rest)) return false;
        // The logarithm may be off where a power of ten is near.
        if (digits < least) {
            --first_place;
            continue;
        }
        if (digits >= 10 * least) {
            ++first_place;
            continue;
        }
        if (rest > 0 || (rest == 0 && digits % 2 != 0)) ++digits;
        if (digits == 10 * least) {
            digits = least;
            ++first_place;
        }
        decimal.first_place = first_place;
        decimal.digits.resize(static_cast<std::size_t>(figures));
        for (std::size_t i = decimal.digits.size(); i-- > 0; digits /= 10) {
            decimal.digits[i] = static_cast<char>('0' + digits % 10);
        }
        return true;
    }
}

} // namespace

Decimal decimal_of(double magnitude, int figures) {
    Decimal decimal;
    if (!(magnitude > 0.0) || !std::isfinite(magnitude)) return decimal;
    const Binary binary = binary_of(magnitude);
    if (quick_decimal(binary, magnitude, std::max(figures, 1), decimal)) return decimal;
    Natural whole(binary.mantissa);
    whole.times_power_of_two(binary.power);
    whole.times_power_of_five(-binary.power); // x 2^-n is x 5^n x 10^-n

    std::string& digits = decimal.digits; // the last digit first
    while (!whole.is_zero()) {
        std::uint32_t nine = whole.take_nine_digits();
        for (int i = 0; i < 9; ++i, nine /= 10) digits += static_cast<char>('0' + nine % 10);
    }
    while (digits.back() == '0') digits.pop_back();
    std::reverse(digits.begin(), digits.end());
    decimal.first_place = static_cast<int>(digits.size()) - 1 + std::min(binary.power, 0);

    const auto kept = static_cast<std::size_t>(std::max(figures, 1));
    if (digits.size() <= kept) {
        digits.resize(kept, '0');
        return decimal;
    }
    const bool more = digits.find_first_not_of('0', kept + 1) != std::string::npos;
    const bool away = digits[kept] > '5' || (digits[kept] == '5' && (more || digits[kept - 1] % 2 != 0));
    digits.resize(kept);
    if (!away) return decimal;
    const std::size_t last_other = digits.find_last_not_of('9');
    if (last_other == std::string::npos) {
        digits.assign(kept, '0');
        digits.front() = '1';
        ++decimal.first_place;
        return decimal;
    }
    ++digits[last_other];
    std::fill(digits.begin() + static_cast<std::ptrdiff_t>(last_other) + 1, digits.end(), '0');
    return decimal;
}

double nearest_double(std::string_view digits, int last_place) {
    const std::size_t first = digits.find_first_not_of('0');
    if (first == std::string_view::npos) return 0.0;
    const std::size_t end = digits.find_last_not_of('0') + 1;
    last_place += static_cast<int>(digits.size() - end);
    digits = digits.substr(first, end - first);

    const int first_place = last_place + static_cast<int>(digits.size()) - 1;
    if (first_place > std::numeric_limits<double>::max_exponent10) return std::numeric_limits<double>::infinity();
    if (first_place < -324) return 0.0; // below half of the smallest double, 2.5e-324

    constexpr std::size_t exact_digits = 15;
    constexpr int exact_power = 22;
    std::uint64_t head = 0;
    const std::size_t in_head = std::min<std::size_t>(digits.size(), 17);
    for (const char digit : digits.substr(0, in_head)) head = 10 * head + static_cast<std::uint64_t>(digit - '0');
    const double start = static_cast<double>(head);
    // One operation on two exact numbers rounds once.
    if (digits.size() <= exact_digits && std::abs(last_place) <= exact_power) {
        return last_place < 0 ? start / power_of_ten(-last_place) : start * power_of_ten(last_place);
    }
    // Beyond 800 digits only whether something follows counts: no midpoint is that long.
    std::string shortened;
    int place = last_place;
    if (digits.size() > most_digits) {
        place += static_cast<int>(digits.size() - most_digits) - 1;
        shortened = std::string(digits.substr(0, most_digits)) + '1';
        digits = shortened;
    }
    const int power = first_place + 1 - static_cast<int>(in_head);
    const double nearby = start * std::pow(10.0, power / 2) * std::pow(10.0, power - power / 2);
    return settled(digits, place, std::min(nearby, std::numeric_limits<double>::max()));
}

std::string machine_number(double value, int figures) {
    const Decimal decimal = decimal_of(std::fabs(value), figures);
    if (decimal.digits.empty()) return "0";
    std::string digits = decimal.digits;
    digits.resize(digits.find_last_not_of('0') + 1);
    const auto size = static_cast<int>(digits.size());
    const int place = decimal.first_place;
    std::string text = value < 0.0 ? "-" : "";
    if (place < -5 || place >= figures) {
        text += digits.front();
        if (size > 1) text += '.' + digits.substr(1);
        return text + 'e' + std::to_string(place);
    }
    if (place < 0) return text + "0." + std::string(static_cast<std::size_t>(-place - 1), '0') + digits;
    if (size <= place + 1) return text + digits + std::string(static_cast<std::size_t>(place + 1 - size), '0');
    return text + digits.insert(static_cast<std::size_t>(place) + 1, 1, '.');
}

} // namespace overwater
