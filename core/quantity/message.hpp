#pragma once

#include <cstdint>
#include <string>
#include <string_view>
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

/// Names are literals, so they come as such: a pointer is less to pass than a view, some hundred times. What makes, copies
/// and ends a message is a call for the same reason.
struct Message {
    std::string_view key; ///< static storage
    std::vector<Argument> arguments{};

    Message();
    explicit Message(const char* of_key);
    explicit Message(std::string_view of_key);
    Message(const Message& other);
    Message(Message&& other) noexcept;
    Message& operator=(const Message& other);
    Message& operator=(Message&& other) noexcept;
    ~Message();

    /// Adds a quantity: `base` as `to_base` gives it, shown in `unit` with `decimals` decimals.
    Message& quantity(const char* name, double base, UnitId unit, int decimals);
    /// Adds a quantity shown in `unit` with `figures` significant figures.
    Message& figures(const char* name, double base, UnitId unit, int figures_shown);
    Message& count(const char* name, long long number);
    Message& field(const char* name, std::string_view field_key);
    Message& text(const char* name, const std::string& as_it_is);

private:
    Argument& add(const char* name, Argument::Kind kind);
};

} // namespace overwater
