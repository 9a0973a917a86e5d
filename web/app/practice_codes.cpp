// What a teacher does with the codes of a class.

#include "web/app/app.hpp"
#include "web/app/practice_key.hpp"
#include "web/browser/platform.hpp"

namespace overwater {

int App::practice_students() const {
    return whole_number(practice_desk_.students, 1, most_practice_students).value_or(0);
}

void App::copy_codes() {
    std::string lines;
    int number = 0;
    for (const std::string& code : codes_for(practice_desk_.made, 1, practice_students())) {
        lines += std::to_string(++number) + '\t' + code + '\n';
    }
    platform::clipboard_put(lines);
    tell(say(Message{"codes.copied"}.count("number", number)));
}

void App::print_key() { platform::print_html(practice_key_html(language_, practice_desk_.made, practice_students())); }

}  // namespace overwater
