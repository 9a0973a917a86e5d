#pragma once

#include "core/bench/readings.hpp"
#include "core/lesson/plan_sheet.hpp"
#include "core/result/doubt.hpp"

/// The model of result/ run backwards: not from gas to molar volume, but from metal to the gas that will be there. There
/// is no second formula: the mark is sought at which the model, given the accepted molar volume, finds as much gas as
/// the metal gives.

namespace overwater {

/// What is expected at one place of the scale. SI units.
struct PlanPoint {
    double mass = 0;           ///< kg of metal as weighed
    double ribbon_length = 0;  ///< m; 0 where no mass per metre is known
    double share = 0;          ///< of the scale that the gas fills
    double gas_volume = 0;     ///< m³, end space included
    double scale_reading =
        0;  ///< m³, as the scale is numbered; outside 0 to capacity where the gas passes the last mark
    double level_difference = 0;  ///< m
    double pressure_at_bench = 0;
    double vapour_pressure = 0;
    double dry_gas_pressure = 0;
    double amount_of_gas = 0;  ///< mol
};

/// What nature does, whatever a class agrees on: vapour by the formula, the full molar mass, a conversion. The gas is
/// ideal unless the class takes it as real (0.06 % more).
Conventions nature(const Conventions& conventions);

/// The sheet of a run with the readings still to be taken filled in, so that the model can run: tube, room, metal,
/// levels as planned, the scale at half of its capacity. Where there is no barometer but a height, the air is that of
/// the standard atmosphere. Without mass and without acid.
Entries bench_sheet(const PlanSheet& sheet);
/// No barometer, but a height above sea level.
bool by_standard_atmosphere(const Entries& bench);
/// The liquid stands higher inside, by nobody knows yet how much: it then hangs down to the water outside.
bool liquid_hangs(const Entries& bench);

Assessment assess_sheet(const Entries& entries, const Conventions& conventions);

class PlanModel {
public:
    /// `bench` is of a sheet made by `bench_sheet` with a mass, assessed by `nature`.
    PlanModel(Assessment bench, bool hangs);

    const Assessment& bench() const { return all_; }
    /// Numbers of the model may be changed: a room that is warmer, a mass that is larger.
    Measured<double>& measured() { return all_.measured; }
    /// Takes the numbers of `shifted`, which is `doubts` with some of its numbers moved.
    void take(const Doubts& shifted, const Doubts& doubts);

    /// Volume of scale, in m³ from the mark at the closed end, that the gas of the metal fills. Beyond the capacity
    /// where the scale is too short; infinite where no room would hold it.
    double fill();
    /// Amount of gas in mol that fills the scale so far.
    double gas_at(double fill);
    /// Amount of gas in mol that the metal gives.
    double gas_of_metal() const;
    /// Mass of metal in kg that gives so much gas; the mass is weighed.
    double mass_for(double gas);
    /// What is expected with the gas at `fill`; mass and ribbon are the caller's.
    PlanPoint at(double fill);

private:
    double capacity() const { return all_.readings[Field::tube_capacity].base; }
    Outcome<double> run_at(double fill);

    Assessment all_;
    bool hangs_;
    double level_shift_ = 0;  ///< m, on top of what hangs
};

}  // namespace overwater
