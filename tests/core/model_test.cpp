#include <doctest/doctest.h>

#include <cstdint>
#include <random>

#include "core/matter/constants.hpp"
#include "core/matter/vapour_table.hpp"
#include "core/result/dual.hpp"
#include "core/result/evaluate.hpp"
#include "core/result/pack.hpp"
#include "core/result/traced.hpp"

using namespace overwater;

namespace {

/// Readings of an ordinary run, drawn within what a bench gives.
Measured<double> random_run(std::mt19937_64& generator, Apparatus apparatus) {
    const auto between = [&](double low, double high) {
        return low + (high - low) * static_cast<double>(generator() >> 11) * 0x1p-53;
    };
    const auto one_of = [&](unsigned n) { return static_cast<unsigned>(generator() % n); };
    Measured<double> m;
    m.setup.closed_end = one_of(2) == 0 ? ClosedEnd::zero : ClosedEnd::largest;
    m.setup.liquid_stands = static_cast<LiquidStands>(1 + one_of(3));
    m.setup.acid_limits = one_of(2) == 0;
    m.setup.gas_per_sample = one_of(2) == 0 ? 1.0 : 1.5;
    m.setup.acid_per_sample = one_of(2) == 0 ? 2.0 : 3.0;
    m.setup.standard_celsius = one_of(2) == 0 ? 0.0 : 25.0;
    m.setup.standard_pressure = one_of(2) == 0 ? 100000.0 : 101325.0;
    m.setup.vapour = static_cast<VapourFrom>(one_of(4));
    m.setup.mass_from = static_cast<MassFrom>(one_of(3));
    m.setup.start = static_cast<Start>(one_of(3));
    m.setup.start_level_known = one_of(2) == 0;
    m.setup.ring_known = one_of(2) == 0;
    m.setup.pressure_kind = static_cast<PressureKind>(one_of(4));
    m.setup.mercury_to_zero = between(0.994, 1.0);
    m.setup.gravity_to_standard = between(0.997, 1.003);
    m.setup.apparatus = apparatus;
    m.setup.gas = static_cast<Gas>(one_of(gas_count));
    m.setup.second_molar_mass = 65.38e-3;
    m.setup.gas_per_second = one_of(2) == 0 ? 1.0 : 0.5;
    m.setup.converted = one_of(2) == 0;
    m.setup.real_gas = one_of(2) == 0;
    m.setup.accepted_typed = one_of(2) == 0;
    if (one_of(2) == 0) m.setup.present.add(Field::end_space);
    for (const Field field : {Field::purity, Field::tube_factor, Field::injected_volume, Field::acid_volume,
                              Field::water_activity}) {
        if (one_of(3) == 0) m.setup.present.add(field);
    }
    m[Input::tube_factor] = between(0.97, 1.03);
    m[Input::injected_volume] = between(1e-7, 8e-7);
    m[Input::flask_volume] = between(1.2e-4, 3e-4);
    m[Input::displaced_mass] = between(0.02, 0.1);
    m[Input::pressure_after] = between(115000, 140000);
    m[Input::water_activity] = between(0.7, 1.0);
    m[Input::mass_of_metal] = between(2e-5, 2e-4);
    m[Input::mass_before] = between(1.2e-3, 1.3e-3);
    m[Input::mass_after] = between(1.0e-3, 1.1e-3);
    m[Input::ribbon_length] = between(0.02, 0.06);
    m[Input::mass_per_metre] = between(0.8e-3, 1.4e-3);
    m[Input::start_reading] = between(4.6e-5, 4.9e-5);
    m[Input::starting_bubble] = between(1e-7, 2e-6);
    m[Input::start_level_difference] = between(0, 0.3);
    m[Input::height_above_sea_level] = between(1, 2500);
    m[Input::outdoor_temperature] = between(-10, 35);
    m[Input::vapour_value] = between(1500, 4000);
    m[Input::accepted_value] = between(0.022, 0.025);
    m[Input::meniscus_ring] = between(5e-8, 5e-7);
    m.setup.vapour_looked_up_at = between(15, 30);
    m[Input::purity] = between(0.9, 1.0);
    m[Input::acid_volume] = between(1e-6, 2e-5);
    m[Input::acid_concentration] = between(200, 6000);
    m[Input::tube_capacity] = one_of(2) == 0 ? 5e-5 : 1e-4;
    m[Input::end_space] = between(0, 4e-6);
    m[Input::scale_reading] = between(1e-6, 4.5e-5);
    m[Input::level_difference] = between(0, 0.3);
    m[Input::temperature] = between(5, 40);
    m[Input::barometer] = between(60000, 105000);
    m[Input::molar_mass] = between(0.02, 0.07);
    m[Input::gravity] = standard_gravity.si();
    return m;
}

Method random_method(std::mt19937_64& generator) {
    const auto one_of = [&](unsigned n) { return static_cast<unsigned>(generator() % n); };
    Method method;
    method.volume = static_cast<Method::Volume>(one_of(9));
    method.reading = static_cast<Method::Reading>(one_of(3));
    method.volume_scale = static_cast<Method::VolumeScale>(one_of(3));
    method.vapour = static_cast<Method::Vapour>(one_of(11));
    method.vapour_use = static_cast<Method::VapourUse>(one_of(3));
    method.barometer = static_cast<Method::Barometer>(one_of(10));
    method.column = static_cast<Method::Column>(one_of(3));
    method.column_size = static_cast<Method::ColumnSize>(one_of(7));
    method.mass = static_cast<Method::Mass>(one_of(10));
    method.molar_mass = static_cast<Method::MolarMass>(one_of(6));
    method.amount = static_cast<Method::Amount>(one_of(9));
    method.gas_ratio = static_cast<Method::GasRatio>(one_of(5));
    method.circular = static_cast<Method::Circular>(one_of(4));
    method.temperature = static_cast<Method::Temperature>(one_of(4));
    method.conversion = static_cast<Method::Conversion>(one_of(10));
    method.standard = static_cast<Method::Standard>(one_of(4));
    method.gas_law = static_cast<Method::GasLaw>(one_of(3));
    method.accepted = static_cast<Method::Accepted>(one_of(6));
    method.percent_error = static_cast<Method::PercentError>(one_of(5));
    return method;
}

std::uint64_t bits(double value) {
    std::uint64_t out = 0;
    static_assert(sizeof out == sizeof value);
    __builtin_memcpy(&out, &value, sizeof value);
    return out;
}

}  // namespace

