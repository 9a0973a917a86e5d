// Courses: a whole set of conventions chosen at once, those of one's own, and how they are shared.

#include "core/record/stored.hpp"
#include "core/result/course.hpp"
#include "web/app/app.hpp"
#include "web/app/files_scan.hpp"
#include "web/app/fragment.hpp"
#include "web/browser/platform.hpp"

namespace overwater {

namespace {

constexpr std::string_view courses_setting = "courses";
constexpr std::string_view own_prefix = "own.";
/// In the settings, which hold other things too.
constexpr std::size_t most_kept = 30'000;
/// Where courses lay as long as they were called sets.
constexpr std::string_view set_prefix = "overwater.conventions.";

}  // namespace

void App::choose_course(std::string_view value) {
    for (std::size_t i = 0; i < own_courses_.size(); ++i) {
        if (value == std::string(own_prefix) + std::to_string(i)) use_course(own_courses_[i]);
    }
    for (const Course& course : courses()) {
        if (value != course.key) continue;
        OwnCourse chosen{{}, course.conventions};
        chosen.conventions.answers = record_.conventions.answers;
        use_course(chosen);
    }
    ++interaction_.write;
    platform::wake(2);
}

/// Of the record the conventions alone change.
void App::use_course(const OwnCourse& course) {
    if (refused()) return;
    // Each choice is a step of its own, however soon it comes.
    undo_.leave();
    before_change("conventions.course");
    record_.conventions = course.conventions;
    if (!course.kept.empty()) record_.conventions_kept = course.kept;
    keep_decimal_sign();
    own_celsius_text_.reset();
    own_pressure_text_.reset();
    ++interaction_.write;
    after_change("conventions.course");
}

void App::read_courses() {
    own_courses_.clear();
    const std::string kept = shelf_.setting(courses_setting);
    if (const auto all = element_texts(kept)) {
        for (const std::string_view one : *all) {
            if (auto load = course_from_json(one); load.course) own_courses_.push_back(*std::move(load.course));
        }
    }
    for (const std::string& key : platform::store_list(set_prefix)) {
        const auto text = platform::store_get(key);
        const auto stored = text ? stored_to(*text) : std::nullopt;
        if (!stored || !is_course_name(stored->record.name)) continue;
        const Record& set = stored->record;
        if (put_course({set.name, set.conventions, set.conventions_kept})) platform::store_remove(key);
    }
    if (open_course_ >= own_courses_.size()) open_course_ = no_course;
    platform::wake(2);
}

/// Keeps a course in the place of the one of its name, or as one more. False, with the reason said, where it cannot be kept.
bool App::put_course(const OwnCourse& course) {
    if (!is_course_name(course.name)) {
        tell(say(Message{"course.name"}), true);
        return false;
    }
    auto all = own_courses_;
    std::size_t place = 0;
    while (place < all.size() && all[place].name != course.name) ++place;
    if (place == all.size()) all.emplace_back();
    all[place] = course;
    if (all.size() > most_courses || !keep_courses(all)) {
        tell(say(Message{"course.full"}.count("number", most_courses)), true);
        return false;
    }
    return true;
}

bool App::keep_courses(const std::vector<OwnCourse>& all) {
    std::string text;
    for (const OwnCourse& course : all) text += (text.empty() ? '[' : ',') + course_to_json(course);
    if (!text.empty()) text += ']';
    if (text.size() > most_kept) return false;
    own_courses_ = all;
    shelf_.set_setting(courses_setting, text);
    ++interaction_.write;
    platform::wake(2);
    return true;
}

void App::keep_course(const OwnCourse& course) {
    if (!put_course(course)) return;
    tell(say(Message{"course.kept"}.text("name", course.name)));
    course_name_.clear();
    offered_.reset();
}

void App::open_own_course(std::size_t place) {
    open_course_ = open_course_ == place ? no_course : place;
    if (open_course_ != no_course) own_name_ = own_courses_[place].name;
    ++interaction_.write;
    platform::wake(2);
}

/// What is no name stays visible, and the last good one holds.
void App::rename_course(const std::string& text) {
    own_name_ = text;
    platform::wake(2);
    if (open_course_ == no_course || !is_course_name(text)) return;
    auto all = own_courses_;
    all[open_course_].name = text;
    const auto write = interaction_.write;
    keep_courses(all);
    interaction_.write = write;  // the field holds what is being typed
}

void App::forget_course() {
    auto all = own_courses_;
    all.erase(all.begin() + static_cast<std::ptrdiff_t>(open_course_));
    open_course_ = no_course;
    keep_courses(all);
}

void App::copy_course_link() {
    platform::clipboard_put('#' + fragment_of(course_link, course_to_json(own_courses_[open_course_])));
    tell(say("course.link_copied"));
}

/// Shows what came by link or file, and asks: nothing is applied by opening it.
void App::offer_course(const std::string& text, const std::string& file) {
    CourseLoad load = course_from_json(text);
    if (!load.course) {
        tell(say(Message{"import.refused"}.text("file", file).text("reason", say(load.problem))), true);
        return;
    }
    offered_ = std::move(load.course);
    go(PageName::conventions);
    platform::focus("conventions.offer_use", -1);
}

void App::use_offered() {
    if (refused()) return;
    // One press more keeps it too.
    course_name_ = offered_->name;
    use_course(*offered_);
    offered_.reset();
}

void App::compare_with(const std::string& number) {
    change_entry(Field::accepted_value, "bench.accepted_value", number, false);
    ++interaction_.write;
}

}  // namespace overwater
