#pragma once

#include <string>

namespace overwater {

class App;

/// The bench cards of the plan as an HTML document without styles or scripts, one card a group: cautions, what is planned,
/// and the readings to take in their order with blank fields. An amount that the plan refuses stands on none.
std::string bench_cards_html(App& app);

}  // namespace overwater
