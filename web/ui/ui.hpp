#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/explain/formula.hpp"
#include "core/quantity/text_view.hpp"
#include "web/draw/canvas_painter.hpp"
#include "web/draw/imgui_measure.hpp"
#include "web/draw/picture.hpp"
#include "web/draw/theme.hpp"
#include "web/ui/node.hpp"

namespace overwater {

struct Formula;

/// What happened to controls since the last frame, kept between frames.
struct Interaction {
    std::string focused;               ///< key of the control that has the focus
    std::vector<std::string> clicked;  ///< buttons pressed and not yet answered by a widget call
    float pointer_x = -1;              ///< in the viewport; -1: no pointer
    float pointer_y = -1;
    int write = 1;         ///< raised when the page itself changes the text of fields (undo, another record)
    bool painting = true;  ///< there is a canvas; else pictures go into the mirror as SVG
};

struct FrameInput {
    float width = 0;
    float height = 0;
    float scroll_y = 0;
    float pixel_scale = 1;
    bool touch = false;
};

/// How a text is set.
struct Type {
    Face face = Face::regular;
    float size = 16;
    Ink ink = Ink::text;
};

/// The widget vocabulary: each call draws with Dear ImGui and adds one node to the semantic tree. Positions are page
/// coordinates in CSS pixels; inside `begin_fixed` they are viewport coordinates. Nothing here is pressed by the
/// pointer: the mirrored control is, and its widget call returns true in the frame after.
///
/// Texts, rectangles and types come by reference, since WebAssembly copies each on its stack to pass it by value.
class Ui {
public:
    Ui(Interaction& interaction, const Fonts& fonts) : interaction_(interaction), fonts_(fonts), measure_(fonts) {}

    void begin(const FrameInput& input, const Theme& theme);
    /// The tree of this frame, ready for the mirror.
    const std::vector<Node>& end();
    /// The tree of the last frame.
    const std::vector<Node>& nodes() const { return nodes_; }

    float width() const { return input_.width; }
    float height() const { return input_.height; }
    bool touch() const { return input_.touch; }
    const TextMeasure& measure() const { return measure_; }
    const Theme& theme() const { return *theme_; }
    bool focused(const TextView& key) const { return interaction_.focused == key; }

    // Structure
    void open(const TextView& key, Role role, const Rect& rect, std::string name, int level = 0);
    void close();
    void begin_fixed();
    void end_fixed();

    // Drawing alone
    void fill(const Rect& rect, Ink ink, float rounding = 0);
    void frame(const Rect& rect, Ink ink, float width = 1, float rounding = 0);
    void rule(const Point& from, const Point& to, Ink ink = Ink::line, float width = 1, bool dashed = false);
    /// One line of text; `at` is the upper left, upper middle or upper right corner by `anchor`.
    void draw_text(const Point& at, const TextView& words, const Type& type, Anchor anchor = Anchor::start);
    void draw_picture(const Point& at, const Picture& picture);

    // Text
    float text_width(const TextView& words, const Type& type) const;
    /// Breaks words into lines no wider than `width`.
    std::vector<std::string> lines(const TextView& words, const Type& type, float width) const;
    static float line_height(const Type& type);
    /// A paragraph within `box.w`; returns the height it took.
    float text(const TextView& key, const Rect& box, const TextView& words, const Type& type = {},
               Anchor anchor = Anchor::start);
    float heading(const TextView& key, int level, const Rect& box, const TextView& words, const Type& type);
    /// The visible name of a control.
    void label(const TextView& key, const TextView& for_key, const Rect& box, const TextView& words,
               const Type& type = {});
    /// A result, in one line.
    void output(const TextView& key, const Rect& box, const TextView& words, std::string name, const Type& type,
                Anchor anchor = Anchor::start);
    /// Gives the result just added the words it says, where its drawing was made of several parts.
    void amend_value(std::string words) { nodes_.back().value = std::move(words); }
    void status(const TextView& key, std::string words);

    // Controls
    struct Field {
        std::string value;
        std::string name;          ///< accessible name, where no label is its name
        std::string described_by;  ///< keys of texts
        std::string input_mode = "decimal";
        bool number = true;  ///< set to the right with tabular figures
        bool invalid = false;
        int lines = 0;    ///< more than 0: a field of so many lines, for text that is pasted
        float size = 16;  ///< of its text; more than 16 is that of the projector's controls (style.css, .projected)
    };
    void field(const TextView& key, const Rect& rect, const Field& field);

    struct Choice {
        std::string name;                                          ///< accessible name, where no label is its name
        std::vector<std::pair<std::string, std::string>> options;  ///< value and words
        std::string chosen;
        std::string shown;   ///< in place of the words chosen, where there is little room
        bool framed = true;  ///< a box; else only the words and a mark
        Ink ink = Ink::text;
        float size = 16;  ///< as of a field
    };
    void select(const TextView& key, const Rect& rect, const Choice& choice);
    /// One radio button with its words, in as many lines as `rect.w` asks for; `group` is the key of the open radio group.
    void radio(const TextView& key, const Rect& rect, const TextView& words, const std::string& value, bool on);

