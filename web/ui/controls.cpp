// Controls: fields, selects, radio buttons, buttons.

#include <algorithm>
#include <cmath>

#include "web/ui/ui.hpp"

namespace overwater {

namespace {

constexpr float corner = 5;
constexpr std::size_t most_drawn = 600;  ///< bytes of a line; a field is not so wide
constexpr float inner = 8;  ///< between a field's edge and its text

}  // namespace

void Ui::focus_ring(const TextView& key, const Rect& rect, float rounding) {
    if (!focused(key)) return;
    frame({rect.x - 1, rect.y - 1, rect.w + 2, rect.h + 2}, Ink::copper, 2, rounding + 1);
}

void Ui::field(const TextView& key, const Rect& rect, const Field& about) {
    fill(rect, Ink::card, corner);
    frame(rect, about.invalid ? Ink::warning : Ink::field_edge, 1, corner);
    const Type type{Face::regular, about.size, Ink::text};
    const Rect s = screen(rect);
    list_->PushClipRect({s.x + 2, s.y}, {s.right() - 2, s.bottom()}, true);
    const float y = rect.y + (rect.h - type.size) / 2;
    const bool drawn = drawable(about.value, type.face);
    if (!drawn) {
        // Its element shows it instead.
    } else if (about.lines > 0) {
        std::string_view rest = about.value;
        for (int i = 0; i < about.lines && !rest.empty(); ++i) {
            const std::size_t end = std::min(rest.find('\n'), rest.size());
            draw_text({rect.x + inner, rect.y + 7 + static_cast<float>(i) * line_height(type) + 3},
                      rest.substr(0, std::min(end, most_drawn)), type);
            rest.remove_prefix(std::min(rest.size(), end + 1));
        }
    } else if (about.number) {
        draw_text({rect.right() - inner, y}, about.value, type, Anchor::end);
    } else {
        draw_text({rect.x + inner, y}, about.value, type);
    }
    list_->PopClipRect();
    focus_ring(key, rect, corner);
    Node& node = add(key, Role::textbox, rect);
    node.name = about.name;
    node.value = about.value;
    node.described_by = about.described_by;
    node.input_mode = about.input_mode;
    node.invalid = about.invalid;
    node.look = about.number ? "field number" : about.lines > 0 ? "field area" : "field";
    node.level = about.lines;
    if (!drawn) node.look += " shown";
    if (about.size > 16) node.look += " projected";
    node.write = interaction_.write;
}

void Ui::select(const TextView& key, const Rect& rect, const Choice& choice) {
    std::string words = choice.shown;
    for (const auto& [value, text] : choice.options) {
        if (words.empty() && value == choice.chosen) words = text;
    }
    const bool hot = hovered(rect) || focused(key);
    if (choice.framed) {
        fill(rect, Ink::card, corner);
        frame(rect, hot ? Ink::copper : Ink::field_edge, 1, corner);
    }
    const float pad = choice.framed ? inner : 2;
    const Rect s = screen(rect);
    list_->PushClipRect({s.x, s.y}, {s.right() - (choice.framed ? 16.0f : 10.0f), s.bottom()}, true);
    const Type type{Face::regular, choice.size, choice.ink};
    draw_text({rect.x + pad, rect.y + (rect.h - choice.size) / 2}, words, type);
    list_->PopClipRect();
    // The mark of a list to open, small and only as loud as the pointer makes it.
    const float x = rect.right() - (choice.framed ? 12.0f : 6.0f);
    const float y = std::round(rect.y + rect.h / 2 - 1);
    const Point p = screen(Point{x, y});
    list_->AddTriangleFilled({p.x - 3.5f, p.y - 1}, {p.x + 3.5f, p.y - 1}, {p.x, p.y + 3}, colour(hot ? Ink::copper : Ink::soft));
    focus_ring(key, rect, corner);
    Node& node = add(key, Role::select, rect);
    node.name = choice.name;
    node.value = choice.chosen;
    node.options = choice.options;
    node.look = choice.framed ? "choice" : "choice plain";
    if (choice.size > 16) node.look += " projected";
    node.write = interaction_.write;
}

void Ui::radio(const TextView& key, const Rect& rect, const TextView& words, const std::string& value,
               bool on) {
    const Rect s = screen(rect);
    const ImVec2 middle{s.x + 9, std::round(s.y + s.h / 2)};
    const bool hot = hovered(rect);
    list_->AddCircleFilled(middle, 7.5f, colour(Ink::card));
    list_->AddCircle(middle, 7.5f, colour(on || hot ? Ink::copper : Ink::field_edge), 0, on ? 2.0f : 1.25f);
    if (on) list_->AddCircleFilled(middle, 3.75f, colour(Ink::copper));
    const Type type{};
    const std::vector<std::string> broken = lines(words, type, rect.w - 23);
    const float step = line_height(type);
    float y = rect.y + (rect.h - step * static_cast<float>(broken.size())) / 2 + (step - type.size) / 2;
    for (const std::string& line : broken) {
        draw_text({rect.x + 23, y}, line, type);
        y += step;
    }
    focus_ring(key, {rect.x - 2, rect.y, rect.w + 5, rect.h}, corner);
    Node& node = add(key, Role::radio, rect);
    node.value = value;
    node.checked = on;
    node.look = "radio";
    Node& words_node = add(std::string(key) + ".label", Role::label, {rect.x + 23, rect.y, rect.w - 23, rect.h});
    words_node.name = words;
    words_node.for_key = key;
}

bool Ui::check_box(const TextView& key, const Rect& rect, const TextView& words, bool on) {
    const Rect box{rect.x + 1, rect.y + rect.h / 2 - 8, 16, 16};
    fill(box, on ? Ink::copper : Ink::card, 3);
    frame(box, on || hovered(rect) ? Ink::copper : Ink::field_edge, 1.25f, 3);
    if (on) {
        Picture tick;
        tick.polyline({{3.5f, 8.5f}, {6.8f, 11.6f}, {12.6f, 4.8f}}, Ink::card, 2);
        draw_picture({box.x, box.y}, tick);
    }
    draw_text({rect.x + 25, rect.y + (rect.h - 16) / 2}, words, Type{});
    focus_ring(key, rect, corner);
    Node& node = add(key, Role::check_box, rect);
    node.checked = on;
    node.look = "radio";
    Node& words_node = add(std::string(key) + ".label", Role::label, {rect.x + 25, rect.y, rect.w - 25, rect.h});
    words_node.name = words;
    words_node.for_key = key;
    return pressed(key);
}

bool Ui::button(const TextView& key, const Rect& rect, const TextView& words, ButtonLook look,
                bool current, std::string name, float size) {
    const bool hot = hovered(rect);
    Type type{Face::regular, size, Ink::copper};
    Anchor anchor = Anchor::middle;
    if (look == ButtonLook::page) {
        type.ink = current ? Ink::copper : Ink::soft;
        type.face = current ? Face::semibold : Face::regular;
        if (current) fill(rect, Ink::copper_soft, corner);
        if (hot && !current) type.ink = Ink::copper;
    }
    if (look == ButtonLook::framed) {
        fill(rect, hot ? Ink::copper_soft : Ink::card, corner);
        frame(rect, Ink::copper, 1, corner);
    }
    if (look == ButtonLook::off) type.ink = Ink::field_edge;
    if (look == ButtonLook::plain) type.ink = hot ? Ink::copper : Ink::soft;
    const float y = rect.y + (rect.h - size) / 2;
    draw_text({rect.x + rect.w / 2, y}, words, type, anchor);
    if (look == ButtonLook::link) {
        const float wide = text_width(words, type);
        const float left = rect.x + (rect.w - wide) / 2;
        rule({left, y + size * 1.02f}, {left + wide, y + size * 1.02f}, Ink::copper, hot ? 2.0f : 1.0f);
    }
    // A link may be no wider than its words, which the ring must not touch.
    const float room = look == ButtonLook::link ? 4.0f : 0.0f;
    focus_ring(key, {rect.x - room, rect.y, rect.w + 2 * room, rect.h}, corner);
    Node& node = add(key, Role::button, rect);
    node.name = name.empty() ? std::string(words) : std::move(name);
    node.current = current;
    node.look = "button";
    return pressed(key);
}

}  // namespace overwater
