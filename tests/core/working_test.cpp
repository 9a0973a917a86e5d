// The working: which reading limits the figures, what is converted, how a tie is rounded, why a step is done.

#include <doctest/doctest.h>

#include "core/explain/figures.hpp"
#include "core/explain/reason.hpp"
#include "core/explain/working.hpp"
#include "tests/core/check_support.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

/// A formula in one line: fractions in brackets with a stroke.
std::string plain(const Formula& formula) {
    if (formula.kind == Formula::Kind::fraction) {
        return '(' + plain(formula.children[0]) + ")/(" + plain(formula.children[1]) + ')';
    }
    if (formula.kind == Formula::Kind::bracketed) return '(' + plain(formula.children[0]) + ')';
    std::string out = formula.text;
    for (const Formula& child : formula.children) {
        const bool apart = !out.empty() && formula.kind == Formula::Kind::row;
        out += (apart ? " " : "") + plain(child);
    }
    return out;
}

class Page {
public:
    explicit Page(const Sheet& sheet, const Conventions& conventions = {})
        : assessment_(sheet.by(conventions).assessed()), working_(assessment_, conventions) {}

    const WorkingStep& step(Output output) const {
        const WorkingStep* found = working_.step(output);
        REQUIRE(found != nullptr);
        return *found;
    }
    std::string numbers(Output output) const { return plain(step(output).numbers); }
    std::string letters(Output output) const { return plain(step(output).letters); }
    std::vector<std::string> conversions(Output output) const {
        std::vector<std::string> lines;
        for (const Formula& line : step(output).conversions) lines.push_back(plain(line));
        return lines;
    }
    std::string shown(Output output) const {
        const WorkingStep& of = step(output);
        return format_fixed(in_unit(output, of.value, of.unit), of.decimals, DecimalSign::point);
    }
    Limit limit(Output output) const {
        return limiting_input(working_.trace(), assessment_.readings, output).value_or(Limit{});
    }
    std::string_view reason(Output output) const { return reason_of(assessment_, output); }

private:
    Assessment assessment_;
    Working working_;
};

using Lines = std::vector<std::string>;

}  // namespace

TEST_CASE("record A: the mass has 3 figures and limits the result to 22.7") {
    // method.md, section 5.
    const Page page(record_a());
    const Limit limit = page.limit(Output::molar_volume_standard);
    CHECK(limit.input == Input::mass_of_metal);
    CHECK(limit.quantity == Output::count);
    CHECK(limit.figures == 3);
    CHECK(page.shown(Output::molar_volume_standard) == "22.7");
    // With the mass to 0.01 mg, 41.20 mg, four figures: the volume 43.20 mL and the pressure 95.97 kPa have no more, and
    // a hundredth of 43.20 weighs more than a hundredth of 95.97 or of 41.20.
    const Limit finer = Page(record_a().with({{Field::mass_of_metal, "0.04120"}})).limit(Output::molar_volume_standard);
    CHECK(finer.figures == 4);
    CHECK(finer.input != Input::count);
}

TEST_CASE("a difference that loses figures limits the result, and the reading in it is named") {
    // 1.24 g - 1.20 g = 0.04 g: three figures each, one left.
    const Page masses(record_a().with(
        {{Field::mass_from, "by_difference"}, {Field::mass_before, "1.24"}, {Field::mass_after, "1.20"}}));
    const Limit mass = masses.limit(Output::molar_volume_standard);
    CHECK(mass.quantity == Output::mass);
    CHECK((mass.input == Input::mass_before || mass.input == Input::mass_after));
    CHECK(mass.figures == 1);
    // The coarser of the two: 1.242 g - 1.20 g.
    const Page uneven(record_a().with(
        {{Field::mass_from, "by_difference"}, {Field::mass_before, "1.242"}, {Field::mass_after, "1.20"}}));
    CHECK(uneven.limit(Output::molar_volume_standard).input == Input::mass_after);
    // 50 - 48 + 2.35 = 4.35: 48 to whole millilitres leaves one figure.
    const Page volume(record_a().with({{Field::scale_reading, "48"}}));
    const Limit gas = volume.limit(Output::molar_volume_standard);
    CHECK(gas.quantity == Output::gas_volume);
    CHECK(gas.input == Input::scale_reading);
    CHECK(gas.figures == 1);
    // 9.2 has two figures, the gas volume 43.2 three: as many as the mass, and a tenth weighs less there.
    CHECK(Page(record_a().with({{Field::scale_reading, "9.2"}})).limit(Output::gas_volume).figures == 3);
    // A whole degree: 21 + 273.15 K keeps three figures, one part in 294.
    const Limit warm = Page(record_a().with({{Field::temperature, "21"}})).limit(Output::absolute_temperature);
    CHECK(warm.quantity == Output::absolute_temperature);
    CHECK(warm.input == Input::temperature);
    CHECK(warm.figures == 3);
    // Exact results have no limit; a table's digits are no reading.
    CHECK(Page(record_a()).limit(Output::accepted_value).figures == 0);
    CHECK(Page(record_a()).limit(Output::water_vapour_pressure).input == Input::count);
}

