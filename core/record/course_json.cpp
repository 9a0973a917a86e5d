#include "core/record/course_json.hpp"

#include "core/quantity/utf8.hpp"
#include "core/record/conventions_json.hpp"
#include "core/record/text_guard.hpp"

namespace overwater {

namespace {

constexpr std::string_view course_format = "course";
constexpr int course_version = 1;

}  // namespace

bool is_course_name(std::string_view name) {
    std::size_t letters = 0;
    bool seen = false;
    for (std::size_t at = 0; at < name.size(); ++letters) {
        const CodePoint sign = code_point_at(name, at);
        at += sign.bytes;
        if (sign.value == not_utf8 || sign.value < 0x20 || (sign.value >= 0x7F && sign.value < 0xA0)) return false;
        seen = seen || !is_space(sign.value);
    }
    return seen && letters <= most_course_letters;
}

CourseLoad course_from_json(std::string_view text) {
    CourseLoad load;
    load.problem = Message{"course.damaged"};
    text = without_byte_order_mark(text);
    if (refuse_text(text)) return load;
    const auto json = parsed(text);
    if (!json) return load;
    const auto version = version_of(*json, course_format);
    if (!version) return load;
    // What a newer course says beside this could change its results.
    if (*version > course_version) {
        load.problem = Message{"import.newer_set"};
        return load;
    }
    Complaints complaints(false);
    const JsonPlace root;
    JsonMembers members(*json, root, complaints);
    OwnCourse course;
    members.text("name", course.name);
    const Json* conventions = members.object("conventions");
    if (conventions) {
        read_conventions(*conventions, members.place_of("conventions"), complaints, course.conventions, course.kept);
    }
    if (complaints.any()) {
        load.problem = *complaints.first();
    } else if (conventions && !is_course_name(course.name)) {
        load.problem = Message{"course.name"};
    } else if (conventions) {
        load.course = std::move(course);
    }
    return load;
}

std::string course_to_json(const OwnCourse& course) {
    Json json = Json::object();
    json["overwater"] = course_format;
    json["version"] = course_version;
    json["name"] = course.name;
    json["conventions"] = conventions_json(course.conventions, course.kept);
    return compact_text(json);
}

}  // namespace overwater
