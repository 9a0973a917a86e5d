#include "web/app/app.hpp"
#include "web/panels/page_column.hpp"

namespace overwater {

namespace {

class PlanPage : private PageColumn {
public:
    PlanPage(App& app, Ui& ui, float top) : PageColumn(app, ui, top, 1100, 760) {}

    void draw() {
        begin("plan", app_.say("page.plan"));
        end();
    }
};

}  // namespace

void draw_plan_page(App& app, Ui& ui, float top) { PlanPage(app, ui, top).draw(); }

}  // namespace overwater
