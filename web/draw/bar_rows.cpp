#include "web/draw/bar_rows.hpp"

#include <algorithm>
#include <cmath>
#include <string_view>

#include "web/draw/side_label.hpp"

namespace overwater {

namespace {

constexpr float line_height = 1.35f;

}  // namespace

void pattern_bar(Picture& picture, Point a, Point b, BarPattern pattern) {
    if (!(b.x - a.x > 0.1f)) return;
    b.x = std::max(b.x, a.x + 1.5f);
    // A frame's line runs inside, so that a bar ends where its number says.
    const auto frame = [&](Ink ink, bool dashed) {
        const float half = std::min(0.5f, (b.x - a.x) / 4);
        picture.framed_box({a.x + half, a.y + half}, {b.x - half, b.y - half}, ink, 2 * half, 0, dashed);
    };
    switch (pattern) {
    case BarPattern::solid: picture.filled_box(a, b, Ink::column_bar); break;
    case BarPattern::hatched:
        picture.filled_box(a, b, Ink::band);
        picture.hatched({a, {b.x, a.y}, b, {a.x, b.y}}, Ink::soft, 4, 1.2f);
        frame(Ink::soft, false);
        break;
    case BarPattern::striped: {
        picture.filled_box(a, b, Ink::dry_bar);
        // As many stripes as can be told apart.
        const int spaces = b.y - a.y < 9 ? 2 : 3;
        for (int k = 1; k < spaces; ++k) {
            const float y = std::floor(a.y + (b.y - a.y) * static_cast<float>(k) / static_cast<float>(spaces)) + 0.5f;
            picture.line({a.x, y}, {b.x, y}, Ink::soft);
        }
        frame(Ink::soft, false);
        break;
    }
    case BarPattern::hollow:
        picture.filled_box(a, b, Ink::card);
        frame(Ink::soft, true);
        break;
    }
}

BrokenWords break_words(const std::string& words, float room, float size, const TextMeasure& measure) {
    BrokenWords out;
    out.size = size;
    const auto wide = [&](std::string_view text) { return measure.width(text, Face::regular, out.size); };
    std::string line;
    std::size_t at = 0;
    const auto next_word = [&] {
        const std::size_t space = std::min(words.find(' ', at), words.size());
        const std::string word = words.substr(at, space - at);
        at = space + 1;
        return word;
    };
    while (at < words.size()) {
        const std::string word = next_word();
        while (wide(word) > room && out.size > smallest_text) out.size -= 1;
    }
    for (at = 0; at < words.size();) {
        const std::string word = next_word();
        const std::string longer = line.empty() ? word : line + ' ' + word;
        if (!line.empty() && wide(longer) > room) {
            out.lines.push_back(line);
            line = word;
        } else {
            line = longer;
        }
    }
    if (!line.empty()) out.lines.push_back(line);
    return out;
}

BarRows::BarRows(const std::vector<Row>& rows, float text_size, float width, const TextMeasure& measure)
    : text_size_(text_size), width_(width), measure_(measure) {
    const float unit = text_size / 14;
    float label_width = 0;
    float words_width = 0;
    for (const Row& row : rows) {
        label_width = std::max(label_width, measure.width(row.label, Face::regular, text_size));
        words_width = std::max(words_width, measure.width(row.words, Face::semibold, text_size));
    }
    line_ = std::round(text_size * line_height);
    gap_ = std::round(8 * unit);
    const float between = 16 * unit;
    const float taken = label_width + (words_width > 0 ? between + words_width : 0) + between;
    beside_ = width - taken >= std::max(160 * unit, 0.3f * width);
    if (beside_) {
        label_width_ = std::ceil(label_width);
        words_right_ = std::round(taken - between);
        bar_left_ = std::round(taken);
        bar_height_ = line_ - 3;
    } else {
        label_width_ = std::max(1.0f, width - (words_width > 0 ? words_width + between : 0));
        words_right_ = width;
        bar_height_ = std::round(text_size);
    }
}

float BarRows::write(Picture& picture, const Row& row, float& y) const {
    const float baseline = y + line_ / 2 + digit_half_height * text_size_;
    const BrokenWords label = break_words(row.label, label_width_, text_size_, measure_);
    float line_y = baseline;
    for (const std::string& line : label.lines) {
        picture.text({0, line_y}, line, Ink::text, Face::regular, label.size);
        line_y += line_;
    }
    const float lines = std::max(1.0f, static_cast<float>(label.lines.size()));
    if (!row.words.empty()) {
        // Beside the last line of the name, next to the bar it belongs to.
        float size = text_size_;
        while (measure_.width(row.words, Face::semibold, size) > words_right_ && size > smallest_text) size -= 1;
        picture.text({words_right_, baseline + (lines - 1) * line_}, row.words, Ink::text, Face::semibold, size,
                     Anchor::end);
    }
    const float below = y + lines * line_;
    const float top = beside_ ? y + std::floor((line_ - bar_height_) / 2) : below + 2;
    y = (beside_ ? below : top + bar_height_ + gap_ / 2) + gap_;
    return top;
}

float BarRows::write_legend(Picture& picture, const std::vector<PatternWords>& legend, float y) const {
    if (legend.empty()) return y;
    const float swatch = std::round(1.6f * text_size_);
    const float inner = std::round(0.5f * text_size_);
    const float size = text_size_ - 1;
    float x = bar_left_;
    float whole = 0;
    for (const PatternWords& entry : legend) {
        whole += swatch + inner + measure_.width(entry.words, Face::regular, size) + 1.5f * text_size_;
    }
    if (whole > width_ - x + 1.5f * text_size_) x = 0;
    const float left = x;
    y += gap_ / 2;
    for (const PatternWords& entry : legend) {
        const BrokenWords words = break_words(entry.words, width_ - left - swatch - inner, size, measure_);
        float wide = 0;
        for (const std::string& line : words.lines) wide = std::max(wide, measure_.width(line, Face::regular, words.size));
        if (x > left && x + swatch + inner + wide > width_) {
            x = left;
            y += line_;
        }
        const float middle = y + line_ / 2;
        const float half = std::round(0.4f * text_size_);
        pattern_bar(picture, {x, std::round(middle) - half}, {x + swatch, std::round(middle) + half}, entry.pattern);
        float baseline = middle + digit_half_height * size;
        for (std::size_t i = 0; i < words.lines.size(); ++i) {
            if (i > 0) baseline += line_, y += line_;
            picture.text({x + swatch + inner, baseline}, words.lines[i], Ink::soft, Face::regular, words.size);
        }
        x += swatch + inner + wide + 1.5f * text_size_;
    }
    return y + line_;
}

}  // namespace overwater
