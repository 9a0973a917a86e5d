#include "core/record/stored.hpp"

#include <utility>

#include "core/record/record_json.hpp"
#include "core/record/text_guard.hpp"

namespace overwater {

std::string stored_from(const Record& record, std::int64_t revision, std::string_view saved, std::string_view app) {
    Json json = Json::object();
    json["schema"] = record_version;
    json["app"] = app;
    json["revision"] = revision;
    json["saved"] = saved;
    json["data"] = record_json(record);
    return compact_text(json);
}

std::optional<Stored> stored_to(std::string_view text) {
    if (refuse_text(text)) return std::nullopt;
    const auto json = parsed(text);
    if (!json || !json->is_object()) return std::nullopt;
    const auto data = json->find("data");
    if (data == json->end()) return std::nullopt;
    LoadResult loaded = read_record(*data);
    if (!loaded.record) return std::nullopt;
    Stored stored;
    stored.record = *std::move(loaded.record);
    stored.newer = loaded.newer;
    Complaints complaints(false);
    const JsonPlace root;
    JsonMembers members(*json, root, complaints);
    members.text("saved", stored.saved);
    members.text("app", stored.app);
    if (const Json* revision = members.peek("revision"); revision && revision->is_number_integer()) {
        stored.revision = revision->get<std::int64_t>();
    }
    return stored;
}

}  // namespace overwater
