// The school rule for figures, number by number (method.md, section 5): sums keep the coarsest place, products the fewest
// figures; what is exact does not count.

#include <doctest/doctest.h>

#include <cmath>

#include "core/explain/figures.hpp"
#include "core/explain/working.hpp"
#include "tests/core/check_support.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

Precision to(double resolution) { return {false, resolution}; }

double last_digit_of(const Sheet& sheet, Output output, const Conventions& conventions = {}) {
    const Assessment run = sheet.by(conventions).assessed();
    const Working working(run, conventions);
    const auto figured = figures_through(working.trace(), run.readings, false);
    const std::int32_t index = working.trace().step(output);
    REQUIRE(index >= 0);
    return figured[static_cast<std::size_t>(index)].precision.resolution;
}

int figures_of_step(const Sheet& sheet, Output output, const Conventions& conventions = {}) {
    const Assessment run = sheet.by(conventions).assessed();
    const Working working(run, conventions);
    REQUIRE(working.step(output) != nullptr);
    return working.step(output)->figures;
}

}  // namespace

TEST_CASE("figures of a number are counted from its first digit to its last") {
    CHECK(figures_of(to(0.01), 22.68) == 4);
    CHECK(figures_of(to(0.1), 0.1) == 1);
    CHECK(figures_of(to(0.001), 1) == 4);
    CHECK(figures_of(to(0.001), 0.999) == 3);
    CHECK(figures_of(to(1), -748) == 3);
    CHECK(figures_of(to(1e-7), 4.12e-5) == 3);
    // A power of ten from a division may come out a hair below it.
    CHECK(figures_of(to(0.1), 1000 * (1 - 1e-13)) == 5);
    // At least one, and of an exact number fifteen: as many as a decimal number has here.
    CHECK(figures_of(to(1), 0.2) == 1);
    CHECK(figures_of(to(1), 1) == 1);
    CHECK(figures_of({}, 22.68) == 15);
    CHECK(figures_of(to(1), 0) == 15);
    CHECK(figures_of(to(1e-30), 1) == 15);
    CHECK(figures_of(to(5e-324), 1) == 15);
}

TEST_CASE("decimals that show so many figures") {
    CHECK(decimals_for(22.68, 3) == 1);
    CHECK(decimals_for(22.68, 2) == 0);
    CHECK(decimals_for(22.68, 1) == 0);
    CHECK(decimals_for(0.0412, 3) == 4);
    CHECK(decimals_for(0.1, 1) == 1);
    CHECK(decimals_for(1, 1) == 0);
    CHECK(decimals_for(1, 4) == 3);
    CHECK(decimals_for(1e-9, 15) == 12);
    CHECK(decimals_for(-0.5, 2) == 2);
    CHECK(decimals_for(0, 3) == 0);
    CHECK(decimals_for(INFINITY, 3) == 0);
}

TEST_CASE("a table's digits: 10 Pa of vapour, 0.1 kg/m³ of water") {
    // Tables of 0.1 torr and of 0.01 kPa; of four decimals of a g/mL (method.md, section 5).
    CHECK(last_digit_of(record_a(), Output::water_vapour_pressure) == doctest::Approx(10));
    CHECK(figures_of_step(record_a(), Output::water_vapour_pressure) == 3);  // 2.55 kPa
    CHECK(last_digit_of(record_a(), Output::water_density) == doctest::Approx(0.1));
    CHECK(figures_of_step(record_a(), Output::water_density) == 4);  // 997.9
    Conventions table;
    table.vapour = Conventions::Vapour::table;
    CHECK(last_digit_of(record_a(), Output::water_vapour_pressure, table) == doctest::Approx(10));
}

