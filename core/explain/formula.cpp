#include "core/explain/formula.hpp"

namespace overwater {

namespace {

void mark_all(Formula& formula) {
    if (formula.children.empty()) formula.changed = true;
    for (Formula& child : formula.children) mark_all(child);
}

}  // namespace

void mark_changes(Formula& now, const Formula& before) {
    if (now.kind != before.kind || now.children.size() != before.children.size()) {
        return mark_all(now);
    }
    if (now.children.empty()) now.changed = now.text != before.text;
    for (std::size_t i = 0; i < now.children.size(); ++i) mark_changes(now.children[i], before.children[i]);
}

}  // namespace overwater
