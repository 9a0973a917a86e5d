// Texts, headings, labels and results.

#include <algorithm>

#include "web/ui/ui.hpp"

namespace overwater {

namespace {

float anchor_x(Rect box, Anchor anchor) {
    switch (anchor) {
        case Anchor::middle: return box.x + box.w / 2;
        case Anchor::end: return box.right();
        case Anchor::start: break;
    }
    return box.x;
}

}  // namespace

float Ui::text(const TextView& key, const Rect& box, const TextView& words, const Type& type,
               Anchor anchor) {
    const std::vector<std::string> broken = lines(words, type, box.w);
    const float step = line_height(type);
    const float tall = step * static_cast<float>(broken.size());
    float y = box.y;
    const bool drawn = drawable(words, type.face);
    for (const std::string& line : broken) {
        if (drawn) draw_text({anchor_x(box, anchor), y + (step - type.size) / 2}, line, type, anchor);
        y += step;
    }
    Node& node = add(key, Role::text, {box.x, box.y, box.w, tall});
    node.name = words;
    if (!drawn) node.look = "shown";
    return tall;
}

float Ui::heading(const TextView& key, int level, const Rect& box, const TextView& words,
                  const Type& type) {
    const float tall = text(key, box, words, type);
    nodes_.back().role = Role::heading;
    nodes_.back().level = level;
    return tall;
}

void Ui::label(const TextView& key, const TextView& for_key, const Rect& box,
               const TextView& words, const Type& type) {
    const std::vector<std::string> broken = lines(words, type, box.w);
    const float step = line_height(type);
    float y = box.y + (box.h - step * static_cast<float>(broken.size())) / 2;
    for (const std::string& line : broken) {
        draw_text({box.x, y + (step - type.size) / 2}, line, type);
        y += step;
    }
    Node& node = add(key, Role::label, box);
    node.name = words;
    node.for_key = for_key;
}

void Ui::output(const TextView& key, const Rect& box, const TextView& words, std::string name,
                const Type& type, Anchor anchor) {
    draw_text({anchor_x(box, anchor), box.y + (box.h - type.size) / 2}, words, type, anchor);
    Node& node = add(key, Role::output, box);
    node.name = std::move(name);
    node.value = words;
}

void Ui::status(const TextView& key, std::string words) {
    Node& node = add(key, Role::status, {});
    node.name = std::move(words);
}

}  // namespace overwater
