#include "web/ui/mirror.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <string_view>
#include <tuple>

#include "web/ui/json_text.hpp"

namespace overwater {

namespace {

void write_element(JsonText& json, const Element& element) {
    if (element.name.empty()) {
        json.text(element.text);
        return;
    }
    json.array().text(element.name).object();
    for (const auto& [name, value] : element.attributes) json.key(name).text(value);
    json.close_object();
    for (const Element& child : element.children) write_element(json, child);
    json.close_array();
}

std::string_view tag_of(const Node& node) {
    switch (node.role) {
        case Role::region: return "section";
        case Role::navigation: return "nav";
        case Role::heading: return node.level <= 1 ? "h1" : node.level == 2 ? "h2" : "h3";
        case Role::text: return "p";
        case Role::label: return "label";
        case Role::textbox: return node.level > 0 ? "textarea" : "input";
        case Role::radio:
        case Role::slider:
        case Role::check_box: return "input";
        case Role::select: return "select";
        case Role::button:
        case Role::tab: return "button";
        case Role::output: return "output";
        case Role::math: return "math";
        case Role::table: return "table";
        case Role::list: return "ol";
        case Role::list_item: return "li";
        case Role::group:
        case Role::radio_group:
        case Role::tab_list:
        case Role::status:
        case Role::image: break;
    }
    return "div";
}

/// Roles whose words are the element's content; all others carry them as a label.
bool says_its_name(Role role) {
    return role == Role::heading || role == Role::text || role == Role::label || role == Role::button ||
           role == Role::tab || role == Role::status;
}

class Attributes {
public:
    explicit Attributes(JsonText& json) : json_(json) {}
    void set(const TextView& name, const TextView& value) {
        if (!value.empty()) json_.key(name).text(value);
    }

private:
    JsonText& json_;
};

void write_attributes(JsonText& json, const Node& node) {
    Attributes a(json);
    if (!says_its_name(node.role)) a.set("aria-label", node.name);
    a.set("aria-describedby", node.described_by);
    switch (node.role) {
        case Role::group: a.set("role", "group"); break;
        case Role::radio_group: a.set("role", "radiogroup"); break;
        case Role::tab_list: a.set("role", "tablist"); break;
        case Role::tab: a.set("role", "tab"); break;
        case Role::status: a.set("role", "status"); break;
        case Role::image: a.set("role", "img"); break;
        case Role::label: a.set("for", node.for_key); break;
        case Role::button: a.set("type", "button"); break;
        case Role::output: a.set("aria-live", "off"); break;
        case Role::math: a.set("display", "block"); break;
        case Role::list: a.set("role", "list"); break;
        case Role::textbox:
            if (node.level == 0) a.set("type", "text");
            a.set("inputmode", node.input_mode);
            a.set("autocomplete", "off");
            a.set("autocapitalize", "off");
            a.set("spellcheck", "false");
            if (node.invalid) a.set("aria-invalid", "true");
            break;
        case Role::radio:
            a.set("type", "radio");
            a.set("name", node.parent);
            a.set("value", node.value);
            break;
        case Role::check_box: a.set("type", "checkbox"); break;
        case Role::slider:
            a.set("type", "range");
            a.set("min", node.low);
            a.set("max", node.high);
            a.set("step", node.step);
            a.set("aria-valuetext", node.spoken);
            a.set("autocomplete", "off");
            break;
        default: break;
    }
    if (node.current) a.set("aria-current", "page");
    if (node.disabled) a.set("disabled", "disabled");
}

/// To quarters of a pixel: less cannot be seen, and sums of floats that differ in their last bit count as the same.
Rect tidy(Rect rect) {
    const auto quarter = [](float v) { return std::round(v * 4) / 4; };
    return {quarter(rect.x), quarter(rect.y), quarter(rect.w), quarter(rect.h)};
}

void write_rect(JsonText& json, const Rect& rect) {
    json.key("b").array();
    for (const float side : {rect.x, rect.y, rect.w, rect.h}) json.number(static_cast<double>(side));
    json.close_array();
}

std::string json_of(const Node& node, const Rect& relative) {
    JsonText json;
    json.object().key("k").text(node.key).key("p").text(node.parent).key("t").text(tag_of(node));
    json.key("a").object();
    write_attributes(json, node);
    json.close_object();
    if (!node.look.empty()) json.key("c").text(node.look);
    if (says_its_name(node.role)) json.key("x").text(node.name);
    if (node.role == Role::output) json.key("x").text(node.value);
    if (node.role == Role::textbox || node.role == Role::select || node.role == Role::slider) {
        json.key("v").text(node.value).key("w").number(node.write);
    }
    if (node.role == Role::radio || node.role == Role::check_box) json.key("on").truth(node.checked);
    write_rect(json, relative);
    if (node.role == Role::select) {
        json.key("o").array();
        for (const auto& [value, words] : node.options) json.array().text(value).text(words).close_array();
        json.close_array();
    }
    if (!node.content.empty()) {
        json.key("m").array();
        for (const Element& element : node.content) write_element(json, element);
        json.close_array();
    }
    json.close_object();
    return json.str();
}

void write_page(JsonText& json, const PageInfo& page) {
    json.key("page").object().key("height").number(static_cast<double>(page.height));
    json.key("lang").text(page.language).key("title").text(page.title).key("theme").text(page.theme);
    json.key("dock").number(static_cast<double>(page.dock)).close_object();
}

std::string children_json(const std::vector<Node>& nodes, const std::vector<Mirror::Children>& changed) {
    JsonText order;
    order.array();
    for (const Mirror::Children& row : changed) {
        order.array().text(row.parent).array();
        for (const std::size_t child : row.nodes) order.text(nodes[child].key);
        order.close_array().close_array();
    }
    return order.close_array().str();
}

/// Appends a member whose value is JSON already.
void append(std::string& out, std::string_view name, std::string_view json) {
    if (out.size() > 1) out += ',';
    out += '"';
    out += name;
    out += "\":";
    out += json;
}

bool same_keys(const std::vector<Node>& nodes, const std::vector<Mirror::Placed>& sent) {
    if (nodes.size() != sent.size()) return false;
    for (std::size_t i = 0; i < nodes.size(); ++i) {
        if (nodes[i].key != sent[i].node.key || nodes[i].parent != sent[i].node.parent) return false;
    }
    return true;
}

/// Whether two nodes with one key say the same; where they are is compared from the parent's corner.
bool says_the_same(const Node& a, const Node& b) {
    const auto parts = [](const Node& n) {
        return std::tie(n.parent, n.role, n.name, n.value, n.described_by, n.for_key, n.look, n.input_mode, n.low,
                        n.high, n.step, n.spoken, n.level, n.write, n.disabled, n.checked, n.invalid, n.current, n.options, n.content);
    };
    return parts(a) == parts(b);
}

std::vector<Mirror::Children> children_of(const std::vector<std::string>& parents) {
    std::vector<Mirror::Children> all;
    std::map<std::string_view, std::size_t> row_of;
    for (std::size_t i = 0; i < parents.size(); ++i) {
        const auto [row, fresh] = row_of.emplace(parents[i], all.size());
        if (fresh) all.push_back({parents[i], {}});
        all[row->second].nodes.push_back(i);
    }
    return all;
}

}  // namespace

void Mirror::forget() {
    sent_.clear();
    page_sent_ = false;
}

void Mirror::find_parents(const std::vector<Node>& nodes) {
    std::map<std::string_view, int> index;
    parents_.assign(nodes.size(), -1);
    for (std::size_t i = 0; i < nodes.size(); ++i) {
        if (const auto parent = index.find(nodes[i].parent); parent != index.end()) parents_[i] = parent->second;
        index.emplace(nodes[i].key, static_cast<int>(i));
    }
}

std::vector<Rect> Mirror::relative_rects(const std::vector<Node>& nodes) const {
    std::vector<Rect> rects;
    rects.reserve(nodes.size());
    for (std::size_t i = 0; i < nodes.size(); ++i) {
        Rect rect = nodes[i].rect;
        if (parents_[i] >= 0) {
            rect.x -= nodes[static_cast<std::size_t>(parents_[i])].rect.x;
            rect.y -= nodes[static_cast<std::size_t>(parents_[i])].rect.y;
        }
        rects.push_back(tidy(rect));
    }
    return rects;
}

std::string Mirror::patch(const std::vector<Node>& nodes, const PageInfo& page) {
    // Most frames change a few values and no key: they are compared one by one without looking anything up.
    const bool same = same_keys(nodes, sent_);
    if (!same) find_parents(nodes);
    const std::vector<Rect> rects = relative_rects(nodes);
    std::map<std::string_view, std::size_t> before;
    if (!same) {
        for (std::size_t i = 0; i < sent_.size(); ++i) before.emplace(sent_[i].node.key, i);
    }
    std::string changed;
    for (std::size_t i = 0; i < nodes.size(); ++i) {
        std::size_t old = i;
        bool known = same;
        if (!same) {
            const auto place = before.find(nodes[i].key);
            known = place != before.end();
            if (known) old = place->second;
        }
        if (known && sent_[old].relative == rects[i] && says_the_same(sent_[old].node, nodes[i])) continue;
        if (!changed.empty()) changed += ',';
        changed += json_of(nodes[i], rects[i]);
        if (same) sent_[i] = {nodes[i], rects[i]};
    }
    std::string out = "{";
    if (!page_sent_ || !(page == page_)) {
        JsonText head;
        head.object();
        write_page(head, page);
        out += std::string_view(head.str()).substr(1);
    }
    if (!changed.empty()) append(out, "set", '[' + changed + ']');
    if (!same) append_structure(out, nodes);
    page_ = page;
    page_sent_ = true;
    if (!same) {
        sent_.clear();
        sent_.reserve(nodes.size());
        for (std::size_t i = 0; i < nodes.size(); ++i) sent_.push_back({nodes[i], rects[i]});
    }
    if (out.size() == 1) return {};
    out += '}';
    return out;
}

void Mirror::append_structure(std::string& out, const std::vector<Node>& nodes) const {
    std::map<std::string_view, std::size_t> now;
    std::vector<std::string> new_parents;
    std::vector<std::string> old_parents;
    for (const Node& node : nodes) {
        now.emplace(node.key, 0);
        new_parents.push_back(node.parent);
    }
    JsonText gone;
    gone.array();
    bool any_gone = false;
    for (const Placed& placed : sent_) {
        old_parents.push_back(placed.node.parent);
        if (now.find(placed.node.key) != now.end()) continue;
        gone.text(placed.node.key);
        any_gone = true;
    }
    if (any_gone) append(out, "gone", gone.close_array().str());
    const std::vector<Children> old_rows = children_of(old_parents);
    std::vector<Children> changed;
    for (const Children& row : children_of(new_parents)) {
        const auto old = std::find_if(old_rows.begin(), old_rows.end(),
                                      [&](const Children& other) { return other.parent == row.parent; });
        const bool equal = old != old_rows.end() &&
                           std::equal(row.nodes.begin(), row.nodes.end(), old->nodes.begin(), old->nodes.end(),
                                      [&](std::size_t a, std::size_t b) { return nodes[a].key == sent_[b].node.key; });
        if (!equal) changed.push_back(row);
    }
    if (!changed.empty()) append(out, "order", children_json(nodes, changed));
}

}  // namespace overwater
