#include "web/app/app.hpp"
#include "web/panels/panels.hpp"
#include "web/panels/second_part.hpp"

namespace overwater {

float draw_page(App& app, Ui& ui) {
    if (app.page() == PageName::projector && app.reveals()) {
        draw_projector_page(app, ui);
        return 0;
    }
    float top = draw_header(app, ui);
    top += draw_notices(app, ui, top);
    top += draw_class_pages(app, ui, top);
    switch (app.page()) {
        case PageName::working: draw_working_page(app, ui, top); break;
        case PageName::how_sure: draw_how_sure_page(app, ui, top); break;
        case PageName::gap: draw_gap_page(app, ui, top); break;
        case PageName::records: draw_records_page(app, ui, top); break;
        case PageName::cautions: draw_cautions_page(app, ui, top); break;
        case PageName::conventions: draw_conventions_page(app, ui, top); break;
        case PageName::practice: draw_practice_page(app, ui, top); break;
        case PageName::codes:
        case PageName::marking:
        case PageName::plan:
        case PageName::pool:
        case PageName::equations: draw_page_of_second_part(app, ui, top); break;
        case PageName::answers: draw_answers_page(app, ui, top); break;
        case PageName::projector: draw_withheld_page(app, ui, top); break;
        case PageName::bench:
        case PageName::count: return draw_bench(app, ui, top);
    }
    return 0;
}

}  // namespace overwater
