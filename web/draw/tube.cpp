#include "web/draw/tube.hpp"

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

#include "core/quantity/short_sort.hpp"
#include "web/draw/side_label.hpp"
#include "web/draw/tube_shape.hpp"

namespace overwater {

namespace {

/// How deep the mouth hangs in the liquid while the level is not known.
constexpr double assumed_depth_mm = 40;
constexpr float hairline = 1.2f;
constexpr float shortest_piece = 9;  ///< of the liquid's surface between texts; shorter ones look like dashes

/// Where something is when it has to stay inside the picture.
struct Kept {
    float y;
    bool moved;
};
Kept keep(float y, float low, float high) {
    const float inside = std::clamp(y, low, high);
    return {inside, inside != y};
}

class TubeDrawing {
public:
    TubeDrawing(const TubeView& view, const TubeLabels& labels, float width, float height, const TextMeasure& measure)
        : view_(view), labels_(labels), measure_(measure), place_(tube_geometry(view, height)) {
        picture_.width = width;
        picture_.height = height;
        picture_.description = labels.description;
        text_ = labels.text_size > 0 ? labels.text_size : std::clamp(std::round(width / 21), 14.0f, 24.0f);
        number_ = std::round(text_ * 1.2f);
        tube_.half_width = std::round(std::clamp(width * 0.067f, 14.0f, 36.0f));
        tube_.centre = std::round(width * 0.475f);
        tube_.top = place_.top;
        tube_.mouth = place_.mouth;
        left_ = std::round(width * 0.06f);
        right_ = std::round(width * 0.89f);
        scaled_ = view.has_scale() && view.direction_known;
        find_surfaces();
    }

    Picture draw() {
        fill();
        if (scaled_) scale();
        glass();
        end_space_mark();
        meniscus_mark();
        left_labels();
        right_labels();
        level_line();
        return std::move(picture_);
    }

private:
    float wall() const { return tube_.centre + tube_.half_width; }
    float left_wall() const { return tube_.centre - tube_.half_width; }
    float unit() const { return tube_.half_width / 20; }

    void find_surfaces() {
        const double reading = view_.reading_mL.value_or(-1);
        beyond_scale_ = place_.meniscus.has_value() && (reading < 0 || reading > view_.capacity_mL);
        if (place_.meniscus) meniscus_ = keep(*place_.meniscus, 8, picture_.height - 8);
        const float default_level = tube_.mouth - static_cast<float>(assumed_depth_mm) * place_.px_per_mm;
        // From a reading that cannot be, no level follows.
        if (beyond_scale_) place_.level.reset();
        level_ = keep(place_.level.value_or(default_level), 12, place_.bucket_bottom - 5);
        // Not known, or not possible: the mouth is out of the liquid, or the picture does not reach that far.
        mouth_is_out_ = place_.level.has_value() && *place_.level > tube_.mouth;
        rim_ = std::max(4.0f, level_.y - picture_.height * 0.04f);
    }

    void fill() {
        picture_.filled_box({left_, level_.y}, {right_, place_.bucket_bottom}, Ink::bucket);
        if (!place_.meniscus || meniscus_.y <= tube_.top) {
            picture_.area(tube_.inside(), Ink::liquid);
            return;
        }
        if (meniscus_.y >= tube_.mouth) {
            gas(tube_.inside());
            return;
        }
        surface_ = tube_.surface(meniscus_.y, 5 * unit());
        picture_.area(tube_.below(surface_), Ink::liquid);
        gas(tube_.above(surface_));
    }

    void gas(std::vector<Point> outline) {
        picture_.area(outline, Ink::gas);
        picture_.hatched(std::move(outline), Ink::gas_hatch, 7 * unit());
    }

    void glass() {
        const float pen = tube_.half_width > 28 ? 2.5f : 2;
        picture_.polyline(tube_.wall(), Ink::text, pen);
        if (surface_.size() > 1 && !beyond_scale_) picture_.polyline(surface_, Ink::liquid_edge, pen);
        picture_.polyline(
            {{left_, rim_}, {left_, place_.bucket_bottom}, {right_, place_.bucket_bottom}, {right_, rim_}}, Ink::text,
            pen);
    }

    float mark_y(double value) const {
        const auto way = static_cast<float>(value * static_cast<double>(place_.px_per_mL));
        return view_.closed_end_has_largest ? place_.last_mark - way : place_.first_mark + way;
    }

