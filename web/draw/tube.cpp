#include "web/draw/tube.hpp"

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

#include "web/draw/geometry.hpp"
#include "web/draw/tube_shape.hpp"

namespace overwater {

namespace {

constexpr double assumed_capacity_mL = 50;
/// Gas room drawn where the end space is not measured: the middle of what method and budget allow for it, 0 to 4 mL.
constexpr double assumed_end_space_mL = 2;
/// How deep the mouth hangs in the liquid while the level is not known.
constexpr double assumed_depth_mm = 40;
constexpr float line_height = 1.3f;
constexpr float hairline = 1.2f;
constexpr float shortest_piece = 9;  ///< of the liquid's surface between texts; shorter ones look like dashes
constexpr float digit_half_height = 0.325f;  ///< in em

bool positive(double v) { return std::isfinite(v) && v > 0; }
bool has_scale(const TubeView& view) { return positive(view.capacity_mL); }
double capacity(const TubeView& view) { return has_scale(view) ? view.capacity_mL : assumed_capacity_mL; }
double length_mm(const TubeView& view) {
    if (positive(view.length_of_scale_mm)) return view.length_of_scale_mm;
    return capacity(view) * (capacity(view) > 60 ? 6 : 11);
}
/// The uncounted room at the closed end; one of absurd size is cut, so that the scale keeps its place.
double end_space(const TubeView& view) {
    if (view.direction_known && !view.closed_end_has_largest) return 0;
    const double known = view.end_space_known && std::isfinite(view.end_space_mL) ? view.end_space_mL : -1;
    return std::clamp(known >= 0 ? known : assumed_end_space_mL, 0.0, capacity(view) / 2);
}

/// Where something is when it has to stay inside the picture.
struct Kept {
    float y;
    bool moved;
};
Kept keep(float y, float low, float high) {
    const float inside = std::clamp(y, low, high);
    return {inside, inside != y};
}

/// Two lines of text beside the tube, the first one's middle at `first_line`.
struct Label {
    std::string first, second;
    Face first_face = Face::regular;
    Face second_face = Face::regular;
    Ink first_ink = Ink::soft;
    Ink second_ink = Ink::soft;
    float first_size = 14;
    float second_size = 14;
    float x = 0;
    Anchor anchor = Anchor::start;
    float first_line = 0;
    bool shown() const { return !first.empty() || !second.empty(); }
    float first_height() const { return first.empty() ? 0 : first_size * line_height; }
    float half_height() const { return (first_height() + (second.empty() ? 0 : second_size * line_height)) / 2; }
    float middle() const { return first_line - first_height() / 2 + half_height(); }
    void move_middle_to(float y) { first_line += y - middle(); }
};

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
        scaled_ = has_scale(view) && view.direction_known;
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
        picture_.polyline({{left_, rim_}, {left_, place_.bucket_bottom}, {right_, place_.bucket_bottom}, {right_, rim_}},
                          Ink::text, pen);
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
        picture_.line({left_wall() - 12 * unit(), meniscus_.y}, {wall() + 12 * unit(), meniscus_.y}, Ink::warning, 2, true);
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

        Label gas = left_label(labels_.gas_volume_number, labels_.gas_volume_unit, Ink::text, Ink::soft, inner - 8);
        Label level = left_label(labels_.level_number, labels_.level_unit, Ink::liquid_edge, Ink::liquid_edge,
                                 (level_above ? outer : inner) - 8);
        std::vector<Label*> shown;
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
        set_labels(shown);
    }

    Label left_label(std::string number, std::string unit_word, Ink number_ink, Ink unit_ink, float x) const {
        Label label;
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
        std::vector<Label*> shown;
        Label end;
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
        Label meniscus;
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
        set_labels(shown);
        if (meniscus.shown()) leader(meniscus);
    }

