#include <doctest/doctest.h>

#include <array>
#include <cstdio>
#include <random>
#include <string>

#include "core/result/evaluate.hpp"
#include "tests/core/gap_support.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

class Dice {
public:
    explicit Dice(unsigned seed) : generator_(seed) {}
    bool yes() { return (generator_() & 1U) != 0; }
    unsigned below(unsigned count) { return static_cast<unsigned>(generator_() % count); }
    double between(double low, double high) { return low + (high - low) * static_cast<double>(generator_()) * 0x1p-32; }
    std::string text(double low, double high, const char* form = "%.4f") {
        std::array<char, 40> buffer{};
        std::snprintf(buffer.data(), buffer.size(), form, between(low, high));
        return buffer.data();
    }

private:
    std::mt19937 generator_;
};

Sheet random_tube(Dice& dice, Sheet sheet) {
    const bool zero = dice.yes();
    sheet = sheet.with({{Field::number_at_closed_end, zero ? "zero" : "largest"}});
    if (!zero || dice.yes()) sheet = sheet.with({{Field::tube_capacity, "50"}});
    sheet = sheet.with({{Field::scale_reading, zero ? dice.text(30, 44).c_str() : dice.text(6, 20).c_str()}});
    if (dice.yes()) sheet = sheet.with({{Field::end_space, dice.text(0, 3).c_str()}});
    if (dice.below(4) == 0) sheet = sheet.with({{Field::tube_bore, dice.text(10, 20).c_str()}});
    const unsigned start = dice.below(4);
    if (start == 0) {
        sheet = sheet.with({{Field::start_reading, zero ? dice.text(0.5, 5).c_str() : dice.text(45, 49).c_str()}});
    }
    if (start == 1) sheet = sheet.with({{Field::starting_bubble, dice.text(0.2, 3).c_str()}});
    const unsigned level = dice.below(3);
    static constexpr std::array stands{"level", "higher_inside", "higher_outside"};
    sheet = sheet.with({{Field::liquid_stands, stands[level]}});
    if (level != 0) sheet = sheet.with({{Field::level_difference, dice.text(0, 200).c_str()}});
    if (level != 0 && start < 2 && dice.yes()) {
        sheet = sheet.with({{Field::start_level_difference, dice.text(0, 300).c_str()}});
    }
    return sheet;
}

Sheet random_metal(Dice& dice, Sheet sheet) {
    static constexpr std::array metals{"magnesium", "zinc", "aluminium", "iron", "calcium", "lithium"};
    const unsigned metal = dice.below(6);
    // Masses that give 20 to 45 mL of gas.
    static constexpr std::array<double, 6> grams{0.036, 0.097, 0.027, 0.083, 0.059, 0.0206};
    const double mass = grams[metal] * dice.between(0.8, 1.1);
    const auto grams_text = [](double value) { return std::to_string(value) + " g"; };
    sheet = sheet.with({{Field::metal, metals[metal]}, {Field::acid, dice.yes() ? "hydrochloric" : "sulfuric"}});
    switch (dice.below(3)) {
        case 0: sheet = sheet.with({{Field::mass_of_metal, grams_text(mass).c_str()}}); break;
        case 1:
            sheet = sheet.with({{Field::mass_from, "by_difference"},
                                {Field::mass_before, grams_text(2 + mass).c_str()},
                                {Field::mass_after, "2 g"}});
            break;
        default:
            sheet = sheet.with({{Field::mass_from, "ribbon"},
                                {Field::ribbon_length, (std::to_string(mass * 1e3) + " mm").c_str()},
                                {Field::mass_per_metre, "1"}});
    }
    if (dice.yes()) sheet = sheet.with({{Field::purity, dice.text(90, 100).c_str()}});
    if (dice.yes()) {
        sheet = sheet.with({{Field::acid_volume, "10"}, {Field::acid_concentration, dice.text(0.25, 3).c_str()}});
    }
    return sheet;
}

