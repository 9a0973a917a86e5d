#pragma once

#include <cstdint>

/// How each step is done. The first value of each enumeration is the right way; what follows are accepted routes, where
/// the docstring says so, and slips that people really make. The right method is one point of this space and each slip
/// is another, computed by the same model. What a slip is called and how common it is: core/lesson/slip.hpp.

namespace overwater {

struct Method {
    enum class Volume : std::uint8_t {
        right,
        reading_taken_as_gas,  ///< an upside-down scale read as if 0 were at the closed end: reading + end space
        reading_alone,         ///< the same, and the end space forgotten
        end_space_ignored,
        end_space_subtracted,
        end_space_added_to_difference,  ///< though a start reading on the scale has taken it away
        start_ignored,                  ///< the gas there at the start is counted as the metal's
        injected_ignored,               ///< the air that the liquid injected drove over is counted as gas
        counted_from_capacity,          ///< a scale with 0 at the closed end read as an upside-down one
        ring_ignored                    ///< accepted route: the meniscus of the inverted scale left alone
    };
    /// Between two numbers of a scale that runs the other way, the tenths are counted from the wrong one.
    enum class Reading : std::uint8_t {
        right,
        mirrored_beyond,  ///< 14.4 for 13.6 mL: counted on from the number that is reached first
        mirrored_within   ///< 13.4 for 13.6 mL
    };
    enum class VolumeScale : std::uint8_t { right, thousandfold, thousandth };  ///< mL taken as L, or L as mL
    /// How the vapour pressure is looked up; and whether, and with which sign, it is taken from the gas.
    enum class Vapour : std::uint8_t {
        right,
        celsius_number,                  ///< as many mmHg as degrees Celsius
        kilopascal_as_millimetre,        ///< the number of kPa taken for mmHg
        millimetre_as_kilopascal,
        hectopascal_as_millimetre,
        millimetre_as_hectopascal,
        row_above,                       ///< the value of one degree more
        row_below,
        five_degrees_above,
        five_degrees_below,
        of_25_celsius
    };
    enum class VapourUse : std::uint8_t { subtracted, ignored, added };
    enum class Barometer : std::uint8_t {
        right,
        one_atmosphere,           ///< never read: 1 atm
        one_bar,                  ///< never read: 100 kPa
        not_reduced,              ///< a sea-level pressure taken for that at the bench
        inch_as_millimetre,       ///< the number of inHg taken for mmHg
        inch_as_kilopascal,
        millimetre_as_kilopascal,
        kilopascal_as_millimetre,
        hectopascal_as_millimetre,
        millimetre_as_hectopascal
    };
    enum class Column : std::uint8_t { right, ignored, wrong_side };
    enum class ColumnSize : std::uint8_t {
        right,
        water_as_mercury,  ///< mm of water taken for mmHg
        tenth,             ///< cm put where mm belong
        tenfold,           ///< mm put where cm belong
        hundredth,         ///< g of the SI with the other quantities in cm and g
        by_13_6,           ///< accepted route: h/13.6 in mmHg
        density_1000       ///< accepted route: 1000 kg/m³
    };
    enum class Mass : std::uint8_t {
        right,
        thousandfold,  ///< g taken for kg, mg for g ...
        thousandth,
        hundredfold,   ///< cm taken for m ...
        hundredth,
        tenfold,       ///< a zero lost, mm taken for cm
        tenth,
        nominal_ribbon,  ///< 1.0 g/m whatever the ribbon weighs
        one_figure,      ///< rounded to one figure
        one_figure_cut
    };
    enum class MolarMass : std::uint8_t {
        right,
        atomic_number,
        of_salt,
        of_hydrogen,   ///< 2.016 g/mol
        of_manganese,  ///< 54.938 g/mol: Mn for Mg
        doubled        ///< weighed with the 2 of the equation
    };
    enum class Amount : std::uint8_t {
        right,
        one_figure,      ///< 0.00165 mol rounded to 0.002
        one_figure_cut,  ///< 0.00158 mol cut to 0.001
        two_figures,
        two_figures_cut,
        thousandfold,  ///< mmol taken for mol
        tenfold,
        tenth,
        minus_lost     ///< 1.7 x 10^3 for 1.7 x 10^-3
    };
    /// Amount of gas where it is not taken from the metal: then the result says nothing.
    enum class Circular : std::uint8_t {
        right,
        by_gas_law,              ///< n = p V/(R T)
        by_accepted_value,       ///< the volume as collected, over the accepted molar volume
        by_volume_at_standard    ///< the converted volume over the accepted molar volume
    };
    enum class GasRatio : std::uint8_t { right, half, twice, one, upside_down };
    enum class Temperature : std::uint8_t {
        right,
        celsius,       ///< of the gas; the standard temperature in kelvin
        celsius_both,
        whole_kelvin   ///< accepted route: 273
    };
    enum class Conversion : std::uint8_t {
        right,
        temperature_upside_down,
        pressure_upside_down,
        both_upside_down,
        none,
        temperature_left_out,           ///< no factor for the temperature
        pressure_left_out,
        standard_temperature_dropped,   ///< divided by T, not multiplied by the standard temperature
        only_over_temperature,          ///< V/T and nothing else
        whole_pressure_in_place_of_dry  ///< the barometer's pressure where the dry gas's belongs
    };
    enum class Standard : std::uint8_t {
        right,
        other_pressure,     ///< 1 atm for 100 kPa, or the other way round
        other_temperature,  ///< 25 °C for 0 °C; else 0 °C
        rounded             ///< accepted route: 101.3 kPa
    };
    /// The gas law where the gas constant is used or found.
    enum class GasLaw : std::uint8_t {
        right,
        millimetre_with_atmosphere,  ///< mmHg with 0.0821 L atm/(mol K)
        tenfold                      ///< 0.821 for 0.0821
    };
    enum class Accepted : std::uint8_t {
        right,
        other_pressure,  ///< 22.41 for 22.71 L/mol, or the other way round
        at_room,         ///< 24.0 L/mol
        at_standard,     ///< 22.4 L/mol for gas as collected
        three_figures,   ///< accepted route: 22.4, 22.7
        four_figures     ///< accepted route: 22.41, 22.71
    };
    enum class PercentError : std::uint8_t {
        right,
        ratio,       ///< found/accepted
        over_found,  ///< divided by the found value
        sign_lost,   ///< turned round
        as_fraction  ///< not multiplied by 100
    };
    /// What is made of the amount of gas where that is known by its volume.
    enum class LastLine : std::uint8_t {
        right,
        other_share,  ///< of a purity or an alloy what is left to 100 %
        whole_mole    ///< of an equivalent mass that of a whole mole of hydrogen
    };

