#include "core/bench/entry.hpp"

#include <algorithm>

#include "core/bench/apparatus.hpp"
#include "core/matter/reaction.hpp"

namespace overwater {

const Entry& Entries::at(Field field) const {
    static const Entry nothing;
    for (const auto& [name, entry] : entries_) {
        if (name == field) return entry;
    }
    return nothing;
}

Entry& Entries::edit(Field field) {
    const auto place = std::lower_bound(entries_.begin(), entries_.end(), field,
                                        [](const auto& row, Field wanted) { return row.first < wanted; });
    if (place != entries_.end() && place->first == field) return place->second;
    return entries_.insert(place, {field, Entry{}})->second;
}

void Entries::tidy(Field field) {
    std::erase_if(entries_, [field](const auto& row) { return row.first == field && row.second.blank(); });
}

namespace {

constexpr std::array<FieldInfo, field_count> field_infos{{
    {Measure::mass, UnitId::gram, false},                     // mass_of_metal
    {Measure::mass, UnitId::gram, false},                     // mass_before
    {Measure::mass, UnitId::gram, false},                     // mass_after
    {Measure::length, UnitId::centimetre, false},             // ribbon_length
    {Measure::linear_density, UnitId::gram_per_metre, true},  // mass_per_metre
    {Measure::fraction, UnitId::percent, true},               // purity
    {Measure::molar_mass, UnitId::gram_per_mole, true},       // molar_mass
    {Measure::number, UnitId::none, true},                    // gas_per_mole
    {Measure::number, UnitId::none, true},                    // acid_per_mole
    {Measure::volume, UnitId::millilitre, true},              // acid_volume
    {Measure::concentration, UnitId::mole_per_litre, true},   // acid_concentration
    {Measure::volume, UnitId::millilitre, true},              // tube_capacity
    {Measure::volume, UnitId::millilitre, true},              // end_space
    {Measure::volume, UnitId::millilitre, false},             // start_reading
    {Measure::volume, UnitId::millilitre, false},             // starting_bubble
    {Measure::length, UnitId::millimetre, false},             // start_level_difference
    {Measure::volume, UnitId::millilitre, false},             // scale_reading
    {Measure::length, UnitId::millimetre, false},             // level_difference
    {Measure::length, UnitId::millimetre, true},              // length_of_scale
    {Measure::length, UnitId::millimetre, true},              // tube_bore
    {Measure::number, UnitId::none, true},                    // tube_factor
    {Measure::volume, UnitId::millilitre, false},             // injected_volume
    {Measure::volume, UnitId::millilitre, true},              // flask_volume
    {Measure::mass, UnitId::gram, false},                     // displaced_mass
    {Measure::temperature, UnitId::celsius, true},            // temperature
    {Measure::pressure, UnitId::kilopascal, true},            // barometer
    {Measure::pressure, UnitId::kilopascal, false},           // pressure_after
    {Measure::temperature, UnitId::celsius, true},            // barometer_temperature
    {Measure::number, UnitId::none, true},                    // latitude
    {Measure::length, UnitId::metre, true},                   // height_above_sea_level
    {Measure::temperature, UnitId::celsius, true},            // outdoor_temperature
    {Measure::pressure, UnitId::kilopascal, true},            // own_vapour_pressure
    {Measure::number, UnitId::none, true},                    // water_activity
    {Measure::molar_volume, UnitId::litre_per_mole, true},    // accepted_value
    {Measure::number, UnitId::none, true},                    // metal
    {Measure::number, UnitId::none, true},                    // acid
    {Measure::number, UnitId::none, true},                    // mass_from
    {Measure::number, UnitId::none, true},                    // number_at_closed_end
    {Measure::number, UnitId::none, false},                   // liquid_stands
    {Measure::number, UnitId::none, true},                    // pressure_kind
    {Measure::number, UnitId::none, true},                    // apparatus
    {Measure::number, UnitId::none, true},                    // gas
    {Measure::number, UnitId::none, true},                    // gas_is
    {Measure::number, UnitId::none, true},                    // target
    {Measure::number, UnitId::none, true},                    // second_metal
}};

}  // namespace

const FieldInfo& info(Field field) { return field_infos[static_cast<std::size_t>(field)]; }

const std::vector<std::string_view>& choices_of(Field field) {
    static const std::vector<std::string_view> none;
    static const std::vector<std::string_view> samples(substance_names.begin(), substance_names.end());
    static const std::vector<std::string_view> metals(samples.begin(), samples.begin() + metal_count);
    static const std::vector<std::string_view> acids{"hydrochloric", "sulfuric"};
    static const std::vector<std::string_view> masses{"weighed", "by_difference", "ribbon"};
    static const std::vector<std::string_view> ends{"zero", "largest"};
    static const std::vector<std::string_view> stands{"higher_inside", "higher_outside", "level"};
    static const std::vector<std::string_view> pressures{"at_the_bench", "altimeter_setting", "reduced_to_sea_level",
                                                         "mercury_column"};
    static const std::vector<std::string_view> apparatus(apparatus_names.begin(), apparatus_names.end());
    static const std::vector<std::string_view> gases(gas_names.begin(), gas_names.end());
    static const std::vector<std::string_view> moist{"moist", "dry"};
    static const std::vector<std::string_view> targets(target_names.begin(), target_names.end());
    switch (field) {
        case Field::metal: return samples;
        case Field::second_metal: return metals;
        case Field::acid: return acids;
        case Field::mass_from: return masses;
        case Field::number_at_closed_end: return ends;
        case Field::liquid_stands: return stands;
        case Field::pressure_kind: return pressures;
        case Field::apparatus: return apparatus;
        case Field::gas: return gases;
        case Field::gas_is: return moist;
        case Field::target: return targets;
        default: return none;
    }
}

}  // namespace overwater
