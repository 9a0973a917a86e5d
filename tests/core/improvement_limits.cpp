// What would help first: each way's doubt afterwards worked out by hand from the rows of the budget (JCGM 100:2008, 5.1.2).

#include <doctest/doctest.h>

#include <cmath>
#include <vector>

#include "core/result/budget.hpp"
#include "tests/core/check_support.hpp"
#include "tests/core/vessel_support.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

using Way = Improvement::Way;

struct BudgetedRun {
    explicit BudgetedRun(const Sheet& sheet) : BudgetedRun(sheet.assessed()) {}
    explicit BudgetedRun(const Assessment& assessed)
        : assessment(assessed),
          doubts(doubts_of(assessment)),
          slopes(doubts),
          budget(budget_of(doubts, slopes, Output::molar_volume_standard)),
          ways(improvements(assessment, budget)) {}

    const Improvement* way(Way wanted, Input input) const {
        for (const Improvement& one : ways) {
            if (one.way == wanted && one.input == input) return &one;
        }
        return nullptr;
    }
    const BudgetRow& row(Input input, DoubtKind kind = DoubtKind::reading) const {
        for (const BudgetRow& one : budget.rows) {
            if (one.doubt.input == input && one.doubt.kind == kind) return one;
        }
        FAIL("no such row");
        return budget.rows.front();
    }
    /// The expanded uncertainty once this row's input has the standard uncertainty `u`.
    double left_with(const BudgetRow& one, double u) const {
        double variance = std::pow(one.sensitivity * u, 2);
        for (const BudgetRow& other : budget.rows) {
            if (&other != &one) variance += other.contribution * other.contribution;
        }
        return budget.k * std::sqrt(variance);
    }

    Assessment assessment;
    Doubts doubts;
    Sensitivities slopes;
    Budget budget;
    std::vector<Improvement> ways;
};

doctest::Approx about(double value) { return doctest::Approx(value).epsilon(1e-6).scale(0); }

double rectangular(double half_width) { return half_width / std::sqrt(3.0); }
double triangular(double half_width) { return half_width / std::sqrt(6.0); }

/// Record A as far as its doubt is concerned, with one reading much worse than all the others.
Sheet worst(Field field, const char* text) { return record_a().with({{field, text}}); }

}  // namespace

TEST_CASE("an end space that is poured into a cylinder leaves 0.10 mL") {
    // method.md, section 6.
    const BudgetedRun run(record_a().without(Field::end_space));
    const Improvement* way = run.way(Way::measure_it, Input::end_space);
    REQUIRE(way != nullptr);
    CHECK(way->expanded ==
          about(run.left_with(run.row(Input::end_space, DoubtKind::not_measured), rectangular(0.10e-6))));
    CHECK(way->share == about(run.row(Input::end_space, DoubtKind::not_measured).share));
}

TEST_CASE("a bore that is measured leaves a fifth of a ring of 0.155 mL") {
    // 13 mm, method.md, section 1. Two rings of up to 0.45 mL in a tube of 100 mL that holds little gas.
    const BudgetedRun run(record_a().with({{Field::tube_capacity, "100"},
                                           {Field::scale_reading, "90.00"},
                                           {Field::mass_of_metal, "0.01177 ± 0.00001"},
                                           {Field::end_space, "2.35 ± 0.02"}}));
    const Improvement* way = run.way(Way::measure_it, Input::meniscus_ring);
    REQUIRE(way != nullptr);
    CHECK(way->expanded ==
          about(run.left_with(run.row(Input::meniscus_ring, DoubtKind::meniscus), rectangular(0.2 * 0.155e-6))));
}

