// The page `The gap`, the other way: one cause and its size, tried on the result at hand.

#include <algorithm>

#include "core/quantity/number_text.hpp"
#include "web/app/app.hpp"
#include "web/browser/platform.hpp"

namespace overwater {

const std::optional<Gap>& App::gap() {
    if (!gap_is_known_) gap_ = gap_of(assessment(), certainty_.verdict());
    gap_is_known_ = true;
    return gap_;
}

Cause App::tried_cause() const {
    if (tried_cause_ != Cause::count && applies(tried_cause_, assessment())) return tried_cause_;
    for (std::size_t i = 0; i < cause_count; ++i) {
        if (applies(static_cast<Cause>(i), assessment())) return static_cast<Cause>(i);
    }
    return Cause::air_bubble;
}

double App::tried_size() const { return tried_cause() == tried_cause_ ? tried_size_ : info(tried_cause()).usual; }

void App::try_cause(std::string_view name) {
    for (std::size_t i = 0; i < cause_count; ++i) {
        const auto cause = static_cast<Cause>(i);
        if (name_of(cause) != name) continue;
        tried_cause_ = cause;
        tried_size_ = info(cause).usual;
        ++interaction_.write;
    }
    platform::wake(2);
}

void App::try_size(const std::string& text) {
    const NumberText number = parse_number(text, Measure::number);
    if (number.state != NumberText::State::number) return;
    const Cause cause = tried_cause();
    const CauseInfo& about = info(cause);
    const double size = difference_to_base(number.value, about.unit);
    tried_cause_ = cause;
    tried_size_ = std::clamp(size, about.raises && about.lowers ? -about.largest : 0.0, about.largest);
    platform::wake(2);
}

}  // namespace overwater
