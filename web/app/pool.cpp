// A class's runs together: taken in, left out with a reason, given out.

#include "web/app/app.hpp"
#include "web/browser/platform.hpp"

namespace overwater {

bool App::pool_typed(const std::string&, const std::string&) { return false; }

void App::pool_file(const std::string&, const std::string&) {}

}  // namespace overwater