    /// From the meniscus to its label, beginning beside a number of the scale that stands in the way.
    void leader(const Label& label) {
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

    void set_labels(const std::vector<Label*>& shown) {
        std::vector<float> middles;
        std::vector<float> halves;
        for (const Label* label : shown) {
            middles.push_back(label->middle());
            halves.push_back(label->half_height() + 1);
        }
        push_apart(middles, halves, 4, picture_.height - 4);
        for (std::size_t i = 0; i < shown.size(); ++i) {
            shown[i]->move_middle_to(middles[i]);
            set_label(*shown[i]);
        }
    }

    void set_label(const Label& label) {
        float y = label.first_line;
        if (!label.first.empty()) {
            set_line(label, label.first, label.first_face, label.first_ink, label.first_size, y);
            y += label.first_size * line_height / 2 + label.second_size * line_height / 2;
        }
        if (!label.second.empty()) {
            set_line(label, label.second, label.second_face, label.second_ink, label.second_size, y);
        }
    }

    void set_line(const Label& label, const std::string& words, Face face, Ink ink, float size, float middle) {
        const float room = label.anchor == Anchor::end ? label.x - 3 : picture_.width - 3 - label.x;
        float width = measure_.width(words, face, size);
        while (width > room && size > 9) {
            size -= 1;
            width = measure_.width(words, face, size);
        }
        picture_.text({label.x, middle + digit_half_height * size}, words, ink, face, size, label.anchor);
        taken_.push_back({label.anchor == Anchor::end ? label.x - width : label.x, middle - size / 2, width, size});
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
        std::sort(gaps.begin(), gaps.end());
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
    float left_ = 0;   ///< walls of the bucket
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

TubeGeometry tube_geometry(const TubeView& view, float height) {
    TubeGeometry place;
    const float top_margin = std::clamp(height * 0.05f, 12.0f, 40.0f);
    const float bottom_margin = std::clamp(height * 0.035f, 8.0f, 24.0f);
    place.top = std::round(top_margin);
    place.bucket_bottom = std::round(height - bottom_margin);
    place.mouth = std::round(place.bucket_bottom - height * 0.075f);

    const double mm_per_mL = length_mm(view) / capacity(view);
    const double end_mm = end_space(view) * mm_per_mL;
    const bool mouth_given = std::isfinite(view.mouth_beyond_scale_mm) && view.mouth_beyond_scale_mm >= 0;
    const double mouth_mm = mouth_given ? std::min(view.mouth_beyond_scale_mm, length_mm(view)) : 50;
    const double px_per_mm =
        static_cast<double>(std::max(1.0f, place.mouth - place.top)) / (end_mm + length_mm(view) + mouth_mm);
    place.px_per_mm = static_cast<float>(px_per_mm);
    place.px_per_mL = static_cast<float>(px_per_mm * mm_per_mL);
    place.first_mark = place.top + static_cast<float>(end_mm * px_per_mm);
    place.last_mark = place.mouth - static_cast<float>(mouth_mm * px_per_mm);

    const bool reading_known = view.reading_mL && std::isfinite(*view.reading_mL);
    if (!reading_known || !has_scale(view) || !view.direction_known) return place;
    // A slip of the point may put it very far away; beyond this it makes no difference to the drawing.
    const double way = std::clamp(*view.reading_mL * mm_per_mL * px_per_mm, -1e5, 1e5);
    const double meniscus = view.closed_end_has_largest ? static_cast<double>(place.last_mark) - way
                                                        : static_cast<double>(place.first_mark) + way;
    place.meniscus = static_cast<float>(meniscus);
    if (view.level_difference_mm && std::isfinite(*view.level_difference_mm)) {
        place.level = static_cast<float>(meniscus + std::clamp(*view.level_difference_mm * px_per_mm, -1e5, 1e5));
    }
    return place;
}

Picture draw_tube(const TubeView& view, const TubeLabels& labels, float width, float height,
                  const TextMeasure& measure) {
    return TubeDrawing(view, labels, width, height, measure).draw();
}

}  // namespace overwater
