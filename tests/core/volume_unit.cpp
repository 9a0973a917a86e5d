// mL and L/mol, or cm³ and dm³/mol: another name of the unit, the same numbers.

#include <doctest/doctest.h>

#include "core/explain/working.hpp"
#include "core/record/json.hpp"
#include "tests/core/check_support.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

Conventions cubic() {
    Conventions conventions;
    conventions.volume_unit = Conventions::VolumeUnit::cm3;
    return conventions;
}

std::string all_text(const Formula& formula) {
    std::string out = formula.text;
    for (const Formula& child : formula.children) out += ' ' + all_text(child);
    return out;
}

std::vector<std::string> conversions(const Sheet& sheet, const Conventions& conventions, Output output) {
    const Assessment assessment = sheet.by(conventions).assessed();
    const Working working(assessment, conventions);
    std::vector<std::string> lines;
    for (const Formula& line : working.step(output)->conversions) lines.push_back(all_text(line));
    return lines;
}

}  // namespace

TEST_CASE("a unit of volume goes by the name that the conventions give it, every other unit by its own") {
    const std::pair<UnitId, UnitId> renamed[] = {{UnitId::millilitre, UnitId::cubic_centimetre},
                                                 {UnitId::litre, UnitId::cubic_decimetre},
                                                 {UnitId::litre_per_mole, UnitId::cubic_decimetre_per_mole},
                                                 {UnitId::mole_per_litre, UnitId::mole_per_cubic_decimetre}};
    for (std::size_t i = 0; i < unit_count; ++i) {
        const auto unit = static_cast<UnitId>(i);
        UnitId expected = unit;
        for (const auto& [from, to] : renamed) {
            if (from == unit) expected = to;
        }
        CHECK(named_unit(unit, Conventions::VolumeUnit::mL) == unit);
        CHECK(named_unit(unit, Conventions::VolumeUnit::cm3) == expected);
        CHECK(info(expected).factor == info(unit).factor);
    }
}

TEST_CASE("in cm³ and dm³ the working has the same numbers, and no step, letter or line says mL or L") {
    const Sheet sheet = record_a().with({{Field::tube_bore, "13"}, {Field::end_space, "2.34 g"}, {Field::start_reading, "49.50"}});
    const Assessment assessment = sheet.by(cubic()).assessed();
    const Working by_cubic(assessment, cubic());
    const Working by_litre(assessment, Conventions{});
    REQUIRE(by_cubic.steps().size() == by_litre.steps().size());
    for (std::size_t i = 0; i < by_cubic.steps().size(); ++i) {
        const WorkingStep& one = by_cubic.steps()[i];
        const WorkingStep& other = by_litre.steps()[i];
        CHECK(one.value == other.value);
        CHECK(one.shown_decimals == other.shown_decimals);
        CHECK(one.unit == named_unit(other.unit, Conventions::VolumeUnit::cm3));
        std::string text = all_text(one.numbers);
        for (const Formula& line : one.conversions) text += all_text(line);
        CHECK(text.find('L') == std::string::npos);
    }
    CHECK(by_cubic.step(Output::gas_volume)->unit == UnitId::cubic_centimetre);
    CHECK(by_cubic.step(Output::molar_volume_standard)->unit == UnitId::cubic_decimetre_per_mole);
}

TEST_CASE("only a unit that was typed with its number is said to be another name of the same") {
    using Lines = std::vector<std::string>;
    const Sheet plain = record_a().with({{Field::scale_reading, "9.15"}});
    const Sheet litre = record_a().with({{Field::scale_reading, "9.15 mL"}});
    const Sheet cubed = record_a().with({{Field::scale_reading, "9.15 cm³"}});
    CHECK(conversions(plain, Conventions{}, Output::gas_volume).empty());
    CHECK(conversions(plain, cubic(), Output::gas_volume).empty());
    CHECK(conversions(litre, Conventions{}, Output::gas_volume).empty());
    CHECK(conversions(cubed, cubic(), Output::gas_volume).empty());
    CHECK(conversions(cubed, Conventions{}, Output::gas_volume) == Lines{" 9.15 cm³ = 9.15 mL"});
    CHECK(conversions(litre, cubic(), Output::gas_volume) == Lines{" 9.15 mL = 9.15 cm³"});
}

TEST_CASE("a record without the convention means mL, and an unknown unit of volume is kept") {
    const auto conventions_in = [](const std::string& text) {
        const LoadResult load = record_from_json(R"({"overwater":"record","version":1,"conventions":)" + text + '}');
        REQUIRE(load.record.has_value());
        return *load.record;
    };
    CHECK(conventions_in("{}").conventions.volume_unit == Conventions::VolumeUnit::mL);
    CHECK(conventions_in(R"({"volume_unit":"cm3"})").conventions == cubic());
    const Record later = conventions_in(R"({"volume_unit":"in3"})");
    CHECK(later.conventions.volume_unit == Conventions::VolumeUnit::mL);
    CHECK(record_to_json(later).find(R"("volume_unit": "in3")") != std::string::npos);
}
