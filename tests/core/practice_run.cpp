#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <set>
#include <string>

#include "core/record/json.hpp"
#include "core/result/budget.hpp"
#include "core/result/doubt.hpp"
#include "core/result/verdict.hpp"
#include "tests/core/practice_support.hpp"

using namespace overwater;

namespace {

/// Codes spread over all settings.
PracticeSettings spread(int i) {
    PracticeSettings s;
    s.seed = i * 37 % practice_seeds;
    s.student = i * 11 % practice_students;
    s.difficulty = static_cast<Difficulty>(i % 3);
    s.standard = static_cast<StandardConditions>(i % 5);
    s.vapour = static_cast<PracticeVapour>(i / 2 % 3);
    return s;
}

double percent_off(const Assessment& run) { return 100 * run.value(Output::percent_error).value_or(__builtin_nan("")); }

/// The gas on the scale, as a share of it.
double share_of(const Assessment& run) {
    const double capacity = run.measured[Input::tube_capacity];
    const double reading = run.measured[Input::scale_reading];
    return (run.readings.closed_end == ClosedEnd::zero ? reading : capacity - reading) / capacity;
}

bool within(double x, double low, double high) { return x >= low && x <= high; }

/// Whether something that was read looks wrong to the page; remarks that only tell something do not count.
bool anything_doubted(const Assessment& run) {
    return std::any_of(run.checks.begin(), run.checks.end(),
                       [](const Check& check) { return check.weight != Check::Weight::note; });
}

}  // namespace

TEST_CASE("practice runs without a mishap: 10 000 codes") {
    // The task's own bounds: 60 to 90 % of the tube, results within a few percent of the accepted value, 17 to 27 °C,
    // air of an inhabited place, one to three runs.
    double lowest = 0;
    double highest = 0;
    double sum = 0;
    int runs = 0;
    int wrong = 0;
    for (int i = 0; i < 10000; ++i) {
        const PracticeRun practice = practice_run(spread(i));
        const auto count = practice.record.runs.size();
        bool good = practice.expected.size() == count && count >= 1 && count <= 3 && !practice.mishap;
        for (const Assessment& run : practice.expected) {
            const double off = percent_off(run);
            lowest = std::min(lowest, off);
            highest = std::max(highest, off);
            sum += off;
            ++runs;
            good = good && within(share_of(run), 0.60, 0.90) && !anything_doubted(run) && std::isfinite(off) &&
                   within(run.measured[Input::temperature], 17, 27) &&
                   within(run.outcome[Output::dry_gas_pressure], 75e3, 102e3) &&
                   run.value(Output::acid_excess).value_or(0) >= 2;
        }
        wrong += good ? 0 : 1;
    }
    CHECK(wrong == 0);
    CHECK(lowest > -2.5);
    CHECK(highest < 2.5);
    CHECK(std::fabs(sum / runs) < 0.5);
    CHECK(highest - lowest > 1);  // and they do scatter
}

TEST_CASE("practice runs with a mishap: the gap has its sign in all of 10 000 codes") {
    int wrong_sign = 0;
    int off_scale = 0;
    std::set<Cause> causes;
    for (int i = 0; i < 10000; ++i) {
        PracticeSettings s = spread(i);
        s.mishap = true;
        const PracticeRun practice = practice_run(s);
        REQUIRE(practice.mishap.has_value());
        const Mishap& mishap = *practice.mishap;
        causes.insert(mishap.cause);
        CHECK(mishap.size > 0);
        for (std::size_t run = 0; run < practice.expected.size(); ++run) {
            const double off = percent_off(practice.expected[run]);
            const bool struck = mishap.run < 0 || mishap.run == static_cast<int>(run);
            off_scale += within(share_of(practice.expected[run]), 0.5, 0.95) ? 0 : 1;
            if (struck) wrong_sign += off * mishap.sign > 0 ? 0 : 1;
            if (!struck) wrong_sign += std::fabs(off) < 2.5 ? 0 : 1;
        }
    }
    CHECK(wrong_sign == 0);
    CHECK(off_scale == 0);
    CHECK(causes.size() == 11);
}