    void scale() {
        const double px = static_cast<double>(place_.px_per_mL);
        const ScaleSteps steps = scale_steps(px, std::max(5.0, static_cast<double>(picture_.height) / 110),
                                             static_cast<double>(3.5f * text_));
        const int count = static_cast<int>(std::floor(view_.capacity_mL / steps.step + 1e-6));
        for (int i = 0; i <= count; ++i) {
            const double value = i * steps.step;
            const double numbers = value / steps.number_step;
            const bool numbered = std::abs(numbers - std::round(numbers)) < 1e-6;
            const bool halfway = std::abs(2 * numbers - std::round(2 * numbers)) < 1e-6;
            tick(mark_y(value), numbered ? 16 : halfway ? 10 : 6);
            if (numbered && far_from_capacity(value)) scale_text(value);
        }
        tick(mark_y(view_.capacity_mL), 16);
        scale_text(view_.capacity_mL);
    }

    bool far_from_capacity(double value) const {
        return (view_.capacity_mL - value) * static_cast<double>(place_.px_per_mL) > static_cast<double>(1.2f * text_);
    }

    void tick(float y, float length) {
        const float end = tube_.centre + tube_.half_width_at(y);
        const float begin = wall() - length * unit();
        if (end - begin > 2) picture_.line({begin, y}, {end, y}, Ink::text);
    }

    void scale_text(double value) {
        const float y = mark_y(value);
        const std::string words = scale_number(value, labels_.decimal_sign);
        const float x = wall() + 8;
        picture_.text({x, y + digit_half_height * text_}, words, Ink::soft, Face::regular, text_);
        const float end = x + measure_.width(words, Face::regular, text_);
        numbers_end_ = std::max(numbers_end_, end);
        taken_.push_back({x, y - text_ / 2, end - x, text_});
    }

    bool has_end_space_label() const {
        return scaled_ && view_.closed_end_has_largest &&
               !(labels_.end_space_word.empty() && labels_.end_space_value.empty());
    }

    void end_space_mark() {
        if (!has_end_space_label()) return;
        const float y = place_.first_mark;
        picture_.line({left_wall() - 10 * unit(), y}, {wall() + 5, y}, Ink::copper, 2, !view_.end_space_known);
    }

    void meniscus_mark() {
        if (!place_.meniscus || !beyond_scale_) return;
        picture_.line({left_wall() - 12 * unit(), meniscus_.y}, {wall() + 12 * unit(), meniscus_.y}, Ink::warning, 2,
                      true);
    }

    void bracket(float x, float from, float to, Ink ink) {
        if (to - from < 4) return;
        const float serif = 9 * unit();
        picture_.line({x, from}, {x + serif, from}, ink, hairline);
        picture_.line({x, from}, {x, to}, ink, hairline);
        picture_.line({x, to}, {x + serif, to}, ink, hairline);
    }

    void left_labels() {
        const float inner = std::round(left_wall() - 28 * unit());
        const float outer = inner - std::round(15 * unit());
        const bool level_known = place_.level.has_value() && !labels_.level_number.empty();
        const bool level_above = level_known && level_.y < meniscus_.y - 3;
        const bool gas_known = place_.meniscus.has_value() && !labels_.gas_volume_number.empty();
        const float gas_end = std::clamp(meniscus_.y, tube_.top, tube_.mouth);

        SideLabel gas = left_label(labels_.gas_volume_number, labels_.gas_volume_unit, Ink::text, Ink::soft, inner - 8);
        SideLabel level = left_label(labels_.level_number, labels_.level_unit, Ink::liquid_edge, Ink::liquid_edge,
                                     (level_above ? outer : inner) - 8);
        std::vector<SideLabel*> shown;
        if (gas_known) {
            bracket(inner, tube_.top + 1, gas_end - (level_known && !level_above ? 3 : 0), Ink::soft);
            // The level's bracket stands outside of this one where both reach the same heights.
            const float free_end = level_above ? std::max(level_.y, tube_.top) : gas_end;
            const bool fits = free_end - tube_.top > 2 * gas.half_height() + 4;
            if (!fits && level_above) gas.x = outer - 8;
            gas.move_middle_to((tube_.top + (fits ? free_end : gas_end)) / 2);
            shown.push_back(&gas);
        }
        if (level_known) {
            const float from = std::min(level_.y, meniscus_.y);
            const float to = std::max(level_.y, meniscus_.y);
            bracket(level_above ? outer : inner, level_above ? from : from + 3, to, Ink::liquid_edge);
            level.move_middle_to((from + to) / 2);
            shown.push_back(&level);
        }
        place_side_labels(picture_, shown, measure_, taken_);
    }

