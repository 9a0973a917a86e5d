// Reads what assets/font/packing.py has written: both have to agree on the order of the numbers and on what each may
// depend on. The letters of what is known are explained there.
#include "web/draw/packed_font.hpp"

#include <algorithm>
#include <cstdlib>
#include <memory>

#include "generated/font_data.hpp"
#include "web/draw/number_stream.hpp"

namespace overwater {

namespace {

// The kinds of packing.py.
enum Kind {
    length,
    character,
    weights,
    shape,
    points,
    on_curve,
    y_step,
    x_step,
    y_shift,
    x_shift,
    part,
    part_y,
    part_x,
    part_y_shift,
    part_x_shift,
    advance,
    advance_shift
};

constexpr int grid = 2;
constexpr int both = 3;
constexpr int most_parts = 8;
constexpr int coordinates = 2048;  // on the grid, half of them negative

/// A point of both weights. at[axis][weight]: axis 0 is x, weight 0 is that which leads, the regular one if there.
struct Point {
    int at[2][2];
    bool on;
    bool last;
};

struct Part {
    int target;     // the entry
    int offset[4];  // y and x, then how far the other weight's are from these
};

struct Entry {
    int character;
    int weights;
    int advance[2];
    const Point* begin;
    const Point* end;
    const Part* parts;
    const Part* parts_end;

    /// Where Point::at and advance have a weight.
    int side(int weight) const { return weights == both ? weight : 0; }
};

int sign(int v) { return (v > 0 ? 1 : 0) - (v < 0 ? 1 : 0); }

int turn(int x, int y) { return sign(x) * 3 + sign(y); }

template <typename T>
std::unique_ptr<T[]> several(int count) {
    return std::make_unique<T[]>(static_cast<std::size_t>(count));
}

/// What stays of the unpacking.
struct Family {
    UnpackedFont fonts[2];
    std::unique_ptr<Outline[]> glyphs;
    std::unique_ptr<OutlinePoint[]> points;
    Family();
};

class Unpacker : NumberStream {
public:
    explicit Unpacker(Family& family) : NumberStream(overwater_font_packed, overwater_font_contexts), family_(family) {}

    void tables() {
        const unsigned char* begin = overwater_font_tables;
        for (UnpackedFont& font : family_.fonts) {
            for (std::span<const unsigned char>& table : font.tables) {
                const unsigned char* end = begin + number(length);
                table = {begin, end};
                begin = end;
            }
        }
    }

    void entries() {
        count_ = number(length);
        entries_ = several<Entry>(count_);
        points_ = several<Point>(number(length));
        parts_ = several<Part>(number(length));
        next_point_ = points_.get();
        next_part_ = parts_.get();
        int step = 0;
        int now = 0;
        int which = both;
        for (int i = 0; i < count_; ++i) {
            Entry& entry = entries_[static_cast<std::size_t>(i)];
            known('F') = step;
            step = number(character);
            now += step + 1;
            known('q') = which;
            known('r') = now == 0 ? 1 : 0;
            which = number(weights);
            known('Q') = which;
            known('w') = now / 16;
            entry.character = now;
            entry.weights = which;
            entry.begin = next_point_;
            entry.parts = next_part_;
            const int count = number(shape);
            for (int k = 0; k < -count; ++k) read_part(entry, k);
            for (int k = 0; k < count; ++k) read_contour(entry, k, count);
            entry.end = next_point_;
            entry.parts_end = next_part_;
            read_advance(entry, count < 0);
        }
    }

    void finish() {
        family_.glyphs = several<Outline>(number(length));
        family_.points = several<OutlinePoint>(number(length));
        Outline* glyph = family_.glyphs.get();
        next_ = family_.points.get();
        for (int weight = 0; weight < 2; ++weight) {
            const Outline* first = glyph;
            for (int i = 0; i < count_; ++i) {
                const Entry& entry = entries_[static_cast<std::size_t>(i)];
                // What is only part of others is no glyph of its own.
                if ((entry.weights >> weight & 1) == 0 || (entry.character == 0 && glyph != first)) continue;
                const OutlinePoint* begin = next_;
                append(entry, weight, 0, 0);
                *glyph++ = {entry.character, entry.advance[entry.side(weight)], {begin, next_}};
            }
            family_.fonts[weight].glyphs = {first, glyph};
        }
    }

private:
    void append(const Entry& entry, int weight, int x, int y) {
        const int w = entry.side(weight);
        for (const Point* p = entry.begin; p != entry.end; ++p) {
            *next_++ = {static_cast<std::int16_t>(grid * (x + p->at[0][w])),
                        static_cast<std::int16_t>(grid * (y + p->at[1][w])), p->on, p->last};
        }
        for (const Part* p = entry.parts; p != entry.parts_end; ++p) {
            append(entries_[static_cast<std::size_t>(p->target)], weight, x + p->offset[1] + w * p->offset[3],
                   y + p->offset[0] + w * p->offset[2]);
        }
    }

