#include "web/app/record_title.hpp"

namespace overwater {

std::string record_title(const Language& language, const std::string& name) {
    return name.empty() ? language.say("record.unnamed") : name;
}

std::string copy_title(const Language& language, const std::string& name) {
    return language.say(Message{"record.copy_name"}.text("name", record_title(language, name)));
}

}  // namespace overwater