TEST_CASE("every number type computes the same value to the last bit, and so does the traced tree") {
    std::mt19937_64 generator(20260131);
    constexpr std::size_t lanes = 8;
    for (int round = 0; round < 1000; ++round) {
        // Each vessel in turn, by the right method and by wrong ones.
        const auto apparatus = static_cast<Apparatus>(round / 2 % static_cast<int>(apparatus_count));
        CAPTURE(name_of(apparatus));
        const Measured<double> run = random_run(generator, apparatus);
        const Method method = round % 2 == 0 ? Method{} : random_method(generator);
        const OutputSet all = OutputSet::all();
        const auto plain = evaluate(run, method, all);
        const auto dual = evaluate(run.lifted<Dual<input_count>>([](Input i, double v) {
                                       return Dual<input_count>::input(v, static_cast<std::size_t>(i));
                                   }),
                                   method, all);
        const auto pack =
            evaluate(run.lifted<Pack<lanes>>([](Input, double v) { return Pack<lanes>(v); }), method, all);
        Trace trace;
        const auto traced = evaluate(
            run.lifted<Traced>([&](Input i, double v) { return Traced::input(trace, i, v); }), method, all);
        for (std::size_t i = 0; i < output_count; ++i) {
            const auto output = static_cast<Output>(i);
            CAPTURE(name_of(output));
            REQUIRE(bits(dual[output].value()) == bits(plain[output]));
            for (std::size_t lane = 0; lane < lanes; ++lane) REQUIRE(bits(pack[output][lane]) == bits(plain[output]));
            REQUIRE(bits(traced[output].value()) == bits(plain[output]));
            REQUIRE(trace.step(output) >= 0);
            REQUIRE(bits(recomputed(trace, trace.step(output))) == bits(plain[output]));
        }
    }
}

