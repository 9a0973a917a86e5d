#pragma once

#include <string>
#include <vector>

#include "web/draw/doubt_pictures.hpp"

/// Rows of a name, a number and a bar, set out alike in every picture that has them.

namespace overwater {

/// A bar with its pattern, at least 1.5 px long; nothing where it is shorter than a tenth of a pixel.
void pattern_bar(Picture& picture, Point a, Point b, BarPattern pattern);

/// Words broken at spaces into lines no wider than `room`, and the size at which the longest word fits too.
struct BrokenWords {
    std::vector<std::string> lines;
    float size = 14;
};
BrokenWords break_words(const std::string& words, float room, float size, const TextMeasure& measure);

/// The places of rows: name, number and bar side by side, or the bar below where the width is too small for that.
class BarRows {
public:
    struct Row {
        std::string label;
        std::string words;
    };
    BarRows(const std::vector<Row>& rows, float text_size, float width, const TextMeasure& measure);

    bool beside() const { return beside_; }
    float bar_left() const { return bar_left_; }
    float bar_width() const { return width_ - bar_left_; }
    float bar_height() const { return bar_height_; }
    /// Writes a row whose upper edge is at `y` and returns the upper edge of its bar; `y` becomes the row's lower edge.
    float write(Picture& picture, const Row& row, float& y) const;
    /// Adds the legend below `y`, in as many lines as it needs; returns its lower edge, or `y` where it is empty.
    float write_legend(Picture& picture, const std::vector<PatternWords>& legend, float y) const;

private:
    float text_size_;
    float width_;
    const TextMeasure& measure_;
    bool beside_ = false;
    float label_width_ = 0;
    float words_right_ = 0;
    float bar_left_ = 0;
    float bar_height_ = 0;
    float line_ = 0;
    float gap_ = 0;
};

}  // namespace overwater
