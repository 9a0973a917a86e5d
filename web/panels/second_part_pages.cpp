// The pages of the program's second part, and their sentences. Nothing but the gate comes here (second_part.cpp).

#include "generated/text_en.hpp"
#include "web/app/app.hpp"
#include "web/panels/panels.hpp"
#include "web/panels/second_part.hpp"

namespace overwater {

void second_part::draw_page(SecondPartThere, App& app, Ui& ui, float top) {
    app.learn_second_part(second_part_keys, second_part_en);
    switch (app.page()) {
        case PageName::codes: return draw_codes_page(app, ui, top);
        case PageName::equations: return draw_equations_page(app, ui, top);
        case PageName::marking: return draw_marking_page(app, ui, top);
        case PageName::plan: return draw_plan_page(app, ui, top);
        case PageName::pool: return draw_pool_page(app, ui, top);
        default: return;
    }
}

}  // namespace overwater
