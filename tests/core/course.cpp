// Courses: each is what its key says, has a name that no other has, and brings record A to what it comes to elsewhere.

#include "core/result/course.hpp"

#include <doctest/doctest.h>

#include <set>

#include "core/record/convention_choices.hpp"
#include "core/record/course_json.hpp"
#include "core/record/json.hpp"
#include "tests/cases/case_record.hpp"

using namespace overwater;
using namespace overwater::cases;

namespace {

/// L/mol, L/mol, %.
struct Expected {
    const char* key;
    const char* molar_volume;
    const char* accepted;
    const char* percent_error;
};

// tests/oracle/record_a.py, which has no code of the product: volume of record A by n = m/M, vapour pressure of IAPWS-IF97
// (python3-iapws) or 19.1 torr of the class table, column by the CIPM density, gas law with the constant of CODATA (scipy);
// standards.md's 22.414, 22.711, 24.055 and 24.465 L/mol are among the accepted values.
constexpr Expected expected[] = {
    {"0C_1atm_mmHg", "22.3860", "22.4140", "-0.1246"},      {"0C_1atm_torr", "22.3860", "22.4140", "-0.1246"},
    {"0C_1atm_kPa", "22.3852", "22.4140", "-0.1283"},       {"0C_100kPa_kPa", "22.6818", "22.7110", "-0.1283"},
    {"0C_100kPa_kPa_cm3", "22.6865", "22.7110", "-0.1077"}, {"room_kPa_cm3_24", "25.1650", "24.0000", "4.8544"},
    {"room_kPa_cm3", "25.4796", "24.0000", "6.1650"},       {"0C_1atm_Pa_cm3", "22.1043", "22.4140", "-1.3815"},
    {"25C_1atm_kPa_wet", "24.7684", "24.4654", "1.2387"},   {"0C_1atm_hPa_wet", "22.9752", "22.4140", "2.5041"},
    {"room_hPa", "25.4796", "24.0000", "6.1650"},           {"20C_1atm_hPa_wet", "24.6575", "24.0551", "2.5041"},
    {"25C_1atm_hPa_wet", "25.0781", "24.4654", "2.5041"},   {"0C_1atm_mmHg_comma", "22.3814", "22.4140", "-0.1452"},
    {"0C_1atm_hPa", "22.3806", "22.4140", "-0.1488"},       {"0C_1atm_atm", "22.3898", "22.4140", "-0.1077"},
};

/// Record A of method.md. Purity 100 %.
CaseRecord record_a(const Conventions& conventions) {
    return {"record A",
            conventions,
            {{Field::metal, "magnesium"},
             {Field::acid, "hydrochloric"},
             {Field::mass_of_metal, "0.0412 g"},
             {Field::number_at_closed_end, "largest"},
             {Field::tube_capacity, "50 mL"},
             {Field::end_space, "2.35 mL"},
             {Field::scale_reading, "9.15"},
             {Field::liquid_stands, "higher_inside"},
             {Field::level_difference, "112 mm"},
             {Field::temperature, "21.4"},
             {Field::barometer, "99.62 kPa"},
             {Field::accepted_value, "24.0"}}};
}

const Course& course_of(std::string_view key) {
    for (const Course& course : courses()) {
        if (course.key == key) return course;
    }
    FAIL(key);
    return courses().front();
}

}  // namespace

TEST_CASE("every course brings record A to what the same way gives outside the program") {
    CHECK(std::size(expected) == courses().size());
    for (const Expected& row : expected) {
        INFO(row.key);
        const Course& course = course_of(row.key);
        const bool converts = course.conventions.conversion == Conventions::Conversion::standard_conditions;
        CHECK((course.accepted > 0) == (course.conventions.accepted == Conventions::Accepted::typed));
        const Assessment run = record_a(course.conventions).run();
        const Output wanted = converts ? Output::molar_volume_standard : Output::molar_volume_bench;
        CHECK(litre_per_mole_of(run, wanted) == printed(row.molar_volume));
        CHECK(litre_per_mole_of(run, Output::accepted_value) == printed(row.accepted));
        CHECK(percent_error(run) == printed(row.percent_error));
        if (course.accepted > 0) CHECK(course.accepted == printed("24.0"));
    }
}

