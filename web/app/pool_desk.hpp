#pragma once

#include <string>

namespace overwater {

/// What the page of the class set holds; nothing of it is in the record that is open.
struct PoolDesk {
    std::string text;  ///< typed or pasted
};

}  // namespace overwater
