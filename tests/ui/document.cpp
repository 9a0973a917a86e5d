#include "tests/ui/document.hpp"

#include <algorithm>
#include <cmath>
#include <set>

namespace overwater::test {

void Document::rest() {
    changed.clear();
    added.clear();
    gone.clear();
    ordered.clear();
}

void Document::apply(const std::string& patch) {
    rest();
    Json json;
    if (!JsonReader::read(patch, json) || json.kind != Json::Kind::object) {
        fault("no JSON: " + patch.substr(0, 200));
        return;
    }
    for (const auto& [name, value] : json.members) {
        if (name != "page" && name != "set" && name != "gone" && name != "order") fault("unknown part " + name);
    }
    if (const Json* about = json.find("page")) page(*about);
    for (const Json& node : json.at("set").items) set(node);
    for (const Json& key : json.at("gone").items) remove(key.text);
    for (const Json& list : json.at("order").items) {
        if (list.items.size() == 2) order(list.items[0].text, list.items[1]);
    }
    for (const auto& [key, piece] : pieces) {
        if (!piece.parent.empty() && piece.parent != "fixed" && !holds(piece.parent))
            fault(key + " has lost its parent");
    }
}

void Document::page(const Json& about) {
    height = static_cast<float>(about.at("height").number);
    language = about.at("lang").text;
    if (about.at("title").text.empty()) fault("a page without a title");
    if (!(height > 0)) fault("a page without a height");
}

void Document::set(const Json& json) {
    const std::string key = json.at("k").text;
    const std::string parent = json.at("p").text;
    if (key.empty()) fault("a node without a key");
    if (!parent.empty() && parent != "fixed" && !holds(parent)) fault(key + " comes before its parent " + parent);
    if (std::find(changed.begin(), changed.end(), key) != changed.end()) fault(key + " stands twice in a patch");
    changed.push_back(key);
    const bool fresh = !holds(key);
    Piece& piece = pieces[key];
    if (fresh) {
        added.push_back(key);
        children[parent].push_back(key);
    } else {
        if (piece.raw == json.raw) fault(key + " was sent though nothing of it changed");
        // Another element in its place would drop the focus and the caret.
        if (piece.tag != json.at("t").text) fault(key + " became another element");
        if (piece.parent != parent) {
            if (focused == key) fault(key + " was moved while it had the focus");
            std::erase(children[piece.parent], key);
            children[parent].push_back(key);
        }
    }
    piece.parent = parent;
    piece.tag = json.at("t").text;
    piece.attributes.clear();
    for (const auto& [name, value] : json.at("a").members) piece.attributes[name] = value.text;
    piece.looks = json.at("c").text;
    if (json.find("x")) piece.text = json.at("x").text;
    if (json.find("on")) piece.on = json.at("on").number != 0;
    for (std::size_t i = 0; i < 4 && i < json.at("b").items.size(); ++i) {
        piece.box[i] = static_cast<float>(json.at("b").items[i].number);
    }
    if (json.find("o")) {
        piece.options.clear();
        for (const Json& option : json.at("o").items) {
            if (option.items.size() == 2) piece.options.emplace_back(option.items[0].text, option.items[1].text);
        }
    }
    if (json.find("m")) piece.content = json.at("m").raw;
    const int write = static_cast<int>(json.at("w").number);
    const bool typed = piece.tag != "select" && json.at("a").at("type").text != "range";
    if (json.find("v") && (fresh || !typed || focused != key || write != piece.write)) piece.value = json.at("v").text;
    piece.write = write;
    piece.raw = json.raw;
}

void Document::remove(const std::string& key) {
    if (!holds(key)) {
        fault(key + " is taken away but was not there");
        return;
    }
    gone.push_back(key);
    std::erase(children[pieces[key].parent], key);
    pieces.erase(key);
    children.erase(key);
}

void Document::order(const std::string& parent, const Json& keys) {
    ordered.push_back(parent);
    std::vector<std::string> wanted;
    for (const Json& key : keys.items) wanted.push_back(key.text);
    std::vector<std::string> mine = children[parent];
    std::vector<std::string> theirs = wanted;
    std::sort(mine.begin(), mine.end());
    std::sort(theirs.begin(), theirs.end());
    if (mine != theirs) fault("the order of " + parent + " names other children than it has");
    children[parent] = std::move(wanted);
}

void Document::type(const std::string& key, const std::string& text) {
    if (holds(key)) pieces[key].value = text;
}

void Document::compare(const std::vector<Node>& nodes) {
    std::map<std::string, std::vector<std::string>> order_of;
    std::map<std::string, Rect> rect_of;
    for (const Node& node : nodes) {
        if (!rect_of.emplace(node.key, node.rect).second) fault(node.key + " is the key of two nodes");
        const auto parent = rect_of.find(node.parent);
        if (!node.parent.empty() && node.parent != "fixed" && parent == rect_of.end()) {
            fault(node.key + " comes before its parent");
        }
        order_of[node.parent].push_back(node.key);
        if (!holds(node.key)) {
            fault(node.key + " is missing in the document");
        } else {
            compare(node, parent == rect_of.end() ? Rect{} : parent->second);
        }
    }
    if (pieces.size() != rect_of.size()) fault("the document has other nodes than the tree");
    for (const auto& [parent, keys] : order_of) {
        if (children[parent] != keys) fault("the children of " + parent + " stand in another order");
    }
}

void Document::compare(const Node& node, const Rect& parent) {
    const Piece& piece = pieces[node.key];
    const auto differs = [&](const char* what) { fault(node.key + " differs in " + what); };
    if (piece.parent != node.parent) differs("its parent");
    const float rect[4] = {node.rect.x - parent.x, node.rect.y - parent.y, node.rect.w, node.rect.h};
    for (int i = 0; i < 4; ++i) {
        if (!(std::abs(piece.box[i] - rect[i]) <= 0.13F)) differs("its rectangle");  // sent in quarters of a pixel
    }
    const auto attribute = [&](const char* name) {
        const auto found = piece.attributes.find(name);
        return found == piece.attributes.end() ? std::string() : found->second;
    };
    if (attribute("aria-describedby") != node.described_by) differs("its description");
    if ((attribute("aria-invalid") == "true") != node.invalid) differs("its mark as wrong");
    if ((attribute("aria-current") == "page") != node.current) differs("being current");
    switch (node.role) {
    case Role::heading:
    case Role::text:
    case Role::label:
    case Role::button:
    case Role::status:
        if (piece.text != node.name) differs("its words");
        break;
    case Role::output:
        if (piece.text != node.value) differs("its value");
        [[fallthrough]];
    default:
        if (attribute("aria-label") != node.name) differs("its name");
        break;
    }
    const bool field = node.role == Role::textbox || node.role == Role::select || node.role == Role::slider;
    if (field && piece.value != node.value) {
        fault(node.key + " holds '" + piece.value + "' instead of '" + node.value + "'");
    }
    if (node.role == Role::radio && piece.on != node.checked) differs("being chosen");
    if (node.role == Role::label && attribute("for") != node.for_key) differs("its control");
    if (node.role == Role::select && piece.options != node.options) differs("its options");
}

}  // namespace overwater::test
