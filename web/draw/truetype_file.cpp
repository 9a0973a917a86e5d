// Names and layouts are those of the OpenType specification (ISO/IEC 14496-22). Numbers are big-endian.
#include "web/draw/truetype_file.hpp"

#include <algorithm>
#include <cstdint>
#include <utility>

namespace overwater {

namespace {

enum Table { os2, cmap, glyf, head, hhea, hmtx, loca, maxp, name, post, all_tables };
// By name, as the directory wants them.
constexpr char names[] = "OS/2cmapglyfheadhheahmtxlocamaxpnamepost";

class Writer {
public:
    explicit Writer(const UnpackedFont& font) : font_(font) {
        std::size_t most = 1024;
        for (const auto& table : font.tables) most += table.size();
        for (const Outline& glyph : font.glyphs) most += 40 + 7 * glyph.points.size();
        bytes_ = std::make_unique<unsigned char[]>(most);
        places_ = std::make_unique<int[]>(font.glyphs.size() + 1);
        left_ = std::make_unique<int[]>(font.glyphs.size());
    }

    TruetypeFile write() {
        constexpr int power = 8;  // the largest power of two among the numbers up to that of the tables
        for (const int number : {1, 0, int{all_tables}, 16 * power, 3, 16 * (all_tables - power)}) put(number);
        std::size_t entry = size_;
        size_ += std::size_t{16} * all_tables;
        int kept = 0;
        std::size_t whole_sum = 0;
        for (int table = 0; table < all_tables; ++table) {
            const std::size_t begin = size_;
            if (table == head) whole_sum = begin + 8;
            if (table == cmap) {
                put_character_map();
            } else if (table == glyf) {
                put_outlines();
            } else if (table == hmtx) {
                for (std::size_t i = 0; i < font_.glyphs.size(); ++i) {
                    put(font_.glyphs[i].advance);
                    put(left_[i]);
                }
            } else if (table == loca) {
                for (std::size_t i = 0; i <= font_.glyphs.size(); ++i) put(places_[i]);
            } else {
                for (const unsigned char byte : font_.tables[kept]) bytes_[size_++] = byte;
                ++kept;
            }
            const std::size_t end = size_;
            size_ = (end + 3) / 4 * 4;
            const std::uint32_t sum = sum_of(begin, size_);
            const std::size_t next = size_;
            size_ = entry;
            for (int i = 0; i < 4; ++i) bytes_[size_++] = static_cast<unsigned char>(names[4 * table + i]);
            put_long(sum);
            put_long(static_cast<std::uint32_t>(begin));
            put_long(static_cast<std::uint32_t>(end - begin));
            entry = size_;
            size_ = next;
        }
        const std::size_t size = size_;
        size_ = whole_sum;
        put_long(0xB1B0AFBAU - sum_of(0, size));  // so that the sum over the file is this
        return {std::move(bytes_), size};
    }

private:
    void put(int number) {
        bytes_[size_++] = static_cast<unsigned char>(number >> 8);
        bytes_[size_++] = static_cast<unsigned char>(number);
    }

    void put_long(std::uint32_t number) {
        put(static_cast<int>(number >> 16));
        put(static_cast<int>(number));
    }

    std::uint32_t sum_of(std::size_t begin, std::size_t end) const {
        std::uint32_t sum = 0;
        for (std::size_t i = begin; i < end; ++i) sum += static_cast<std::uint32_t>(bytes_[i]) << (24 - 8 * (i % 4));
        return sum;
    }

    /// One subtable of format 4, for Windows and Unicode's first 65,536 characters. A run of the format for each character
    /// is more than is needed, and the last run has to be of 0xFFFF.
    void put_character_map() {
        const int runs = static_cast<int>(font_.glyphs.size());
        int power = 0;
        while (2 << power <= runs) ++power;
        const int bytes = 2 << power;
        for (const int number : {0, 1, 3, 1, 0, 12, 4, 16 + 8 * runs, 0, 2 * runs, bytes, power, 2 * runs - bytes})
            put(number);
        put_characters(1, 0);
        put(0);
        put_characters(1, 0);
        put_characters(-1, 1);
        size_ += 2 * font_.glyphs.size();
    }

    /// For each character this many times itself and its glyph.
    void put_characters(int characters, int glyphs) {
        for (std::size_t i = 1; i < font_.glyphs.size(); ++i) {
            put(characters * font_.glyphs[i].character + glyphs * static_cast<int>(i));
        }
        put(characters * 0xFFFF);
    }

    void put_outlines() {
        const std::size_t begin = size_;
        for (std::size_t i = 0; i < font_.glyphs.size(); ++i) {
            if (!font_.glyphs[i].points.empty()) left_[i] = put_outline(font_.glyphs[i].points);
            size_ = (size_ + 1) / 2 * 2;
            places_[i + 1] = static_cast<int>((size_ - begin) / 2);
        }
    }

    /// Returns the left end.
    int put_outline(std::span<const OutlinePoint> points) {
        const std::size_t box = size_;
        size_ += 10;
        int contours = 0;
        int number = 0;
        for (const OutlinePoint& p : points) {
            if (p.last) {
                put(number);
                ++contours;
            }
            ++number;
        }
        put(0);  // no instructions
        for (const OutlinePoint& p : points) bytes_[size_++] = p.on_curve ? 1 : 0;
        int low[2] = {};
        int high[2] = {};
        for (int axis = 0; axis < 2; ++axis) {
            int before = 0;
            low[axis] = 1 << 15;
            high[axis] = -low[axis];
            for (const OutlinePoint& p : points) {
                const int at = axis == 0 ? p.x : p.y;
                put(at - before);
                before = at;
                low[axis] = std::min(low[axis], at);
                high[axis] = std::max(high[axis], at);
            }
        }
        const std::size_t end = size_;
        size_ = box;
        for (const int value : {contours, low[0], low[1], high[0], high[1]}) put(value);
        size_ = end;
        return low[0];
    }

    const UnpackedFont& font_;
    std::unique_ptr<unsigned char[]> bytes_;
    std::size_t size_ = 0;
    std::unique_ptr<int[]> places_;  // of outlines, in units of two bytes
    std::unique_ptr<int[]> left_;    // ends of outlines
};

}  // namespace

TruetypeFile truetype_file(const UnpackedFont& font) { return Writer(font).write(); }

}  // namespace overwater