    /// A box with its words; true once for each press.
    bool check_box(const TextView& key, const Rect& rect, const TextView& words, bool on);

    struct Slider {
        std::string name;          ///< accessible name, where no label is its name
        std::string spoken;        ///< the value in words, with its unit
        std::string described_by;  ///< keys of texts
        double low = 0;
        double high = 1;
        double step = 0;  ///< of the arrow keys, counted from `low`; 0: any value
        double value = 0;
        std::vector<double> marks;  ///< values with a stroke below the track
    };
    /// A value set by moving a thumb, coloured from 0 (or the end nearest to it). Each move comes to App::typed as the
    /// number's text; true once after each that is over: thumb let go, or key pressed. 44 px high at least on touch.
    bool slider(const TextView& key, const Rect& rect, const Slider& slider);

    enum class ButtonLook { link, plain, page, framed, off };
    /// True once for each press.
    bool button(const TextView& key, const Rect& rect, const TextView& words, ButtonLook look = ButtonLook::link,
                bool current = false, std::string name = {}, float size = 16);

    /// The button just added opens the browser's file dialogue, which needs the person's own press.
    void opens_file() { nodes_.back().look += " opens-file"; }

    // Pictures and formulas
    /// A formula set at `size` px (typeset). Kept from frame to frame, for formulas change less often than frames are drawn;
    /// what is returned is good until as many others were set as are kept.
    struct SetFormula {
        Formula formula{};
        float size = 0;
        Ink ink{};
        float pixel_scale = 0;
        Picture picture{};
        float baseline = 0;
        std::vector<Element> content{};  ///< as MathML
    };
    const SetFormula& set(const Formula& formula, float size, Ink ink);
    /// The same at `size` px, or as much smaller as `room` asks for, in halves of a pixel, but not below `smallest`.
    const SetFormula& set_within(const Formula& formula, float size, Ink ink, float room, float smallest);
    void picture(const TextView& key, const Point& at, const Picture& picture);
    /// A formula with its baseline at `at.y`; returns its width.
    float formula(const TextView& key, const Point& at, const Formula& formula, std::string spoken, float size,
                  Ink ink);

    /// A native table over what was drawn for it; `table` holds its caption and rows.
    void table(const TextView& key, const Rect& rect, Element table);

    /// Key of the text field that follows `key` in the frame drawn last; empty behind the last.
    std::string next_field(const TextView& key) const;
    /// Takes the control just added out of use; it is drawn pale by its look.
    void disable_last() { nodes_.back().disabled = true; }

    /// Where the pointer is, in page coordinates; far above the page where there is none.
    Point pointer() const {
        return {interaction_.pointer_x, interaction_.pointer_x < 0 ? -1e6f : interaction_.pointer_y + input_.scroll_y};
    }
    /// Whether something is in view, or no farther from it than `around`.
    bool near_view(Rect rect, float around) const {
        return visible({rect.x, rect.y - around, rect.w, rect.h + 2 * around});
    }
    /// The lowest point of anything placed so far, in page coordinates.
    float lowest() const { return lowest_; }
    /// Notes that the page reaches down to `y`.
    void reach(float y);

private:
    Node& add(const TextView& key, Role role, const Rect& rect);
    Point screen(const Point& p) const { return {p.x, fixed_ ? p.y : p.y - input_.scroll_y}; }
    Rect screen(const Rect& r) const { return {r.x, fixed_ ? r.y : r.y - input_.scroll_y, r.w, r.h}; }
    bool hovered(const Rect& rect) const;
    bool visible(const Rect& rect) const;
    /// Whether the canvas's font has every character; what it has not is shown by its element.
    bool drawable(const TextView& words, Face face) const;
    bool pressed(const TextView& key);
    void focus_ring(const TextView& key, const Rect& rect, float rounding);
    ImU32 colour(Ink ink) const { return canvas_colour(theme_->of(ink)); }

    Interaction& interaction_;
    Fonts fonts_;
    ImguiMeasure measure_;
    FrameInput input_;
    const Theme* theme_ = nullptr;
    ImDrawList* list_ = nullptr;
    std::vector<Node> nodes_;
    std::vector<Node> last_nodes_;  ///< of the frame before: the room of their texts is used again
    std::vector<std::string> parents_;
    static constexpr std::size_t most_kept = 64;
    std::vector<std::unique_ptr<SetFormula>> kept_;
    std::size_t oldest_kept_ = 0;
    bool fixed_ = false;
    float lowest_ = 0;
};

}  // namespace overwater
