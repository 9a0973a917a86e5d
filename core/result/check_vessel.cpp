#include <string>

#include "core/matter/constants.hpp"
#include "core/quantity/units.hpp"
#include "core/result/sense_checks.hpp"

/// What the gas is collected in, and what it loses to the water.

namespace overwater {

namespace {

/// A gas of which water takes up more than a fifth of its own volume is lost in earnest: carbon dioxide, and none of the
/// others here (common practice, no source).
constexpr double soluble = 0.2;

void solubility(Remarks& remarks) {
    const Setup& setup = remarks.setup();
    if (!remarks.readings().sample && setup.target != Target::gas_molar_mass) return;
    // In a syringe the gas meets the acid alone; over water and in a flask it meets all of the liquid.
    const double celsius = remarks.typed(Field::temperature) ? remarks.base(Field::temperature) : 20.0;
    const double volumes = volumes_dissolved(setup.gas, celsius + celsius_zero_in_kelvin);
    if (volumes < soluble) return;
    remarks.note(setup.target == Target::gas_molar_mass ? Field::gas : Field::metal,
                 Message{"note.soluble_gas"}.figures("volume", volumes * millilitre.factor, UnitId::millilitre, 2));
}

/// What stands in the flask is no room for the gas: each mL that was not taken off makes the result high by one mL's share.
void liquid(Remarks& remarks) {
    if (remarks.setup().apparatus != Apparatus::pressure_sensor || remarks.typed(Field::acid_volume)) return;
    const Assessment& all = remarks.run();
    if (!all.has(Output::gas_volume)) return;
    remarks.note(Field::acid_volume, Message{"note.liquid_blank"}.figures(
                                         "share", millilitre.factor / all.outcome[Output::gas_volume], UnitId::percent, 2));
}

void cautions(Remarks& remarks) {
    if (remarks.setup().apparatus == Apparatus::pressure_sensor) {
        remarks.note(Field::apparatus, Message{"note.closed_flask"});
    }
    if (remarks.readings().sample == Substance::potassium_chlorate) {
        remarks.note(Field::metal, Message{"note.chlorate"});
    }
}

}  // namespace

void check_vessel(Remarks& remarks) {
    solubility(remarks);
    liquid(remarks);
    cautions(remarks);
}

}  // namespace overwater
