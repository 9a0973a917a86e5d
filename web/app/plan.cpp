// The plan of a run: what is typed and chosen on its page.

#include "web/app/app.hpp"
#include "web/browser/platform.hpp"

namespace overwater {

bool App::plan_typed(const std::string&, const std::string&) { return false; }

bool App::plan_chosen(const std::string&, const std::string&) { return false; }

}  // namespace overwater
