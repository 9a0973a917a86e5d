#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/quantity/unit_table.hpp"

/// What the core says, without a sentence: a key of the catalogue and named arguments for its places. Whoever shows it
/// chooses language, decimal sign and units.
///
///     Message{"check.beyond_scale"}.quantity("reading", 5.2e-5, UnitId::millilitre, 2).field("where", "scale_reading")

namespace overwater {

struct Argument {
    enum class Kind : std::uint8_t { quantity, count, field, text };

    std::string_view name; ///< the place in the sentence; static storage
    Kind kind = Kind::text;

    double base = 0.0;          ///< quantity: in the base of the unit's measure (SI; temperatures in °C)
    UnitId unit = UnitId::none; ///< quantity: the unit to show it in
    int digits = 0;             ///< quantity: decimals in that unit, or significant figures
    bool significant = false;   ///< quantity: `digits` are significant figures
    long long count = 0;        ///< count: chooses the plural form
    std::string_view field;     ///< field: the key of a reading's name; static storage
    std::string text;           ///< text: as it is, never translated (what was typed, a chemical formula)
};

/// Names are literals, so they come as such: a pointer is less to pass than a view, some hundred times.
struct Message {
    std::string_view key; ///< static storage
    std::vector<Argument> arguments{};

    /// Adds a quantity: `base` as `to_base` gives it, shown in `unit` with `decimals` decimals.
    Message& quantity(const char* name, double base, UnitId unit, int decimals) {
        return add_quantity(name, base, unit, decimals, false);
    }
    /// Adds a quantity shown in `unit` with `figures` significant figures.
    Message& figures(const char* name, double base, UnitId unit, int figures_shown) {
        return add_quantity(name, base, unit, figures_shown, true);
    }
    Message& count(const char* name, long long number) {
        Argument& argument = add(name, Argument::Kind::count);
        argument.count = number;
        return *this;
    }
    Message& field(const char* name, std::string_view field_key) {
        Argument& argument = add(name, Argument::Kind::field);
        argument.field = field_key;
        return *this;
    }
    Message& text(const char* name, std::string as_it_is) {
        Argument& argument = add(name, Argument::Kind::text);
        argument.text = std::move(as_it_is);
        return *this;
    }

private:
    Argument& add(const char* name, Argument::Kind kind) {
        Argument& argument = arguments.emplace_back();
        argument.name = name;
        argument.kind = kind;
        return argument;
    }
    Message& add_quantity(const char* name, double base, UnitId unit, int digits, bool significant) {
        Argument& argument = add(name, Argument::Kind::quantity);
        argument.base = base;
        argument.unit = unit;
        argument.digits = digits;
        argument.significant = significant;
        return *this;
    }
};

} // namespace overwater