    /// Most advances leave as much room on the right as on the left, or are those of the first part.
    void read_advance(Entry& entry, bool composed) {
        int expected[2] = {};
        for (int w = 0; w < 2; ++w) {
            int left = 1 << 16;  // without points the sum of both is 0
            int right = -left;
            for (const Point* p = entry.begin; p != entry.end; ++p) {
                left = std::min(left, p->at[0][w]);
                right = std::max(right, p->at[0][w]);
            }
            expected[w] = grid * (left + right);
            if (composed) {
                const Entry& base = entries_[static_cast<std::size_t>(entry.parts->target)];
                expected[w] = base.advance[base.side(entry.weights == both ? w : entry.weights - 1)];
            }
        }
        known('D') = composed ? 1 : 0;
        const int rest = known('E') = number(advance, advance_before_ - expected[0]);
        entry.advance[0] = advance_before_ = expected[0] + rest;
        if (entry.weights == both) { entry.advance[1] = expected[1] + rest + number(advance_shift); }
    }

    void read_part(const Entry& entry, int k) {
        Part& p = *next_part_++;
        int& before = parts_before_[k % most_parts];
        known('a') = k;
        known('g') = before;
        before += number(part);
        known('e') = p.target = before;
        known('b') = k > 0 ? entry.parts->target : -1;
        for (int i = 0; i < (entry.weights == both ? 4 : 2); ++i) {
            p.offset[i] = number(part_y + i, offset_before_[i]);
            if (k > 0) offset_before_[i] = p.offset[i];
        }
    }

    void read_contour(const Entry& entry, int contour, int contours) {
        known('G') = contour;
        known('H') = contours;
        const int count = number(points);
        Point* const first = next_point_;
        int x = first != entry.begin ? first[-1].at[0][0] : 0;
        int y = first != entry.begin ? first[-1].at[1][0] : 0;
        known('o') = 7;
        known('t') = known('u') = known('v') = 0;
        for (int k = 0; k < count; ++k) {
            Point& p = *next_point_++;
            known('l') = std::min(count - k, 3);
            known('p') = known('o') & 3;
            const int on = number(on_curve);
            known('o') = (known('o') << 1 | on) & 7;
            known('f') = k > 0 ? known('o') : 8;
            // Many a curve comes back to where it began, or to where it was four points ago.
            const int dy = number(y_step, k > 0 ? first->at[1][0] - y : 0);
            known('d') = dy;
            known('s') = sign(dy);
            const int dx = number(x_step, k > 0 ? first[std::max(k - 4, 0)].at[0][0] - x : 0);
            known('u') = known('t');
            known('t') = turn(dx, dy);
            known('v') = dy;
            p.at[0][0] = x += dx;
            p.at[1][0] = y += dy;
            p.on = on != 0;
            p.last = k == count - 1;
        }
        if (entry.weights == both) read_shifts(entry, first);
    }

    /// How far the semibold's points are from the regular's: where a coordinate is the same, the shift often is.
    void read_shifts(const Entry& entry, Point* first) {
        int shift[2] = {};
        for (Point* p = first; p != next_point_; ++p) {
            const Point& before = p != first ? p[-1] : next_point_[-1];
            const Point& after = p + 1 != next_point_ ? p[1] : *first;
            known('i') = turn(p->at[0][0] - before.at[0][0], p->at[1][0] - before.at[1][0]);
            known('j') = turn(after.at[0][0] - p->at[0][0], after.at[1][0] - p->at[1][0]);
            for (int axis = 1; axis >= 0; --axis) {
                const int at = p->at[axis][0];
                Seen& seen = seen_[axis][(at + coordinates / 2) & (coordinates - 1)];
                const bool usable = axis == 1 ? seen.by != nullptr : seen.by == &entry;
                const int likely = usable ? seen.shift : shift[axis];
                known('n') = likely;
                shift[axis] = likely + number(axis == 1 ? y_shift : x_shift, shift[axis] - likely);
                seen = {&entry, shift[axis]};
                p->at[axis][1] = at + shift[axis];
            }
        }
    }

    /// The last shift of a point with some coordinate.
    struct Seen {
        const Entry* by = nullptr;
        int shift = 0;
    };

    Family& family_;
    int count_ = 0;
    std::unique_ptr<Entry[]> entries_;
    std::unique_ptr<Point[]> points_;
    std::unique_ptr<Part[]> parts_;
    Point* next_point_ = nullptr;
    Part* next_part_ = nullptr;
    OutlinePoint* next_ = nullptr;
    int parts_before_[most_parts] = {};
    int offset_before_[4] = {};
    int advance_before_ = 0;
    Seen seen_[2][coordinates];
};

Family::Family() {
    const auto unpacker = std::make_unique<Unpacker>(*this);
    unpacker->tables();
    unpacker->entries();
    unpacker->finish();
}

}  // namespace

const Outline* UnpackedFont::find(unsigned character) const {
    for (const Outline& glyph : glyphs.subspan(1)) {
        if (static_cast<unsigned>(glyph.character) == character) return &glyph;
    }
    return nullptr;
}

const UnpackedFont& unpacked_font(int weight) {
    static const Family family;
    return family.fonts[weight];
}

}  // namespace overwater
