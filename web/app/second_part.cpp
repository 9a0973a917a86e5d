// The program's second part: asked for when it is wanted for the first time, and again where a person asks.

#include "web/app/second_part.hpp"

#include "web/app/app.hpp"
#include "web/browser/platform.hpp"

namespace overwater {

std::optional<SecondPartThere> App::second_part() {
    if (second_part_ == SecondPart::not_asked) ask_for_second_part();
    if (second_part_ == SecondPart::there) return SecondPartThere{};
    return std::nullopt;
}

void App::ask_for_second_part() {
    status_.clear();
    second_part_ = platform::bring_second_part() ? SecondPart::there : SecondPart::awaited;
    platform::wake(2);
}

void App::second_part_came(bool there) {
    second_part_ = there ? SecondPart::there : SecondPart::missing;
    status_ = there ? std::string() : say("part.missing");
}

}  // namespace overwater
