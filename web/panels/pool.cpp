#include "web/app/app.hpp"
#include "web/panels/page_column.hpp"

namespace overwater {

namespace {

class PoolPage : private PageColumn {
public:
    PoolPage(App& app, Ui& ui, float top) : PageColumn(app, ui, top, 1100, 760) {}

    void draw() {
        begin("pool", app_.say("page.pool"));
        end();
    }
};

}  // namespace

void draw_pool_page(App& app, Ui& ui, float top) { PoolPage(app, ui, top).draw(); }

}  // namespace overwater
