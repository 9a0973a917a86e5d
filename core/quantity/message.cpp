#include "core/quantity/message.hpp"

namespace overwater {

Message::Message() = default;
Message::Message(const char* of_key) : key(of_key) {}
Message::Message(std::string_view of_key) : key(of_key) {}
Message::Message(const Message& other) = default;
Message::Message(Message&& other) noexcept = default;
Message& Message::operator=(const Message& other) = default;
Message& Message::operator=(Message&& other) noexcept = default;
Message::~Message() = default;

Message& Message::quantity(const char* name, double base, UnitId unit, int decimals) {
    Argument& argument = add(name, Argument::Kind::quantity);
    argument.base = base;
    argument.unit = unit;
    argument.digits = decimals;
    return *this;
}

Message& Message::figures(const char* name, double base, UnitId unit, int figures_shown) {
    quantity(name, base, unit, figures_shown);
    arguments.back().significant = true;
    return *this;
}

Message& Message::count(const char* name, long long number) {
    add(name, Argument::Kind::count).count = number;
    return *this;
}

Message& Message::field(const char* name, std::string_view field_key) {
    add(name, Argument::Kind::field).field = field_key;
    return *this;
}

Message& Message::text(const char* name, const std::string& as_it_is) {
    add(name, Argument::Kind::text).text = as_it_is;
    return *this;
}

Argument& Message::add(const char* name, Argument::Kind kind) {
    Argument& argument = arguments.emplace_back();
    argument.name = name;
    argument.kind = kind;
    return argument;
}

} // namespace overwater
