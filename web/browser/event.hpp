#pragma once

#include <string>

namespace overwater {

/// Everything that can happen to the page comes in as one of these, through one function.
struct Event {
    enum class Kind : int {
        click = 1,   ///< key: the control
        input = 2,   ///< key: the text field, text: its whole value, a: caret
        change = 3,  ///< key: the select, radio or check box, text: the value chosen; check box: "true" or "false"
        focus = 4,   ///< key: the control that gained the focus
        blur = 5,    ///< key: the control that lost it
        key = 6,     ///< text: name such as "Escape", "ArrowLeft", "Mod+z"; key: the focused control or ""
        pointer_move = 7,  ///< a, b: CSS pixels in the viewport
        pointer_leave = 8,
        pointer_down = 9,  ///< only over pictures; a, b as above
        pointer_up = 10,
        resize = 11,  ///< a, b: viewport in CSS pixels, c: pixel ratio
        scroll =
            12,      ///< a: scroll position downwards, b: sideways, CSS pixels; key: a scroller, or "" for the document
        media = 13,  ///< platform::media() changed
        visibility = 14,  ///< a: 1 when the page is visible
        storage = 15,     ///< another tab wrote; key: storage key, text: the new value or ""
        file = 16,        ///< a file was chosen or dropped; key: its name, text: its content
        timer = 17,       ///< key: the timer's name
        undo = 18,        ///< the person asked for undo by any way the platform has
        redo = 19,
        context_lost = 20,
        context_restored = 21,
        composition_start = 22,
        composition_end = 23,
        fragment = 24,  ///< text: the new address fragment
        painting = 25,  ///< a: 1 when there is a canvas to paint on, 0 when the mirror is the page
        update = 26,    ///< a newer version of the page waits; platform::take_update() changes to it
        text = 27,      ///< answer to platform::bring_text; key: the language, text: packed, or "" where it cannot be had
        part = 28       ///< answer to platform::bring_second_part; a: 1 when it is there, 0 where it cannot be had
    };
    Kind kind;
    std::string key;
    std::string text;
    double a = 0;
    double b = 0;
    double c = 0;
};

/// The part of the page that the browser calls.
class PageHandler {
public:
    virtual ~PageHandler() = default;
    /// Returns true when the event was used and the browser's own action must not follow.
    virtual bool handle(const Event& event) = 0;
    /// Draws one frame with Dear ImGui, between NewFrame and Render. `width` and `height` are CSS pixels.
    /// Returns the number of further frames wanted.
    virtual int frame(float width, float height) = 0;
    /// The colour behind everything, as red, green, blue in 0..1.
    virtual void clear_color(float rgb[3]) const = 0;
    /// Loads the fonts into the current ImGui context.
    virtual void load_fonts() = 0;
};

/// The page's application, made once. Defined in web/app.
PageHandler& page_handler();

}  // namespace overwater
