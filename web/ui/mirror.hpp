#pragma once

#include <cstdint>
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

    /// A node with its rectangle from the parent's corner.
    struct Placed {
        Node node;
        Rect relative;
    };
    /// Indices of the nodes below one parent, in order.
    struct Children {
        std::string parent;
        std::vector<std::size_t> nodes;
    };

private:
    void append_structure(std::string& out, const std::vector<Node>& nodes) const;
    void find_parents(const std::vector<Node>& nodes);
    std::vector<Rect> relative_rects(const std::vector<Node>& nodes) const;

    std::vector<Placed> sent_;
    std::vector<int> parents_;  ///< index of each node's parent; -1: the page or a layer of the shell
    PageInfo page_;
    bool page_sent_ = false;
};

}  // namespace overwater