TEST_CASE("no two courses are the same conventions, and each differs from the others in what is named") {
    std::set<std::string_view> keys;
    for (const Course& one : courses()) {
        CHECK(keys.insert(one.key).second);
        CHECK(differing(one.conventions, one.conventions).empty());
        // A course leaves it to the teacher when results are shown.
        CHECK(one.conventions.answers == Conventions{}.answers);
        for (const Course& other : courses()) {
            if (&one == &other) continue;
            CHECK_FALSE(differing(one.conventions, other.conventions).empty());
            CHECK(differing(one.conventions, other.conventions).size() ==
                  differing(other.conventions, one.conventions).size());
        }
    }
}

TEST_CASE("what counts for nothing under two sets of conventions is no difference between them") {
    Conventions one;
    Conventions other;
    other.own_celsius = 18;
    other.own_pressure = 95000;
    other.vapour_rows = Conventions::VapourRows::nearest;
    CHECK(differing(one, other).empty());
    one.standard = other.standard = StandardConditions::own;
    CHECK(differing(one, other) == std::vector<std::string_view>{"own_celsius", "own_pressure"});
    one.vapour = other.vapour = Conventions::Vapour::older_table;
    other.own_celsius = one.own_celsius;
    CHECK(differing(one, other) == std::vector<std::string_view>{"vapour_rows", "own_pressure"});
    one.conversion = other.conversion = Conventions::Conversion::none;
    other.standard = StandardConditions::zero_celsius_1_atmosphere;
    other.pressure_unit = UnitId::torr;
    CHECK(differing(one, other) == std::vector<std::string_view>{"vapour_rows", "pressure_unit"});
}

TEST_CASE("a course changes conventions alone: every reading of a record and its history stay as they were") {
    Record record;
    record.shared.edit(Field::tube_capacity).text = "50";
    Entry& barometer = record.shared.edit(Field::barometer);
    barometer.text = "747.2";
    barometer.unit = UnitId::millimetre_of_mercury;
    barometer.plus_minus = "0.5";
    barometer.repeats = {"747.3"};
    record.runs[0].entries.edit(Field::scale_reading).text = "9,15 cm³";
    record.runs[0].entries.edit(Field::scale_reading).unit = UnitId::millilitre;
    record.history.push_back({"2026-01-31T09:30:00Z", 0, "scale_reading", "9,15 cm³", {}});
    for (const Course& course : courses()) {
        Record chosen = record;
        chosen.conventions = course.conventions;
        const LoadResult again = record_from_json(record_to_json(chosen));
        REQUIRE(again.record.has_value());
        CHECK(again.record->conventions == course.conventions);
        CHECK(again.record->shared == record.shared);
        CHECK(again.record->runs == record.runs);
        CHECK(again.record->history == record.history);
    }
}

TEST_CASE("a course of one's own goes out as JSON and comes back, in any script, with what it does not know") {
    for (const Course& course : courses()) {
        const OwnCourse own{"Herbst \"3 b\", \u043a\u0443\u0440\u0441 \u8bfe", course.conventions,
                            R"({"later":{"a":[1]}})"};
        const CourseLoad load = course_from_json(course_to_json(own));
        REQUIRE(load.course.has_value());
        CHECK(*load.course == own);
    }
    const CourseLoad least =
        course_from_json("\xEF\xBB\xBF{\"overwater\":\"course\",\"version\":1,\"name\":\"a\",\"conventions\":{}}");
    REQUIRE(least.course.has_value());
    CHECK(least.course->conventions == Conventions{});
}

