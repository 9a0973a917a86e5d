// The doubt of a run: record A and the one-figure mass of the method, whose numbers were computed independently of this
// program; limits, digits, repeats.

#include <cmath>

#include "core/quantity/units.hpp"
#include "core/result/budget.hpp"
#include "core/result/verdict.hpp"
#include "doctest/doctest.h"
#include "tests/core/check_support.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

struct Sure {
    explicit Sure(const Sheet& sheet) : assessment(sheet.assessed()), doubts(doubts_of(assessment)), slopes(doubts) {}
    Budget budget(Output output = Output::molar_volume_standard) const { return budget_of(doubts, slopes, output); }
    Assessment assessment;
    Doubts doubts;
    Sensitivities slopes;
};

const BudgetRow* row_of(const Budget& budget, Input input, DoubtKind kind = DoubtKind::reading) {
    for (const BudgetRow& row : budget.rows) {
        if (row.doubt.input == input && row.doubt.kind == kind) return &row;
    }
    return nullptr;
}

double half_width(const Sheet& sheet, Input input, DoubtKind kind = DoubtKind::reading) {
    const Sure sure(sheet);
    for (const Doubt& doubt : sure.doubts.all()) {
        if (doubt.input == input && doubt.kind == kind) return doubt.high;
    }
    return 0;
}

}  // namespace

TEST_CASE("record A: the shares of the variance before the meniscus, and U") {
    // method.md, section 6: U(95 %) about 0.12 L/mol; temperature 28 %, end space 24 %, class limit 24 %, mass 13 %.
    const Budget budget = Sure(record_a()).budget();
    double variance = 0;
    for (const BudgetRow& row : budget.rows) {
        if (row.doubt.kind != DoubtKind::meniscus) variance += row.contribution * row.contribution;
    }
    const auto percent = [&](Input input, DoubtKind kind = DoubtKind::reading) {
        const BudgetRow* row = row_of(budget, input, kind);
        REQUIRE(row != nullptr);
        return 100 * row->contribution * row->contribution / variance;
    };
    CHECK(std::lround(percent(Input::temperature)) == 28);
    CHECK(std::lround(percent(Input::end_space)) == 24);
    CHECK(std::lround(percent(Input::scale_reading, DoubtKind::class_limit)) == 24);
    CHECK(std::lround(percent(Input::mass_of_metal)) == 13);
    CHECK(from_base(1.96 * std::sqrt(variance), UnitId::litre_per_mole) == doctest::Approx(0.12).epsilon(0.02));
    CHECK(std::isinf(budget.degrees));
    CHECK(budget.k == doctest::Approx(1.96).epsilon(0.001));
    double shares = 0;
    for (const BudgetRow& row : budget.rows) shares += row.share;
    CHECK(shares == doctest::Approx(1.0));
    for (std::size_t i = 1; i < budget.rows.size(); ++i) CHECK(budget.rows[i - 1].share >= budget.rows[i].share);
}

TEST_CASE("record A: one temperature for gas law, vapour and column") {
    // method.md, section 2: d ln V_m/dT = -0.502 %/K.
    const Budget budget = Sure(record_a()).budget();
    const BudgetRow* row = row_of(budget, Input::temperature);
    REQUIRE(row != nullptr);
    CHECK(100 * row->sensitivity / budget.value == doctest::Approx(-0.502).epsilon(0.001));
}

TEST_CASE("the doubtful model gives the values of the assessment") {
    for (const Sheet& sheet :
         {record_a(), record_a().with({{Field::liquid_stands, "level"}}),
          record_a().without(Field::end_space), record_a().with({{Field::start_reading, "49.2"}, {Field::end_space, ""}}),
          record_a().with({{Field::tube_bore, "13"}}),
          record_a().with({{Field::pressure_kind, "reduced_to_sea_level"}, {Field::height_above_sea_level, "240"}})}) {
        const Sure sure(sheet);
        for (std::size_t i = 0; i < output_count; ++i) {
            const auto output = static_cast<Output>(i);
            if (!sure.assessment.has(output)) continue;
            INFO(name_of(output));
            REQUIRE(sure.slopes.has(output));
            CHECK(sure.slopes.value(output) == doctest::Approx(sure.assessment.outcome[output]).epsilon(1e-13));
        }
    }
}

