#include "core/record/plan_json.hpp"

#include "core/record/conventions_json.hpp"
#include "core/record/entries_json.hpp"
#include "core/record/text_guard.hpp"

namespace overwater {

namespace {

constexpr std::string_view plan_format = "plan";
constexpr int plan_version = 1;

PlanLoad faulty(const Message& problem) {
    PlanLoad load;
    load.problem = problem;
    return load;
}

}  // namespace

PlanLoad plan_from_json(std::string_view text) {
    if (const auto problem = refuse_text(text)) return faulty(*problem);
    const auto json = parsed(text);
    if (!json) return faulty(Message{"plan.link.not_a_plan"});
    const auto version = version_of(*json, plan_format);
    if (!version) return faulty(Message{"plan.link.not_a_plan"});
    // What a newer plan says beside this could change its amounts.
    if (*version > plan_version) return faulty(Message{"plan.link.newer"});
    PlanSheet sheet;
    Complaints complaints(false);
    const JsonPlace root;
    JsonMembers members(*json, root, complaints);
    if (const Json* bench = members.object("bench")) {
        read_entries(*bench, members.place_of("bench"), complaints, sheet.bench);
    }
    if (const Json* asked = members.object("asked")) {
        const JsonPlace place = members.place_of("asked");
        JsonMembers own(*asked, place, complaints);
        for (std::size_t i = 0; i < plan_field_count; ++i) own.text(plan_field_names[i], sheet.asked[i]);
    }
    if (const Json* conventions = members.object("conventions")) {
        std::string kept;
        read_conventions(*conventions, members.place_of("conventions"), complaints, sheet.conventions, kept);
    }
    if (complaints.any()) return faulty(*complaints.first());
    PlanLoad load;
    load.sheet = std::move(sheet);
    return load;
}

std::string plan_to_json(const PlanSheet& sheet) {
    Json json = Json::object();
    json["overwater"] = plan_format;
    json["version"] = plan_version;
    json["bench"] = entries_json(sheet.bench);
    Json& asked = json["asked"] = Json::object();
    for (std::size_t i = 0; i < plan_field_count; ++i) put_text(asked, plan_field_names[i].data(), sheet.asked[i]);
    json["conventions"] = conventions_json(sheet.conventions, {});
    return compact_text(json);
}

}  // namespace overwater
