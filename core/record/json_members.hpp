#pragma once

#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/quantity/message.hpp"

/// Reading JSON objects member by member, and keeping what was not understood. For the sources of core/record only: no
/// header that others include knows the JSON library.

namespace overwater {

/// Ordered, so that a record is written as record.md shows it.
using Json = nlohmann::ordered_json;

/// Parses a text that `refuse_text` let pass.
std::optional<Json> parsed(std::string_view text);

/// The version of a text that says `"overwater": format`; nothing if it is none.
std::optional<double> version_of(const Json& json, std::string_view format);

/// Where a value stands, as `runs[0].entries.barometer`. Each level lives on the stack of whoever reads it; the text is
/// made only for a complaint.
struct JsonPlace {
    const JsonPlace* outer = nullptr;
    std::string_view name;
    int index = -1;  ///< in an array; else -1
    std::string text() const;
};

/// The first complaint about a record.
class Complaints {
public:
    explicit Complaints(bool newer) : newer_(newer) {}

    /// Notes that `place` is not what it must be. In a newer record that is no error: the value is set aside.
    void wrong_type(const JsonPlace& place, std::string_view wanted);
    void unknown_unit(const JsonPlace& place, std::string_view unit);
    void out_of_range(const JsonPlace& place);
    /// Notes what is an error in a record of any version.
    void refuse(Message message);
    bool any() const { return problem_.has_value(); }
    const std::optional<Message>& first() const { return problem_; }

private:
    void note(Message message);
    bool newer_;
    std::optional<Message> problem_;
};

/// One object of a record while it is read. Each member asked for and found good counts as understood.
class JsonMembers {
public:
    /// `object` must be a JSON object; it and `place` outlive this.
    JsonMembers(const Json& object, const JsonPlace& place, Complaints& complaints)
        : object_(object), place_(place), complaints_(complaints) {}

    void text(std::string_view name, std::string& into);
    void flag(std::string_view name, bool& into);
    /// A finite number.
    void number(std::string_view name, double& into);
    void texts(std::string_view name, std::vector<std::string>& into);
    /// The member if it is an object, or an array; else null.
    const Json* object(std::string_view name) { return member(name, Json::value_t::object, "object"); }
    const Json* array(std::string_view name) { return member(name, Json::value_t::array, "array"); }

    /// The member whatever it is, or null; not counted as understood.
    const Json* peek(std::string_view name) const;
    void understood(std::string_view name) { understood_.push_back(name); }
    JsonPlace place_of(std::string_view name) const { return {&place_, name}; }
    Complaints& complaints() { return complaints_; }

    /// What was not understood, as compact JSON text of an object; empty if nothing.
    std::string kept() const;

private:
    const Json* member(std::string_view name, Json::value_t type, std::string_view wanted);

    const Json& object_;
    const JsonPlace& place_;
    Complaints& complaints_;
    std::vector<std::string_view> understood_;
};

/// Compact JSON text of `json`; bytes that are no UTF-8 become U+FFFD.
std::string compact_text(const Json& json);
/// JSON text in `layout`-like indentation: -1 compact, else spaces a level.
std::string json_text(const Json& json, int indent);

/// The object in a `kept` text; an empty one if there is none or it is damaged.
Json kept_members(std::string_view kept);
/// Adds the members of a `kept` text behind those of `object`, which win where both have one.
void add_kept(Json& object, std::string_view kept);

}  // namespace overwater
