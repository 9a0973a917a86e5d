#include <doctest/doctest.h>

#include <set>
#include <string_view>

#include "core/lesson/slip.hpp"
#include "core/result/method_numbers.hpp"
#include "tests/core/check_support.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

using Names = std::set<std::string_view>;

/// The mix-ups of units that can happen to a barometer read like this.
Names mixed_up(const char* barometer) {
    const Assessment run = record_a().with({{Field::barometer, barometer}}).assessed();
    Names names;
    for (std::size_t i = 0; i < slip_count; ++i) {
        const std::string_view name = slip_table[i].name;
        const bool units = name.starts_with("barometer_") && name.find("_as_") != std::string_view::npos;
        if (units && can_happen(static_cast<SlipIndex>(i), run)) names.insert(name);
    }
    return names;
}

}  // namespace

TEST_CASE("a unit is taken for another only where the barometer was read in it") {
    const Names inches{"barometer_inch_as_millimetre", "barometer_inch_as_kilopascal"};
    const Names millimetres{"barometer_millimetre_as_kilopascal", "barometer_millimetre_as_hectopascal"};
    CHECK(mixed_up("29.42 inHg") == inches);
    CHECK(mixed_up("747.2 mmHg") == millimetres);
    CHECK(mixed_up("747.2 torr") == millimetres);
    CHECK(mixed_up("99.62 kPa") == Names{"barometer_kilopascal_as_millimetre"});
    CHECK(mixed_up("996.2 hPa") == Names{"barometer_hectopascal_as_millimetre"});
    CHECK(mixed_up("996.2 mbar") == Names{"barometer_hectopascal_as_millimetre"});
    CHECK(mixed_up("0.9832 atm").empty());
}

// NIST SP 811 (2008), appendix B.8: 1 mmHg = 133.3224 Pa, 1 inHg = 3386.389 Pa.
TEST_CASE("a number in one unit of pressure taken for one in another is off by their ratio") {
    const double mmHg = 133.3224;
    const double inHg = 3386.389;
    const auto is = [](double factor) { return doctest::Approx(factor).epsilon(1e-6); };
    CHECK(slip_factor(Method::Vapour::kilopascal_as_millimetre) == is(mmHg / 1000));
    CHECK(slip_factor(Method::Vapour::millimetre_as_kilopascal) == is(1000 / mmHg));
    CHECK(slip_factor(Method::Vapour::hectopascal_as_millimetre) == is(mmHg / 100));
    CHECK(slip_factor(Method::Vapour::millimetre_as_hectopascal) == is(100 / mmHg));
    CHECK(slip_factor(Method::Vapour::right) == 1);
    CHECK(slip_factor(Method::Barometer::inch_as_millimetre) == is(mmHg / inHg));
    CHECK(slip_factor(Method::Barometer::inch_as_kilopascal) == is(1000 / inHg));
    CHECK(slip_factor(Method::Barometer::millimetre_as_kilopascal) == is(1000 / mmHg));
    CHECK(slip_factor(Method::Barometer::kilopascal_as_millimetre) == is(mmHg / 1000));
    CHECK(slip_factor(Method::Barometer::hectopascal_as_millimetre) == is(mmHg / 100));
    CHECK(slip_factor(Method::Barometer::millimetre_as_hectopascal) == is(100 / mmHg));
    CHECK(slip_factor(Method::Barometer::right) == 1);
}
