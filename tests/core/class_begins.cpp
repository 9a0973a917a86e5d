#include <doctest/doctest.h>

#include "core/lesson/practice_code.hpp"
#include "core/lesson/sheet_table.hpp"

using namespace overwater;

TEST_CASE("the roster of a class may begin with the class's own code, number 0") {
    PracticeSettings settings;
    settings.seed = 4711;
    const auto codes = codes_for(settings, 0, 3);
    REQUIRE(codes.size() == 3);
    CHECK(codes[0] == code_of(settings));
    CHECK(codes[2] == code_for(codes[0], 2));
}

TEST_CASE("rows without a code name the readings that they have from the open record, and no others") {
    Record open;
    open.shared.edit(Field::barometer).text = "99.62";
    open.shared.edit(Field::temperature).text = "21.4";
    const ClassTable table = read_sheets("group,barometer,mean\n1,99.6,22.4\n", {}, {}, open);
    REQUIRE(table.sheets.size() == 1);
    CHECK(table.from_open == std::vector<Field>{Field::temperature});
}
