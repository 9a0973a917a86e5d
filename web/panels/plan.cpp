// The teacher's page for the evening before: what is planned with, and beside it what it comes to.

#include <algorithm>

#include "web/app/app.hpp"
#include "web/panels/page_column.hpp"
#include "web/panels/plan_fields.hpp"
#include "web/panels/plan_result.hpp"

namespace overwater {

namespace {

constexpr float wide = 1180;   ///< room for fields in two columns, and what they come to
constexpr float beside = 760;  ///< for one column of fields

class PlanPage : private PageColumn {
public:
    PlanPage(App& app, Ui& ui, float top) : PageColumn(app, ui, top, 1340, 1340) {}

    void draw() {
        begin("plan", app_.say("page.plan"));
        paragraph("plan.about", app_.say("plan.about"), {Face::regular, 15, Ink::soft}, 10);
        constexpr float gap = 40;
        const float fields = width_ >= wide ? 680.0f : width_ >= beside ? 350.0f : width_;
        const float top = y_;
        const float height = draw_plan_fields(app_, ui_, {margin_, top, fields, 0});
        if (fields < width_) {
            const Rect result{margin_ + fields + gap, top, width_ - fields - gap, 0};
            ui_.rule({result.x - gap / 2, top}, {result.x - gap / 2, top + height});
            y_ = top + std::max(height, draw_plan_result(app_, ui_, result));
        } else {
            y_ += height + 16;
            ui_.rule({margin_, y_}, {margin_ + width_, y_});
            y_ += 14;
            y_ += draw_plan_result(app_, ui_, {margin_, y_, width_, 0});
        }
        end();
    }
};

}  // namespace

void draw_plan_page(App& app, Ui& ui, float top) { PlanPage(app, ui, top).draw(); }

}  // namespace overwater
