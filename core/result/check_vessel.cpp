#include <cmath>

#include "core/matter/constants.hpp"
#include "core/quantity/units.hpp"
#include "core/result/sense_checks.hpp"

/// What the gas is collected in, what it loses to the water, and what its pressure would be without corrections.

namespace overwater {

namespace {

/// A gas of which water takes up more than a fifth of its own volume is lost in earnest: carbon dioxide, and none of the
/// others here (common practice, no source).
constexpr double soluble = 0.2;

void solubility(Remarks& remarks) {
    const Setup& setup = remarks.setup();
    if (!remarks.readings().sample && setup.target != Target::gas_molar_mass) return;
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

/// What a weather report's pressure, or a mercury column as it stands, would do to the result if it were taken for the
/// pressure at the bench.
void uncorrected(Remarks& remarks) {
    const Assessment& run = remarks.run();
    if (!run.has(Output::pressure_at_bench) || !run.has(Output::dry_gas_pressure)) return;
    const double above = run.measured[Input::barometer] - run.outcome[Output::pressure_at_bench];
    remarks.note(Field::barometer, Message{above < 0 ? "note.pressure_uncorrected_low" : "note.pressure_uncorrected_high"}.figures(
                                       "share", std::fabs(above) / run.outcome[Output::dry_gas_pressure], UnitId::percent, 2));
}

/// How much the vapour that the solution holds back is worth.
void activity(Remarks& remarks) {
    const Assessment& run = remarks.run();
    if (!remarks.usable(Field::water_activity) || !run.has(Output::dry_gas_pressure)) return;
    if (!is_taken_off(run.measured.setup.vapour)) return;
    const double vapour = run.outcome[Output::water_vapour_pressure];
    const double held_back = vapour / remarks.base(Field::water_activity) - vapour;
    remarks.note(Field::water_activity,
                 Message{"note.water_activity"}.figures("share", held_back / run.outcome[Output::dry_gas_pressure],
                                                        UnitId::percent, 2));
}

}  // namespace

void check_vessel(Remarks& remarks) {
    solubility(remarks);
    liquid(remarks);
    cautions(remarks);
    uncorrected(remarks);
    activity(remarks);
}

}  // namespace overwater
