#include "core/record/json_members.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/quantity/short_sort.hpp"
#include "core/record/json.hpp"

namespace overwater {

namespace {

/// Of those in one object that a reader lets pass; no object of ours has as many as the rest.
constexpr std::size_t most_unknown_members = most_record_members - 64;

/// Builds the tree of a text that the library takes apart. (The library's own builder comes with a second one for
/// callbacks, which costs a page 2 kB to load.) Of a member given twice the last counts.
struct Tree {
    Json root;
    std::vector<Json*> open;
    Json* member = nullptr;  ///< where the value of the key just read goes

    Json& put(Json value) {
        if (open.empty()) return root = std::move(value);
        if (open.back()->is_array()) {
            open.back()->push_back(std::move(value));
            return open.back()->back();
        }
        return *member = std::move(value);
    }
    bool start(Json value) {
        open.push_back(&put(std::move(value)));
        return true;
    }
    bool end() {
        open.pop_back();
        return true;
    }

    bool null() { return put(nullptr), true; }
    bool boolean(bool value) { return put(value), true; }
    bool number_integer(Json::number_integer_t value) { return put(value), true; }
    bool number_unsigned(Json::number_unsigned_t value) { return put(value), true; }
    bool number_float(Json::number_float_t value, const std::string&) { return put(value), true; }
    bool string(std::string& value) { return put(std::move(value)), true; }
    bool binary(Json::binary_t&) { return false; }
    bool start_object(std::size_t) { return start(Json::object()); }
    bool start_array(std::size_t) { return start(Json::array()); }
    bool end_object() { return end(); }
    bool end_array() { return end(); }
    bool key(std::string& name) {
        member = &(*open.back())[name];
        return true;
    }
    bool parse_error(std::size_t, const std::string&, const nlohmann::detail::exception&) { return false; }
};

}  // namespace

std::optional<double> version_of(const Json& json, std::string_view format) {
    if (!json.is_object()) return std::nullopt;
    const auto name = json.find("overwater");
    const auto version = json.find("version");
    if (name == json.end() || !name->is_string() || *name->get_ptr<const std::string*>() != format) return std::nullopt;
    if (version == json.end() || !version->is_number()) return std::nullopt;
    const double number = version->get<double>();
    if (!(number >= 1) || number != std::floor(number)) return std::nullopt;
    return number;
}

std::string JsonPlace::text() const {
    std::string out = outer ? outer->text() : std::string{};
    if (index >= 0) return out + "[" + std::to_string(index) + "]";
    if (!out.empty() && !name.empty()) out += '.';
    return out.append(name);
}

void Complaints::note(Message message) {
    if (!newer_) refuse(std::move(message));
}

void Complaints::refuse(Message message) {
    if (!problem_) problem_ = std::move(message);
}

void Complaints::wrong_type(const JsonPlace& place, std::string_view wanted) {
    note(Message{"import.wrong_type"}.text("member", place.text()).text("wanted", std::string{wanted}));
}

void Complaints::unknown_unit(const JsonPlace& place, std::string_view unit) {
    note(Message{"import.unknown_unit"}.text("member", place.text()).text("unit", std::string{unit}));
}

void Complaints::out_of_range(const JsonPlace& place) {
    note(Message{"import.out_of_range"}.text("member", place.text()));
}

const Json* JsonMembers::peek(std::string_view name) const {
    const auto found = object_.find(name);
    return found == object_.end() ? nullptr : &*found;
}

const Json* JsonMembers::member(std::string_view name, Json::value_t type, std::string_view wanted) {
    const Json* value = peek(name);
    if (!value) return nullptr;
    if (value->type() != type) {
        complaints_.wrong_type(place_of(name), wanted);
        return nullptr;
    }
    understood(name);
    return value;
}

void JsonMembers::text(std::string_view name, std::string& into) {
    if (const Json* value = member(name, Json::value_t::string, "string")) into = *value->get_ptr<const std::string*>();
}

void JsonMembers::flag(std::string_view name, bool& into) {
    if (const Json* value = member(name, Json::value_t::boolean, "boolean")) into = *value->get_ptr<const bool*>();
}

void JsonMembers::number(std::string_view name, double& into) {
    const Json* value = peek(name);
    if (!value) return;
    if (!value->is_number() || !std::isfinite(value->get<double>())) {
        complaints_.wrong_type(place_of(name), "number");
        return;
    }
    into = value->get<double>();
    understood(name);
}

void JsonMembers::texts(std::string_view name, std::vector<std::string>& into) {
    const Json* value = peek(name);
    if (!value) return;
    if (!value->is_array() || !std::all_of(value->begin(), value->end(), [](const Json& j) { return j.is_string(); })) {
        complaints_.wrong_type(place_of(name), "array");
        return;
    }
    for (const Json& item : *value) into.push_back(*item.get_ptr<const std::string*>());
    understood(name);
}

std::string JsonMembers::kept() const {
    // In the order of their names: equal records then have equal texts, wherever the members stood.
    std::vector<std::pair<std::string_view, const Json*>> others;
    for (const auto& [name, value] : object_.items()) {
        if (std::find(understood_.begin(), understood_.end(), name) == understood_.end()) {
            others.emplace_back(name, &value);
        }
    }
    // They are written again beside the known ones, and must stay readable.
    if (others.size() > most_unknown_members) {
        complaints_.refuse(
            Message{"import.too_many_members"}.count("members", static_cast<long long>(most_unknown_members)));
        return {};
    }
    short_sort(others.begin(), others.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
    Json rest = Json::object();
    for (const auto& [name, value] : others) rest[std::string{name}] = *value;
    return rest.empty() ? std::string{} : compact_text(rest);
}

std::optional<Json> parsed(std::string_view text) {
    Tree tree;
    if (!Json::sax_parse(text.begin(), text.end(), &tree)) return std::nullopt;
    return std::move(tree.root);
}

std::string json_text(const Json& json, int indent) {
    return json.dump(indent, ' ', false, Json::error_handler_t::replace);
}

std::string compact_text(const Json& json) { return json_text(json, -1); }

Json kept_members(std::string_view kept) {
    if (kept.empty()) return Json::object();
    std::optional<Json> members = parsed(kept);
    return members && members->is_object() ? *std::move(members) : Json::object();
}

void add_kept(Json& object, std::string_view kept) {
    const Json others = kept_members(kept);
    for (const auto& [name, value] : others.items()) {
        if (!object.contains(name)) object[name] = value;
    }
}

}  // namespace overwater
