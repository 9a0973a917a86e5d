#pragma once

#include <optional>
#include <span>
#include <vector>

#include "core/result/outcome.hpp"
#include "web/draw/tube.hpp"
#include "web/ui/ui.hpp"

namespace overwater {

class App;
struct Setup;

/// What is left free at either side of a page.
inline float page_margin(const Ui& ui) { return ui.width() < 600 ? 14.0f : 24.0f; }

/// Draws the whole page; returns the height of what is fixed at the bottom of the viewport.
float draw_page(App& app, Ui& ui);

/// Brand, record, pages, undo; returns the height taken.
float draw_header(App& app, Ui& ui);

/// What happened and should be known, below the header; returns the height taken.
float draw_notices(App& app, Ui& ui, float top);

/// The bench page: readings, tube, results. Returns the height of the dock.
float draw_bench(App& app, Ui& ui, float top);

/// The readings in the order of the bench, within `area.w`; returns the height taken.
float draw_readings(App& app, Ui& ui, Rect area, bool with_hints);
/// The tube drawn to scale, or the question which number is at its closed end, and the cautions. `picture_height` 0: as
/// tall as `area.h` allows. With the hint for the reading at hand, where hints do not stand below the readings.
float draw_tube_column(App& app, Ui& ui, Rect area, float picture_height, bool with_hint);
/// The question alone: two drawings to choose from.
float draw_closed_end_question(App& app, Ui& ui, Rect area);
/// What it comes to: molar volume, dry-gas pressure, amount, and the working below.
float draw_results(App& app, Ui& ui, Rect area);
/// What stands in the results' place while they are withheld.
float draw_withheld(App& app, Ui& ui, Rect area);
/// The same as a page of its own; false, and nothing drawn, where they are not withheld.
bool draw_withheld_page(App& app, Ui& ui, float top);
/// The short cautions that stand with every amount.
float draw_short_cautions(App& app, Ui& ui, Rect area, const char* which = "cautions.short");
/// The key of the cautions for a run set up like this: a closed flask may burst, some gases do not burn.
const char* short_cautions(const Setup& setup);

void draw_working_page(App& app, Ui& ui, float top);
/// The doubt of the result: budget, trials, verdict, and what to improve first.
void draw_how_sure_page(App& app, Ui& ui, float top);
/// What would explain the difference from the accepted value.
void draw_gap_page(App& app, Ui& ui, float top);
void draw_records_page(App& app, Ui& ui, float top);
/// The list of all records within `area.w`; returns the height taken.
float draw_records_list(App& app, Ui& ui, Rect area);
void draw_cautions_page(App& app, Ui& ui, float top);
void draw_conventions_page(App& app, Ui& ui, float top);
/// Which course the conventions are, and those of one's own; returns where it ends.
float draw_courses(App& app, Ui& ui, float top);
/// Starts a practice run, and after its release compares what was read with what is true.
void draw_practice_page(App& app, Ui& ui, float top);
/// Codes of practice runs for a class, and their key. Behind the gate.
void draw_codes_page(App& app, Ui& ui, float top);
/// The student's own answers to each step, and what is said of them.
void draw_answers_page(App& app, Ui& ui, float top);
/// A class's sheets, marked by the teacher's rules.
void draw_marking_page(App& app, Ui& ui, float top);
/// The plan of a run for tomorrow's class.
void draw_plan_page(App& app, Ui& ui, float top);
/// A class's runs together.
void draw_pool_page(App& app, Ui& ui, float top);
/// A formula or an equation as typed: what it weighs, whether it balances, which amounts react.
void draw_equations_page(App& app, Ui& ui, float top);
/// What belongs to a class, side by side at the top of each of its pages; returns the height taken.
float draw_class_pages(App& app, Ui& ui, float top);
/// The instrument of the reading at hand, `height` px tall with what enlarges it, less where it shows digits; returns the
/// height taken, at least `area.h`.
float draw_dial_at_hand(App& app, Ui& ui, Rect area, float height);
/// The working enlarged for a class; takes the whole page.
void draw_projector_page(App& app, Ui& ui);

/// The steps that lead to the result, as the bench page lists them; the projector adds the comparison.
std::vector<Output> main_steps(const App& app);
std::vector<Output> projector_steps(const App& app);
/// The steps of the working that lead to what is sought, in their order, whether this run asks for them or not.
std::vector<Output> leading_steps(const App& app);
/// The tube of the run at hand, to scale, with what was read.
/// Nothing while the drawing of another vessel is not there yet.
std::optional<Picture> bench_picture(App& app, float width, float height, const TextMeasure& measure);
TubeView tube_view(const App& app);
TubeLabels tube_labels(const App& app);
/// Keys of the cautions in the order in which a run needs them; each has `.head` and `.text`.
std::span<const std::string_view> caution_keys();

/// Places things side by side and begins a new row where the width is used up.
class Flow {
public:
    Flow(float x, float y, float width, float row, float gap) : left_(x), x_(x), y_(y), right_(x + width), row_(row), gap_(gap) {}
    Rect next(float w) {
        if (x_ > left_ && x_ + w > right_ + 0.5f) {
            x_ = left_;
            y_ += row_;
        }
        const Rect rect{x_, y_, w, row_};
        x_ += w + gap_;
        return rect;
    }
    float bottom() const { return y_ + row_; }

private:
    float left_, x_, y_, right_, row_, gap_;
};

}  // namespace overwater