TEST_CASE("sums keep the coarsest place, products the fewest figures") {
    // 50 - 9.15 + 2.35 mL: hundredths, the 50 is a number printed at a mark.
    CHECK(last_digit_of(record_a(), Output::gas_volume) == doctest::Approx(1e-8));
    CHECK(last_digit_of(record_a().with({{Field::scale_reading, "9.2"}}), Output::gas_volume) == doctest::Approx(1e-7));
    CHECK(last_digit_of(record_a().with({{Field::end_space, "2.4"}}), Output::gas_volume) == doctest::Approx(1e-7));
    CHECK(last_digit_of(record_a(), Output::absolute_temperature) == doctest::Approx(0.1));
    // 99.62 kPa, 2.55 kPa, 1.10 kPa of 112 mm: 10 Pa.
    CHECK(last_digit_of(record_a(), Output::dry_gas_pressure) == doctest::Approx(10));
    CHECK(figures_of_step(record_a(), Output::dry_gas_pressure) == 4);
    CHECK(figures_of_step(record_a(), Output::column_pressure) == 3);
    CHECK(figures_of_step(record_a().with({{Field::level_difference, "90"}}), Output::column_pressure) == 2);
    CHECK(figures_of_step(record_a(), Output::amount_of_metal) == 3);
    CHECK(figures_of_step(record_a().with({{Field::purity, "98"}}), Output::amount_of_metal) == 2);
    CHECK(figures_of_step(record_a().with({{Field::purity, "100"}}), Output::amount_of_metal) == 3);
    // Water weighed for the end space: 2.35 g to a hundredth are hundredths of a millilitre too, near enough.
    CHECK(last_digit_of(record_a().with({{Field::end_space, "2.35 g"}}), Output::gas_volume) ==
          doctest::Approx(1e-8).epsilon(0.01));
    // The bore makes a small correction, whose digits no class counts.
    CHECK(last_digit_of(record_a().with({{Field::tube_bore, "13"}}), Output::gas_volume) == doctest::Approx(1e-8));
}

TEST_CASE("where steps are rounded, each keeps one digit more than is significant") {
    const Assessment run = record_a().assessed();
    const Working working(run, {});
    const auto rounded = figures_through(working.trace(), run.readings, true);
    const auto at = [&](Output output) {
        return rounded[static_cast<std::size_t>(working.trace().step(output))].value;
    };
    // method.md, section 8, record A: 1.695 mmol of 1.69512 (three figures and one), 997.91 kg/m³ of 997.907, 2.550 kPa.
    CHECK(at(Output::amount_of_metal) == doctest::Approx(1.695e-3).epsilon(1e-12));
    CHECK(at(Output::water_density) == doctest::Approx(997.91).epsilon(1e-12));
    CHECK(at(Output::water_vapour_pressure) == doctest::Approx(2550).epsilon(1e-12));
}

TEST_CASE("a trace finds its steps, and says -1 of one that was not computed") {
    Trace trace;
    CHECK(trace.step(Output::gas_volume) == -1);
    TraceNode step;
    step.kind = TraceNode::Kind::step;
    step.output = Output::gas_volume;
    trace.add(step);
    CHECK(trace.step(Output::gas_volume) == 0);
    CHECK(trace.step(Output::mass) == -1);
    trace.add(step);
    CHECK(trace.step(Output::gas_volume) == 1);  // the last of that name
    CHECK_FALSE(limiting_input(trace, Readings{}, Output::mass).has_value());
}

TEST_CASE("a computation is computed anew from its leaves, whatever it is made of") {
    Trace trace;
    const Traced six = Traced::input(trace, Input::temperature, 6);
    const Traced four = Traced::input(trace, Input::barometer, 4);
    const auto anew = [&trace](const Traced& value) { return recomputed(trace, value.index()); };
    CHECK(anew(six + four) == 10);
    CHECK(anew(six - four) == 2);
    CHECK(anew(six * four) == 24);
    CHECK(anew(six / four) == 1.5);
    CHECK(anew(-six) == -6);
    CHECK(anew(sqrt(four)) == 2);
    CHECK(anew(exp(four)) == doctest::Approx(54.598150033144236));
    CHECK(anew(pow(four, 3)) == 64);
    CHECK(anew(min(six, four)) == 4);
    CHECK(anew(min(four, six)) == 4);
    CHECK(anew(named_step(Output::mass, six)) == 6);
    CHECK(anew(looked_up(Function::water_density, six, four)) == 4);
    // What somebody stated stands, with the value of its last digit.
    const Traced stated = Traced::stated(trace, Output::mass, 0.0412, 0.0001);
    CHECK(anew(stated) == 0.0412);
    const auto figured = figures_through(trace, Readings{}, false);
    CHECK(figured[static_cast<std::size_t>(stated.index())].precision.resolution == 0.0001);
}
