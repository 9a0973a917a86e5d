#pragma once

#include <initializer_list>
#include <string>
#include <string_view>
#include <utility>

#include "core/result/assess.hpp"

/// A sheet of typed readings to look over, and what is said about it.

namespace overwater::test {

using Typed = std::pair<Field, const char*>;

class Sheet {
public:
    Sheet with(std::initializer_list<Typed> changes) const {
        Sheet changed = *this;
        for (const auto& [field, text] : changes) changed.entries_.edit(field).text = text;
        return changed;
    }
    Sheet without(Field field) const { return with({{field, ""}}); }
    Sheet by(const Conventions& conventions) const {
        Sheet changed = *this;
        changed.conventions_ = conventions;
        return changed;
    }
    Assessment assessed() const {
        const auto entry_of = [this](Field field) -> const Entry& { return entries_.at(field); };
        return assess(read_all(entry_of), conventions_);
    }

private:
    Entries entries_;
    Conventions conventions_;
};

/// Record A of method.md, as typed.
inline Sheet record_a() {
    return Sheet().with({{Field::metal, "magnesium"},
                         {Field::acid, "hydrochloric"},
                         {Field::mass_of_metal, "0.0412"},
                         {Field::purity, "100"},
                         {Field::acid_volume, "10.0"},
                         {Field::acid_concentration, "3.0"},
                         {Field::number_at_closed_end, "largest"},
                         {Field::tube_capacity, "50"},
                         {Field::end_space, "2.35"},
                         {Field::scale_reading, "9.15"},
                         {Field::liquid_stands, "higher_inside"},
                         {Field::level_difference, "112"},
                         {Field::temperature, "21.4"},
                         {Field::barometer, "99.62"}});
}

/// Record A with this barometer, and this height above sea level.
inline Sheet reads(const char* barometer) { return record_a().with({{Field::barometer, barometer}}); }
inline Sheet reads(const char* barometer, const char* height) {
    return record_a().with({{Field::barometer, barometer}, {Field::height_above_sea_level, height}});
}

/// The check with this key at this field, or nothing.
inline std::optional<Check> found(const Sheet& sheet, Field field, std::string_view key) {
    for (const Check& check : sheet.assessed().checks) {
        if (check.field == field && check.message.key == key) return check;
    }
    return std::nullopt;
}

inline bool says(const Sheet& sheet, Field field, std::string_view key) { return found(sheet, field, key).has_value(); }

/// Whether the key is said at any field.
inline bool says(const Sheet& sheet, std::string_view key) {
    for (const Check& check : sheet.assessed().checks) {
        if (check.message.key == key) return true;
    }
    return false;
}

inline const Argument* place(const Check& check, std::string_view name) {
    for (const Argument& argument : check.message.arguments) {
        if (argument.name == name) return &argument;
    }
    return nullptr;
}

/// The number in a place of the sentence, in the base of its measure; NaN where there is none.
inline double number_in(const std::optional<Check>& check, std::string_view name) {
    const Argument* argument = check ? place(*check, name) : nullptr;
    return argument ? argument->base : __builtin_nan("");
}

inline std::string text_in(const std::optional<Check>& check, std::string_view name) {
    const Argument* argument = check ? place(*check, name) : nullptr;
    return argument ? argument->text : std::string("nothing");
}

}  // namespace overwater::test
