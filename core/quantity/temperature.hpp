#pragma once

#include "core/quantity/quantity.hpp"

namespace overwater {

/// 0 °C in kelvin, exact by definition (SI Brochure, 9th edition, 2.3.1).
inline constexpr double celsius_zero_in_kelvin = 273.15;

/// A temperature as a point on the scale, which is not a temperature difference: two of them cannot be added, and their
/// difference is a `TemperatureDifference`. Kept as a Celsius temperature because that is what the bench gives and what
/// the density formula takes.
template <class Real = double>
class Temperature {
public:
    constexpr Temperature() = default;

    /// `value` in degrees Celsius.
    static constexpr Temperature celsius(Real value) { return Temperature(value); }
    /// `value` in kelvin.
    static constexpr Temperature kelvin(Real value) { return Temperature(value - Real(celsius_zero_in_kelvin)); }
    /// `value` in degrees Fahrenheit.
    static constexpr Temperature fahrenheit(Real value) {
        return Temperature((value - Real(32.0)) * Real(5.0) / Real(9.0));
    }

    constexpr Real in_celsius() const { return celsius_; }
    constexpr Real in_kelvin() const { return celsius_ + Real(celsius_zero_in_kelvin); }
    constexpr Real in_fahrenheit() const { return celsius_ * Real(9.0) / Real(5.0) + Real(32.0); }

    friend constexpr Quantity<dimension::TemperatureDifference, Real> operator-(Temperature a, Temperature b) {
        return Quantity<dimension::TemperatureDifference, Real>::si(a.celsius_ - b.celsius_);
    }

private:
    explicit constexpr Temperature(Real value) : celsius_(value) {}
    Real celsius_{};
};

}  // namespace overwater