TEST_CASE("a coarse balance: the next finer one, or a metre of ribbon weighed on it and cut to half a millimetre") {
    // A balance of 0.01 g; the next is of 1 mg, a triangle of 1 mg (GUM F.2.2.1).
    const BudgetedRun run(record_a().with({{Field::mass_of_metal, "0.04"}}));
    const BudgetRow& mass = run.row(Input::mass_of_metal);
    const Improvement* finer = run.way(Way::finer_instrument, Input::mass_of_metal);
    REQUIRE(finer != nullptr);
    REQUIRE(finer->better != nullptr);
    CHECK(finer->better->key == "balance_1mg");
    CHECK(finer->expanded == about(run.left_with(mass, triangular(1e-6))));
    // 1 g/m: the metre weighs 1 g, and 40 mg are 40 mm, each to half a millimetre.
    const Improvement* ribbon = run.way(Way::ribbon_by_length, Input::mass_of_metal);
    REQUIRE(ribbon != nullptr);
    const double relative = std::hypot(triangular(10e-6) / 1e-3, rectangular(0.5) / 40);
    CHECK(ribbon->expanded == about(run.left_with(mass, 40e-6 * relative)));
    // Ribbon is of magnesium.
    const BudgetedRun zinc(record_a().with({{Field::metal, "zinc"}, {Field::mass_of_metal, "0.11"}}));
    CHECK(zinc.way(Way::ribbon_by_length, Input::mass_of_metal) == nullptr);
    CHECK(zinc.way(Way::finer_instrument, Input::mass_of_metal) != nullptr);
}

TEST_CASE("more metal fills nine tenths of the tube, and halves what a balance leaves in doubt") {
    // 20 mL of gas in 50 mL: 45 mL are 2.25 times as much. Mass, marks, end space and ring shrink, the room's doubts do not.
    const BudgetedRun run(record_a().with({{Field::scale_reading, "32.35"}, {Field::mass_of_metal, "0.019"}}));
    const double times = 0.9 * 50 / 20.0;
    double variance = 0;
    double share = 0;
    for (const BudgetRow& row : run.budget.rows) {
        const Input input = row.doubt.input;
        const bool shrinks = input == Input::mass_of_metal || input == Input::scale_reading ||
                             input == Input::end_space || input == Input::meniscus_ring;
        variance += std::pow(row.contribution / (shrinks ? times : 1), 2);
        if (shrinks) share += row.share;
    }
    const Improvement* more = run.way(Way::more_metal, Input::mass_of_metal);
    REQUIRE(more != nullptr);
    CHECK(more->expanded == about(run.budget.k * std::sqrt(variance)));
    CHECK(more->share == about(share));
}

TEST_CASE("more metal is offered where a quarter more gas finds room") {
    // 45 mL of 36 mL are 1.25 times as much. A scale read to 2 mL leaves all the doubt that more gas can take away.
    const auto offered = [](const char* reading) {
        return BudgetedRun(record_a().with({{Field::scale_reading, reading}, {Field::mass_of_metal, "0.0343"}}))
                   .way(Way::more_metal, Input::mass_of_metal) != nullptr;
    };
    CHECK(offered("16.40 ± 2"));        // 35.95 mL
    CHECK_FALSE(offered("16.30 ± 2"));  // 36.05 mL
}

TEST_CASE("reading again halves the doubt where no better instrument is to be had") {
    // Nobody measures a purity at the bench: 98 % is good to 1 %, which is most of the doubt.
    const BudgetedRun run(worst(Field::purity, "98"));
    const BudgetRow& purity = run.row(Input::purity);
    const Improvement* again = run.way(Way::read_again, Input::purity);
    REQUIRE(again != nullptr);
    CHECK(again->better == nullptr);
    CHECK(again->expanded == about(run.left_with(purity, purity.doubt.u / 2)));
}

