#include <doctest/doctest.h>

#include "tests/core/check_support.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

/// Record A with something put down about one reading's doubt.
class Put {
public:
    Put& plus_minus(Field field, const char* text) {
        entries_.edit(field).plus_minus = text;
        return *this;
    }
    Put& again(Field field, std::vector<std::string> texts) {
        entries_.edit(field).repeats = std::move(texts);
        return *this;
    }
    Put& text(Field field, const char* typed) {
        entries_.edit(field).text = typed;
        return *this;
    }

    std::optional<Check> at(Field field, std::string_view key) const {
        for (const Check& check : assessed().checks) {
            if (check.field == field && check.message.key == key) return check;
        }
        return std::nullopt;
    }
    bool innocent() const { return assessed().checks.empty(); }
    Assessment assessed() const {
        return assess(read_all([this](Field field) -> const Entry& { return entries_.at(field); }), Conventions{});
    }

private:
    static Entries begin() {
        Entries entries;
        for (const auto& [field, text] :
             {Typed{Field::metal, "magnesium"}, Typed{Field::acid, "hydrochloric"}, Typed{Field::mass_of_metal, "0.0412"},
              Typed{Field::acid_volume, "10.0"}, Typed{Field::acid_concentration, "3.0"},
              Typed{Field::number_at_closed_end, "largest"}, Typed{Field::tube_capacity, "50"},
              Typed{Field::end_space, "2.35"}, Typed{Field::scale_reading, "9.15"},
              Typed{Field::liquid_stands, "higher_inside"}, Typed{Field::level_difference, "112"},
              Typed{Field::temperature, "21.4"}, Typed{Field::barometer, "99.62"}}) {
            entries.edit(field).text = text;
        }
        return entries;
    }
    Entries entries_ = begin();
};

bool weighs_as_doubt(const std::optional<Check>& check) { return check && check->weight == Check::Weight::doubt; }

}  // namespace

TEST_CASE("a ± that is no number above zero is not counted, and said so; the value stays") {
    CHECK(Put().innocent());
    for (const char* text : {"abc", "0", "-0.1", "0.0.5", "-"}) {
        CAPTURE(text);
        const Put put = Put().plus_minus(Field::scale_reading, text);
        CHECK(weighs_as_doubt(put.at(Field::scale_reading, "check.doubt.number")));
        CHECK(put.assessed().has(Output::molar_volume_standard));
    }
    for (const char* text : {"0.05 kPa", "0.05 blobs"}) {
        CHECK(weighs_as_doubt(Put().plus_minus(Field::scale_reading, text).at(Field::scale_reading, "check.doubt.unit")));
    }
    CHECK(weighs_as_doubt(Put().text(Field::scale_reading, "9.15 ± 0").at(Field::scale_reading, "check.doubt.number")));
    for (const char* innocent : {"0.05", "± 0,05", "0.1 mL", "1 %", " "}) {
        CHECK(Put().plus_minus(Field::scale_reading, innocent).innocent());
    }
    CHECK(Put().text(Field::scale_reading, "9.15 ± 0.1").innocent());
}

TEST_CASE("a further reading that is no number is said") {
    const auto one = Put().again(Field::temperature, {"21.5", "2l.4"}).at(Field::temperature, "check.doubt.repeat");
    REQUIRE(one);
    CHECK(place(*one, "number")->count == 1);
    CHECK(place(*Put().again(Field::temperature, {"x", "y"}).at(Field::temperature, "check.doubt.repeat"), "number")
              ->count == 2);
    CHECK(Put().again(Field::temperature, {"21.5", "", "21.3"}).innocent());
}

TEST_CASE("a further reading more than five half-widths from the others is asked about") {
    // The thermometer assumed has ± 0.5 °C: 2.5 °C is the limit.
    const auto odd = Put().again(Field::temperature, {"24.0"}).at(Field::temperature, "check.doubt.odd");
    REQUIRE(odd);
    CHECK(number_in(odd, "odd") == doctest::Approx(24.0));
    CHECK(number_in(odd, "by") == doctest::Approx(2.6));
    CHECK(number_in(odd, "doubt") == doctest::Approx(0.5));
    CHECK(!Put().again(Field::temperature, {"23.8"}).at(Field::temperature, "check.doubt.odd"));
    // A half-width typed is the measure then.
    CHECK(Put().again(Field::temperature, {"23.8"}).plus_minus(Field::temperature, "0.2").at(Field::temperature, "check.doubt.odd"));
    // Of three, the odd one is named wherever it stands.
    const auto first = Put().text(Field::temperature, "27.4").again(Field::temperature, {"21.4", "21.5"});
    CHECK(number_in(first.at(Field::temperature, "check.doubt.odd"), "odd") == doctest::Approx(27.4));
}

TEST_CASE("a ± below a tenth of the usual is asked about, and one larger than the reading") {
    // A burette of 50 mL: half a division is 0.05 mL.
    const auto small = Put().plus_minus(Field::scale_reading, "0.004").at(Field::scale_reading, "check.doubt.small");
    REQUIRE(small);
    CHECK(number_in(small, "usual") == doctest::Approx(0.05e-6));
    CHECK(!Put().plus_minus(Field::scale_reading, "0.006").at(Field::scale_reading, "check.doubt.small"));
    CHECK(Put().plus_minus(Field::scale_reading, "9.2").at(Field::scale_reading, "check.doubt.large"));
    CHECK(!Put().plus_minus(Field::scale_reading, "9.1").at(Field::scale_reading, "check.doubt.large"));
    CHECK(Put().text(Field::mass_of_metal, "0.0412 ± 0.5").at(Field::mass_of_metal, "check.doubt.large"));
    // A reading at the first mark may be smaller than half a division; a temperature near 0 °C is no small thing.
    CHECK(!Put().text(Field::scale_reading, "0.02").plus_minus(Field::scale_reading, "0.05").at(
        Field::scale_reading, "check.doubt.large"));
    CHECK(!Put().text(Field::temperature, "0.4").plus_minus(Field::temperature, "0.6").at(Field::temperature,
                                                                                       "check.doubt.large"));
}

TEST_CASE("half-widths of a temperature are shown as differences of its unit") {
    // 0.5 °C are 0.9 °F; 0.05 °F is less than a tenth of that.
    const auto small = Put().text(Field::temperature, "70.5 °F").plus_minus(Field::temperature, "0.05").at(
        Field::temperature, "check.doubt.small");
    REQUIRE(small);
    CHECK(place(*small, "usual")->unit == UnitId::fahrenheit);
    CHECK(from_base(number_in(small, "usual"), UnitId::fahrenheit) == doctest::Approx(0.9));
    CHECK(from_base(number_in(small, "doubt"), UnitId::fahrenheit) == doctest::Approx(0.05));
}