TEST_CASE("the meniscus row goes one way and moves the interval down") {
    // method.md, section 1: gas = scale volume - 2 rings; 0 to 0.25 mL for 50 mL, 0 to 0.45 mL for 100 mL.
    const Sure sure(record_a());
    const Budget budget = sure.budget();
    const BudgetRow* row = row_of(budget, Input::meniscus_ring, DoubtKind::meniscus);
    REQUIRE(row != nullptr);
    CHECK(row->doubt.low == 0);
    CHECK(2 * row->doubt.high == doctest::Approx(0.25e-6));
    // By hand: 0.125 mL of 43.20 mL on average.
    CHECK(budget.offset / budget.value == doctest::Approx(-0.125 / 43.20));
    const Sheet hundred = record_a().with({{Field::tube_capacity, "100"}, {Field::scale_reading, "59.15"}});
    CHECK(2 * half_width(hundred, Input::meniscus_ring, DoubtKind::meniscus) == doctest::Approx(0.45e-6));
    // With a start reading on the same scale the ring cancels.
    const Sheet started = record_a().with({{Field::start_reading, "49.2"}, {Field::end_space, ""}});
    CHECK(half_width(started, Input::meniscus_ring, DoubtKind::meniscus) == 0);
}

TEST_CASE("typed digits only widen") {
    CHECK(half_width(record_a(), Input::temperature) == doctest::Approx(0.5));
    CHECK(half_width(record_a().with({{Field::temperature, "21"}}), Input::temperature) == doctest::Approx(1.0));
    CHECK(half_width(record_a().with({{Field::temperature, "21.40"}}), Input::temperature) == doctest::Approx(0.5));
    CHECK(half_width(record_a().with({{Field::mass_of_metal, "0.041"}}), Input::mass_of_metal) == doctest::Approx(1e-6));
    CHECK(half_width(record_a().with({{Field::mass_of_metal, "0.0412"}}), Input::mass_of_metal) == doctest::Approx(1e-7));
    // 1 °F is 5/9 of 1 °C; 70.5 °F says tenths, so the thermometer's half degree Celsius stands.
    CHECK(half_width(record_a().with({{Field::temperature, "70.5 °F"}}), Input::temperature) == doctest::Approx(0.5));
    CHECK(half_width(record_a().with({{Field::temperature, "71 °F"}}), Input::temperature) == doctest::Approx(5.0 / 9));
    // What is typed as ± counts as it stands.
    CHECK(half_width(record_a().with({{Field::temperature, "21.4 ± 0.2"}}), Input::temperature) == doctest::Approx(0.2));
    CHECK(half_width(record_a().with({{Field::barometer, "99.62 ± 0.5 %"}}), Input::barometer) == doctest::Approx(498.1));
}

TEST_CASE("purity: 100 % is no reading, another number is as good as its digits") {
    CHECK(half_width(record_a(), Input::purity) == 0);
    CHECK(half_width(record_a().with({{Field::purity, "98"}}), Input::purity) == doctest::Approx(0.01));
    CHECK(half_width(record_a().with({{Field::purity, "99.5"}}), Input::purity) == doctest::Approx(0.001));
}

TEST_CASE("levels taken as equal are doubtful by 2 mm") {
    // method.md, section 6.
    CHECK(half_width(record_a().with({{Field::liquid_stands, "level"}, {Field::level_difference, ""}}),
                     Input::level_difference) == doctest::Approx(0.002));
}