TEST_CASE("four times the readings halve what they scatter by") {
    Entries entries;
    for (const auto& [field, text] :
         {Typed{Field::metal, "magnesium"}, Typed{Field::acid, "hydrochloric"}, Typed{Field::mass_of_metal, "0.0412"},
          Typed{Field::number_at_closed_end, "zero"}, Typed{Field::tube_capacity, "50"},
          Typed{Field::scale_reading, "43.20"}, Typed{Field::liquid_stands, "level"}, Typed{Field::temperature, "21.4"},
          Typed{Field::barometer, "99.62"}}) {
        entries.edit(field).text = text;
    }
    entries.edit(Field::scale_reading).repeats = {"41.20", "45.20", "43.20"};
    const BudgetedRun run(
        assess(read_all([&](Field field) -> const Entry& { return entries.at(field); }), Conventions{}));
    const BudgetRow& scatter = run.row(Input::scale_reading, DoubtKind::scatter);
    const Improvement* again = run.way(Way::read_again, Input::scale_reading);
    REQUIRE(again != nullptr);
    CHECK(again->kind == DoubtKind::scatter);
    CHECK(again->expanded == about(run.left_with(scatter, scatter.doubt.u / 2)));
}

TEST_CASE("one step better is offered, and not the best that money can buy") {
    // ± 3 °C: of 1.0, 0.5 and 0.2 °C the first is less than 0.7 of it already.
    const BudgetedRun run(worst(Field::temperature, "21.4 ± 3"));
    const Improvement* finer = run.way(Way::finer_instrument, Input::temperature);
    REQUIRE(finer != nullptr);
    REQUIRE(finer->better != nullptr);
    CHECK(finer->better->reading == 1.0);
    CHECK(finer->expanded == about(run.left_with(run.row(Input::temperature), rectangular(1.0))));
    // ± 1.4 °C: 1.0 °C is 0.714 of it, too little of a gain; ± 1.5 °C: 0.667.
    const auto better_than = [](const char* text) {
        const BudgetedRun other(worst(Field::temperature, text));
        const Improvement* way = other.way(Way::finer_instrument, Input::temperature);
        return way != nullptr && way->better != nullptr ? way->better->reading : 0.0;
    };
    CHECK(better_than("21.4 ± 1.42") == 0.5);
    CHECK(better_than("21.4 ± 1.44") == 1.0);
}

TEST_CASE("what gains less than a twentieth is not offered, and three ways are enough") {
    for (const Sheet& sheet : {record_a(), record_a().without(Field::end_space), worst(Field::temperature, "21 ± 2"),
                               record_a().with({{Field::mass_of_metal, "0.04"}, {Field::temperature, "21"}})}) {
        const BudgetedRun run(sheet);
        CHECK(run.ways.size() <= 3);
        for (std::size_t i = 0; i < run.ways.size(); ++i) {
            CHECK(run.ways[i].expanded <= 0.95 * run.budget.expanded);
            if (i > 0) CHECK(run.ways[i - 1].expanded <= run.ways[i].expanded);
        }
    }
    // Record A itself has more than three: temperature 28 %, end space 24 %, class limit 24 %, mass 13 % (method.md, section 6).
    CHECK(BudgetedRun(record_a()).ways.size() == 3);
}

TEST_CASE("a finer instrument is offered only where the vessel can have it") {
    const auto finer = [](const Sheet& sheet, Input input) {
        return BudgetedRun(sheet).way(Way::finer_instrument, input) != nullptr;
    };
    CHECK(finer(worst(Field::barometer, "99.62 ± 2"), Input::barometer));
    CHECK(finer(worst(Field::scale_reading, "9.15 ± 2"), Input::scale_reading));
    // Another barometer measures nothing in a closed flask, and a burette is no syringe.
    const Sheet flask = good_run(Apparatus::pressure_sensor).with({{Field::pressure_after, "129.25 ± 2"}});
    CHECK_FALSE(finer(flask, Input::pressure_after));
    CHECK(BudgetedRun(flask).way(Way::read_again, Input::pressure_after) != nullptr);
    const Sheet syringe = good_run(Apparatus::gas_syringe).with({{Field::scale_reading, "42.71 ± 5"}});
    CHECK_FALSE(finer(syringe, Input::scale_reading));
    CHECK(BudgetedRun(syringe).way(Way::read_again, Input::scale_reading) != nullptr);
    CHECK(finer(good_run(Apparatus::gas_syringe).with({{Field::barometer, "99.62 ± 5"}}), Input::barometer));
}