TEST_CASE("the sensitivities of the dual numbers agree with difference quotients") {
    std::mt19937_64 generator(7);
    for (int round = 0; round < 100; ++round) {
        const auto apparatus = static_cast<Apparatus>(round % static_cast<int>(apparatus_count));
        CAPTURE(name_of(apparatus));
        const Measured<double> run = random_run(generator, apparatus);
        const OutputSet all = OutputSet::all();
        const auto dual = evaluate(run.lifted<Dual<input_count>>([](Input i, double v) {
                                       return Dual<input_count>::input(v, static_cast<std::size_t>(i));
                                   }),
                                   Method{}, all);
        for (std::size_t i = 0; i < input_count; ++i) {
            const double step = 1e-6 * run.base[i];
            Measured<double> up = run;
            Measured<double> down = run;
            up.base[i] += step;
            down.base[i] -= step;
            const double slope = (evaluate(up, Method{}, all)[Output::molar_volume_standard] -
                                  evaluate(down, Method{}, all)[Output::molar_volume_standard]) /
                                 (up.base[i] - down.base[i]);
            const double scale = dual[Output::molar_volume_standard].value() / run.base[i];
            CAPTURE(i);
            CHECK(dual[Output::molar_volume_standard].slope(i) / scale ==
                  doctest::Approx(slope / scale).epsilon(1e-6).scale(1));
        }
    }
}

/// Record A of the method (invented).
Measured<double> record_a() {
    Measured<double> run;
    run.setup.closed_end = ClosedEnd::largest;
    run.setup.liquid_stands = LiquidStands::higher_inside;
    run.setup.present = FieldSet::of(Field::end_space);
    run[Input::mass_of_metal] = 0.0412e-3;
    run[Input::tube_capacity] = 50e-6;
    run[Input::end_space] = 2.35e-6;
    run[Input::scale_reading] = 9.15e-6;
    run[Input::level_difference] = 0.112;
    run[Input::temperature] = 21.4;
    run[Input::barometer] = 99620;
    run[Input::molar_mass] = 24.305e-3;
    run[Input::gravity] = 9.80665;
    return run;
}

TEST_CASE("record A with the 0.1 torr table, interpolated to 19.1 torr") {
    Measured<double> run = record_a();
    run.setup.vapour = VapourFrom::looked_up;
    run.setup.vapour_looked_up_at = 21.4;
    run[Input::vapour_value] = *vapour_from_table(VapourTable::rounded_formula, BetweenRows::interpolated, 21.4);
    const auto outcome = evaluate(run, Method{}, OutputSet::all());
    // method.md, table of record A.
    CHECK(outcome[Output::molar_volume_standard] * 1e3 == doctest::Approx(22.6826).epsilon(0.00005 / 22.6826));
}

TEST_CASE("record A: the relative slope by temperature has the size the method names") {
    // method.md, section 2: d ln V_m/dT = -0.502 %/K, computed independently with IF97 and the CIPM density.
    const Measured<double> run = record_a();
    const auto dual = evaluate(run.lifted<Dual<input_count>>([](Input i, double v) {
                                   return Dual<input_count>::input(v, static_cast<std::size_t>(i));
                               }),
                               Method{}, OutputSet::all());
    const auto& volume = dual[Output::molar_volume_standard];
    CHECK(volume.value() == doctest::Approx(22.6818e-3).epsilon(0.00005 / 22.6818));
    CHECK(100 * volume.slope(static_cast<std::size_t>(Input::temperature)) / volume.value() ==
          doctest::Approx(-0.502).epsilon(0.0005 / 0.502));
}
