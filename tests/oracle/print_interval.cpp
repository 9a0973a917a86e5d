// Prints runs as they are typed and the intervals of 10^6 trials that the core makes of them, for compare_interval.py to
// check with OpenTURNS and an independently written model.
// Lines: entry|case|field|text|instrument|plus_minus|shape|repeats (with ; between them)
//        interval|case|trials|mean|u|median|low|high (symmetric)|low|high (shortest)    L/mol with 17 digits

#include <cstdio>
#include <string>
#include <vector>

#include "core/result/monte_carlo.hpp"
#include "tests/oracle/typed_runs.hpp"

using namespace overwater;

namespace {

struct Case {
    const char* name;
    std::vector<Typed> changes;  ///< of record A
    bool mass_alone = false;     ///< nothing but the mass in doubt
};

std::vector<Case> all_cases() {
    return {
        {"record A", {}},
        // The method's check: 22.7 L/mol by this reading.
        {"one figure alone", {{Field::mass_of_metal, "0.03 g"}, {Field::scale_reading, "20.87 mL"}}, true},
        {"one figure", {{Field::mass_of_metal, "0.03 g"}, {Field::scale_reading, "20.87 mL"}}},
        {"instruments",
         {{Field::mass_of_metal, "0.0412 g", "balance_1mg"},
          {Field::scale_reading, "9.15 mL", "burette_50_a"},
          {Field::end_space, "2.35 mL", "weighed_water"},
          {Field::level_difference, "112 mm", "tape_by_hand"},
          {Field::temperature, "21.4 °C", "thermometer_01"},
          {Field::barometer, "99.62 kPa", "mercury_barometer"}}},
        {"typed",
         {{Field::mass_of_metal, "0.0412 g", "", "0.0003", "normal"},
          {Field::temperature, "21.4 °C", "", "1.8"},
          {Field::barometer, "99.62 kPa", "", "0.05", "triangular"},
          {Field::scale_reading, "9.15 mL", "", "0.2 mL", "rectangular"},
          {Field::level_difference, "112 mm", "", "2 %"}}},
        {"read again",
         {{Field::temperature, "21.4 °C", "", "", "", {"21.9", "21.2", "21.6"}},
          {Field::scale_reading, "9.15 mL", "", "", "", {"9.25", "9.05"}}}},
        {"liquid outside, end space not measured",
         {{Field::liquid_stands, "higher_outside"}, {Field::level_difference, "35 mm"}, {Field::end_space, ""}}},
    };
}

void print_case(const Case& run) {
    const Entries entries = typed_entries(run.changes);
    for (const auto& [field, entry] : entries.all()) {
        std::printf("entry|%s|%s|%s|%s|%s|%s|%s\n", run.name, std::string(name_of(field)).c_str(), entry.text.c_str(),
                    entry.instrument.c_str(), entry.plus_minus.c_str(), entry.shape.c_str(), joined(entry.repeats, ';').c_str());
    }
    const auto entry_of = [&entries](Field field) -> const Entry& { return entries.at(field); };
    Doubts doubts = doubts_of(assess(read_all(entry_of), Conventions{}));
    if (run.mass_alone) {
        const Doubts all = doubts;
        doubts.count = 0;
        for (const Doubt& doubt : all.all()) {
            if (doubt.input == Input::mass_of_metal) doubts.add(doubt);
        }
    }
    MonteCarlo trials(doubts, Output::molar_volume_standard);
    while (!trials.step(monte_carlo_trials)) {
    }
    const MonteCarloResult& found = trials.result();
    std::printf("interval|%s|%zu", run.name, found.trials);
    for (const double value : {found.mean, found.u, found.median, found.symmetric.low, found.symmetric.high,
                               found.shortest.low, found.shortest.high}) {
        std::printf("|%.17g", 1e3 * value);
    }
    std::printf("\n");
}

}  // namespace

int main() {
    for (const Case& run : all_cases()) print_case(run);
    return 0;
}