TEST_CASE("a mishap can be found: the gap offers it, of a size that was seen") {
    int struck_runs = 0;
    int offered = 0;
    int unexplained = 0;
    int sizes_agree = 0;
    for (int i = 0; i < 600; ++i) {
        PracticeSettings s = spread(i);
        s.mishap = true;
        const PracticeRun practice = practice_run(s);
        const Mishap& mishap = *practice.mishap;
        const Assessment& run = practice.expected[mishap.run < 0 ? 0 : static_cast<std::size_t>(mishap.run)];
        const Doubts doubts = doubts_of(run);
        const Sensitivities slopes(doubts);
        const Budget budget = budget_of(doubts, slopes, Output::molar_volume_standard);
        const auto gap = gap_of(
            run, verdict_of(budget, caution_of(doubts, slopes, budget), nullptr, run.value(Output::accepted_value)));
        REQUIRE(gap.has_value());
        ++struck_runs;
        unexplained += gap->nothing_to_explain ? 0 : 1;
        for (const Explanation& explanation : gap->explanations) {
            if (explanation.cause != mishap.cause || explanation.plausibility == Plausibility::impossible) continue;
            ++offered;
            // Scatter of 1 to 2 % makes it look larger or smaller.
            sizes_agree += within(explanation.size / mishap.size, 0.4, 2.5) ? 1 : 0;
        }
    }
    CHECK(offered == struck_runs);
    CHECK(sizes_agree > struck_runs * 97 / 100);
    CHECK(unexplained > struck_runs * 90 / 100);
}

TEST_CASE("no two of 200 students have the same practice run") {
    for (const Difficulty difficulty : {Difficulty::easy, Difficulty::usual, Difficulty::hard}) {
        std::set<std::string> different;
        PracticeSettings s;
        s.seed = 4711;
        s.difficulty = difficulty;
        for (s.student = 1; s.student <= 200; ++s.student) different.insert(test::truth_line(practice_run(s)));
        CHECK(different.size() == 200);
    }
}

TEST_CASE("conventions and release change no reading, the mishap only what it touches") {
    PracticeSettings s = spread(5);
    const std::string readings = test::truth_line(practice_run(s));
    s.release = Release::by_word;
    s.standard = StandardConditions::twenty_celsius_1_atmosphere;
    s.vapour = PracticeVapour::table_interpolated;
    CHECK(test::truth_line(practice_run(s)) == readings);
    s.mishap = true;
    CHECK(test::truth_line(practice_run(s)) != readings);
}

TEST_CASE("the student's record has everything but the readings") {
    for (int i = 0; i < 60; ++i) {
        PracticeSettings s = spread(i);
        s.mishap = i % 2 == 1;
        const PracticeRun practice = practice_run(s);
        const Record& record = practice.record;
        CHECK(record.invented);
        CHECK(record.practice_code == code_of(s));
        CHECK(record.conventions == conventions_of(s));
        Record filled = record;
        for (const Dial& dial : practice.dials) {
            Entries& sheet = dial.run < 0 ? filled.shared : filled.runs[static_cast<std::size_t>(dial.run)].entries;
            CHECK(sheet.at(dial.field).text.empty());
            if (s.difficulty != Difficulty::hard) CHECK(sheet.at(dial.field).unit == dial.unit);
            // A student types it with the unit.
            sheet.edit(dial.field).text = perfect_reading(dial) + std::string(info(dial.unit).symbol);
        }
        for (std::size_t run = 0; run < filled.runs.size(); ++run) {
            const auto entry_of = [&](Field field) -> const Entry& { return entry_for(filled, run, field); };
            const Assessment own = assess(read_all(entry_of), filled.conventions);
            CHECK(own.value(Output::molar_volume_standard) ==
                  practice.expected[run].value(Output::molar_volume_standard));
            CHECK(dial_for(practice, run, Field::scale_reading) != nullptr);
            CHECK(dial_for(practice, run, Field::tube_capacity) == nullptr);
        }
    }
    PracticeSettings none;
    none.seed = -1;
    CHECK(practice_run(none).record.runs.empty());
    CHECK(practice_run(none).dials.empty());
}