TEST_CASE("a purity of 100 % says that all of it is metal; 98 % is a number of two figures") {
    CHECK(Page(record_a()).step(Output::amount_of_metal).figures == 3);
    CHECK(Page(record_a().with({{Field::purity, "98"}})).limit(Output::amount_of_metal).input == Input::purity);
}

TEST_CASE("a tie in the working is rounded as the conventions say") {
    // 50 - 9.1 + 2.35 = 43.25 mL, to the tenth of the reading: half up 43.3, to the even digit 43.2.
    const Sheet tie = record_a().with({{Field::scale_reading, "9.1"}});
    Conventions even;
    even.rounding = Rounding::half_to_even;
    const auto numbers = [&](const Conventions& conventions) {
        return Page(tie, conventions).numbers(Output::molar_volume_bench);
    };
    CHECK(numbers({}).find("43.3 mL") != std::string::npos);
    CHECK(numbers(even).find("43.2 mL") != std::string::npos);
    // Rounded at each step to one digit more than is significant: 0.04125 g + 0 = one gram less, by difference.
    Conventions steps;
    steps.round = Conventions::Round::at_each_step;
    Conventions even_steps = even;
    even_steps.round = Conventions::Round::at_each_step;
    const Sheet masses =
        record_a().with({{Field::mass_from, "ribbon"}, {Field::ribbon_length, "2.5"}, {Field::mass_per_metre, "1.65"}});
    // 0.025 m x 1.65 g/m = 0.04125 g: two figures and one more are 0.0413 or 0.0412.
    CHECK(Page(masses, steps).step(Output::mass).value == doctest::Approx(0.0413e-3).epsilon(1e-12));
    CHECK(Page(masses, even_steps).step(Output::mass).value == doctest::Approx(0.0412e-3).epsilon(1e-12));
}

