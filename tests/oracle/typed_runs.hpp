#pragma once

#include <string>
#include <vector>

#include "core/bench/readings.hpp"

/// Runs as they are typed, for the programs that print what the core makes of them: record A of method.md, changed.

namespace overwater {

struct Typed {
    Field field;
    const char* text;
    const char* instrument = "";
    const char* plus_minus = "";
    const char* shape = "";
    std::vector<std::string> repeats{};
};

inline const std::vector<Typed> record_a{{Field::metal, "magnesium"},
                                  {Field::acid, "hydrochloric"},
                                  {Field::mass_of_metal, "0.0412 g"},
                                  {Field::acid_volume, "10.0 mL"},
                                  {Field::acid_concentration, "3.0 mol/L"},
                                  {Field::number_at_closed_end, "largest"},
                                  {Field::tube_capacity, "50 mL"},
                                  {Field::end_space, "2.35 mL"},
                                  {Field::scale_reading, "9.15 mL"},
                                  {Field::liquid_stands, "higher_inside"},
                                  {Field::level_difference, "112 mm"},
                                  {Field::temperature, "21.4 °C"},
                                  {Field::barometer, "99.62 kPa"}};

inline Entries typed_entries(const std::vector<Typed>& changes_of_record_a) {
    Entries entries;
    for (const auto* list : {&record_a, &changes_of_record_a}) {
        for (const Typed& typed : *list) {
            Entry& entry = entries.edit(typed.field);
            entry.text = typed.text;
            entry.instrument = typed.instrument;
            entry.plus_minus = typed.plus_minus;
            entry.shape = typed.shape;
            entry.repeats = typed.repeats;
        }
    }
    return entries;
}

inline std::string joined(const std::vector<std::string>& texts, char sign) {
    std::string all;
    for (const std::string& text : texts) {
        if (!all.empty()) all += sign;
        all += text;
    }
    return all;
}

}  // namespace overwater
