#include "web/ui/ui.hpp"

#include <algorithm>
#include <cmath>

#include "imgui.h"
#include "imgui_internal.h"

namespace overwater {

void Ui::begin(const FrameInput& input, const Theme& theme) {
    input_ = input;
    theme_ = &theme;
    last_nodes_.swap(nodes_);
    nodes_.clear();
    parents_.assign(1, std::string());
    fixed_ = false;
    lowest_ = 0;
    // No window of Dear ImGui's: the document holds the controls and scrolls.
    list_ = ImGui::GetBackgroundDrawList();
}

const std::vector<Node>& Ui::end() {
    // A press that no widget answered belongs to a control that is no longer there.
    interaction_.clicked.clear();
    return nodes_;
}

Node& Ui::add(const TextView& key, Role role, const Rect& rect) {
    Node& node = nodes_.emplace_back();
    // Some three hundred nodes a frame have mostly the texts of the frame before: their memory is taken over.
    if (nodes_.size() <= last_nodes_.size()) {
        Node& before = last_nodes_[nodes_.size() - 1];
        for (std::string Node::*text : {&Node::key, &Node::parent, &Node::name, &Node::value, &Node::look}) {
            (node.*text).swap(before.*text);
            (node.*text).clear();
        }
    }
    node.key = key;
    node.parent = parents_.back();
    node.role = role;
    node.rect = rect;
    if (!fixed_) reach(rect.bottom());
    return node;
}

void Ui::reach(float y) { lowest_ = std::max(lowest_, y); }

void Ui::open(const TextView& key, Role role, const Rect& rect, std::string name, int level) {
    Node& node = add(key, role, rect);
    node.name = std::move(name);
    node.level = level;
    parents_.emplace_back(key);
}

void Ui::close() { parents_.pop_back(); }

void Ui::begin_fixed() {
    fixed_ = true;
    parents_.emplace_back("fixed");
}

void Ui::end_fixed() {
    fixed_ = false;
    parents_.pop_back();
}

bool Ui::hovered(const Rect& rect) const {
    return interaction_.pointer_x >= 0 && screen(rect).contains(interaction_.pointer_x, interaction_.pointer_y);
}

bool Ui::visible(const Rect& rect) const {
    const Rect on_screen = screen(rect);
    return on_screen.bottom() > 0 && on_screen.y < input_.height;
}

std::string Ui::next_field(const TextView& key) const {
    bool found = false;
    for (const Node& node : nodes_) {
        if (node.role != Role::textbox) continue;
        if (found) return node.key;
        found = node.key == key;
    }
    return {};
}

bool Ui::drawable(const TextView& words, Face face) const {
    ImFont* font = fonts_.of(face);
    const char* at = words.data();
    const char* end = at + words.size();
    while (at < end) {
        unsigned int character = 0;
        const int length = ImTextCharFromUtf8(&character, at, end);
        if (length <= 0) break;
        if (character >= 0x100 && !font->IsGlyphInFont(static_cast<ImWchar>(character))) return false;
        at += length;
    }
    return true;
}

bool Ui::pressed(const TextView& key) {
    const auto place = std::find(interaction_.clicked.begin(), interaction_.clicked.end(), key);
    if (place == interaction_.clicked.end()) return false;
    interaction_.clicked.erase(place);
    return true;
}

void Ui::fill(const Rect& rect, Ink ink, float rounding) {
    if (!visible(rect)) return;
    const Rect r = screen(rect);
    list_->AddRectFilled({r.x, r.y}, {r.right(), r.bottom()}, colour(ink), rounding);
}

void Ui::frame(const Rect& rect, Ink ink, float width, float rounding) {
    if (!visible(rect)) return;
    const Rect r = screen(rect);
    const float inset = width / 2;
    list_->AddRect({r.x + inset, r.y + inset}, {r.right() - inset, r.bottom() - inset}, colour(ink), rounding, 0, width);
}

void Ui::rule(const Point& from, const Point& to, Ink ink, float width, bool dashed) {
    Picture picture;
    picture.line({0, 0}, {to.x - from.x, to.y - from.y}, ink, width, dashed);
    draw_picture(from, picture);
}

void Ui::draw_picture(const Point& at, const Picture& picture) {
    paint(picture, screen(at), *theme_, *list_, fonts_, input_.pixel_scale);
}

float Ui::text_width(const TextView& words, const Type& type) const {
    return measure_.width(words, type.face, type.size);
}

void Ui::draw_text(const Point& at, const TextView& words, const Type& type, Anchor anchor) {
    if (!visible({0, at.y, 1, type.size * 1.5f})) return;
    const Point p = screen(at);
    ImFont* font = fonts_.of(type.face);
    paint_text(*list_, fonts_, {p.x, p.y + baseline_below_top(font, type.size)}, words.data(),
               words.data() + words.size(), colour(type.ink), type.face, type.size, anchor, input_.pixel_scale);
}

float Ui::line_height(const Type& type) { return std::round(type.size * 1.35f); }

std::vector<std::string> Ui::lines(const TextView& words, const Type& type, float width) const {
    // Most words fit.
    if (!words.empty() && text_width(words, type) <= width) return {std::string(words)};
    std::vector<std::string> out;
    // The line that is being filled is a piece of the words; widths add up, so that each word is measured once.
    std::size_t begin = 0;
    std::size_t end = 0;
    float wide = 0;
    const auto push = [&](std::string_view line) { out.emplace_back(line); };
    const float gap = text_width(" ", type);
    for (std::size_t at = 0; at < words.size(); at = end + 1) {
        std::size_t space = words.find(' ', at);
        if (space == std::string_view::npos) space = words.size();
        std::string_view word = words.substr(at, space - at);
        float word_wide = text_width(word, type);
        // A word wider than the room is broken where it must be: cut off it would say less.
        while (word_wide > width && word.size() > 1) {
            std::size_t fits = word.size();
            while (fits > 1 && (text_width(word.substr(0, fits), type) > width ||
                                (fits < word.size() && (static_cast<unsigned char>(word[fits]) & 0xc0) == 0x80))) {
                --fits;
            }
            if (fits <= 1) break;
            if (end > begin) push(words.substr(begin, end - begin));
            push(word.substr(0, fits));
            word.remove_prefix(fits);
            begin = end = space - word.size();
            word_wide = text_width(word, type);
        }
        if (end > begin && wide + gap + word_wide <= width) {
            wide += gap + word_wide;
        } else {
            if (end > begin) push(words.substr(begin, end - begin));
            begin = space - word.size();
            wide = word_wide;
        }
        end = space;
    }
    if (end > begin) push(words.substr(begin, end - begin));
    return out;
}

}  // namespace overwater
