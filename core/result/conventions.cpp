#include "core/result/conventions.hpp"

#include "core/quantity/units.hpp"

namespace overwater {

StandardState standard_state(const Conventions& conventions) {
    const auto one_atmosphere = Pressure::from(1.0, atmosphere);
    const auto hundred_kilopascal = Pressure::from(100.0, kilopascal);
    switch (conventions.standard) {
        case StandardConditions::zero_celsius_1_atmosphere: return {Temperature<>::celsius(0), one_atmosphere};
        case StandardConditions::twenty_celsius_1_atmosphere: return {Temperature<>::celsius(20), one_atmosphere};
        case StandardConditions::twenty_five_celsius_100_kilopascal:
            return {Temperature<>::celsius(25), hundred_kilopascal};
        case StandardConditions::twenty_five_celsius_1_atmosphere: return {Temperature<>::celsius(25), one_atmosphere};
        case StandardConditions::own:
            return {Temperature<>::celsius(conventions.own_celsius), Pressure::si(conventions.own_pressure)};
        case StandardConditions::zero_celsius_100_kilopascal:
        case StandardConditions::count: break;
    }
    return {Temperature<>::celsius(0), hundred_kilopascal};
}

UnitId named_unit(UnitId unit, Conventions::VolumeUnit by) {
    if (by == Conventions::VolumeUnit::mL) return unit;
    switch (unit) {
        case UnitId::millilitre: return UnitId::cubic_centimetre;
        case UnitId::litre: return UnitId::cubic_decimetre;
        case UnitId::litre_per_mole: return UnitId::cubic_decimetre_per_mole;
        case UnitId::mole_per_litre: return UnitId::mole_per_cubic_decimetre;
        default: return unit;
    }
}

}  // namespace overwater
