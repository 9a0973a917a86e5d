#include "web/draw/side_label.hpp"

#include <cstddef>

#include "web/draw/geometry.hpp"

namespace overwater {

namespace {

constexpr float line_height = 1.3f;
constexpr float edge = 4;

float line_of(const std::string& words, float size) { return words.empty() ? 0 : size * line_height; }

class Column {
public:
    Column(Picture& picture, const TextMeasure& measure, std::vector<Rect>& taken)
        : picture_(picture), measure_(measure), taken_(taken) {}

    void set(const SideLabel& label) {
        float y = label.first_line;
        if (!label.first.empty()) {
            line(label, label.first, label.first_face, label.first_ink, label.first_size, y);
            y += (label.first_size + label.second_size) * line_height / 2;
        }
        if (!label.second.empty()) {
            line(label, label.second, label.second_face, label.second_ink, label.second_size, y);
        }
    }

private:
    void line(const SideLabel& label, const std::string& words, Face face, Ink ink, float size, float middle) {
        const bool ends = label.anchor == Anchor::end;
        const float room = ends ? label.x - edge : picture_.width - edge - label.x;
        float width = measure_.width(words, face, size);
        while (width > room && size > smallest_text) {
            size -= 1;
            width = measure_.width(words, face, size);
        }
        picture_.text({label.x, middle + digit_half_height * size}, words, ink, face, size, label.anchor);
        taken_.push_back({ends ? label.x - width : label.x, middle - size / 2, width, size});
    }

    Picture& picture_;
    const TextMeasure& measure_;
    std::vector<Rect>& taken_;
};

}  // namespace

float SideLabel::half_height() const { return (line_of(first, first_size) + line_of(second, second_size)) / 2; }

float SideLabel::middle() const {
    // Without a first line the second one stands alone, in its place.
    const float above = first.empty() ? line_of(second, second_size) : line_of(first, first_size);
    return first_line - above / 2 + half_height();
}

void place_side_labels(Picture& picture, const std::vector<SideLabel*>& labels, const TextMeasure& measure,
                       std::vector<Rect>& taken) {
    std::vector<float> middles;
    std::vector<float> halves;
    for (const SideLabel* label : labels) {
        middles.push_back(label->middle());
        halves.push_back(label->half_height() + 1);
    }
    push_apart(middles, halves, edge, picture.height - edge);
    Column column(picture, measure, taken);
    for (std::size_t i = 0; i < labels.size(); ++i) {
        labels[i]->move_middle_to(middles[i]);
        column.set(*labels[i]);
    }
}

}  // namespace overwater
