#pragma once

#include <cmath>

#include "core/matter/constants.hpp"
#include "core/quantity/number_format.hpp"
#include "core/quantity/units.hpp"
#include "core/result/measured.hpp"
#include "core/result/method.hpp"

/// The numbers that slips put in place of the right ones. A factor of 1, a density or molar mass of 0 and no way of
/// writing mean that the step has no such slip.

namespace overwater {

constexpr double slip_factor(Method::VolumeScale way) {
    switch (way) {
        case Method::VolumeScale::thousandfold: return 1e3;
        case Method::VolumeScale::thousandth: return 1e-3;
        default: return 1.0;
    }
}

constexpr double slip_factor(Method::Vapour way) {
    switch (way) {
        case Method::Vapour::kilopascal_as_millimetre: return millimetre_of_mercury.factor / kilopascal.factor;
        case Method::Vapour::millimetre_as_kilopascal: return kilopascal.factor / millimetre_of_mercury.factor;
        case Method::Vapour::hectopascal_as_millimetre: return millimetre_of_mercury.factor / hectopascal.factor;
        case Method::Vapour::millimetre_as_hectopascal: return hectopascal.factor / millimetre_of_mercury.factor;
        default: return 1.0;
    }
}

/// By how many degrees the row of the table is missed.
constexpr double slip_in_rows(Method::Vapour way) {
    switch (way) {
        case Method::Vapour::row_above: return 1.0;
        case Method::Vapour::row_below: return -1.0;
        case Method::Vapour::five_degrees_above: return 5.0;
        case Method::Vapour::five_degrees_below: return -5.0;
        default: return 0.0;
    }
}

constexpr double slip_factor(Method::Barometer way) {
    switch (way) {
        case Method::Barometer::inch_as_millimetre: return millimetre_of_mercury.factor / inch_of_mercury.factor;
        case Method::Barometer::inch_as_kilopascal: return kilopascal.factor / inch_of_mercury.factor;
        case Method::Barometer::millimetre_as_kilopascal: return kilopascal.factor / millimetre_of_mercury.factor;
        case Method::Barometer::kilopascal_as_millimetre: return millimetre_of_mercury.factor / kilopascal.factor;
        case Method::Barometer::hectopascal_as_millimetre: return millimetre_of_mercury.factor / hectopascal.factor;
        case Method::Barometer::millimetre_as_hectopascal: return hectopascal.factor / millimetre_of_mercury.factor;
        default: return 1.0;
    }
}

constexpr double slip_factor(Method::ColumnSize way) {
    switch (way) {
        case Method::ColumnSize::tenth: return 0.1;
        case Method::ColumnSize::tenfold: return 10.0;
        case Method::ColumnSize::hundredth: return 0.01;
        default: return 1.0;
    }
}

/// kg/m³ in place of the water's density. 1 mm of water is 1/13.6 mmHg in many schools (standards.md, section 6).
constexpr double other_density(Method::ColumnSize way) {
    switch (way) {
        case Method::ColumnSize::water_as_mercury: return conventional_mercury_density.si();
        case Method::ColumnSize::by_13_6: return conventional_mercury_density.si() / 13.6;
        case Method::ColumnSize::density_1000: return 1000.0;
        default: return 0.0;
    }
}

constexpr double slip_factor(Method::Mass way) {
    switch (way) {
        case Method::Mass::thousandfold: return 1e3;
        case Method::Mass::thousandth: return 1e-3;
        case Method::Mass::hundredfold: return 1e2;
        case Method::Mass::hundredth: return 1e-2;
        case Method::Mass::tenfold: return 10.0;
        case Method::Mass::tenth: return 0.1;
        default: return 1.0;
    }
}

/// kg/mol in place of the metal's molar mass: 2.016 g/mol is H2, 54.938 g/mol manganese (IUPAC/CIAAW 2021, abridged).
constexpr double wrong_molar_mass(Method::MolarMass way, const Setup& setup) {
    switch (way) {
        case Method::MolarMass::atomic_number: return 1e-3 * setup.atomic_number;
        case Method::MolarMass::of_salt: return setup.molar_mass_of_salt;
        case Method::MolarMass::of_hydrogen: return 2.016e-3;
        case Method::MolarMass::of_manganese: return 54.938e-3;
        default: return 0.0;
    }
}

constexpr double slip_factor(Method::Amount way) {
    switch (way) {
        case Method::Amount::thousandfold: return 1e3;
        case Method::Amount::tenfold: return 10.0;
        case Method::Amount::tenth: return 0.1;
        default: return 1.0;
    }
}

constexpr double ratio_by(Method::GasRatio way, double right) {
    switch (way) {
        case Method::GasRatio::half: return 0.5 * right;
        case Method::GasRatio::twice: return 2.0 * right;
        case Method::GasRatio::one: return 1.0;
        case Method::GasRatio::upside_down: return 1.0 / right;
        default: return right;
    }
}

/// Pa. The other of the two standard pressures, 1 atm for any of one's own.
constexpr double standard_pressure_by(Method::Standard way, double right) {
    switch (way) {
        case Method::Standard::other_pressure:
            return right == standard_atmosphere.si() ? standard_state_pressure.si() : standard_atmosphere.si();
        case Method::Standard::rounded: return right == standard_atmosphere.si() ? 101300.0 : right;
        default: return right;
    }
}

/// m³/mol in place of the accepted value.
constexpr double wrong_accepted(Method::Accepted way) {
    switch (way) {
        case Method::Accepted::at_room: return 24.0e-3;
        case Method::Accepted::at_standard: return 22.4e-3;
        default: return 0.0;
    }
}

inline double mirrored_in_millilitres(double volume, bool beyond) {
    const double reading = round_to_place(volume / millilitre.factor, -9);
    const double below = std::floor(reading);
    if (reading == below) return volume;
    return (beyond ? 2.0 * below + 2.0 - reading : 2.0 * below + 1.0 - reading) * millilitre.factor;
}

using Writing = double (*)(double);

/// The scale is numbered at every millilitre; a value in m³.
constexpr Writing writing(Method::Reading way) {
    switch (way) {
        case Method::Reading::mirrored_beyond: return [](double v) { return mirrored_in_millilitres(v, true); };
        case Method::Reading::mirrored_within: return [](double v) { return mirrored_in_millilitres(v, false); };
        default: return nullptr;
    }
}

constexpr Writing writing(Method::Mass way) {
    switch (way) {
        case Method::Mass::one_figure: return [](double v) { return to_figures(v, 1); };
        case Method::Mass::one_figure_cut: return [](double v) { return cut_to_figures(v, 1); };
        default: return nullptr;
    }
}

constexpr Writing writing(Method::Amount way) {
    switch (way) {
        case Method::Amount::one_figure: return [](double v) { return to_figures(v, 1); };
        case Method::Amount::one_figure_cut: return [](double v) { return cut_to_figures(v, 1); };
        case Method::Amount::two_figures: return [](double v) { return to_figures(v, 2); };
        case Method::Amount::two_figures_cut: return [](double v) { return cut_to_figures(v, 2); };
        case Method::Amount::minus_lost: return power_without_minus;
        default: return nullptr;
    }
}

constexpr Writing writing(Method::Accepted way) {
    switch (way) {
        case Method::Accepted::three_figures: return [](double v) { return to_figures(v, 3); };
        case Method::Accepted::four_figures: return [](double v) { return to_figures(v, 4); };
        default: return nullptr;
    }
}

}  // namespace overwater
