#include <doctest/doctest.h>

#include <string>
#include <utility>

#include "core/lesson/marking.hpp"
#include "tests/core/marking_support.hpp"

using namespace overwater;
using namespace overwater::test;

TEST_CASE("a right sheet has every point") {
    Record record = sheet_a();
    auto& answers = record.runs[0].answers;
    // method.md, table of record A; volume at standard conditions 43.20 x 0.95974 x 273.15/294.55 by hand.
    answer(answers, "gas_volume", "43.20 mL");
    answer(answers, "water_vapour_pressure", "19.126 Torr");
    answer(answers, "dry_gas_pressure", "95.974 kPa");
    answer(answers, "amount_of_metal", "0.001695 mol");
    answer(answers, "amount_of_gas", "1.695 mmol");
    answer(answers, "volume_at_standard", "38.45 mL");
    answer(answers, "molar_volume_standard", "22.68 L/mol");
    answer(record.answers, "percent_error", "-0.128 %");
    const MarkedSheet sheet = mark_sheet(record);
    REQUIRE(sheet.steps.size() == 8);
    for (const MarkedStep& marked : sheet.steps) {
        CAPTURE(step_name(marked.step));
        CHECK(marked.judgement == Judgement::right);
        CHECK_FALSE(marked.unit_missing);
        CHECK_FALSE(marked.does_not_follow);
    }
    CHECK(sheet.points == 8);
    CHECK(sheet.most_points == 8);
}

TEST_CASE("an error is carried forward: one slip costs one step, and is named") {
    Record record = sheet_a();
    auto& answers = record.runs[0].answers;
    answer(answers, "gas_volume", "43.20 mL");
    // The vapour pressure forgotten, by hand: 99.62 - 1.096 = 98.524 kPa; 39.471 mL; 23.285 L/mol; +2.53 %.
    answer(answers, "dry_gas_pressure", "98.524 kPa");
    answer(answers, "amount_of_gas", "1.695 mmol");
    answer(answers, "volume_at_standard", "39.47 mL");
    answer(answers, "molar_volume_standard", "23.28 L/mol");
    answer(record.answers, "percent_error", "2.53 %");
    const MarkedSheet sheet = mark_sheet(record);
    CHECK(step(sheet, "dry_gas_pressure").judgement == Judgement::not_right);
    CHECK(slip_in(step(sheet, "dry_gas_pressure")) == "vapour_ignored");
    CHECK(step(sheet, "volume_at_standard").judgement == Judgement::carried_forward);
    CHECK(step(sheet, "molar_volume_standard").judgement == Judgement::carried_forward);
    CHECK(step(sheet, "percent_error").judgement == Judgement::carried_forward);
    CHECK(step(sheet, "water_vapour_pressure").judgement == Judgement::blank);
    CHECK(sheet.points == 5);
    CHECK(sheet.most_points == 8);
}

TEST_CASE("what accepted routes spread lies around what follows from the student's own numbers") {
    Record record = sheet_a();
    auto& answers = record.runs[0].answers;
    // The vapour forgotten: 39.47 mL. Not converted, by hand: 43.20/1.695 = 25.49 L/mol. 26.1 is more by the factor
    // 39.47/38.45 of the slip before it, and nothing that leaving out the conversion gives.
    answer(answers, "gas_volume", "43.20 mL");
    answer(answers, "dry_gas_pressure", "98.52 kPa");
    answer(answers, "amount_of_gas", "1.695 mmol");
    answer(answers, "volume_at_standard", "39.47 mL");
    answer(answers, "molar_volume_standard", "26.1 L/mol");
    CHECK(slip_in(step(mark_sheet(record), "molar_volume_standard")) != "no_conversion");
    answers.back().text = "25.5 L/mol";
    CHECK(slip_in(step(mark_sheet(record), "molar_volume_standard")) == "no_conversion");
}

