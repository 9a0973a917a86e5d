// What would explain the difference from the accepted value; and the other way, what one cause would do.

#include <algorithm>
#include <cmath>

#include "core/explain/gap.hpp"
#include "core/quantity/gum.hpp"
#include "web/app/app.hpp"
#include "web/draw/doubt_pictures.hpp"
#include "web/panels/gap_words.hpp"
#include "web/panels/panels.hpp"
#include "web/panels/types.hpp"

namespace overwater {

namespace {

constexpr Type name_type{Face::semibold, 16, Ink::text};

class GapPage {
public:
    GapPage(App& app, Ui& ui, float top) : app_(app), ui_(ui), top_(top) {}

    void draw() {
        const float margin = page_margin(ui_);
        const float inner = ui_.width() - 2 * margin;
        if (draw_withheld_page(app_, ui_, top_)) return;
        const bool wide = ui_.width() >= 1000;
        const float left = wide ? std::round(inner * 0.58f) : inner;
        area_ = {margin, top_ + 18, left, 0};
        y_ = area_.y;
        y_ += ui_.heading("gap.heading", 2, {area_.x, y_, area_.w, 0}, app_.say("gap.heading"), heading_type) + 6;
        const std::optional<Gap>& gap = app_.gap();
        if (!gap) {
            y_ += ui_.text("gap.waiting", {area_.x, y_, area_.w, 0}, app_.say(Message{"gap.waiting"}.text("state", state())),
                           small);
            ui_.reach(y_ + 28);
            return;
        }
        statement(*gap);
        if (wide) {
            explanations(*gap);
            area_ = {margin + left + 48, top_ + 18, inner - left - 48, 0};
            y_ = area_.y;
            other_way();
        } else {
            other_way();
            y_ += 24;
            explanations(*gap);
        }
        ui_.reach(ui_.lowest() + 28);
    }

private:
    std::string state() const {
        const Output output = explained_output(app_.assessment());
        if (!app_.assessment().has(output)) return app_.shown(output);
        return is_molar_volume(output) ? app_.shown(Output::accepted_value) : std::string();
    }

    /// First of all whether there is anything to explain.
    void statement(const Gap& gap) {
        const Ink ink = gap.nothing_to_explain ? Ink::good : Ink::text;
        y_ += ui_.text("gap.statement", {area_.x, y_, area_.w, 0}, gap_statement(app_, gap),
                       {Face::semibold, 17, ink}) + 18;
        if (app_.sought() == explained_output(app_.assessment())) return;
        y_ += ui_.text("gap.other_line", {area_.x, y_ - 8, area_.w, 0}, app_.say("gap.not_known"), small) + 10;
    }

    void explanations(const Gap& gap) {
        const bool high = gap.found > gap.accepted;
        y_ += ui_.heading("gap.list", 3, {area_.x, y_, area_.w, 0}, app_.say(high ? "gap.too_high" : "gap.too_low"),
                          {Face::semibold, 16, Ink::text}) + 2;
        y_ += ui_.text("gap.about", {area_.x, y_, area_.w, 0}, app_.say("gap.about"), small) + 6;
        if (gap.explanations.empty()) {
            y_ += ui_.text("gap.none", {area_.x, y_, area_.w, 0}, app_.say("gap.none"), Type{});
            return;
        }
        ui_.open("gap.causes", Role::list, {area_.x, y_, area_.w, 0}, app_.say(high ? "gap.too_high" : "gap.too_low"));
        for (const Explanation& explanation : gap.explanations) {
            row(explanation);
            ui_.rule({area_.x, y_}, {area_.x + area_.w, y_});
        }
        ui_.close();
    }

    void row(const Explanation& explanation) {
        const Cause cause = explanation.cause;
        const std::string name(name_of(cause));
        const std::string key = "gap.cause." + name;
        const bool enough = explanation.plausibility != Plausibility::impossible;
        ui_.open(key, Role::list_item, {area_.x, y_, area_.w, 0}, {});
        y_ += 8;
        const bool beside = area_.w > 560;
        const float bar_width = beside ? std::round(area_.w * 0.34f) : area_.w;
        const float room = beside ? area_.w - bar_width - 24 : area_.w;
        const float top = y_;
        y_ += ui_.text(key + ".name", {area_.x, y_, room, 0}, app_.say("cause." + name), name_type) + 1;
        y_ += ui_.text(key + ".about", {area_.x, y_, room, 0}, app_.say("cause." + name + ".about"), small);
        float x = area_.x;
        float y = y_ + 4;
        if (beside) {
            x = area_.x + area_.w - bar_width;
            y = top + 2;
        }
        if (enough) {
            const double largest = explanation.largest / explanation.usual;
            ui_.draw_picture({x, y}, draw_need_bar(explanation.size / explanation.usual, largest,
                                                   static_cast<int>(explanation.plausibility), bar_width, 16));
            y += 20;
        }
        y += ui_.text(key + ".needs", {x, y, bar_width, 0}, needs_words(app_, explanation), Type{}) + 1;
        y += ui_.text(key + ".plausible", {x, y, bar_width, 0}, plausible_words(app_, explanation), small);
        y_ = std::max(y_, y) + 9;
        ui_.close();
    }