TEST_CASE("units typed otherwise than the formula wants them are converted in a line") {
    const Page plain_units(record_a());
    CHECK(plain_units.conversions(Output::gas_volume).empty());
    CHECK(plain_units.conversions(Output::dry_gas_pressure).empty());
    // 112 mm in metres; 997.907 x 9.80665 x 0.112 = 1096.05 Pa (method.md).
    CHECK(plain_units.conversions(Output::column_pressure) == Lines{"112 mm = 0.112 m", "1096 Pa = 1.096 kPa"});
    CHECK(plain_units.numbers(Output::column_pressure).find("0.112 m") != std::string::npos);

    Conventions kilopascal;
    kilopascal.pressure_unit = UnitId::kilopascal;
    const Page inches(record_a().with({{Field::barometer, "29.92 inHg"}}), kilopascal);
    // NIST SP 811: 1 inHg = 3.386389 kPa; 29.92 of them are 101.32076, shown like every term of the sum.
    CHECK(inches.conversions(Output::dry_gas_pressure) == Lines{"29.92 inHg = 29.92 × 3.386389 kPa = 101.321 kPa"});
    CHECK(inches.numbers(Output::dry_gas_pressure) == "101.321 − 1.096 − 2.550 kPa");

    const Page torr(record_a().with({{Field::barometer, "747.2 mmHg"}}));
    // A column in millimetres of mercury, 133.3224 Pa each: 1096.05 / 133.3224 = 8.2211.
    CHECK(torr.conversions(Output::column_pressure) ==
          Lines{"112 mm = 0.112 m", "1096 Pa = (1096)/(133.3224) mmHg = 8.221 mmHg"});
    CHECK(torr.conversions(Output::dry_gas_pressure).empty());
    // The gas constant wants kilopascals: p V/(n T).
    REQUIRE(torr.conversions(Output::gas_constant).size() == 1);
    CHECK(torr.conversions(Output::gas_constant)[0].find("× 0.1333224 kPa = ") != std::string::npos);

    const Page others(record_a().with({{Field::mass_of_metal, "41.2 mg"},
                                       {Field::temperature, "70.5 °F"},
                                       {Field::level_difference, "11.2 cm"},
                                       {Field::scale_reading, "9.15 cm³"}}));
    CHECK(others.conversions(Output::amount_of_metal)[0] == "41.2 mg = 0.0412 g");
    // (70.5 - 32)/1.8 = 21.389.
    CHECK(others.conversions(Output::absolute_temperature) == Lines{"70.5 °F = (70.5 − 32)/(1.8) °C = 21.39 °C"});
    CHECK(others.numbers(Output::absolute_temperature) == "21.39 + 273.15 K");
    CHECK(others.conversions(Output::water_vapour_pressure).empty());  // said once, where it is used first
    CHECK(others.numbers(Output::water_vapour_pressure).find("21.39 °C") != std::string::npos);
    CHECK(others.conversions(Output::column_pressure)[0] == "11.2 cm = 0.112 m");
    CHECK(others.conversions(Output::gas_volume) == Lines{"9.15 cm³ = 9.15 mL"});

    // Water weighed for the end space: 2.34 g at 21.4 °C, 0.997907 g/mL (method.md), are 2.3449 mL.
    const Page weighed(record_a().with({{Field::end_space, "2.34 g"}}));
    CHECK(weighed.conversions(Output::gas_volume) == Lines{"(2.34 g)/(0.9979 g/mL) = 2.34 mL"});
}

TEST_CASE("the working is written with the decimal sign of the conventions, and with the mean of several readings") {
    Conventions comma;
    comma.decimal_sign = DecimalSign::comma;
    CHECK(Page(record_a(), comma).conversions(Output::column_pressure)[0] == "112 mm = 0,112 m");
    CHECK(Page(record_a(), comma).letters(Output::absolute_temperature).find("273,15") != std::string::npos);
    CHECK(Page(record_a(), {}).letters(Output::absolute_temperature).find("273.15") != std::string::npos);
    // 21.4, 21.6 and 21.6: the mean, 21.533, with one digit more than a reading has.
    Entries entries;
    Entry& temperature = entries.edit(Field::temperature);
    temperature.text = "21.4";
    temperature.repeats = {"21.6", "21.6"};
    const auto entry_of = [&](Field field) -> const Entry& { return entries.at(field); };
    const Assessment run = assess(read_all(entry_of), {});
    const Working working(run, {});
    REQUIRE(working.step(Output::absolute_temperature) != nullptr);
    CHECK(plain(working.step(Output::absolute_temperature)->numbers) == "21.53 + 273.15 K");
}

