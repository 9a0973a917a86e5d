#include "web/draw/result_pictures.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

#include "web/draw/geometry.hpp"

namespace overwater {

namespace {

/// A part of the pressure bar thinner than this can be neither seen nor told apart by its pattern.
constexpr float thinnest_part = 6;
/// What the small parts take together where the bar is cut.
constexpr float cut_share = 0.2f;

struct Part {
    double pressure;
    Ink ink;
    bool hatched;
};

/// One row of the bar: the first part is the large one and takes what the others leave.
class BarRow {
public:
    BarRow(Picture& picture, float top, float bottom) : picture_(picture), top_(top), bottom_(bottom) {}

    void draw(const std::vector<Part>& parts, double px_per_unit, bool cut) const {
        float small = 0;
        for (std::size_t i = 1; i < parts.size(); ++i) small += width_of(parts[i], px_per_unit);
        float x = picture_.width - small;
        part(parts[0], 0, x);
        if (cut) draw_break(picture_.width * 0.4f);
        for (std::size_t i = 1; i < parts.size(); ++i) {
            const float w = width_of(parts[i], px_per_unit);
            part(parts[i], x, x + w);
            x += w;
        }
    }

private:
    static float width_of(const Part& p, double px_per_unit) { return static_cast<float>(p.pressure * px_per_unit); }

    void part(const Part& p, float from, float to) const {
        // A gap of one pixel keeps neighbours apart where colours are alike.
        const float begin = from > 0 ? from + 1 : from;
        if (!(to - begin > 0.5f)) return;
        picture_.filled_box({begin, top_}, {to, bottom_}, p.ink);
        if (p.hatched) {
            picture_.hatched({{begin, top_}, {to, top_}, {to, bottom_}, {begin, bottom_}}, Ink::card, 4, 1.2f);
        }
    }

    /// Two slanted strokes of paper across the bar say that it is cut short here.
    void draw_break(float x) const {
        const float lean = (bottom_ - top_) * 0.3f;
        for (const float shift : {-2.5f, 2.5f}) {
            picture_.line({x + shift - lean, bottom_ + 1}, {x + shift + lean, top_ - 1}, Ink::card, 2);
        }
    }

