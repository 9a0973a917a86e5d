#include "web/draw/mathml.hpp"

#include <algorithm>
#include <cstddef>
#include <string_view>

namespace overwater {

namespace {

using Kind = Formula::Kind;

Element leaf(const char* name, const std::string& words) {
    Element e = Element::named(name);
    e.add(Element::text_node(words));
    return e;
}

Element element_of(const Formula& f);

/// Adds the parts of a row; a thin space before a unit, which MathML would set close to its number.
void add_parts(Element& row, const std::vector<Formula>& parts) {
    for (std::size_t i = 0; i < parts.size(); ++i) {
        const bool unit = parts[i].kind == Kind::unit;
        if (i > 0 && unit && parts[i - 1].kind != Kind::operation) {
            Element space = Element::named("mspace");
            space.with("width", "0.2em");
            row.add(std::move(space));
        }
        row.add(element_of(parts[i]));
    }
}

Element with_children(const char* name, const Formula& f) {
    Element e = Element::named(name);
    for (const Formula& child : f.children) e.add(element_of(child));
    return e;
}

bool has_fraction(const Formula& f) {
    return f.kind == Kind::fraction || std::any_of(f.children.begin(), f.children.end(), has_fraction);
}

Element element_of(const Formula& f) {
    switch (f.kind) {
    case Kind::number: return leaf("mn", f.text);
    case Kind::unit:
    case Kind::words: return leaf("mtext", f.text);
    case Kind::operation: return leaf("mo", f.text);
    case Kind::variable: return leaf("mi", f.text);
    case Kind::fraction:
        if (f.children.size() == 2) return with_children("mfrac", f);
        break;
    case Kind::subscript:
        if (f.children.size() == 2) return with_children("msub", f);
        break;
    case Kind::superscript:
        if (f.children.size() == 2) return with_children("msup", f);
        break;
    case Kind::root: {
        Element e = Element::named("msqrt");
        add_parts(e, f.children);
        return e;
    }
    case Kind::bracketed: {
        Element e = Element::named("mrow");
        // Fonts for mathematics stretch parentheses to odd heights around plain words.
        const bool tall = has_fraction(f);
        const auto parenthesis = [&](const char* sign) {
            Element mark = leaf("mo", sign);
            if (!tall) mark.with("stretchy", "false");
            e.add(std::move(mark));
        };
        parenthesis("(");
        add_parts(e, f.children);
        parenthesis(")");
        return e;
    }
    case Kind::row: break;
    }
    Element row = Element::named("mrow");
    add_parts(row, f.children);
    return row;
}

class Speaker {
public:
    explicit Speaker(const SpeechWords& words) : words_(words) {}

    void say(const Formula& f) {
        switch (f.kind) {
        case Kind::number:
        case Kind::unit:
        case Kind::words:
        case Kind::variable: add(named(f.text)); return;
        case Kind::operation: add(operation(f.text, false)); return;
        case Kind::row: say_row(f.children); return;
        case Kind::fraction:
            if (f.children.size() == 2) return say_fraction(f);
            break;
        case Kind::superscript:
            if (f.children.size() == 2) return say_power(f);
            break;
        case Kind::subscript:
            if (f.children.size() == 2) {
                say(f.children[0]);
                add(words_.index);
                say(f.children[1]);
                return;
            }
            break;
        case Kind::root:
            add(words_.root_of);
            say_row(f.children);
            add(words_.end_root);
            return;
        case Kind::bracketed:
            add(words_.open);
            say_row(f.children);
            add(words_.close);
            return;
        }
        say_row(f.children);
    }

    std::string take() { return std::move(spoken_); }

private:
    void add(std::string_view words) {
        if (words.empty()) return;
        if (!spoken_.empty()) spoken_ += ' ';
        spoken_ += words;
    }

    std::string_view named(const std::string& symbol) const {
        for (const auto& [sign, words] : words_.symbols) {
            if (sign == symbol) return words;
        }
        return symbol;
    }

    std::string_view operation(const std::string& sign, bool without_left_side) const {
        if (sign == "−" || sign == "-") return without_left_side ? words_.negative : words_.minus;
        if (sign == "+") return words_.plus;
        if (sign == "×" || sign == "·") return words_.times;
        if (sign == "/" || sign == "÷") return words_.divided_by;
        if (sign == "=") return words_.equals;
        if (sign == "≈") return words_.approximately;
        return named(sign);
    }

    void say_row(const std::vector<Formula>& parts) {
        for (std::size_t i = 0; i < parts.size(); ++i) {
            const bool starts = i == 0 || parts[i - 1].kind == Kind::operation;
            if (parts[i].kind == Kind::operation)
                add(operation(parts[i].text, starts));
            else
                say(parts[i]);
        }
    }

    /// A part that needs no words around it to be understood: one leaf, or a number with its unit.
    static bool simple(const Formula& f) {
        if (f.kind == Kind::row) {
            for (const Formula& child : f.children) {
                if (!child.children.empty() || child.kind == Kind::operation) return false;
            }
            return f.children.size() <= 2;
        }
        return f.children.empty();
    }

    void say_fraction(const Formula& f) {
        const bool bare = simple(f.children[0]) && simple(f.children[1]);
        if (!bare) add(words_.begin_fraction);
        say(f.children[0]);
        add(words_.over);
        say(f.children[1]);
        if (!bare) add(words_.end_fraction);
    }

    void say_power(const Formula& f) {
        say(f.children[0]);
        const std::string& exponent = f.children[1].text;
        if (exponent == "2") return add(words_.squared);
        if (exponent == "3") return add(words_.cubed);
        add(words_.to_the_power);
        say(f.children[1]);
    }

    const SpeechWords& words_;
    std::string spoken_;
};

}  // namespace

Element mathml_of(const Formula& formula) {
    Element math = Element::named("math");
    math.with("xmlns", "http://www.w3.org/1998/Math/MathML").with("displaystyle", "true");
    math.add(element_of(formula));
    return math;
}

std::string spoken(const Formula& formula, const SpeechWords& words) {
    Speaker speaker(words);
    speaker.say(formula);
    return speaker.take();
}

}  // namespace overwater
