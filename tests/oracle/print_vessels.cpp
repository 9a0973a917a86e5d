// Prints runs in other vessels, with other gases and other last lines, as they are typed, and what the core makes of them,
// for compare_vessels.py to check with an independently written model.
// Lines: entry,case,field,text
//        convention,case,real,0 or 1
//        value,case,output,value                of every output that has one
//        result,case,output,value,u,offset      of those with a doubt; numbers in SI units with 17 digits

#include <cstdio>
#include <string>
#include <utility>
#include <vector>

#include "core/bench/readings.hpp"
#include "core/result/budget.hpp"

using namespace overwater;

namespace {

struct Case {
    const char* name;
    std::vector<std::pair<Field, const char*>> typed;
    bool real = false;
};

std::vector<Case> all_cases() {
    return {
        {"flask in a trough",
         {{Field::apparatus, "generator_flask"},
          {Field::metal, "zinc"},
          {Field::acid, "hydrochloric"},
          {Field::mass_of_metal, "0.1310 g"},
          {Field::number_at_closed_end, "zero"},
          {Field::tube_capacity, "100 mL"},
          {Field::scale_reading, "57.4 mL"},
          {Field::injected_volume, "10.0 mL"},
          {Field::liquid_stands, "higher_inside"},
          {Field::level_difference, "45 mm"},
          {Field::temperature, "21.0 °C"},
          {Field::barometer, "101.2 kPa"}}},
        {"flask and a burette upside down",
         {{Field::apparatus, "generator_flask"},
          {Field::metal, "magnesium"},
          {Field::acid, "sulfuric"},
          {Field::mass_of_metal, "0.0382 g"},
          {Field::number_at_closed_end, "largest"},
          {Field::tube_capacity, "50 mL"},
          {Field::end_space, "2.10 mL"},
          {Field::scale_reading, "6.35 mL"},
          {Field::injected_volume, "5.0 mL"},
          {Field::liquid_stands, "level"},
          {Field::temperature, "23.5 °C"},
          {Field::barometer, "98.74 kPa"}}},
        {"syringe with moist gas",
         {{Field::apparatus, "gas_syringe"},
          {Field::metal, "magnesium"},
          {Field::acid, "hydrochloric"},
          {Field::mass_of_metal, "0.0412 g"},
          {Field::scale_reading, "43.2 mL"},
          {Field::start_reading, "0.5 mL"},
          {Field::temperature, "21.4 °C"},
          {Field::barometer, "99.62 kPa"}}},
        {"syringe with dried gas",
         {{Field::apparatus, "gas_syringe"},
          {Field::gas_is, "dry"},
          {Field::metal, "magnesium"},
          {Field::acid, "hydrochloric"},
          {Field::mass_of_metal, "0.0412 g"},
          {Field::scale_reading, "43.2 mL"},
          {Field::temperature, "21.4 °C"},
          {Field::barometer, "99.62 kPa"}}},
        {"water displaced by carbon dioxide",
         {{Field::apparatus, "displaced_water"},
          {Field::metal, "calcium_carbonate"},
          {Field::acid, "hydrochloric"},
          {Field::mass_of_metal, "0.250 g"},
          {Field::purity, "98.5 %"},
          {Field::displaced_mass, "60.8 g"},
          {Field::temperature, "22.5 °C"},
          {Field::barometer, "100.9 kPa"}},
         true},
        {"closed flask",
         {{Field::apparatus, "pressure_sensor"},
          {Field::metal, "magnesium"},
          {Field::acid, "hydrochloric"},
          {Field::mass_of_metal, "0.0412 g"},
          {Field::flask_volume, "145.5 mL"},
          {Field::acid_volume, "10.0 mL"},
          {Field::acid_concentration, "3.0 mol/L"},
          {Field::temperature, "22.2 °C"},
          {Field::barometer, "99.62 kPa"},
          {Field::pressure_after, "130.31 kPa"}}},
        {"closed flask with little acid",
         {{Field::apparatus, "pressure_sensor"},
          {Field::metal, "magnesium"},
          {Field::acid, "hydrochloric"},
          {Field::mass_of_metal, "0.0412 g"},
          {Field::flask_volume, "145.5 mL"},
          {Field::acid_volume, "10.0 mL"},
          {Field::acid_concentration, "0.25 mol/L"},
          {Field::temperature, "22.2 °C"},
          {Field::barometer, "99.62 kPa"},
          {Field::pressure_after, "122.4 kPa"}}},
        {"oxygen of a chlorate with a mercury barometer",
         {{Field::apparatus, "displaced_water"},
          {Field::metal, "potassium_chlorate"},
          {Field::mass_of_metal, "0.5426 g"},
          {Field::displaced_mass, "156.10 g"},
          {Field::temperature, "21.0 °C"},
          {Field::pressure_kind, "mercury_column"},
          {Field::barometer, "760.2 mmHg"},
          {Field::barometer_temperature, "20.0 °C"},
          {Field::latitude, "42.6"},
          {Field::height_above_sea_level, "30 m"}},
         true},
        {"mercury barometer of the temperature of the room",
         {{Field::apparatus, "tube_over_water"},
          {Field::metal, "magnesium"},
          {Field::acid, "hydrochloric"},
          {Field::mass_of_metal, "0.0412 g"},
          {Field::number_at_closed_end, "zero"},
          {Field::scale_reading, "43.20 mL"},
          {Field::liquid_stands, "higher_outside"},
          {Field::level_difference, "112 mm"},
          {Field::temperature, "21.4 °C"},
          {Field::pressure_kind, "mercury_column"},
          {Field::barometer, "747.2 mmHg"},
          {Field::latitude, "5"}}},
        {"own reaction",
         {{Field::apparatus, "tube_over_water"},
          {Field::metal, "own"},
          {Field::molar_mass, "118.71 g/mol"},
          {Field::gas, "hydrogen"},
          {Field::gas_per_mole, "1"},
          {Field::mass_of_metal, "0.1950 g"},
          {Field::number_at_closed_end, "zero"},
          {Field::tube_capacity, "50 mL"},
          {Field::scale_reading, "41.2 mL"},
          {Field::liquid_stands, "level"},
          {Field::temperature, "20.5 °C"},
          {Field::barometer, "100.4 kPa"}},
         true},
        {"alloy",
         {{Field::apparatus, "generator_flask"},
          {Field::target, "alloy"},
          {Field::metal, "aluminium"},
          {Field::second_metal, "zinc"},
          {Field::acid, "hydrochloric"},
          {Field::mass_of_metal, "0.1229 g"},
          {Field::number_at_closed_end, "zero"},
          {Field::tube_capacity, "250 mL"},
          {Field::scale_reading, "131.5 mL"},
          {Field::liquid_stands, "level"},
          {Field::temperature, "21.4 °C"},
          {Field::barometer, "762.0 mmHg"}}},
        {"equivalent mass",
         {{Field::apparatus, "tube_over_water"},
          {Field::target, "equivalent_mass"},
          {Field::metal, "aluminium"},
          {Field::acid, "hydrochloric"},
          {Field::mass_of_metal, "0.0270 g"},
          {Field::number_at_closed_end, "zero"},
          {Field::tube_capacity, "50 mL"},
          {Field::scale_reading, "38.4 mL"},
          {Field::liquid_stands, "higher_inside"},
          {Field::level_difference, "31 mm"},
          {Field::temperature, "22.0 °C"},
          {Field::barometer, "99.9 kPa"}}},
        {"carbon dioxide weighed",
         {{Field::apparatus, "tube_over_water"},
          {Field::target, "gas_molar_mass"},
          {Field::gas, "carbon_dioxide"},
          {Field::mass_from, "by_difference"},
          {Field::mass_before, "18.432 g"},
          {Field::mass_after, "18.259 g"},
          {Field::number_at_closed_end, "zero"},
          {Field::tube_capacity, "100 mL"},
          {Field::scale_reading, "97.2 mL"},
          {Field::liquid_stands, "level"},
          {Field::temperature, "23.0 °C"},
          {Field::barometer, "101.3 kPa"}},
         true},
        {"acid that lowers the vapour and a calibrated scale",
         {{Field::apparatus, "tube_over_water"},
          {Field::metal, "magnesium"},
          {Field::acid, "hydrochloric"},
          {Field::mass_of_metal, "0.0410 g"},
          {Field::number_at_closed_end, "zero"},
          {Field::tube_factor, "0.9877"},
          {Field::scale_reading, "40.50 mL"},
          {Field::liquid_stands, "level"},
          {Field::water_activity, "0.979"},
          {Field::temperature, "23.5 °C"},
          {Field::barometer, "767.8 mmHg"}}},
    };
}

void print_case(const Case& run) {
    Entries entries;
    for (const auto& [field, text] : run.typed) {
        entries.edit(field).text = text;
        std::printf("entry,%s,%s,%s\n", run.name, std::string(name_of(field)).c_str(), text);
    }
    Conventions conventions;
    if (run.real) conventions.accepted = Conventions::Accepted::real;
    std::printf("convention,%s,real,%d\n", run.name, run.real ? 1 : 0);
    const auto entry_of = [&entries](Field field) -> const Entry& { return entries.at(field); };
    const Assessment assessment = assess(read_all(entry_of), conventions);
    const Doubts doubts = doubts_of(assessment);
    const Sensitivities sensitivities(doubts);
    for (std::size_t i = 0; i < output_count; ++i) {
        const auto output = static_cast<Output>(i);
        const std::string name(name_of(output));
        if (assessment.has(output)) {
            std::printf("value,%s,%s,%.17g\n", run.name, name.c_str(), assessment.outcome[output]);
        }
        if (!sensitivities.has(output)) continue;
        const Budget budget = budget_of(doubts, sensitivities, output);
        std::printf("result,%s,%s,%.17g,%.17g,%.17g\n", run.name, name.c_str(), budget.value, budget.u, budget.offset);
    }
}

}  // namespace

int main() {
    for (const Case& run : all_cases()) print_case(run);
    return 0;
}
