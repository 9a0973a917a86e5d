#pragma once

/// Quantities with their dimension in the type. Everything is SI inside; a unit is named where a number goes in
/// (`Pressure::from(29.92, inch_of_mercury)`) and where it comes out (`p.in(kilopascal)`). Adding a pressure to a
/// volume does not compile. The number type is a parameter, so that one formula serves plain numbers, sensitivities,
/// packs of trials and traced expressions.

namespace overwater {

/// Exponents of kilogram, metre, second, kelvin and mole.
template <int Kilogram, int Metre, int Second, int Kelvin, int Mole>
struct Dimension {
    static constexpr int kilogram = Kilogram;
    static constexpr int metre = Metre;
    static constexpr int second = Second;
    static constexpr int kelvin = Kelvin;
    static constexpr int mole = Mole;
};

template <class A, class B>
using DimensionProduct = Dimension<A::kilogram + B::kilogram, A::metre + B::metre, A::second + B::second,
                                   A::kelvin + B::kelvin, A::mole + B::mole>;

template <class A, class B>
using DimensionQuotient = Dimension<A::kilogram - B::kilogram, A::metre - B::metre, A::second - B::second,
                                    A::kelvin - B::kelvin, A::mole - B::mole>;

namespace dimension {
using One = Dimension<0, 0, 0, 0, 0>;
using Mass = Dimension<1, 0, 0, 0, 0>;
using Length = Dimension<0, 1, 0, 0, 0>;
using Volume = Dimension<0, 3, 0, 0, 0>;
using Time = Dimension<0, 0, 1, 0, 0>;
using TemperatureDifference = Dimension<0, 0, 0, 1, 0>;
using Amount = Dimension<0, 0, 0, 0, 1>;
using Acceleration = Dimension<0, 1, -2, 0, 0>;
using Pressure = Dimension<1, -1, -2, 0, 0>;
using Density = Dimension<1, -3, 0, 0, 0>;
using LinearDensity = Dimension<1, -1, 0, 0, 0>;
using MolarMass = Dimension<1, 0, 0, 0, -1>;
using MolarVolume = Dimension<0, 3, 0, 0, -1>;
using Concentration = Dimension<0, -3, 0, 0, 1>;
using MolarEntropy = Dimension<1, 2, -2, -1, -1>;  ///< the dimension of the gas constant
}  // namespace dimension

/// A unit of the dimension D: one of it is `factor` SI units. Points on a scale (degrees) are not units: see
/// temperature.hpp.
template <class D>
struct Unit {
    double factor;
};

template <class D, class Real = double>
class Quantity {
public:
    using DimensionType = D;
    using Number = Real;

    constexpr Quantity() = default;

    /// `value` in coherent SI units (kg, m, s, K, mol).
    static constexpr Quantity si(Real value) { return Quantity(value); }

    /// `value` in `unit`.
    static constexpr Quantity from(Real value, Unit<D> unit) { return Quantity(value * Real(unit.factor)); }

    /// The number in coherent SI units.
    constexpr Real si() const { return value_; }

    /// The number in `unit`.
    constexpr Real in(Unit<D> unit) const { return value_ / Real(unit.factor); }

    friend constexpr Quantity operator+(Quantity a, Quantity b) { return Quantity(a.value_ + b.value_); }
    friend constexpr Quantity operator-(Quantity a, Quantity b) { return Quantity(a.value_ - b.value_); }
    friend constexpr Quantity operator-(Quantity a) { return Quantity(-a.value_); }
    friend constexpr Quantity operator*(Real k, Quantity a) { return Quantity(k * a.value_); }
    friend constexpr Quantity operator*(Quantity a, Real k) { return Quantity(a.value_ * k); }
    friend constexpr Quantity operator/(Quantity a, Real k) { return Quantity(a.value_ / k); }

private:
    explicit constexpr Quantity(Real value) : value_(value) {}
    Real value_{};
};

template <class A, class B, class Real>
constexpr Quantity<DimensionProduct<A, B>, Real> operator*(Quantity<A, Real> a, Quantity<B, Real> b) {
    return Quantity<DimensionProduct<A, B>, Real>::si(a.si() * b.si());
}

template <class A, class B, class Real>
constexpr Quantity<DimensionQuotient<A, B>, Real> operator/(Quantity<A, Real> a, Quantity<B, Real> b) {
    return Quantity<DimensionQuotient<A, B>, Real>::si(a.si() / b.si());
}

using Mass = Quantity<dimension::Mass>;
using Length = Quantity<dimension::Length>;
using Volume = Quantity<dimension::Volume>;
using Pressure = Quantity<dimension::Pressure>;
using TemperatureDifference = Quantity<dimension::TemperatureDifference>;
using Density = Quantity<dimension::Density>;
using Amount = Quantity<dimension::Amount>;
using MolarMass = Quantity<dimension::MolarMass>;
using MolarVolume = Quantity<dimension::MolarVolume>;
using Concentration = Quantity<dimension::Concentration>;
using GasConstant = Quantity<dimension::MolarEntropy>;
using Acceleration = Quantity<dimension::Acceleration>;

}  // namespace overwater
