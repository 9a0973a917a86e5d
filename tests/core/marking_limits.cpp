#include <doctest/doctest.h>

#include <cmath>
#include <string>
#include <vector>

#include "core/lesson/marks_table.hpp"
#include "tests/core/marking_support.hpp"

using namespace overwater;
using namespace overwater::test;

// How near is near enough, what costs what, and answers as they are understood.

namespace {

/// Record A with the reading that leaves so much gas: 50 mL + 2.35 mL of end space less the reading.
Record sheet_with(const char* reading) {
    Record record = sheet_a();
    record.shared.edit(Field::scale_reading).text = reading;
    return record;
}

Judgement judged(Record record, std::string_view name, const char* text, const MarkingRules& rules = {}) {
    const bool whole = name == "percent_error" || name == "mean";
    answer(whole ? record.answers : record.runs[0].answers, name, text);
    return step(mark_sheet(record, rules), name).judgement;
}

/// Record A in two runs: the second has half of the metal, 0.0206 g, and this reading.
Record two_runs(const char* reading) {
    Record record = sheet_a();
    record.runs.resize(2);
    record.runs[1].entries.edit(Field::mass_of_metal).text = "0.0206";
    record.runs[1].entries.edit(Field::scale_reading).text = reading;
    return record;
}

}  // namespace

TEST_CASE("an answer is right within half of its own last digit") {
    // 43.58 mL, of four figures or as a step of three 43.6 mL: 43 mL is off by 0.58 mL, 44 mL by 0.4 mL.
    CHECK(judged(sheet_with("8.77"), "gas_volume", "43 mL") == Judgement::not_right);
    CHECK(judged(sheet_with("8.77"), "gas_volume", "44 mL") == Judgement::right);
    // 43.46 mL, or 43.5: 43 mL is off by 0.46 mL, 44 mL by 0.5.
    CHECK(judged(sheet_with("8.89"), "gas_volume", "43 mL") == Judgement::right);
    CHECK(judged(sheet_with("8.89"), "gas_volume", "44 mL") == Judgement::right);
    CHECK(judged(sheet_with("8.89"), "gas_volume", "45 mL") == Judgement::not_right);
    // In a unit that was not written it is the same half: 0.043 L.
    CHECK(judged(sheet_with("8.77"), "gas_volume", "0.043") == Judgement::not_right);
    CHECK(judged(sheet_with("8.89"), "gas_volume", "0.043") == Judgement::right);
    CHECK(judged(sheet_with("8.77"), "gas_volume", "0.0436") == Judgement::right);
}

TEST_CASE("a teacher's tolerance is a share of what is right, and counts on both sides") {
    MarkingRules rules;
    rules.tolerance = 0.01;  // of 43.20 mL: 0.432 mL
    CHECK(judged(sheet_a(), "gas_volume", "43.63 mL", rules) == Judgement::right);
    CHECK(judged(sheet_a(), "gas_volume", "43.64 mL", rules) == Judgement::not_right);
    CHECK(judged(sheet_a(), "gas_volume", "42.77 mL", rules) == Judgement::right);
    CHECK(judged(sheet_a(), "gas_volume", "42.76 mL", rules) == Judgement::not_right);
}

TEST_CASE("another unit is thought of where a number has more than one figure and a half") {
    // A number of which half of the last digit is more than 2 % is near enough to something in some unit: common practice, no
    // source. 1 inHg is 3.386389 kPa (NIST SP 811). Levels equal, so dry is the barometer less the vapour, 2.550 kPa
    // (method.md).
    const auto at = [](double inches, const char* text) {
        Record record = sheet_a();
        record.shared.edit(Field::liquid_stands).text = "level";
        record.shared.edit(Field::level_difference).text = "";
        record.shared.edit(Field::barometer).text = std::to_string(inches * 3.386389 + 2.54994);
        return judged(record, "dry_gas_pressure", text);
    };
    CHECK(at(22.0, "22") == Judgement::not_right);  // 2.3 %
    CHECK(at(24.0, "24") == Judgement::not_right);  // 2.08 %
    CHECK(at(25.0, "25") == Judgement::right);      // just 2 %
    CHECK(at(28.0, "28") == Judgement::right);      // 1.8 %
    CHECK(at(22.0, "22.0") == Judgement::right);
    CHECK(at(22.0, "22 inHg") == Judgement::right);
}

TEST_CASE("one figure more or fewer than the rule says is let pass, or as many as the teacher says") {
    // method.md, section 5: the mass has 3 figures, so the molar volume has.
    const auto off = [](const char* text, int spare) {
        Record record = sheet_a();
        answer(record.runs[0].answers, "molar_volume_standard", text);
        MarkingRules rules;
        if (spare >= 0) rules.spare_figures = spare;
        const MarkedSheet sheet = mark_sheet(record, rules);
        CHECK(sheet.figures_cost == (step(sheet, "molar_volume_standard").figures_off != 0));
        return step(sheet, "molar_volume_standard").figures_off;
    };
    CHECK(off("22.7 L/mol", -1) == 0);
    CHECK(off("22.68 L/mol", -1) == 0);
    CHECK(off("23 L/mol", -1) == 0);
    CHECK(off("22.682 L/mol", -1) == 2);
    CHECK(off("22.7 L/mol", 0) == 0);
    CHECK(off("22.68 L/mol", 0) == 1);
    CHECK(off("23 L/mol", 0) == -1);
    CHECK(off("22.682 L/mol", 2) == 0);
    CHECK(off("22.6818 L/mol", 2) == 3);
}