TEST_CASE("a right number that does not follow from the numbers before it is noticed") {
    Record record = sheet_a();
    answer(record.runs[0].answers, "dry_gas_pressure", "98.524 kPa");
    answer(record.runs[0].answers, "molar_volume_standard", "22.68 L/mol");
    const MarkedSheet sheet = mark_sheet(record);
    CHECK(step(sheet, "molar_volume_standard").judgement == Judgement::right);
    CHECK(step(sheet, "molar_volume_standard").does_not_follow);
}

TEST_CASE("an amount taken from the gas itself is caught though the result looks perfect") {
    Record record = sheet_a();
    record.shared.edit(Field::mass_of_metal).text = "0.0400";  // 1.646 mmol, so that the result would be 23.36 L/mol
    // n = p V/(R T) = 95974.0 x 43.20e-6/(8.314463 x 294.55) = 1.69296 mmol, by hand; V/n is then 22.711 whatever was read.
    answer(record.runs[0].answers, "gas_volume", "43.20 mL");
    answer(record.runs[0].answers, "dry_gas_pressure", "95.974 kPa");
    answer(record.runs[0].answers, "amount_of_gas", "1.6930 mmol");
    answer(record.runs[0].answers, "molar_volume_standard", "22.711 L/mol");
    const MarkedSheet sheet = mark_sheet(record);
    CHECK(step(sheet, "amount_of_gas").judgement == Judgement::not_right);
    CHECK(slip_in(step(sheet, "amount_of_gas")) == "circular_by_gas_law");
    CHECK(step(sheet, "molar_volume_standard").judgement == Judgement::carried_forward);
}

TEST_CASE("units cost once a sheet, and a number that is right in another unit is right") {
    Record record = sheet_a();
    auto& answers = record.runs[0].answers;
    answer(answers, "gas_volume", "43.20");
    answer(answers, "dry_gas_pressure", "719.9");          // in mmHg, not written
    answer(answers, "amount_of_metal", "0.001695 mmol");   // it is in mol
    answer(answers, "molar_volume_standard", "22.68", UnitId::litre_per_mole);
    const MarkedSheet sheet = mark_sheet(record);
    CHECK(step(sheet, "gas_volume").unit_missing);
    CHECK(step(sheet, "gas_volume").judgement == Judgement::right);
    CHECK(step(sheet, "dry_gas_pressure").judgement == Judgement::right);
    CHECK(step(sheet, "dry_gas_pressure").unit_missing);
    CHECK(step(sheet, "amount_of_metal").judgement == Judgement::right);
    CHECK(step(sheet, "amount_of_metal").unit_wrong);
    CHECK_FALSE(step(sheet, "molar_volume_standard").unit_missing);
    CHECK(sheet.unit_cost);
    CHECK(sheet.points == 3);
}

TEST_CASE("figures are judged apart, by the teacher's measure") {
    Record record = sheet_a();
    // method.md, section 5: the mass has 3 figures, so the molar volume has.
    answer(record.runs[0].answers, "molar_volume_standard", "22.6818 L/mol");
    MarkingRules rules;
    rules.points_off_figures = 0.5;
    const MarkedSheet sheet = mark_sheet(record, rules);
    CHECK(step(sheet, "molar_volume_standard").judgement == Judgement::right);
    CHECK(step(sheet, "molar_volume_standard").figures_off == 3);
    CHECK(sheet.figures_cost);
    CHECK(sheet.points == 0.5);
}

TEST_CASE("what is no number is said to be none, and blank steps can still be followed") {
    Record record = sheet_a();
    answer(record.runs[0].answers, "gas_volume", "about 43");
    answer(record.runs[0].answers, "molar_volume_standard", "22.7 L/mol");
    const MarkedSheet sheet = mark_sheet(record);
    CHECK(step(sheet, "gas_volume").judgement == Judgement::no_number);
    CHECK(step(sheet, "molar_volume_standard").judgement == Judgement::right);
}