    Volume volume = Volume::right;
    Reading reading = Reading::right;
    VolumeScale volume_scale = VolumeScale::right;
    Vapour vapour = Vapour::right;
    VapourUse vapour_use = VapourUse::subtracted;
    Barometer barometer = Barometer::right;
    Column column = Column::right;
    ColumnSize column_size = ColumnSize::right;
    Mass mass = Mass::right;
    MolarMass molar_mass = MolarMass::right;
    Amount amount = Amount::right;
    GasRatio gas_ratio = GasRatio::right;
    Circular circular = Circular::right;
    Temperature temperature = Temperature::right;
    Conversion conversion = Conversion::right;
    Standard standard = Standard::right;
    GasLaw gas_law = GasLaw::right;
    Accepted accepted = Accepted::right;
    PercentError percent_error = PercentError::right;
    LastLine last_line = LastLine::right;
};

/// The right method as a type: where no other is asked for, the compiler leaves the slips out of the model.
struct RightMethod {
    static constexpr Method::Volume volume = Method::Volume::right;
    static constexpr Method::Reading reading = Method::Reading::right;
    static constexpr Method::VolumeScale volume_scale = Method::VolumeScale::right;
    static constexpr Method::Vapour vapour = Method::Vapour::right;
    static constexpr Method::VapourUse vapour_use = Method::VapourUse::subtracted;
    static constexpr Method::Barometer barometer = Method::Barometer::right;
    static constexpr Method::Column column = Method::Column::right;
    static constexpr Method::ColumnSize column_size = Method::ColumnSize::right;
    static constexpr Method::Mass mass = Method::Mass::right;
    static constexpr Method::MolarMass molar_mass = Method::MolarMass::right;
    static constexpr Method::Amount amount = Method::Amount::right;
    static constexpr Method::GasRatio gas_ratio = Method::GasRatio::right;
    static constexpr Method::Circular circular = Method::Circular::right;
    static constexpr Method::Temperature temperature = Method::Temperature::right;
    static constexpr Method::Conversion conversion = Method::Conversion::right;
    static constexpr Method::Standard standard = Method::Standard::right;
    static constexpr Method::GasLaw gas_law = Method::GasLaw::right;
    static constexpr Method::Accepted accepted = Method::Accepted::right;
    static constexpr Method::PercentError percent_error = Method::PercentError::right;
    static constexpr Method::LastLine last_line = Method::LastLine::right;
};

}  // namespace overwater
