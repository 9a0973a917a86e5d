#pragma once

#include <string>
#include <utility>
#include <vector>

#include "core/quantity/text_view.hpp"

namespace overwater {

/// A rectangle in CSS pixels.
struct Rect {
    float x = 0;
    float y = 0;
    float w = 0;
    float h = 0;
    constexpr float right() const { return x + w; }
    constexpr float bottom() const { return y + h; }
    constexpr bool contains(float px, float py) const { return px >= x && px < right() && py >= y && py < bottom(); }
    friend constexpr bool operator==(const Rect&, const Rect&) = default;
};

/// An element of SVG or MathML: a name, attributes and children; a text where the name is empty.
struct Element {
    std::string name;
    std::string text;
    std::vector<std::pair<std::string, std::string>> attributes;
    std::vector<Element> children;

    friend bool operator==(const Element&, const Element&) = default;

    static Element text_node(std::string words) {
        Element e;
        e.text = std::move(words);
        return e;
    }
    static Element named(const char* element_name) {
        Element e;
        e.name = element_name;
        return e;
    }
    Element& with(const TextView& attribute, const TextView& value) {
        attributes.emplace_back(attribute, value);
        return *this;
    }
    Element& add(Element child) {
        children.push_back(std::move(child));
        return *this;
    }
};

/// What a thing on the page is. The mirror turns each into the HTML element that says the same.
enum class Role : unsigned char {
    region,      ///< named part of the page
    group,       ///< named set of controls
    navigation,
    heading,     ///< level 1 to 3
    text,
    label,       ///< of the control `for_key`
    textbox,
    select,
    radio_group,
    radio,
    check_box,
    slider,      ///< a value between `low` and `high`
    button,
    tab_list,
    tab,
    output,      ///< a result; silent by itself
    status,      ///< spoken politely
    image,       ///< a picture with a description; `content` is its SVG
    math,        ///< a formula; `content` is its MathML
    table,       ///< `content` is its caption and rows
    list,
    list_item
};

struct Node {
    std::string key;     ///< fixed, never made from a shown text
    std::string parent;  ///< key of the containing node; empty: the page
    Role role = Role::text;
    Rect rect;           ///< page coordinates (viewport coordinates below a fixed parent)
    std::string name;    ///< accessible name, or the text itself for text, heading, label, button, output
    std::string value;
    std::string described_by;  ///< keys, separated by spaces
    std::string for_key;       ///< label: key of its control
    std::string look;          ///< class names for the element where it must look like the drawing
    std::string input_mode;
    std::string low, high, step;  ///< slider: numbers as HTML writes them; step "any" where it has none
    std::string spoken;           ///< slider: its value in words
    int level = 0;  ///< of a heading; of a field: how many lines it has, 0 for one that has no more
    int write = 0;  ///< see mirror.md, `w`
    bool disabled = false;
    bool checked = false;  ///< radio, check box; selected for a tab
    bool invalid = false;
    bool current = false;  ///< the page one is on
    std::vector<std::pair<std::string, std::string>> options;
    std::vector<Element> content;
};

}  // namespace overwater
