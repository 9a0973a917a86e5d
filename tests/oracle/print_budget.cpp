// Prints runs as they are typed and the budgets the core makes of them, for compare_budget.py to check with an
// independent library and an independently written model.
// Lines: entry,case,field,text,instrument,plus_minus,shape,repeats (with | between them)
//        convention,case,name,value
//        row,case,output,input,kind,low,high,degrees,u,sensitivity,contribution
//        result,case,output,value,u,degrees,offset        numbers in SI units with 17 digits

#include <cstdio>
#include <string>
#include <vector>

#include "core/result/budget.hpp"
#include "tests/oracle/typed_runs.hpp"

using namespace overwater;

namespace {

struct Case {
    const char* name;
    std::vector<Typed> changes;  ///< of record A
    Conventions conventions{};
};

Conventions with(Conventions::Vapour vapour) {
    Conventions conventions;
    conventions.vapour = vapour;
    return conventions;
}

Conventions real_at_one_atmosphere() {
    Conventions conventions;
    conventions.accepted = Conventions::Accepted::real;
    conventions.standard = StandardConditions::zero_celsius_1_atmosphere;
    return conventions;
}

Conventions as_collected() {
    Conventions conventions;
    conventions.conversion = Conventions::Conversion::none;
    conventions.accepted = Conventions::Accepted::typed;
    return conventions;
}

std::vector<Case> all_cases() {
    return {
        {"record A", {}},
        {"one figure", {{Field::mass_of_metal, "0.03 g"}}},
        {"instruments",
         {{Field::mass_of_metal, "0.0412 g", "balance_1mg"},
          {Field::scale_reading, "9.15 mL", "burette_50_a"},
          {Field::end_space, "2.35 mL", "weighed_water"},
          {Field::level_difference, "112 mm", "tape_by_hand"},
          {Field::temperature, "21.4 °C", "thermometer_01"},
          {Field::barometer, "99.62 kPa", "mercury_barometer"}}},
        {"coarse digits",
         {{Field::temperature, "21 °C", "thermometer_01"},
          {Field::barometer, "29.4 inHg"},
          {Field::scale_reading, "9 mL"},
          {Field::level_difference, "11 cm"}}},
        {"typed",
         {{Field::mass_of_metal, "0.0412 g", "", "0.0003", "normal"},
          {Field::temperature, "70.5 °F", "", "1.8"},
          {Field::barometer, "99.62 kPa", "", "0.05", "triangular"},
          {Field::scale_reading, "9.15 mL", "", "0.2 mL", "rectangular"},
          {Field::level_difference, "112 mm", "", "2 %"}}},
        {"read again",
         {{Field::temperature, "21.4 °C", "", "", "", {"21.9", "21.2", "21.6"}},
          {Field::scale_reading, "9.15 mL", "", "", "", {"9.25", "9.05"}}}},
        {"cylinder level",
         {{Field::number_at_closed_end, "zero"},
          {Field::tube_capacity, "100 mL"},
          {Field::scale_reading, "43.5 mL", "cylinder_100_b"},
          {Field::end_space, ""},
          {Field::liquid_stands, "level"},
          {Field::level_difference, ""}}},
        {"by difference, acid measured short",
         {{Field::metal, "aluminium"},
          {Field::mass_of_metal, ""},
          {Field::mass_from, "by_difference"},
          {Field::mass_before, "1.2345 g"},
          {Field::mass_after, "1.1945 g"},
          {Field::acid_volume, "1.1 mL"}}},
        {"ribbon and bubble",
         {{Field::mass_of_metal, ""},
          {Field::mass_from, "ribbon"},
          {Field::ribbon_length, "4.00 cm"},
          {Field::mass_per_metre, "1.03 g/m"},
          {Field::starting_bubble, "0.4 mL"},
          {Field::tube_bore, "12.5 mm"}}},
        {"start reading, level typed",
         {{Field::start_reading, "49.0 mL"},
          {Field::start_level_difference, "480 mm"},
          {Field::liquid_stands, "higher_inside"}}},
        {"start reading, level not typed", {{Field::start_reading, "49.0 mL"}}},
        {"liquid outside, end space not measured",
         {{Field::liquid_stands, "higher_outside"}, {Field::level_difference, "35 mm"}, {Field::end_space, ""}}},
        {"altimeter setting",
         {{Field::pressure_kind, "altimeter_setting"},
          {Field::barometer, "1018.2 hPa"},
          {Field::height_above_sea_level, "170 m"}}},
        {"reduced to sea level",
         {{Field::pressure_kind, "reduced_to_sea_level"},
          {Field::barometer, "1018.2 hPa"},
          {Field::height_above_sea_level, "640 m", "survey"}}},
        {"reduced, air outside known",
         {{Field::pressure_kind, "reduced_to_sea_level"},
          {Field::barometer, "1018.2 hPa"},
          {Field::height_above_sea_level, "640 m"},
          {Field::outdoor_temperature, "-3 °C"}}},
        {"table", {}, with(Conventions::Vapour::table)},
        {"own vapour pressure", {{Field::own_vapour_pressure, "19.1 mmHg"}}, with(Conventions::Vapour::own_value)},
        {"vapour not subtracted", {}, with(Conventions::Vapour::not_subtracted)},
        {"real gas", {}, real_at_one_atmosphere()},
        {"as collected", {{Field::accepted_value, "24.0 L/mol"}}, as_collected()},
        {"zinc with a purity",
         {{Field::purity, "99.5 %", "", "0.3"}, {Field::metal, "zinc"}, {Field::mass_of_metal, "0.1108 g"}}},
        {"purity by its digits", {{Field::purity, "99.5 %"}}},
        {"pure", {{Field::purity, "100 %"}}},
    };
}

void print_entries(const Case& run, const Entries& entries) {
    for (const auto& [field, entry] : entries.all()) {
        if (entry.text.empty()) continue;
        std::printf("entry,%s,%s,%s,%s,%s,%s,%s\n", run.name, std::string(name_of(field)).c_str(), entry.text.c_str(),
                    entry.instrument.c_str(), entry.plus_minus.c_str(), entry.shape.c_str(), joined(entry.repeats, '|').c_str());
    }
    const Conventions& by = run.conventions;
    std::printf("convention,%s,vapour,%d\n", run.name, static_cast<int>(by.vapour));
    std::printf("convention,%s,real,%d\n", run.name, by.accepted == Conventions::Accepted::real ? 1 : 0);
    std::printf("convention,%s,converted,%d\n", run.name,
                by.conversion == Conventions::Conversion::standard_conditions ? 1 : 0);
    std::printf("convention,%s,pascal,%.17g\n", run.name, standard_state(by).pressure.si());
}

void print_case(const Case& run) {
    const Entries entries = typed_entries(run.changes);
    print_entries(run, entries);
    const auto entry_of = [&entries](Field field) -> const Entry& { return entries.at(field); };
    const Doubts doubts = doubts_of(assess(read_all(entry_of), run.conventions));
    const Sensitivities sensitivities(doubts);
    for (std::size_t i = 0; i < output_count; ++i) {
        const auto output = static_cast<Output>(i);
        if (!sensitivities.has(output)) continue;
        const std::string name(name_of(output));
        const Budget budget = budget_of(doubts, sensitivities, output);
        for (const BudgetRow& row : budget.rows) {
            const Doubt& doubt = row.doubt;
            std::printf("row,%s,%s,%d,%s,%.17g,%.17g,%.17g,%.17g,%.17g,%.17g\n", run.name, name.c_str(),
                        static_cast<int>(doubt.input), std::string(name_of(doubt.kind)).c_str(), doubt.low, doubt.high,
                        doubt.degrees, doubt.u, row.sensitivity, row.contribution);
        }
        std::printf("result,%s,%s,%.17g,%.17g,%.17g,%.17g\n", run.name, name.c_str(), budget.value, budget.u,
                    budget.degrees, budget.offset);
    }
}

}  // namespace

int main() {
    for (const Case& run : all_cases()) print_case(run);
    return 0;
}