TEST_CASE("readings that are missing leave a step unmarked, not wrong") {
    Record record = sheet_a();
    record.shared.edit(Field::temperature).text = "";
    answer(record.runs[0].answers, "gas_volume", "43.20 mL");
    answer(record.runs[0].answers, "molar_volume_standard", "22.7 L/mol");
    const MarkedSheet sheet = mark_sheet(record);
    CHECK(step(sheet, "gas_volume").judgement == Judgement::right);
    CHECK(step(sheet, "molar_volume_standard").judgement == Judgement::not_known);
    CHECK(sheet.most_points == 3);  // gas volume and the two amounts
}

TEST_CASE("a teacher's tolerance is added to what rounding and routes give") {
    Record record = sheet_a();
    answer(record.runs[0].answers, "gas_volume", "43.5 mL");
    CHECK(step(mark_sheet(record), "gas_volume").judgement == Judgement::not_right);
    MarkingRules rules;
    rules.tolerance = 0.01;  // 0.43 mL
    CHECK(step(mark_sheet(record, rules), "gas_volume").judgement == Judgement::right);
}

TEST_CASE("mean and percent error of several runs") {
    Record record = sheet_a();
    record.runs.resize(3);
    // Volumes 43.20, 42.20 and 44.20 mL: V_m in proportion, 22.6818, 22.1568, 23.2068 L/mol; mean 22.6818, by hand.
    record.runs[1].entries.edit(Field::scale_reading).text = "10.15";
    record.runs[2].entries.edit(Field::scale_reading).text = "8.15";
    answer(record.runs[0].answers, "molar_volume_standard", "22.68 L/mol");
    answer(record.runs[1].answers, "molar_volume_standard", "22.16 L/mol");
    answer(record.runs[2].answers, "molar_volume_standard", "23.21 L/mol");
    answer(record.answers, "mean", "68.05 L/mol");
    CHECK(step(mark_sheet(record), "mean").judgement == Judgement::not_right);
    CHECK(step(mark_sheet(record), "mean").mean_slip == MeanSlip::not_divided);
    record.answers[0].text = "22.95 L/mol";  // without the second run
    CHECK(step(mark_sheet(record), "mean").mean_slip == MeanSlip::one_left_out);
    record.answers[0].text = "22.68 L/mol";
    answer(record.answers, "percent_error", "99.87 %");
    const MarkedSheet sheet = mark_sheet(record);
    CHECK(step(sheet, "mean").judgement == Judgement::right);
    CHECK(step(sheet, "percent_error").judgement == Judgement::not_right);
    CHECK(slip_in(step(sheet, "percent_error")) == "error_ratio");
    // From a wrong mean the percent error is right if it follows: (22.95 - 22.711)/22.711 = 1.05 %.
    record.answers[0].text = "22.95 L/mol";
    record.answers[1].text = "1.05 %";
    CHECK(step(mark_sheet(record), "percent_error").judgement == Judgement::carried_forward);
}

TEST_CASE("a run that does not count is not in the mean, and one run has none") {
    Record record = sheet_a();
    record.runs.resize(2);
    record.runs[1].left_out = "leaked";
    for (const SheetStep& one : sheet_steps(record)) CHECK_FALSE(one.mean);
}

TEST_CASE("as collected, the chain is shorter") {
    Record record = sheet_a();
    record.conventions.conversion = Conventions::Conversion::none;
    record.shared.edit(Field::accepted_value).text = "24.0";
    // method.md: V/n 25.4849 L/mol; against 24.0 +6.19 %.
    answer(record.runs[0].answers, "molar_volume_bench", "25.5 L/mol");
    answer(record.answers, "percent_error", "6.19 %");
    const MarkedSheet sheet = mark_sheet(record);
    REQUIRE(sheet.steps.size() == 5);
    CHECK(step(sheet, "molar_volume_bench").judgement == Judgement::right);
    CHECK(step(sheet, "percent_error").judgement == Judgement::right);
}
