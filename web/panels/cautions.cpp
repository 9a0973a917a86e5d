#include <algorithm>

#include "web/app/app.hpp"
#include "web/panels/panels.hpp"

namespace overwater {

namespace {

// method.md section 10, in the order in which a run needs them.
constexpr std::string_view cautions[] = {"cautions.rules", "cautions.acid",  "cautions.bands", "cautions.way_out",
                                         "cautions.hydrogen", "cautions.metals", "cautions.glass", "cautions.waste"};

}  // namespace

std::span<const std::string_view> caution_keys() { return cautions; }

void draw_cautions_page(App& app, Ui& ui, float top) {
    const float margin = page_margin(ui);
    const float width = std::min(ui.width() - 2 * margin, 760.0f);
    float y = top + 18;
    ui.open("cautions", Role::region, {margin, y, width, 0}, app.say("page.cautions"));
    y += ui.heading("cautions.heading", 2, {margin, y, width, 0}, app.say("page.cautions"),
                    {Face::semibold, 22, Ink::text}) + 10;
    ui.open("cautions.list", Role::list, {margin, y, width, 0}, app.say("page.cautions"));
    for (const std::string_view key : cautions) {
        const std::string name(key);
        ui.open(name, Role::list_item, {margin, y, width, 0}, {});
        const float start = y;
        y += ui.text(name + ".head", {margin + 16, y + 8, width - 16, 0}, app.say(name + ".head"),
                     {Face::semibold, 17, Ink::text}) + 8;
        y += ui.text(name + ".text", {margin + 16, y + 2, width - 16, 0}, app.say(name + ".text"), Type{}) + 12;
        ui.fill({margin, start + 10, 3, y - start - 16}, Ink::copper);
        ui.close();
    }
    ui.close();
    ui.close();
    ui.reach(y + 28);
}

}  // namespace overwater
