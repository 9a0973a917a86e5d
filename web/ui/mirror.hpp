#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <vector>

#include "web/ui/node.hpp"

namespace overwater {

/// What concerns the page as a whole.
struct PageInfo {
    float height = 0;  ///< CSS pixels of the content
    std::string language = "en";
    std::string title;
    std::string theme = "light";
    float dock = 0;  ///< height of what is fixed at the bottom
    friend bool operator==(const PageInfo&, const PageInfo&) = default;
};

/// Turns the semantic tree of each frame into a patch for the DOM (mirror.md): only what changed since the last one.
class Mirror {
public:
    /// The patch as JSON; empty where nothing changed. Parents must come before their children.
    std::string patch(const std::vector<Node>& nodes, const PageInfo& page);
    /// Forgets what was sent, so that the next patch is complete.
    void forget();

private:
    std::map<std::string, std::string> sent_;                        ///< node JSON by key
    std::map<std::string, std::vector<std::string>> sent_children_;  ///< by parent
    PageInfo page_;
    bool page_sent_ = false;
};

}  // namespace overwater