TEST_CASE("dials: the position lies on the scale, at a tenth of a division") {
    std::set<DialKind> kinds;
    std::set<UnitId> units;
    for (int i = 0; i < 600; ++i) {
        PracticeSettings s = spread(i);
        s.mishap = i % 4 == 3;
        for (const Dial& dial : practice_run(s).dials) {
            kinds.insert(dial.kind);
            units.insert(dial.unit);
            Entry typed;
            typed.unit = dial.unit;
            typed.text = perfect_reading(dial);
            CHECK(is_read_right(dial, typed));
            if (shows_digits(dial.kind)) {
                CHECK(numbers_of(dial).empty());
                CHECK(std::fabs(dial.division * std::pow(10.0, dial.decimals) - 1) < 1e-12);
                continue;
            }
            CHECK(within(dial.position, dial.low, dial.high));
            const double tenths = (dial.position - dial.low) / dial.division * 10;
            CHECK(std::fabs(tenths - std::round(tenths)) < 1e-6);
            const auto numbers = numbers_of(dial);
            CHECK(numbers.front() == dial.low);
            CHECK(numbers.back() == dial.high);
            const EyePlace place = eye_place(dial);
            CHECK(within(place.tenths, 0, 9));
            CHECK(within(place.divisions, 0, dial.divisions_per_number - 1));
            CHECK(std::find(numbers.begin(), numbers.end(), place.below) != numbers.end());
            const double seen = place.below + (place.divisions + place.tenths / 10.0) * dial.division;
            CHECK(std::fabs(seen - dial.position) < 1e-9);
        }
    }
    CHECK(kinds.size() == 7);
    // mL, °C, °F, hPa, kPa, mmHg, inHg, g, mm, cm
    CHECK(units.size() == 10);
}

TEST_CASE("a reading counts within half a division") {
    Dial dial;
    dial.field = Field::scale_reading;
    dial.unit = UnitId::millilitre;
    dial.high = 50;
    dial.division = 0.1;
    dial.position = 36.37;
    dial.decimals = 2;
    const auto counts = [&](const char* text) {
        Entry entry;
        entry.text = text;
        return is_read_right(dial, entry);
    };
    CHECK(counts("36.37"));
    CHECK(counts("36.4"));
    CHECK(counts("36.42"));
    CHECK(counts("36,32"));
    CHECK(counts("0.03637 L"));
    CHECK_FALSE(counts("36.43"));
    CHECK_FALSE(counts("36.3"));
    CHECK_FALSE(counts("37.63"));
    CHECK_FALSE(counts(""));
    CHECK_FALSE(counts("about 36"));
    const EyePlace place = eye_place(dial);
    CHECK(place.below == 36);
    CHECK(place.above == 37);
    CHECK(place.divisions == 3);
    CHECK(place.tenths == 7);
    const Message words = eye_words(dial);
    CHECK(words.key == "practice.eye.meniscus");
    REQUIRE(words.arguments.size() == 5);
    CHECK(std::fabs(words.arguments[0].base - 36e-6) < 1e-15);
    CHECK(std::fabs(words.arguments[1].base - 37e-6) < 1e-15);
    CHECK(words.arguments[2].count == 10);
    CHECK(words.arguments[3].count == 3);
    CHECK(words.arguments[4].count == 7);
    // 70.5 °F is 21.39 °C: a thermometer read in its own unit or in the other one.
    dial.field = Field::temperature;
    dial.unit = UnitId::fahrenheit;
    dial.division = 2;
    dial.position = 70.6;
    CHECK(counts("70.5 °F"));
    CHECK(counts("21.4"));
    CHECK_FALSE(counts("72 °F"));
    // A display: the digits, and no others.
    dial.field = Field::mass_of_metal;
    dial.kind = DialKind::balance_display;
    dial.unit = UnitId::gram;
    dial.division = 0.0001;
    dial.position = 0.0412;
    CHECK(counts("0.0412"));
    CHECK(counts("41.2 mg"));
    CHECK_FALSE(counts("0.0413"));
    CHECK_FALSE(counts("0.041"));
}

TEST_CASE("a practice record survives its file") {
    const PracticeRun practice = practice_run(spread(8));
    const LoadResult again = record_from_json(record_to_json(practice.record, JsonLayout::compact));
    REQUIRE(again.record.has_value());
    CHECK(*again.record == practice.record);
}
