#pragma once

#include "web/ui/ui.hpp"

namespace overwater {

// The types that many panels set words in.
inline constexpr Type small{Face::regular, 14, Ink::soft};
inline constexpr Type soft{Face::regular, 15, Ink::soft};
inline constexpr Type heading_type{Face::semibold, 20, Ink::text};

}  // namespace overwater