TEST_CASE("every step of a working has its reason, by the way it is done") {
    const Page page(record_a());
    CHECK(page.reason(Output::gas_volume) == "reason.gas_volume.largest");
    CHECK(page.reason(Output::dry_gas_pressure) == "reason.dry_gas_pressure.inside");
    CHECK(page.reason(Output::amount_of_metal) == "reason.amount_of_metal.purity");
    CHECK(page.reason(Output::amount_of_gas) == "reason.amount_of_gas.one_for_one");
    CHECK(page.reason(Output::molar_volume_standard) == "reason.molar_volume_standard.ideal");
    CHECK(page.reason(Output::mass).empty());  // weighed: no step
    const auto with = [](std::initializer_list<Typed> changes, Output output, const Conventions& conventions = {}) {
        return Page(record_a().with(changes), conventions).reason(output);
    };
    CHECK(with({{Field::number_at_closed_end, "zero"}}, Output::gas_volume) == "reason.gas_volume.zero");
    CHECK(with({{Field::end_space, ""}}, Output::gas_volume) == "reason.gas_volume.largest_alone");
    CHECK(with({{Field::tube_bore, "13"}}, Output::gas_volume) == "reason.gas_volume.ring");
    CHECK(with({{Field::start_reading, "49"}}, Output::gas_volume) == "reason.gas_volume.start");
    CHECK(with({{Field::start_reading, "49"}}, Output::gas_at_end) == "reason.gas_volume.largest");
    CHECK(with({{Field::starting_bubble, "0.4"}, {Field::start_level_difference, "20"}}, Output::gas_volume) ==
          "reason.gas_volume.start_level");
    CHECK(with({{Field::liquid_stands, "higher_outside"}}, Output::dry_gas_pressure) ==
          "reason.dry_gas_pressure.outside");
    CHECK(with({{Field::liquid_stands, "level"}}, Output::dry_gas_pressure) == "reason.dry_gas_pressure.level");
    CHECK(with({{Field::metal, "aluminium"}}, Output::amount_of_gas) == "reason.amount_of_gas.three_for_two");
    CHECK(with({{Field::metal, "lithium"}}, Output::amount_of_gas) == "reason.amount_of_gas.one_for_two");
    CHECK(with({{Field::acid_concentration, "0.1"}}, Output::amount_of_gas) == "reason.amount_of_gas.acid");
    CHECK(with({{Field::mass_from, "ribbon"}}, Output::mass) == "reason.mass.ribbon");
    Conventions conventions;
    conventions.accepted = Conventions::Accepted::real;
    CHECK(with({}, Output::molar_volume_standard, conventions) == "reason.molar_volume_standard.real");
    conventions.vapour = Conventions::Vapour::not_subtracted;
    CHECK(with({}, Output::dry_gas_pressure, conventions) == "reason.dry_gas_pressure.wet");
    CHECK(with({}, Output::water_vapour_pressure, conventions) == "reason.water_vapour_pressure.unused");
    conventions.vapour = Conventions::Vapour::own_value;
    CHECK(with({}, Output::water_vapour_pressure, conventions) == "reason.water_vapour_pressure.own");
    conventions.vapour = Conventions::Vapour::older_table;
    CHECK(with({}, Output::water_vapour_pressure, conventions) == "reason.water_vapour_pressure.table");
}

TEST_CASE("the share in an alloy is written out with the moles that a gram of each metal gives") {
    // 42.71 mL of dry gas at 99.62 kPa and 21.4 °C have 39.456 mL at 0 °C and 100 kPa, 1.7373 mmol (by hand).
    const Page page(Sheet().with({{Field::apparatus, "gas_syringe"},
                                  {Field::gas_is, "dry"},
                                  {Field::target, "alloy"},
                                  {Field::metal, "aluminium"},
                                  {Field::second_metal, "zinc"},
                                  {Field::mass_of_metal, "0.0500"},
                                  {Field::scale_reading, "42.71"},
                                  {Field::temperature, "21.4"},
                                  {Field::barometer, "99.62"}}));
    const std::string numbers = page.numbers(Output::alloy_share);
    INFO(numbers);
    CHECK(numbers.find("(0.0017373 mol)/(0.0500 g)") != std::string::npos);
    CHECK(numbers.find("65.38 g/mol") != std::string::npos);
    CHECK(numbers.find("26.982 g/mol") != std::string::npos);
    CHECK(numbers.find("100 %") != std::string::npos);
}

TEST_CASE("constants stand in a working with the digits that are given for them") {
    // CODATA 2018: 8.31446 J/(mol K); CIAAW 2021: 24.305 g/mol of magnesium.
    const Page constant(record_a().with({{Field::target, "gas_constant"}}));
    CHECK(constant.numbers(Output::percent_error).find("8.31446 J") != std::string::npos);
    const Page molar_mass(record_a().with({{Field::target, "molar_mass"}}));
    CHECK(molar_mass.numbers(Output::percent_error).find("24.305 g/mol") != std::string::npos);
}