    /// Sizes from nothing (or the other way round) to somewhat beyond what was seen.
    void other_way() {
        y_ += ui_.heading("gap.other_way", 2, {area_.x, y_, area_.w, 0}, app_.say("gap.other_way"), heading_type) + 2;
        y_ += ui_.text("gap.other_way.about", {area_.x, y_, area_.w, 0}, app_.say("gap.other_way_about"), small) + 10;
        const float tall = ui_.touch() ? 44.0f : 32.0f;
        const std::string label = app_.say("gap.cause");
        const std::string size_label = app_.say("gap.size");
        const float label_width = std::max(ui_.text_width(label, Type{}), ui_.text_width(size_label, Type{})) + 14;
        ui_.label("gap.cause.label", "gap.cause", {area_.x, y_, label_width, tall}, label);
        Ui::Choice choice;
        for (std::size_t i = 0; i < cause_count; ++i) {
            const auto cause = static_cast<Cause>(i);
            if (!applies(cause, app_.assessment())) continue;
            choice.options.emplace_back(std::string(name_of(cause)), app_.say("cause." + std::string(name_of(cause))));
        }
        const Cause cause = app_.tried_cause();
        choice.chosen = name_of(cause);
        ui_.select("gap.cause", {area_.x + label_width, y_, area_.w - label_width, tall}, choice);
        y_ += tall + 8;

        const CauseInfo& about = info(cause);
        const UnitId unit = about.unit;
        const auto in_unit = [unit](double base) { return difference_from_base(base, unit); };
        const double size = app_.tried_size();
        ui_.label("gap.size.label", "gap.size", {area_.x, y_, label_width, tall}, size_label);
        Ui::Slider slider;
        slider.low = about.raises && about.lowers ? -in_unit(about.largest) : 0.0;
        slider.high = in_unit(about.largest);
        slider.step = slider_step(slider.high);
        slider.value = in_unit(size);
        slider.spoken = cause_size_words(app_, cause, size);
        const float value_width = 96;
        ui_.slider("gap.size", {area_.x + label_width, y_, area_.w - label_width - value_width, tall}, slider);
        ui_.draw_text({area_.x + area_.w, y_ + (tall - 18) / 2}, slider.spoken, name_type, Anchor::end);
        y_ += tall + 2;
        const bool raises = about.raises != falls_with_volume(explained_output(app_.assessment()));
        y_ += ui_.text("gap.direction", {area_.x + label_width, y_, area_.w - label_width, 0},
                       app_.say(about.raises && about.lowers ? "gap.both" : raises ? "gap.raise" : "gap.lower"), small) + 10;

        const double found = app_.assessment().outcome[explained_output(app_.assessment())];
        const auto then = result_with(app_.assessment(), cause, size);
        const std::string name = app_.say("cause." + std::string(name_of(cause)));
        const std::string words =
            !then ? app_.say(Message{"gap.effect_none"}.text("cause", name).text("size", slider.spoken))
                  : app_.say(Message{"gap.effect"}
                                 .text("cause", name)
                                 .text("size", slider.spoken)
                                 .text("result", found_words(app_, *then))
                                 .text("found", found_words(app_, found))
                                 .text("percent", difference_words(app_, *then, found)));
        y_ += ui_.text("gap.effect", {area_.x, y_, area_.w, 0}, words, {Face::semibold, 16, Ink::text});
    }

    /// About a hundred steps, of a round size.
    static double slider_step(double high) {
        const double raw = high / 100;
        const double ten = std::pow(10.0, std::floor(std::log10(raw)));
        return raw <= 2 * ten ? 2 * ten : raw <= 5 * ten ? 5 * ten : 10 * ten;
    }

    App& app_;
    Ui& ui_;
    float top_;
    Rect area_;
    float y_ = 0;
};

}  // namespace

void draw_gap_page(App& app, Ui& ui, float top) { GapPage(app, ui, top).draw(); }

}  // namespace overwater
