#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "tests/ui/small_json.hpp"
#include "web/ui/node.hpp"

/// A document that carries out the mirror's patches as web/ui/mirror.md says, and tells whatever it could not.
namespace overwater::test {

struct Piece {
    std::string parent;
    std::string tag;
    std::map<std::string, std::string> attributes;
    std::string looks;
    std::string text;
    std::string value;  ///< what stands in the control, typed or written
    int write = 0;
    bool on = false;
    float box[4] = {0, 0, 0, 0};
    std::vector<std::pair<std::string, std::string>> options;
    std::string content;  ///< JSON of `m`
    std::string raw;      ///< JSON of the whole node
};

class Document {
public:
    /// Applies a patch; whatever is wrong with it goes to `faults`.
    void apply(const std::string& patch);
    /// A frame without a patch.
    void rest();
    /// A person typed: the control holds this from now on, whatever an older patch says.
    void type(const std::string& key, const std::string& text);
    /// Compares with a frame's tree; differences go to `faults`.
    void compare(const std::vector<Node>& nodes);

    std::map<std::string, Piece> pieces;
    std::map<std::string, std::vector<std::string>> children;  ///< in the order of the document
    std::string focused;
    float height = 0;
    std::string language;
    std::vector<std::string> faults;
    // Of the last patch
    std::vector<std::string> changed;  ///< keys set
    std::vector<std::string> added;
    std::vector<std::string> gone;
    std::vector<std::string> ordered;  ///< parents whose list of children came

private:
    void page(const Json& page);
    void set(const Json& node);
    void remove(const std::string& key);
    void order(const std::string& parent, const Json& keys);
    void compare(const Node& node, const Rect& parent);
    bool holds(const std::string& key) const { return pieces.find(key) != pieces.end(); }
    void fault(std::string words) {
        if (faults.size() < 20) faults.push_back(std::move(words));
    }
};

}  // namespace overwater::test