    Picture& picture_;
    float top_;
    float bottom_;
};

/// The smallest round number of percent that leaves a deviation within four fifths of it.
int round_percent(double deviation) {
    for (const int percent : {1, 2, 5, 10, 20, 50, 100, 200, 500, 1000}) {
        if (deviation * 100 <= 0.8 * percent) return percent;
    }
    return 10000;
}

}  // namespace

Picture draw_pressure_bar(double barometer, double column, double vapour, float width, float height) {
    Picture picture;
    picture.width = width;
    picture.height = height;
    const double dry = barometer - column - vapour;
    const bool possible = std::isfinite(dry) && barometer > 0 && dry > 0 && vapour >= 0 && width > 0;
    if (!possible) return picture;

    const bool added = column < 0;
    const double whole = added ? barometer - column : barometer;
    const double size_of_column = std::abs(column);
    const double smalls = size_of_column + vapour;
    double px_per_unit = static_cast<double>(width) / whole;
    double thinnest = smalls;
    if (size_of_column > 0) thinnest = std::min(thinnest, size_of_column);
    if (vapour > 0) thinnest = std::min(thinnest, vapour);
    const bool cut = smalls > 0 && smalls < 0.12 * whole && thinnest * px_per_unit < static_cast<double>(thinnest_part);
    if (cut) px_per_unit = static_cast<double>(width * cut_share) / smalls;

    const Part dry_part{dry, Ink::dry_bar, false};
    const Part column_part{size_of_column, Ink::column_bar, false};
    const Part vapour_part{vapour, Ink::vapour_bar, true};
    if (added) {
        const float middle = std::round(height / 2);
        BarRow(picture, 0, middle - 1).draw({{barometer, Ink::dry_bar, false}, column_part}, px_per_unit, cut);
        BarRow(picture, middle + 1, height).draw({dry_part, vapour_part}, px_per_unit, cut);
    } else {
        BarRow(picture, 0, height).draw({dry_part, column_part, vapour_part}, px_per_unit, cut);
    }
    return picture;
}

Picture draw_result_scale(double value, std::optional<ScaleBand> band, double accepted,
                          const ResultScaleLabels& labels, float width, float height, const TextMeasure& measure) {
    Picture picture;
    picture.width = width;
    picture.height = height;
    picture.description = labels.description;
    const float size = labels.text_size;
    const float line = std::round(height / 2 - size * 0.05f);
    picture.line({0, line}, {width, line}, Ink::field_edge);
    if (!std::isfinite(value) || !std::isfinite(accepted)) return picture;
    if (band && !(std::isfinite(band->low) && band->high > band->low)) return picture;
    const bool banded = band.has_value();
    const bool open = banded && !std::isfinite(band->high);
    // An interval without an upper end goes on to the end of the line.
    const double band_end = !banded ? value : open ? std::max(value, accepted) + (value - band->low) : band->high;
    const double half = banded ? (band_end - band->low) / 2 : 0;
    const double low = std::min({banded ? band->low : value, value, accepted});
    const double high = std::max({band_end, value, accepted});
    // With an interval: room to see how the parts lie, and never a magnification that makes a good result look far off.
    // Without one: a round number of percent on either side of the accepted value, so that a better result is nearer.
    const int percent = round_percent(std::abs(value - accepted) / std::abs(accepted));
    const double reach = banded ? std::max({0.75 * (high - low), 3.2 * half, 0.01 * std::abs(accepted), 1e-12})
                                : std::max(std::abs(accepted) * percent / 100, 1e-12);
    const double left = (banded ? (low + high) / 2 : accepted) - reach;
    const auto x_of = [&](double v) {
        return static_cast<float>((v - left) / (2 * reach) * static_cast<double>(width));
    };

    const float unit = size / 14;
    // What lies off the line is shown at its end, where its number says how far off it is.
    const float dot = 6 * unit;
    const float at = std::clamp(x_of(value), dot, std::max(dot, width - dot));
    const float mark = std::round(x_of(accepted));
    const float band_low = x_of(banded ? band->low : value);
    const float band_high = open ? width : x_of(band_end);
    if (banded) {
        picture.filled_box({band_low, line - 7 * unit}, {band_high, line + 7 * unit}, Ink::band, 2);
        picture.line({band_low, line}, {band_high, line}, Ink::vapour_bar, 1.5f);
    }
    constexpr float turn = 6.28318531f;
    picture.area(arc({at, line}, dot, dot, 0, turn, 32), Ink::copper);
    picture.line({mark, line - 14 * unit}, {mark, line + 12 * unit}, Ink::text, 2);

    const auto clear_of_edges = [&](float middle, const std::string& words, Face face) {
        const float text_half = measure.width(words, face, size) / 2;
        return std::clamp(middle, text_half, std::max(text_half, width - text_half));
    };
    const float above = line - 17 * unit;
    const float below = line + 16 * unit + 0.72f * size;
    if (!labels.accepted.empty()) {
        const float middle = clear_of_edges(mark, labels.accepted, Face::regular);
        picture.text({middle, above}, labels.accepted, Ink::text, Face::regular, size, Anchor::middle);
    }
    struct Below {
        float x;
        const std::string* words;
        Face face;
    };
    const std::string minus_end = "−" + std::to_string(percent) + "\u00a0%";
    const std::string plus_end = "+" + std::to_string(percent) + "\u00a0%";
    std::vector<Below> row;
    if (banded)
        row = {{band_low, &labels.low, Face::regular}, {band_high, &labels.high, Face::regular}};
    else
        row = {{0, &minus_end, Face::regular}, {at, &labels.value, Face::semibold}, {width, &plus_end, Face::regular}};
    std::vector<float> middles;
    std::vector<float> halves;
    for (const Below& text : row) {
        middles.push_back(text.x);
        halves.push_back(measure.width(*text.words, text.face, size) / 2 + 4 * unit);
    }
    push_apart(middles, halves, -4 * unit, width + 4 * unit);
    for (std::size_t i = 0; i < row.size(); ++i) {
        if (row[i].words->empty()) continue;
        picture.text({middles[i], below}, *row[i].words, row[i].face == Face::semibold ? Ink::text : Ink::soft, row[i].face, size,
                     Anchor::middle);
    }
    return picture;
}

}  // namespace overwater