Sheet random_run(Dice& dice) {
    Sheet sheet = random_tube(dice, random_metal(dice, Sheet()));
    static constexpr std::array<const char*, 3> kinds{"at_the_bench", "altimeter_setting", "reduced_to_sea_level"};
    const unsigned kind = dice.below(5) < 3 ? 0 : 1 + dice.below(2);
    sheet = sheet.with({{Field::pressure_kind, kinds[kind]}, {Field::temperature, dice.text(14, 30).c_str()}});
    if (kind == 0 && dice.yes()) {
        sheet = sheet.with({{Field::barometer, (dice.text(700, 770) + " mmHg").c_str()}});
    } else {
        sheet = sheet.with({{Field::barometer, (dice.text(980, 1035) + " hPa").c_str()}});
    }
    if (kind != 0) sheet = sheet.with({{Field::height_above_sea_level, dice.text(-50, 1500).c_str()}});
    Conventions conventions;
    conventions.standard = static_cast<StandardConditions>(dice.below(5));
    conventions.molar_mass_digits = static_cast<Conventions::MolarMassDigits>(dice.below(4));
    conventions.vapour = static_cast<Conventions::Vapour>(dice.below(5));
    conventions.accepted = static_cast<Conventions::Accepted>(dice.below(3));
    if (conventions.vapour == Conventions::Vapour::own_value) {
        sheet = sheet.with({{Field::own_vapour_pressure, dice.text(1.5, 4).c_str()}});
    }
    if (dice.below(6) == 0) conventions.conversion = Conventions::Conversion::none;
    return sheet.with({{Field::accepted_value, dice.text(21, 27).c_str()}}).by(conventions);
}

/// The bench as it would have been without the cause, assessed again.
Assessment freed(const Assessment& run, Cause cause, double size) {
    Assessment bench = run;
    const Bench changed = corrected(bench_of(run), cause, size);
    bench.measured = changed.measured;
    bench.outcome = evaluate(changed.measured, Method{}, changed.ready);
    return bench;
}

}  // namespace

TEST_CASE("each explanation leads to the accepted value, and back to what was found") {
    std::array<int, cause_count> seen{};
    Dice dice(20260301);
    int runs = 0;
    for (int round = 0; round < 400 && runs < 200; ++round) {
        const Assessment run = random_run(dice).assessed();
        const auto gap = gap_of(run, Verdict{});
        if (!gap) continue;
        ++runs;
        CAPTURE(round);
        const double direction = gap->found > gap->accepted ? 1 : -1;
        for (const Explanation& explanation : gap->explanations) {
            const Cause cause = explanation.cause;
            CAPTURE(name_of(cause));
            CAPTURE(explanation.size);
            CHECK(explanation.size >= 0);
            CHECK(explanation.share >= 0);
            CHECK(explanation.share <= 1);
            CHECK((direction > 0 ? info(cause).raises : info(cause).lowers));
            if (explanation.plausibility == Plausibility::impossible) continue;
            const bool both = info(cause).raises && info(cause).lowers;
            const double size = both ? direction * explanation.size : explanation.size;
            const Assessment bench = freed(run, cause, size);
            const auto there = result_of(bench_of(bench));
            REQUIRE(there);
            CHECK(*there == doctest::Approx(gap->accepted).epsilon(1e-9));
            const auto back = result_of(falsified(bench_of(bench), cause, size));
            REQUIRE(back);
            CHECK(*back == doctest::Approx(gap->found).epsilon(1e-9));
            ++seen[static_cast<std::size_t>(cause)];
        }
    }
    CHECK(runs == 200);
    for (std::size_t i = 0; i < cause_count; ++i) {
        CAPTURE(cause_names[i]);
        CHECK(seen[i] > 0);
    }
}

TEST_CASE("a cause at work on a bench pushes the way it is said to, the more the larger") {
    Dice dice(7);
    for (int round = 0; round < 200; ++round) {
        const Assessment run = random_run(dice).assessed();
        const auto found = result_of(bench_of(run));
        if (!found) continue;
        for (std::size_t i = 0; i < cause_count; ++i) {
            const auto cause = static_cast<Cause>(i);
            const auto reach = reach_of(run, cause);
            CHECK(reach.has_value() == applies(cause, run));
            CAPTURE(round);
            CAPTURE(name_of(cause));
            if (!reach) {
                CHECK_FALSE(result_with(run, cause, info(cause).usual));
                continue;
            }
            const auto same = result_with(run, cause, 0);
            REQUIRE(same);
            CHECK(*same == doctest::Approx(*found).epsilon(1e-12));
            const bool both = info(cause).raises && info(cause).lowers;
            for (const double sign : {1.0, -1.0}) {
                const bool raises = sign > 0;
                const double size = reach->usual * (both ? sign : 1.0);
                if (!(raises ? reach->raises : reach->lowers)) {
                    if (both) CHECK_FALSE(result_with(run, cause, size));
                    continue;
                }
                const auto half = result_with(run, cause, size / 2);
                const auto whole = result_with(run, cause, size);
                if (!half || !whole) continue;
                CHECK(sign * (*half - *found) > 0);
                CHECK(sign * (*whole - *half) > 0);
            }
        }
    }
}
