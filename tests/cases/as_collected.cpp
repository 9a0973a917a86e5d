#include <array>
#include <vector>

#include "tests/cases/case_record.hpp"

using namespace overwater;
using namespace overwater::cases;

// Runs whose room was not written down: V/n as collected. Values named "recomputed" were computed from the source's
// readings without any code of the product.

namespace {

double collected(const CaseRecord& record, std::size_t index) {
    return litre_per_mole_of(record.run(index), Output::molar_volume_bench);
}

}  // namespace

TEST_CASE("case mg-rtp-burette-50minus: good readings, the amount rounded to one figure") {
    // Volume of one mole of gas at room conditions (2011), student report, upside-down burette. 24 dm³.
    const CaseRecord record("One mole at room conditions (2011)", as_collected(),
                            {{Field::metal, "magnesium"},
                             {Field::acid, "hydrochloric"},
                             {Field::number_at_closed_end, "largest"},
                             {Field::tube_capacity, "50 cm3"},
                             {Field::accepted_value, "24.00 dm3/mol"}},
                            {{{Field::mass_of_metal, "0.040 g"}, {Field::scale_reading, "10.1 cm3"}},
                             {{Field::mass_of_metal, "0.040 g"}, {Field::scale_reading, "9.7 cm3"}},
                             {{Field::mass_of_metal, "0.035 g"}, {Field::scale_reading, "13.5 cm3"}}});
    const std::array volumes{"39.9", "40.3", "36.5"};        // source and recomputed
    const std::array per_mole{"24.24", "24.49", "25.35"};    // recomputed
    double sum = 0;
    double volume = 0;
    for (std::size_t i = 0; i < record.runs(); ++i) {
        const Assessment run = record.run(i);
        CAPTURE(i);
        CHECK(in_millilitre(run, Output::gas_volume) == printed(volumes[i]));
        CHECK(collected(record, i) == printed(per_mole[i]));
        CHECK(says(run, Field::end_space, "note.end_space_blank"));
        sum += collected(record, i);
        volume += in_millilitre(run, Output::gas_volume);
    }
    CHECK(sum / 3 == printed("24.69"));
    CHECK(volume / 3 == printed("38.9"));

    // The source: mean volume 38.9 cm³ over 0.001 mol (0.024 g at 24 g/mol); its error has the other sign.
    Conventions whole = as_collected();
    whole.molar_mass_digits = Conventions::MolarMassDigits::whole;
    const auto mean_run = [&](const char* mass) {
        CaseRecord one("The mean run", whole,
                       {{Field::metal, "magnesium"},
                        {Field::number_at_closed_end, "largest"},
                        {Field::tube_capacity, "50 cm3"},
                        {Field::scale_reading, "11.1 cm3"},
                        {Field::accepted_value, "24.00 dm3/mol"}});
        return one.with({{Field::mass_of_metal, mass}}).run();
    };
    CHECK(in_mole(mean_run("0.038 g"), Output::amount_of_metal) == printed("0.00158"));
    CHECK(litre_per_mole_of(mean_run("0.024 g"), Output::molar_volume_bench) == printed("38.9"));
    CHECK(percent_error(mean_run("0.024 g")) == printed("62.08"));
}

TEST_CASE("case mg-h2so4-four-trials-inHg-digits: the largest mass, nearly the smallest volume") {
    // Evaluation of the gas-law constant, formal lab (2012), student report; cut before the temperature.
    const CaseRecord record("Gas-law constant (2012)", as_collected(),
                            {{Field::metal, "magnesium"},
                             {Field::acid, "sulfuric"},
                             {Field::number_at_closed_end, "zero"},
                             {Field::start_reading, "0 mL"},
                             {Field::barometer, "761.238 mmHg"}},
                            {{{Field::mass_of_metal, "0.0446 g"}, {Field::scale_reading, "45.4 mL"}},
                             {{Field::mass_of_metal, "0.0448 g"}, {Field::scale_reading, "47.9 mL"}},
                             {{Field::mass_of_metal, "0.0434 g"}, {Field::scale_reading, "42.5 mL"}},
                             {{Field::mass_of_metal, "0.0454 g"}, {Field::scale_reading, "43.6 mL"}}});
    const std::array per_mole{"24.74", "25.99", "23.80", "23.34"};  // recomputed
    std::vector<Assessment> runs;
    for (std::size_t i = 0; i < record.runs(); ++i) {
        CAPTURE(i);
        CHECK(collected(record, i) == printed(per_mole[i]));
        runs.push_back(record.run(i));
        CHECK(runs.back().state(Output::gas_constant).waiting_for.has(Field::temperature));
    }
    // The fourth run has the most metal and less gas than two with less.
    for (const std::size_t less : {0U, 1U, 2U}) {
        CHECK(runs[3].outcome[Output::amount_of_metal] > runs[less].outcome[Output::amount_of_metal]);
    }
    CHECK(runs[3].outcome[Output::gas_volume] < runs[0].outcome[Output::gas_volume]);
    CHECK(runs[3].outcome[Output::gas_volume] < runs[1].outcome[Output::gas_volume]);
    // The barometer was 29.97 inches.
    const Assessment inches = record.with({{Field::barometer, "29.97 inHg"}}).run();
    CHECK(inches.measured[Input::barometer] / runs[0].measured[Input::barometer] == doctest::Approx(1).epsilon(1e-12));
}

TEST_CASE("the runs of mg-de-class-8-groups: the volumes of eight groups per mole") {
    // Stoichiometry unit for grade 9 (Germany), teacher page with class data; the room was not written down.
    const std::initializer_list<Typed> shared{{Field::metal, "magnesium"},
                                              {Field::acid, "hydrochloric"},
                                              {Field::number_at_closed_end, "zero"}};
    const CaseRecord first("Groups 1 to 4", as_collected(), shared,
                           {{{Field::mass_of_metal, "0,022 g"}, {Field::scale_reading, "19,5 ml"}},
                            {{Field::mass_of_metal, "0,029 g"}, {Field::scale_reading, "31,0 ml"}},
                            {{Field::mass_of_metal, "0,045 g"}, {Field::scale_reading, "44,0 ml"}},
                            {{Field::mass_of_metal, "0,054 g"}, {Field::scale_reading, "49,0 ml"}}});
    const CaseRecord second("Groups 5 to 8", as_collected(), shared,
                            {{{Field::mass_of_metal, "0,068 g"}, {Field::scale_reading, "66,5 ml"}},
                             {{Field::mass_of_metal, "0,073 g"}, {Field::scale_reading, "69,5 ml"}},
                             {{Field::mass_of_metal, "0,085 g"}, {Field::scale_reading, "83,0 ml"}},
                             {{Field::mass_of_metal, "0,092 g"}, {Field::scale_reading, "86,0 ml"}}});
    const std::array per_mole{"21.54", "25.98", "23.76", "22.05", "23.77", "23.14", "23.73", "22.72"};  // recomputed
    double sum = 0;
    double volume = 0;
    double amount = 0;
    for (std::size_t i = 0; i < 8; ++i) {
        const CaseRecord& half = i < 4 ? first : second;
        const Assessment run = half.run(i % 4);
        CAPTURE(i);
        CHECK(collected(half, i % 4) == printed(per_mole[i]));
        sum += collected(half, i % 4);
        volume += in_millilitre(run, Output::gas_volume);
        amount += in_mole(run, Output::amount_of_gas);
    }
    CHECK(sum / 8 == printed("23.34"));             // recomputed: mean of ratios
    CHECK(1e-3 * volume / amount == printed("23.29"));  // recomputed: ratio of sums
}
