#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/quantity/message.hpp"
#include "core/result/conventions.hpp"

/// A course of one's own, conventions with a name, as JSON text (record.md).

namespace overwater {

inline constexpr std::size_t most_course_letters = 60;

struct OwnCourse {
    std::string name;
    Conventions conventions;
    std::string kept{};  ///< unknown members and choices of the conventions, as JSON text of an object

    friend bool operator==(const OwnCourse&, const OwnCourse&) = default;
};

struct CourseLoad {
    std::optional<OwnCourse> course;
    Message problem{""};  ///< why there is none
};

/// Whether a text can be a course's name: UTF-8 of 1 to 60 characters, no signs of control, not spaces alone.
bool is_course_name(std::string_view name);

/// The course in `text`, any bytes. The problem is one of `course.damaged`, `course.name`, `import.newer_set`, or what is
/// said of a record's conventions: `import.wrong_type` {member, wanted}, `import.out_of_range` {member}.
CourseLoad course_from_json(std::string_view text);

/// One line.
std::string course_to_json(const OwnCourse& course);

}  // namespace overwater