TEST_CASE("a text that is no course is refused with a reason") {
    const auto with = [](const std::string& rest) { return R"({"overwater":"course",)" + rest + '}'; };
    const std::string letters(60, 'x');
    const std::pair<std::string, std::string_view> texts[] = {
        {"", "course.damaged"},
        {"{", "course.damaged"},
        {"[]", "course.damaged"},
        {"\xFF", "course.damaged"},
        {std::string(1'000'001, ' '), "course.damaged"},
        {R"({"overwater":"record","version":1})", "course.damaged"},
        {with(R"("name":"a","conventions":{})"), "course.damaged"},
        {with(R"("version":1,"name":"a")"), "course.damaged"},
        {with(R"("version":2,"name":"a","conventions":{})"), "import.newer_set"},
        {with(R"("version":1,"name":1,"conventions":{})"), "import.wrong_type"},
        {with(R"("version":1,"name":"a","conventions":[])"), "import.wrong_type"},
        {with(R"("version":1,"name":"a","conventions":{"own_celsius":"1"})"), "import.wrong_type"},
        {with(R"("version":1,"name":"a","conventions":{"own_pascal":0})"), "import.out_of_range"},
        {with(R"("version":1,"conventions":{})"), "course.name"},
        {with(R"("version":1,"name":"  ","conventions":{})"), "course.name"},
        {with(R"("version":1,"name":"a\nb","conventions":{})"), "course.name"},
        {with(R"("version":1,"name":")" + letters + R"(x","conventions":{})"), "course.name"}};
    for (const auto& [text, key] : texts) {
        const std::string begins = text.substr(0, 100);
        INFO(begins);
        const CourseLoad load = course_from_json(text);
        CHECK_FALSE(load.course.has_value());
        CHECK(load.problem.key == key);
    }
    CHECK(is_course_name(letters));
    // Sixty letters of any script, however many bytes they have.
    std::string wide;
    for (int i = 0; i < 60; ++i) wide += "\u8bfe";
    CHECK(is_course_name(wide));
    CHECK_FALSE(is_course_name(wide + "a"));
    CHECK_FALSE(is_course_name("\xE8"));
}

TEST_CASE("a course shows pressures and volumes in the units that its key names, with the digits of its places") {
    using Digits = Conventions::MolarMassDigits;
    struct Row {
        const char* key;
        UnitId pressure;
        Digits digits;
        DecimalSign sign;
    };
    // From memory: periodic tables in use there; Latin America, Germany, France and Italy write a comma.
    const Row rows[] = {
        {"0C_1atm_mmHg", UnitId::millimetre_of_mercury, Digits::abridged, DecimalSign::point},
        {"0C_1atm_torr", UnitId::torr, Digits::abridged, DecimalSign::point},
        {"0C_100kPa_kPa_cm3", UnitId::kilopascal, Digits::two_decimals, DecimalSign::point},
        {"room_kPa_cm3_24", UnitId::kilopascal, Digits::whole, DecimalSign::point},
        {"room_kPa_cm3", UnitId::kilopascal, Digits::one_decimal, DecimalSign::point},
        {"0C_1atm_Pa_cm3", UnitId::pascal, Digits::whole, DecimalSign::point},
        {"25C_1atm_kPa_wet", UnitId::kilopascal, Digits::whole, DecimalSign::point},
        {"0C_1atm_hPa_wet", UnitId::hectopascal, Digits::one_decimal, DecimalSign::comma},
        {"room_hPa", UnitId::hectopascal, Digits::one_decimal, DecimalSign::comma},
        {"20C_1atm_hPa_wet", UnitId::hectopascal, Digits::one_decimal, DecimalSign::comma},
        {"25C_1atm_hPa_wet", UnitId::hectopascal, Digits::one_decimal, DecimalSign::comma},
        {"0C_1atm_mmHg_comma", UnitId::millimetre_of_mercury, Digits::one_decimal, DecimalSign::comma},
        {"0C_1atm_hPa", UnitId::hectopascal, Digits::one_decimal, DecimalSign::comma},
        {"0C_1atm_atm", UnitId::atmosphere, Digits::two_decimals, DecimalSign::comma},
    };
    for (const Row& row : rows) {
        INFO(row.key);
        const Conventions& by = course_of(row.key).conventions;
        CHECK(by.pressure_unit == row.pressure);
        CHECK(by.molar_mass_digits == row.digits);
        CHECK(by.decimal_sign == row.sign);
        const bool cubic = std::string_view(row.key).find("cm3") != std::string_view::npos;
        CHECK((by.volume_unit == Conventions::VolumeUnit::cm3) == cubic);
    }
}
