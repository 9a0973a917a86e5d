#include <doctest/doctest.h>

#include <cstring>
#include <set>
#include <string>

#include "core/lesson/slip_search.hpp"
#include "tests/core/check_support.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

StatedValue stated(double litres, double half) {
    return {Output::molar_volume_standard, litres * 1e-3, half * 1e-3};
}

std::string first_of(const SlipFinding& finding) {
    if (finding.explanations.empty()) return "";
    std::string names;
    const SlipSet& slips = finding.explanations.front().slips;
    for (std::uint8_t i = 0; i < slips.count; ++i) {
        names += (i == 0 ? "" : " ") + std::string(slip_table[slips.slips[i]].name);
    }
    return names;
}

}  // namespace

TEST_CASE("the table of slips is whole: names once, no axis outside the method, each value another way than the right one") {
    std::set<std::string> names;
    for (std::size_t i = 0; i < slip_count; ++i) {
        const Slip& slip = slip_table[i];
        CAPTURE(slip.name);
        CHECK(names.insert(std::string(slip.name)).second);
        CHECK(slip.axis < sizeof(Method));
        CHECK(slip.value != 0);
        CHECK(slip.commonness > 0);
        Method method;
        make_slip(method, static_cast<SlipIndex>(i));
        const Method right;
        CHECK(std::memcmp(&method, &right, sizeof method) != 0);
    }
    CHECK(names.size() == slip_count);
}

TEST_CASE("two slips of one step exclude each other, four are too many") {
    SlipSet set;
    CHECK(set.add(0));
    CHECK_FALSE(set.add(1));  // both are ways of the volume
    CHECK(set.count == 1);
    CHECK(set.add(9));
    CHECK(set.add(11));
    CHECK_FALSE(set.add(23));
}

TEST_CASE("record A read the wrong way gives 6.038 L/mol, and the slip is named") {
    // method.md, table of record A: read the wrong way (reading + end space = 11.50 mL).
    const StatedValue answers[]{stated(6.038, 0.0005)};
    const SlipFinding finding = find_slips(record_a().assessed(), answers);
    REQUIRE(finding.kind == SlipFinding::Kind::explained);
    CHECK(first_of(finding) == "reading_taken_as_gas");
    CHECK(finding.explanations.front().rank == 1);
    CHECK(finding.explanations.front().exact);
}

TEST_CASE("record A: right answers, by the conventions and by other routes, are accused of nothing") {
    const Assessment run = record_a().assessed();
    const StatedValue right[]{stated(22.68, 0.005)};
    CHECK(find_slips(run, right).kind == SlipFinding::Kind::right);
    // method.md: with the 0.1 torr table 22.6826.
    const StatedValue by_table[]{stated(22.6826, 0.00005)};
    CHECK(find_slips(run, by_table).kind == SlipFinding::Kind::right_by_route);
}

TEST_CASE("an answer that nothing explains says so, with what comes nearest") {
    const StatedValue answers[]{stated(-3.1, 0.05)};
    const SlipFinding finding = find_slips(record_a().assessed(), answers);
    CHECK(finding.kind == SlipFinding::Kind::unexplained);
    CHECK(finding.explanations.empty());
    CHECK(finding.nearest.size() == 3);
}

TEST_CASE("without an answer there is nothing to explain") {
    CHECK(find_slips(record_a().assessed(), {}).kind == SlipFinding::Kind::unexplained);
}

TEST_CASE("a slip needs what it is made of") {
    const Assessment run = record_a().assessed();
    const auto happens = [&](std::string_view name) {
        for (std::size_t i = 0; i < slip_count; ++i) {
            if (slip_table[i].name == name) return can_happen(static_cast<SlipIndex>(i), run);
        }
        return false;
    };
    CHECK(happens("end_space_ignored"));
    CHECK(happens("vapour_ignored"));
    CHECK_FALSE(happens("start_ignored"));           // there was no gas at the start
    CHECK_FALSE(happens("counted_from_capacity"));   // the scale does count from there
    CHECK_FALSE(happens("barometer_not_reduced"));   // it stood at the bench
    CHECK_FALSE(happens("barometer_inch_as_millimetre"));
    CHECK_FALSE(happens("mass_nominal_ribbon"));
    CHECK_FALSE(happens("ratio_one"));               // it is one
}
