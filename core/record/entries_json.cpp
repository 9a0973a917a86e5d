#include "core/record/entries_json.hpp"

#include <algorithm>
#include <utility>

namespace overwater {

namespace {

std::optional<Field> field_by_name(std::string_view name) {
    const auto found = std::find(field_names.begin(), field_names.end(), name);
    if (found == field_names.end()) return std::nullopt;
    return static_cast<Field>(static_cast<std::uint8_t>(found - field_names.begin()));
}

bool belongs(UnitId unit, Field field) { return !is_choice(field) && info(unit).measure == info(field).measure; }

/// Reads the unit, where `fits(UnitId)` says whether it can stand here. False if it cannot.
template <class Fits>
bool read_unit(JsonMembers& members, UnitId& into, Fits fits) {
    std::string key;
    members.text("unit", key);
    if (key.empty()) return true;
    const auto unit = unit_by_key(key);
    if (!unit || !fits(*unit)) {
        members.complaints().unknown_unit(members.place_of("unit"), key);
        return false;
    }
    into = *unit;
    return true;
}

bool read_entry_members(const Json& object, const JsonPlace& place, Complaints& complaints, Field field, Entry& into) {
    JsonMembers members(object, place, complaints);
    members.text("text", into.text);
    members.text("instrument", into.instrument);
    members.text("plus_minus", into.plus_minus);
    members.text("shape", into.shape);
    members.texts("repeats", into.repeats);
    if (!read_unit(members, into.unit, [field](UnitId unit) { return belongs(unit, field); })) return false;
    into.kept = members.kept();
    return true;
}

Json entry_json(const Entry& entry) {
    Json json = Json::object();
    json["text"] = entry.text;
    if (entry.unit != UnitId::none) json["unit"] = info(entry.unit).key;
    put_text(json, "instrument", entry.instrument);
    put_text(json, "plus_minus", entry.plus_minus);
    put_text(json, "shape", entry.shape);
    if (!entry.repeats.empty()) json["repeats"] = entry.repeats;
    add_kept(json, entry.kept);
    return json;
}

}  // namespace

void put_text(Json& object, const char* name, const std::string& text) {
    if (!text.empty()) object[name] = text;
}

void read_entries(const Json& object, const JsonPlace& place, Complaints& complaints, Entries& into) {
    JsonMembers members(object, place, complaints);
    for (const auto& [name, value] : object.items()) {
        const auto field = field_by_name(name);
        if (!field) continue;
        const JsonPlace here = members.place_of(name);
        if (!value.is_object()) {
            complaints.wrong_type(here, "object");
            continue;
        }
        Entry entry;
        if (!read_entry_members(value, here, complaints, *field, entry)) continue;
        members.understood(name_of(*field));
        if (!entry.blank()) into.edit(*field) = std::move(entry);
    }
    into.keep(members.kept());
}

Json entries_json(const Entries& entries) {
    Json json = Json::object();
    for (const auto& [field, entry] : entries.all()) {
        if (!entry.blank()) json[std::string{name_of(field)}] = entry_json(entry);
    }
    add_kept(json, entries.kept());
    return json;
}

void read_answers(const Json& object, const JsonPlace& place, Complaints& complaints, std::vector<Answer>& into) {
    for (const auto& [name, value] : object.items()) {
        const JsonPlace here{&place, name};
        if (!value.is_object()) {
            complaints.wrong_type(here, "object");
            continue;
        }
        Answer answer;
        answer.step = name;
        JsonMembers members(value, here, complaints);
        members.text("text", answer.text);
        read_unit(members, answer.unit, [](UnitId) { return true; });
        answer.kept = members.kept();
        into.push_back(std::move(answer));
    }
}

Json answers_json(const std::vector<Answer>& answers) {
    Json json = Json::object();
    for (const Answer& answer : answers) {
        Json& own = json[answer.step] = Json::object();
        own["text"] = answer.text;
        if (answer.unit != UnitId::none) own["unit"] = info(answer.unit).key;
        add_kept(own, answer.kept);
    }
    return json;
}

}  // namespace overwater
