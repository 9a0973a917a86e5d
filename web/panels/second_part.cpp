// The gate to the program's second part, and what stands in the place of its pages while it is not there.

#include "web/panels/second_part.hpp"

#include "web/app/app.hpp"
#include "web/panels/page_column.hpp"

namespace overwater {

namespace {

/// Looked up each time, so that no optimizer puts what is behind it into the first part.
void (*const volatile entry)(SecondPartThere, App& app, Ui& ui, float top) = second_part::draw_page;

class PageToCome : private PageColumn {
public:
    PageToCome(App& app, Ui& ui, float top) : PageColumn(app, ui, top, 760, 760) {}

    void draw() {
        begin("part", app_.say("page." + std::string(page_names[static_cast<std::size_t>(app_.page())])));
        const bool missing = app_.second_part_missing();
        paragraph("part.state", app_.say(missing ? "part.missing" : "part.awaited"),
                  {Face::regular, 16, missing ? Ink::warning : Ink::text}, 12);
        Flow flow(margin_, y_, width_, row_, 0);
        if (missing && press_in(flow, "part.again", "part.again")) app_.ask_for_second_part();
        y_ = flow.bottom();
        end();
    }
};

}  // namespace

void draw_page_of_second_part(App& app, Ui& ui, float top) {
    if (const auto there = app.second_part()) return entry(*there, app, ui, top);
    PageToCome(app, ui, top).draw();
}

}  // namespace overwater
