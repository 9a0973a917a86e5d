#pragma once

#include "core/record/convention_choices.hpp"
#include "core/record/course_json.hpp"
#include "tests/fuzz/property.hpp"

/// Courses as JSON text.

namespace overwater::fuzz {

inline std::string_view holds_for_course(std::string_view bytes) {
    const CourseLoad load = course_from_json(bytes);
    if (!load.course) return is_said(load.problem) ? kept : "each problem has its sentence";
    if (!is_course_name(load.course->name)) return "a course has a name that can be shown";
    if (!differing(load.course->conventions, load.course->conventions).empty()) return "a course is what it is";
    const std::string text = course_to_json(*load.course);
    const CourseLoad again = course_from_json(text);
    if (again.course != load.course) return "a course comes back";
    return course_to_json(*again.course) == text ? kept : "equal courses have equal texts";
}

}  // namespace overwater::fuzz
