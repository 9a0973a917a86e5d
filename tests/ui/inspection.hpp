#pragma once

#include <algorithm>
#include <cmath>
#include <set>
#include <string>
#include <vector>

#include "tests/ui/desk.hpp"
#include "tests/ui/ink.hpp"

/// What is wrong with a page as it stands: names, rectangles, every painted letter.

namespace overwater::test {

inline bool is_interactive(Role role) {
    return role == Role::textbox || role == Role::select || role == Role::radio || role == Role::button ||
           role == Role::check_box || role == Role::tab || role == Role::slider;
}

inline bool is_container(Role role) {
    return role == Role::region || role == Role::group || role == Role::radio_group || role == Role::navigation ||
           role == Role::list || role == Role::status;
}

inline bool overlap(const Rect& a, const Rect& b, float slack) {
    return a.x + slack < b.right() && b.x + slack < a.right() && a.y + slack < b.bottom() && b.y + slack < a.bottom();
}

inline std::string words(const Rect& r) {
    const auto whole = [](float v) { return std::to_string(std::lround(v)); };
    return whole(r.x) + ',' + whole(r.y) + ' ' + whole(r.w) + 'x' + whole(r.h);
}

/// Collects what is wrong with one page as it stands.
class Inspection {
public:
    explicit Inspection(Desk& desk) : desk_(desk) {
        for (const Node& node : desk.nodes()) {
            if (node.parent == "fixed" || fixed_.find(node.parent) != fixed_.end()) fixed_.insert(node.key);
        }
    }

    std::set<std::string> faults() {
        names();
        rectangles();
        ink();
        return std::move(faults_);
    }

private:
    void fault(const std::string& what) { faults_.insert(what); }
    bool is_fixed(const Node& node) const { return fixed_.find(node.key) != fixed_.end(); }

    void names() {
        std::set<std::string> keys;
        for (const Node& node : desk_.nodes()) keys.insert(node.key);
        for (const Node& node : desk_.nodes()) {
            if (is_interactive(node.role) || node.role == Role::image || node.role == Role::math ||
                node.role == Role::radio_group || node.role == Role::region || node.role == Role::navigation ||
                node.role == Role::output) {
                const std::string name = desk_.name_of_control(node);
                if (name.empty()) fault(node.key + " has no name");
                if (name.find('{') != std::string::npos) fault(node.key + " has a name with an open place");
                if (name == node.key) fault(node.key + " is named by its key");
            }
            if (node.role == Role::label) {
                const Node* control = desk_.find(node.for_key);
                if (control == nullptr || !is_interactive(control->role)) {
                    fault(node.key + " is the label of no control");
                } else if (desk_.name_of_control(*control).find(node.name) == std::string::npos) {
                    fault(node.key + " is not contained in the control's name");
                }
            }
            if (node.role == Role::radio_group) {
                const Node* shown = desk_.find(node.key + ".label");
                if (shown == nullptr || node.name.find(shown->name) == std::string::npos) {
                    fault(node.key + ": the words shown are not its name");
                }
            }
            std::string rest = node.described_by;
            while (!rest.empty()) {
                const std::string key = rest.substr(0, rest.find(' '));
                rest.erase(0, key.size() + 1);
                if (keys.find(key) == keys.end()) fault(node.key + " is described by " + key + ", which is not there");
            }
            if (node.role == Role::text || node.role == Role::heading || node.role == Role::label) {
                if (node.name.empty()) fault(node.key + " says nothing");
                if (node.name.find('{') != std::string::npos) fault(node.key + " has an open place");
            }
        }
    }

    void rectangles() {
        std::vector<const Node*> controls;
        for (const Node& node : desk_.nodes()) {
            if (node.role == Role::status) continue;  // has no place of its own
            const Rect& r = node.rect;
            if (r.x < -0.5F || r.right() > desk_.screen().width + 0.5F)
                fault(node.key + " goes beyond the page's width");
            if (!(r.w > 0) || !(r.h >= 0)) fault(node.key + " has a rectangle without a width: " + words(r));
            const float bottom = is_fixed(node) ? desk_.screen().height : desk_.document().height;
            if (r.y < -0.5F || r.bottom() > bottom + 0.5F) fault(node.key + " goes beyond the page's height");
            if (!is_interactive(node.role)) continue;
            // 24 px at least (WCAG 2.2, 2.5.8); a radio button's label is a part of what can be hit.
            if (r.w < 24 || r.h < 24) fault(node.key + " is hard to hit: " + words(r));
            controls.push_back(&node);
        }
        for (std::size_t i = 0; i < controls.size(); ++i) {
            for (std::size_t k = i + 1; k < controls.size(); ++k) {
                if (is_fixed(*controls[i]) != is_fixed(*controls[k])) continue;
                if (overlap(controls[i]->rect, controls[k]->rect, 0.5F)) {
                    fault(controls[i]->key + " overlaps " + controls[k]->key);
                }
            }
        }
    }

