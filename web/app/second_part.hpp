#pragma once

#include <cstdint>

namespace overwater {

/// The page's program comes in two parts. What a first visit does without (web/panels/second_part.hpp says what) is loaded
/// when it is wanted for the first time; natively it is always there.
enum class SecondPart : std::uint8_t { not_asked, awaited, there, missing };

/// Leave to call a function of the second part. Each asks for one, and App alone gives it, once the part is there.
class SecondPartThere {
    friend class App;
    SecondPartThere() = default;
};

}  // namespace overwater