TEST_CASE("an end space that nobody measured is 0 to 4 mL, and the trials decide") {
    // method.md, section 1.
    const Sure sure(record_a().without(Field::end_space));
    const Budget budget = sure.budget();
    const BudgetRow* row = row_of(budget, Input::end_space, DoubtKind::not_measured);
    REQUIRE(row != nullptr);
    CHECK(row->doubt.low == 0);
    CHECK(row->doubt.high == doctest::Approx(4e-6));
    CHECK(row->share > 0.8);
    CHECK(caution_of(sure.doubts, sure.slopes, budget) == Caution::one_input);
    const auto ways = improvements(sure.assessment, budget);
    REQUIRE(!ways.empty());
    CHECK(ways.front().way == Improvement::Way::measure_it);
    CHECK(ways.front().input == Input::end_space);
}

TEST_CASE("a one-figure mass dominates, and a longer ribbon or a finer balance is offered") {
    // method.md, section 6: the linear interval of 22.7 with 0.03 g triangular ± 0.01 g is [16.65, 28.75].
    const Sure sure(record_a().with({{Field::mass_of_metal, "0.03"}, {Field::scale_reading, "20.90"}}));
    const Budget budget = sure.budget();
    REQUIRE(!budget.rows.empty());
    CHECK(budget.rows.front().doubt.input == Input::mass_of_metal);
    CHECK(budget.rows.front().share > 0.99);
    const double scaled = 1.96 * budget.rows.front().contribution * 22.7 / budget.value;
    CHECK(22.7 - scaled == doctest::Approx(16.65).epsilon(0.0005));
    CHECK(22.7 + scaled == doctest::Approx(28.75).epsilon(0.0005));
    CHECK(caution_of(sure.doubts, sure.slopes, budget) == Caution::one_input);
    const auto ways = improvements(sure.assessment, budget);
    bool ribbon = false;
    bool balance = false;
    for (const Improvement& way : ways) {
        ribbon = ribbon || way.way == Improvement::Way::ribbon_by_length;
        balance = balance || (way.way == Improvement::Way::finer_instrument && way.input == Input::mass_of_metal);
        // Both turn a doubt of 14 % into 5 % at the most; more metal only shares it out.
        if (way.way != Improvement::Way::more_metal) CHECK(way.expanded < budget.expanded / 3);
    }
    CHECK(ribbon);
    CHECK(balance);
}

TEST_CASE("a mass within its own doubt has no ±") {
    // method.md, section 6: a denominator whose lower limit is at or below 10 % of its value.
    const Sure sure(record_a().with({{Field::mass_of_metal, "0.01"}}));
    const Budget budget = sure.budget();
    CHECK(caution_of(sure.doubts, sure.slopes, budget) == Caution::no_denominator);
    const Verdict verdict = verdict_of(budget, Caution::no_denominator, nullptr, 0.0227);
    CHECK_FALSE(verdict.shows_plus_minus);
    CHECK(verdict.preliminary);
}

TEST_CASE("the verdict says inside, or outside and by how much") {
    Budget budget;
    budget.value = 22.68;
    budget.u = 0.06;
    budget.k = 2;
    budget.expanded = 0.12;
    budget.rows.resize(1);
    const auto verdict = [&](double accepted) { return verdict_of(budget, Caution::none, nullptr, accepted); };
    CHECK(verdict(22.71).kind == Verdict::Kind::inside);
    CHECK(verdict(22.41).kind == Verdict::Kind::found_too_high);
    CHECK(verdict(22.41).outside_by == doctest::Approx(0.15));
    CHECK(verdict(22.90).kind == Verdict::Kind::found_too_low);
    CHECK(verdict(22.90).outside_by == doctest::Approx(0.10));
    CHECK(verdict_of(budget, Caution::none, nullptr, std::nullopt).kind == Verdict::Kind::no_interval);
    // The doubt that goes one way moves both ends.
    budget.offset = -0.07;
    CHECK(verdict(22.71).interval.low == doctest::Approx(22.49));
    CHECK(verdict(22.71).interval.high == doctest::Approx(22.73));
}