    /// All letters, viewport by viewport down the page: each within the node that says it, none over another.
    void ink() {
        const Screen screen = desk_.screen();
        for (float top = 0; top < desk_.document().height; top += screen.height - 40) {
            desk_.send(Event::Kind::scroll, {}, {}, static_cast<double>(top));
            desk_.frame();
            speakers_.clear();
            for (const Node& node : desk_.nodes()) {
                Rect rect = node.rect;
                if (!is_fixed(node)) rect.y -= top;
                if (!is_container(node.role) && rect.bottom() > 0 && rect.y < screen.height) {
                    speakers_.push_back(node);
                    speakers_.back().rect = rect;
                }
            }
            examine(painted_letters(screen.width, screen.height), top);
        }
        desk_.send(Event::Kind::scroll, {}, {}, 0);
        desk_.frame();
    }

    const Node* speaker(const Rect& letter) const {
        const float x = letter.x + letter.w / 2;
        const float y = letter.y + letter.h / 2;
        const Node* best = nullptr;
        for (const Node& node : speakers_) {
            if (!node.rect.contains(x, y)) continue;
            if (best == nullptr || node.rect.w * node.rect.h < best->rect.w * best->rect.h) best = &node;
        }
        return best;
    }

    /// The node that ends last above a letter in its column: the text that ran on.
    std::string after_which(const Rect& letter) const {
        const Node* best = nullptr;
        for (const Node& node : speakers_) {
            if (node.rect.x > letter.x || node.rect.right() < letter.x || node.rect.y > letter.y) continue;
            if (best == nullptr || node.rect.bottom() > best->rect.bottom()) best = &node;
        }
        return best == nullptr ? std::string("at the top") : "after " + best->key;
    }

    std::string near_by(const Rect& letter, float top) const {
        const Node* node = speaker(letter);
        return node != nullptr ? node->key : "no node at " + words({letter.x, letter.y + top, letter.w, letter.h});
    }

    void examine(std::vector<Letter> letters, float top) {
        const Screen screen = desk_.screen();
        float dock = screen.height;
        for (const Node& node : desk_.nodes()) {
            if (node.parent == "fixed") dock = std::min(dock, node.rect.y);
        }
        for (const Letter& letter : letters) {
            const Rect& r = letter.rect;
            if (r.x < -0.5F || r.right() > screen.width + 0.5F)
                fault("a letter beyond the page's edge at " + near_by(r, top));
            if (letter.framed) {
                if (letter.cut) cut(r);
                continue;
            }
            if (speaker(r) == nullptr) fault("letters outside of every node, " + after_which(r));
        }
        // Letters of a line touch at most by a hair; what shares more was set upon something else.
        std::sort(letters.begin(), letters.end(), [](const Letter& a, const Letter& b) { return a.rect.x < b.rect.x; });
        for (std::size_t i = 0; i < letters.size(); ++i) {
            const Rect& a = letters[i].rect;
            for (std::size_t k = i + 1; k < letters.size() && letters[k].rect.x < a.right() - 2.5F; ++k) {
                const Rect& b = letters[k].rect;
                // What lies under the dock is covered by it, not mixed with it.
                const bool covered = (a.y + a.h / 2 >= dock) || (b.y + b.h / 2 >= dock);
                if (!covered && overlap(a, b, 2.5F))
                    fault("letters overlap: " + near_by(a, top) + " and " + near_by(b, top));
            }
        }
    }

    /// A list shows its choice whole; a field may hold more than it shows.
    void cut(const Rect& letter) {
        const Node* node = speaker(letter);
        if (node != nullptr && node->role != Role::textbox) fault(node->key + " shows its words cut off");
    }

    Desk& desk_;
    std::set<std::string> fixed_;  ///< keys of nodes that do not scroll
    std::vector<Node> speakers_;   ///< whose letters may be found in their rectangles
    std::set<std::string> faults_;
};

}  // namespace overwater::test
