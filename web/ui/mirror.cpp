#include "web/ui/mirror.hpp"

#include <cmath>
#include <string_view>

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
        case Role::textbox:
        case Role::radio:
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
    void set(std::string_view name, std::string_view value) {
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
            a.set("type", "text");
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
        default: break;
    }
    if (node.current) a.set("aria-current", "page");
    if (node.disabled) a.set("disabled", "disabled");
}

void write_rect(JsonText& json, const Rect& rect) {
    const auto tidy = [](float v) { return std::round(static_cast<double>(v) * 4) / 4; };
    json.key("b").array().number(tidy(rect.x)).number(tidy(rect.y)).number(tidy(rect.w)).number(tidy(rect.h));
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
    if (node.role == Role::textbox || node.role == Role::select) json.key("v").text(node.value);
    if (node.role == Role::textbox) json.key("w").number(node.write);
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

void append_raw_list(std::string& out, std::string_view name, const std::vector<const std::string*>& items) {
    if (items.empty()) return;
    if (out.size() > 1) out += ',';
    out += '"';
    out += name;
    out += "\":[";
    for (std::size_t i = 0; i < items.size(); ++i) {
        if (i > 0) out += ',';
        out += *items[i];
    }
    out += ']';
}

}  // namespace

void Mirror::forget() {
    sent_.clear();
    sent_children_.clear();
    page_sent_ = false;
}

std::string Mirror::patch(const std::vector<Node>& nodes, const PageInfo& page) {
    std::map<std::string, const Node*> by_key;
    std::map<std::string, std::vector<std::string>> children;
    std::vector<const std::string*> changed;
    std::map<std::string, std::string> now;
    for (const Node& node : nodes) {
        by_key[node.key] = &node;
        children[node.parent].push_back(node.key);
        Rect relative = node.rect;
        if (const auto parent = by_key.find(node.parent); parent != by_key.end()) {
            relative.x -= parent->second->rect.x;
            relative.y -= parent->second->rect.y;
        }
        const auto [place, fresh] = now.emplace(node.key, json_of(node, relative));
        if (!fresh) continue;
        const auto before = sent_.find(node.key);
        if (before == sent_.end() || before->second != place->second) changed.push_back(&place->second);
    }
    JsonText gone;
    gone.array();
    bool any_gone = false;
    for (const auto& [key, unused] : sent_) {
        if (now.find(key) != now.end()) continue;
        gone.text(key);
        any_gone = true;
    }
    gone.close_array();
    JsonText order;
    order.array();
    bool any_order = false;
    for (const auto& [parent, keys] : children) {
        const auto before = sent_children_.find(parent);
        if (before != sent_children_.end() && before->second == keys) continue;
        any_order = true;
        order.array().text(parent).array();
        for (const std::string& key : keys) order.text(key);
        order.close_array().close_array();
    }
    order.close_array();

    std::string out = "{";
    if (!page_sent_ || !(page == page_)) {
        JsonText head;
        head.object();
        write_page(head, page);
        out += std::string_view(head.str()).substr(1);
    }
    append_raw_list(out, "set", changed);
    const auto append = [&out](std::string_view name, const std::string& list) {
        if (out.size() > 1) out += ',';
        out += '"';
        out += name;
        out += "\":";
        out += list;
    };
    if (any_gone) append("gone", gone.str());
    if (any_order) append("order", order.str());
    page_ = page;
    page_sent_ = true;
    sent_ = std::move(now);
    sent_children_ = std::move(children);
    if (out.size() == 1) return {};
    out += '}';
    return out;
}

}  // namespace overwater
