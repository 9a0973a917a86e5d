#include <doctest/doctest.h>

#include "tests/core/check_support.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

Sheet acid(const char* which, const char* volume, const char* concentration) {
    return record_a().with(
        {{Field::acid, which}, {Field::acid_volume, volume}, {Field::acid_concentration, concentration}});
}

}  // namespace

TEST_CASE("acid that does not suffice, and acid that hardly does") {
    // 0.0412 g of magnesium need 2 x 1.695 mmol = 3.39 mmol of HCl, half of that of H2SO4.
    CHECK(says(acid("hydrochloric", "3.3", "1.0"), Field::acid_volume, "check.acid_limits"));
    CHECK(says(acid("hydrochloric", "3.5", "1.0"), Field::acid_volume, "check.acid_short"));
    CHECK(!says(acid("hydrochloric", "6.9", "1.0"), "check.acid_short"));
    CHECK(says(acid("sulfuric", "3.3", "1.0"), Field::acid_volume, "check.acid_short"));
    CHECK(!says(acid("sulfuric", "3.5", "1.0"), "check.acid_short"));
    // Calcium takes its hydrogen from the water too.
    CHECK(!says(acid("hydrochloric", "0.1", "1.0").with({{Field::metal, "calcium"}}), "check.acid_limits"));
}

TEST_CASE("acid that is just enough is not called too little for the last bit of a quotient") {
    // 0.1 g of 10 g/mol are 10 mmol and take 10 mmol of acid, which are 10 mL of 1 mol/L; 20 mL are twice as much.
    const Sheet own = record_a().with({{Field::metal, "own"},
                                       {Field::gas, "hydrogen"},
                                       {Field::molar_mass, "10"},
                                       {Field::gas_per_mole, "1"},
                                       {Field::acid_per_mole, "1"},
                                       {Field::mass_of_metal, "0.1"},
                                       {Field::acid_volume, "10"},
                                       {Field::acid_concentration, "1"}});
    CHECK_FALSE(says(own, "check.acid_limits"));
    CHECK(says(own.with({{Field::acid_volume, "9.99"}}), "check.acid_limits"));
    CHECK_FALSE(says(own.with({{Field::acid_volume, "20"}}), "check.acid_short"));
    CHECK(says(own.with({{Field::acid_volume, "19.9"}}), "check.acid_short"));
}

TEST_CASE("strong acid needs the teacher") {
    CHECK(says(acid("hydrochloric", "10", "3.1"), Field::acid_concentration, "note.strong_hydrochloric"));
    CHECK(!says(acid("hydrochloric", "10", "3.0"), "note.strong_hydrochloric"));
    CHECK(says(acid("sulfuric", "10", "2.1"), Field::acid_concentration, "check.strong_sulfuric"));
    CHECK(!says(acid("sulfuric", "10", "2.0"), "check.strong_sulfuric"));
}

TEST_CASE("acid stronger than any bottle is asked about") {
    // 37 % hydrochloric acid has 12.1 mol/L, 98 % sulfuric acid 18.4 mol/L.
    CHECK(says(acid("hydrochloric", "10", "14"), Field::acid_concentration, "check.no_such_acid"));
    CHECK(!says(acid("hydrochloric", "10", "12.1"), "check.no_such_acid"));
    CHECK(says(acid("sulfuric", "10", "20"), Field::acid_concentration, "check.no_such_acid"));
    CHECK(!says(acid("sulfuric", "10", "18.4"), "check.no_such_acid"));
    CHECK(says(acid("", "10", "30"), Field::acid_concentration, "check.no_such_acid"));
    CHECK(!says(acid("", "10", "14"), "check.no_such_acid"));
}