TEST_CASE("a mean is that of the runs or that of all gas over all metal, and what lies between them") {
    // Record A has 22.6818 L/mol (method.md); V_m goes with the volume over the mass. By hand, with 43.20 mL of 41.2 mg and:
    // 26.20 mL of 20.6 mg: 27.512 L/mol; mean 25.097, all over all 69.40/64.80 x 22.6818 = 24.292.
    const Record more = two_runs("26.15");
    CHECK(judged(more, "mean", "25.10 L/mol") == Judgement::right);
    CHECK(judged(more, "mean", "24.29 L/mol") == Judgement::right);
    CHECK(judged(more, "mean", "23.50 L/mol") == Judgement::not_right);
    CHECK(judged(more, "mean", "25.60 L/mol") == Judgement::not_right);
    // 16.20 mL of 20.6 mg: 17.011 L/mol; mean 19.846, all over all 59.40/64.80 x 22.6818 = 20.792.
    const Record less = two_runs("36.15");
    CHECK(judged(less, "mean", "19.85 L/mol") == Judgement::right);
    CHECK(judged(less, "mean", "20.79 L/mol") == Judgement::right);
    CHECK(judged(less, "mean", "21.20 L/mol") == Judgement::not_right);
    CHECK(judged(less, "mean", "19.40 L/mol") == Judgement::not_right);
}

TEST_CASE("a run that was left out is in no mean") {
    Record record = sheet_a();
    record.runs.resize(3);
    record.runs[1].entries.edit(Field::scale_reading).text = "30.15";  // 22.20 mL: half of the gas got away
    record.runs[1].left_out = "leaked";
    record.runs[2].entries.edit(Field::scale_reading).text = "8.15";   // 44.20 mL: 23.2068 L/mol
    CHECK(judged(record, "mean", "22.94 L/mol") == Judgement::right);  // (22.6818 + 23.2068)/2
    CHECK(judged(record, "mean", "19.18 L/mol") == Judgement::not_right);
    // (22.9443 - 22.711)/22.711 = +1.03 %.
    CHECK(judged(record, "percent_error", "1.03 %") == Judgement::right);
}

TEST_CASE("a percent error has its sign, unless the class gives none") {
    // 38.20 mL instead of 43.20: 20.057 L/mol, (20.057 - 22.711)/22.711 = -11.7 %.
    Record record = sheet_with("14.15");
    CHECK(judged(record, "percent_error", "-11.7 %") == Judgement::right);
    CHECK(judged(record, "percent_error", "11.7 %") == Judgement::not_right);
    record.conventions.percent_error = Conventions::PercentError::magnitude;
    CHECK(judged(record, "percent_error", "11.7 %") == Judgement::right);
    CHECK(judged(record, "percent_error", "14 %") == Judgement::not_right);
}

TEST_CASE("what a step, a step carried forward, units and figures are worth is the teacher's") {
    Record record = sheet_a();
    auto& answers = record.runs[0].answers;
    answer(answers, "gas_volume", "43.20 mL");
    answer(answers, "dry_gas_pressure", "98.524 kPa");    // the vapour forgotten
    answer(answers, "volume_at_standard", "39.47");       // follows; no unit
    answer(answers, "molar_volume_standard", "23.2853");  // follows; no unit, 6 figures
    MarkingRules rules;
    rules.points_per_step = 3;
    rules.points_carried = 2;
    rules.points_off_unit = 0.5;
    rules.points_off_figures = 0.25;
    // 3 for the volume, 2 each for two that follow; the units once, the figures once.
    const MarkedSheet sheet = mark_sheet(record, rules);
    CHECK(sheet.points == doctest::Approx(3 + 2 * 2 - 0.5 - 0.25));
    CHECK(sheet.most_points == 8 * 3);
    // Never below nothing.
    rules.points_off_unit = 7.5;
    CHECK(mark_sheet(record, rules).points == 0);
    // What counts where a teacher has not chosen: a point a step, also for one that follows; one off for units, none for
    // figures. Common practice, no source.
    CHECK(mark_sheet(record).points == 3 - 1);
    CHECK(mark_sheet(record).most_points == 8);
}

