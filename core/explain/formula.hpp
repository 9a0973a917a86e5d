#pragma once

#include <string>
#include <utility>
#include <vector>

#include "core/quantity/text_view.hpp"

namespace overwater {

/// A formula as it is set: the common form from which canvas, SVG, MathML and speech are made. Built from the traced
/// expression tree only (working.hpp), so that what is shown is what was computed.
struct Formula {
    enum class Kind : unsigned char {
        number,       ///< a number, already formatted; `text`
        unit,         ///< a unit's symbol; `text`
        variable,     ///< a quantity's symbol, set in italics; `text`
        words,        ///< upright text: a chemical symbol, a function's name, an index; `text`
        operation,    ///< + − × = with space around; `text`
        row,          ///< children side by side
        fraction,     ///< two children: above and below the line
        subscript,    ///< two children: base, index
        superscript,  ///< two children: base, exponent
        root,         ///< one child
        bracketed     ///< one child in parentheses
    };
    Kind kind = Kind::row;
    std::string text;
    std::vector<Formula> children;
    bool changed = false;  ///< another than before (mark_changes)

    bool operator==(const Formula&) const = default;

    static Formula leaf(Kind kind, const TextView& text) {
        Formula f;
        f.kind = kind;
        f.text = text;
        return f;
    }
    static Formula of(Kind kind, std::vector<Formula> children) {
        Formula f;
        f.kind = kind;
        f.children = std::move(children);
        return f;
    }
};

/// Marks the leaves of `now` that differ from those at the same place of `before`; where the forms differ, all of them.
void mark_changes(Formula& now, const Formula& before);

}  // namespace overwater
