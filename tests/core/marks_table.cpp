#include <doctest/doctest.h>

#include "core/lesson/marks_table.hpp"

using namespace overwater;

namespace {

MarkedStep step(Output output, int run, Judgement judgement) {
    MarkedStep marked;
    marked.step.output = output;
    marked.step.run = run;
    marked.judgement = judgement;
    return marked;
}

}  // namespace

TEST_CASE("Each judgement has its sign") {
    CHECK(sign_of(Judgement::right) == "✓");
    CHECK(sign_of(Judgement::carried_forward) == "→");
    CHECK(sign_of(Judgement::not_right) == "✗");
    for (const Judgement other : {Judgement::blank, Judgement::no_number, Judgement::not_known}) CHECK(sign_of(other) == "–");
}

TEST_CASE("Remarks begin with what is not right, and say once what costs once") {
    MarkedRow row;
    CHECK(remarks_of(row).empty());
    row.sheet.steps.push_back(step(Output::gas_volume, 0, Judgement::blank));
    row.sheet.steps.push_back(step(Output::dry_gas_pressure, 0, Judgement::right));
    row.sheet.steps.back().does_not_follow = true;
    row.sheet.steps.push_back(step(Output::amount_of_gas, 0, Judgement::not_right));
    row.sheet.steps.push_back(step(Output::volume_at_standard, 0, Judgement::not_known));
    row.sheet.steps.push_back(step(Output::molar_volume_standard, 0, Judgement::blank));
    row.sheet.unit_cost = true;
    row.sheet.figures_cost = true;
    row.misread.push_back({Field::temperature, -1});
    std::vector<Remark::Kind> kinds;
    for (const Remark& remark : remarks_of(row)) kinds.push_back(remark.kind);
    using Kind = Remark::Kind;
    CHECK(kinds == std::vector<Kind>{Kind::does_not_follow, Kind::slip, Kind::misread, Kind::unit, Kind::figures,
                                     Kind::blank, Kind::readings});
    CHECK(remarks_of(row)[1].step == 2);
    CHECK(remarks_of(row)[5].count == 2);
}

TEST_CASE("The columns are those of all sheets") {
    MarkedRow one;
    one.sheet.steps = {step(Output::gas_volume, 0, Judgement::right), step(Output::percent_error, -1, Judgement::right)};
    MarkedRow two;
    two.sheet.steps = {step(Output::gas_volume, 0, Judgement::right), step(Output::gas_volume, 1, Judgement::right),
                       step(Output::percent_error, -1, Judgement::right)};
    MarkedRow other;
    other.sheet.steps = {step(Output::molar_volume_bench, 0, Judgement::right)};
    const std::vector<SheetStep> steps = all_steps({one, two, other});
    REQUIRE(steps.size() == 4);
    CHECK(steps[1] == two.sheet.steps[1].step);
    CHECK(steps[2].output == Output::percent_error);
    CHECK(steps[3].output == Output::molar_volume_bench);
    CHECK(all_steps({}).empty());
}

TEST_CASE("Steps that a sheet did not ask for cost nothing") {
    Record record;
    Answer answer;
    answer.step = "gas_volume";
    answer.text = "9.15 mL";
    record.runs[0].answers.push_back(answer);
    record.shared.edit(Field::number_at_closed_end).text = "zero";
    record.shared.edit(Field::tube_capacity).text = "50";
    record.runs[0].entries.edit(Field::scale_reading).text = "9.15";
    MarkedRow row;
    mark(row, record, {});
    CHECK(row.sheet.steps.size() == 8);
    row.asked = {"gas_volume"};
    mark(row, record, {});
    REQUIRE(row.sheet.steps.size() == 1);
    CHECK(row.sheet.steps[0].judgement == Judgement::right);
    CHECK(row.sheet.points == 1);
    CHECK(row.sheet.most_points == 1);
}

TEST_CASE("Points are written as short as they are, with the decimal sign of the page") {
    CHECK(points_text(5, DecimalSign::point) == "5");
    CHECK(points_text(10, DecimalSign::point) == "10");
    CHECK(points_text(5.5, DecimalSign::comma) == "5,5");
    CHECK(points_text(0, DecimalSign::comma) == "0");
}