TEST_CASE("an answer is understood in its own unit, the one chosen, or the usual one") {
    const StatedAnswer warm = read_answer(Output::absolute_temperature, "294.55 K");
    REQUIRE(warm.value.has_value());
    CHECK(warm.value->si == doctest::Approx(294.55).epsilon(1e-9));
    CHECK(warm.value->half_unit == doctest::Approx(0.005));
    const StatedAnswer error = read_answer(Output::percent_error, "-0.13");
    REQUIRE(error.value.has_value());
    CHECK(error.unit_given);
    CHECK(error.value->si == doctest::Approx(-0.0013));
    CHECK(error.value->half_unit == doctest::Approx(0.00005));
    const StatedAnswer typed = read_answer(Output::gas_volume, "0.0432 L", UnitId::millilitre);
    CHECK(typed.unit == UnitId::litre);
    CHECK(typed.value->si == doctest::Approx(43.2e-6));
    CHECK(typed.value->half_unit == doctest::Approx(0.05e-6));
    const StatedAnswer chosen = read_answer(Output::gas_volume, "0.0432", UnitId::litre);
    CHECK(chosen.unit_given);
    CHECK(chosen.value->si == doctest::Approx(43.2e-6));
    const StatedAnswer usual = read_answer(Output::gas_volume, "43.2", UnitId::kilopascal);
    CHECK_FALSE(usual.unit_given);
    CHECK(usual.value->si == doctest::Approx(43.2e-6));
    CHECK_FALSE(read_answer(Output::gas_volume, "much").value.has_value());
}

TEST_CASE("steps that a sheet did not ask for are not counted, known or not") {
    Record record = sheet_a();
    answer(record.runs[0].answers, "gas_volume", "43.20 mL");
    MarkedRow row;
    row.asked = {"gas_volume", "molar_volume_standard"};
    MarkingRules rules;
    rules.points_per_step = 2;
    mark(row, record, rules);
    CHECK(row.sheet.steps.size() == 2);
    CHECK(row.sheet.points == 2);
    CHECK(row.sheet.most_points == 4);
    // Without a temperature the dry pressure and what follows are unknown: they were never counted.
    record.shared.edit(Field::temperature).text = "";
    mark(row, record, rules);
    CHECK(row.sheet.most_points == 2);
}

TEST_CASE("of two longest sheets the first gives the order of the columns") {
    const auto row = [](Output first, Output second) {
        MarkedRow made;
        made.sheet.steps.resize(2);
        made.sheet.steps[0].step = {first, 0, false};
        made.sheet.steps[1].step = {second, 0, false};
        return made;
    };
    const std::vector<SheetStep> steps =
        all_steps({row(Output::gas_volume, Output::amount_of_gas), row(Output::amount_of_gas, Output::mass)});
    REQUIRE(steps.size() == 3);
    CHECK(steps[0].output == Output::gas_volume);
    CHECK(steps[1].output == Output::amount_of_gas);
    CHECK(steps[2].output == Output::mass);
}

TEST_CASE("points are written to the hundredth") {
    CHECK(points_text(0.25, DecimalSign::point) == "0.25");
    CHECK(points_text(2.0 / 3, DecimalSign::comma) == "0,67");
    CHECK(points_text(7.999, DecimalSign::point) == "8");
}

TEST_CASE("how a mean went wrong is seen from the number") {
    const std::vector<double> runs{22.0, 23.0, 25.0};  // sum 70
    const auto slip = [&](double mean) { return mean_slip_of(runs, mean, 0.005); };
    CHECK(slip(70.0) == MeanSlip::not_divided);
    CHECK(slip(17.5) == MeanSlip::divided_by_more);  // by four
    CHECK(slip(23.0) == MeanSlip::one_run_alone);
    CHECK(slip(24.0) == MeanSlip::one_left_out);  // without the first
    CHECK(slip(22.5) == MeanSlip::one_left_out);  // without the last
    CHECK(slip(24.0049) == MeanSlip::one_left_out);
    CHECK(slip(24.0051) == MeanSlip::none);
    CHECK(slip(35.0) == MeanSlip::none);
    // The mean of percent errors without their signs: (2 + 3 + 5)/3 in place of 2.
    CHECK(mean_slip_of(std::vector<double>{-2.0, 3.0, 5.0}, 3.333, 0.0005) == MeanSlip::percent_averaged);
    // Of two runs the one that is not left out is the one alone.
    CHECK(mean_slip_of(std::vector<double>{20.0, 24.0}, 24.0, 0.005) == MeanSlip::one_run_alone);
}

TEST_CASE("slips are looked for only where they are asked for") {
    Record record = sheet_a();
    answer(record.runs[0].answers, "gas_volume", "9.15 mL");
    answer(record.runs[0].answers, "dry_gas_pressure", "98.524 kPa");
    const std::vector<SheetStep> one{{Output::dry_gas_pressure, 0, false}};
    const MarkedSheet sheet = mark_sheet(record, {}, &one);
    CHECK(step(sheet, "gas_volume").judgement == Judgement::not_right);
    CHECK(step(sheet, "gas_volume").finding.explanations.empty());
    CHECK(slip_in(step(sheet, "dry_gas_pressure")) == "vapour_ignored");
    CHECK(slip_in(step(mark_sheet(record), "gas_volume")) == "reading_alone");
}