    SideLabel left_label(std::string number, std::string unit_word, Ink number_ink, Ink unit_ink, float x) const {
        SideLabel label;
        label.first = std::move(number);
        label.second = std::move(unit_word);
        label.first_face = Face::semibold;
        label.first_ink = number_ink;
        label.second_ink = unit_ink;
        label.first_size = number_;
        label.second_size = text_;
        label.anchor = Anchor::end;
        label.x = x;
        return label;
    }

    void right_labels() {
        const float x = std::max(numbers_end_, wall() + 8) + 14;
        std::vector<SideLabel*> shown;
        SideLabel end;
        if (has_end_space_label()) {
            end.first = labels_.end_space_word;
            end.second = labels_.end_space_value;
            end.second_face = Face::semibold;
            end.first_ink = end.second_ink = Ink::copper;
            end.first_size = end.second_size = text_;
            end.x = x;
            end.move_middle_to(place_.first_mark);
            shown.push_back(&end);
        }
        SideLabel meniscus;
        if (place_.meniscus && !labels_.reading_number.empty()) {
            meniscus.first = labels_.reading_number;
            meniscus.second = labels_.meniscus_word;
            meniscus.first_face = Face::semibold;
            meniscus.first_ink = beyond_scale_ ? Ink::warning : Ink::text;
            meniscus.first_size = meniscus.second_size = text_;
            meniscus.x = x;
            meniscus.first_line = meniscus_.y;
            shown.push_back(&meniscus);
        }
        if (shown.size() == 2 && meniscus.middle() < end.middle()) std::swap(shown[0], shown[1]);
        place_side_labels(picture_, shown, measure_, taken_);
        if (meniscus.shown()) leader(meniscus);
    }

    /// From the meniscus to its label, beginning beside a number of the scale that stands in the way.
    void leader(const SideLabel& label) {
        float from = wall() + 4 * unit();
        for (const Rect& number : taken_) {
            const bool at_the_scale = number.x > wall() && number.x < label.x - 6;
            if (at_the_scale && meniscus_.y > number.y - 2 && meniscus_.y < number.bottom() + 2) {
                from = std::max(from, number.right() + 3);
            }
        }
        const float to = label.x - 4;
        if (to - from > 3) {
            const bool level = std::abs(label.first_line - meniscus_.y) < 1;
            picture_.line({from, meniscus_.y}, {to, level ? meniscus_.y : label.first_line}, Ink::soft);
        }
    }

    /// The liquid's surface outside the tube, with gaps where a text stands on it.
    void level_line() {
        const bool doubtful = !place_.level || level_.moved || mouth_is_out_;
        const Ink ink = place_.level && doubtful ? Ink::warning : Ink::liquid_edge;
        std::vector<std::pair<float, float>> gaps;
        if (level_.y < tube_.mouth && level_.y > tube_.top) {
            const float half = tube_.half_width_at(level_.y);
            gaps.push_back({tube_.centre - half, tube_.centre + half});
        }
        for (const Rect& box : taken_) {
            if (level_.y > box.y - 1 && level_.y < box.bottom() + 1) gaps.push_back({box.x - 4, box.right() + 4});
        }
        short_sort(gaps.begin(), gaps.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
        float from = left_;
        for (const auto& [begin, end] : gaps) {
            if (begin - from > shortest_piece) picture_.line({from, level_.y}, {begin, level_.y}, ink, 1.5f, doubtful);
            from = std::max(from, end);
        }
        if (right_ - from > shortest_piece) picture_.line({from, level_.y}, {right_, level_.y}, ink, 1.5f, doubtful);
    }

    const TubeView& view_;
    const TubeLabels& labels_;
    const TextMeasure& measure_;
    TubeGeometry place_;
    TubeShape tube_;
    Picture picture_;
    float text_ = 14;
    float number_ = 17;
    float left_ = 0;  ///< walls of the bucket
    float right_ = 0;
    float rim_ = 0;
    float numbers_end_ = 0;
    Kept meniscus_{0, false};
    Kept level_{0, false};
    bool scaled_ = false;
    bool beyond_scale_ = false;
    bool mouth_is_out_ = false;
    std::vector<Point> surface_;
    std::vector<Rect> taken_;  ///< by texts
};

}  // namespace

Picture draw_tube(const TubeView& view, const TubeLabels& labels, float width, float height,
                  const TextMeasure& measure) {
    return TubeDrawing(view, labels, width, height, measure).draw();
}

}  // namespace overwater
