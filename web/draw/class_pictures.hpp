#pragma once

#include <functional>
#include <string>
#include <vector>

#include "core/pool/class_set.hpp"
#include "web/draw/picture.hpp"

/// Pictures of a class: its molar volumes side by side, and its volumes against amounts.

namespace overwater {

struct ClassDot {
    std::string name;       ///< of the group
    double amount = 0;      ///< mmol
    double volume = 0;      ///< reduced to standard conditions, mL
    double ratio = 0;       ///< L/mol
    double half_width = 0;  ///< of its 95 % interval, L/mol; 0: not known
    bool left_out = false;
};

struct ClassView {
    std::vector<ClassDot> dots;
    const ClassSet* set = nullptr;
    double accepted = 0;  ///< L/mol; 0: none
    /// Words of a number on an axis, with so many decimals.
    std::function<std::string(double value, int decimals)> number;
    std::string amount_words, volume_words, residual_words, ratio_words;  ///< what the axes show, with units
    std::string accepted_words;
    std::string origin_words, free_words, left_out_words;  ///< legend
    std::string description;
};

/// A picture with the place of each dot, where the pointer finds it.
struct ClassPicture {
    Picture picture;
    std::vector<Point> places;
};

/// One row a group while there are few, rows as thin as need be when there are many: the molar volume as a dot with its
/// interval, the mean's 95 % interval as a band, the accepted value as an upright mark. Left-out groups are hollow.
ClassPicture draw_class_dots(const ClassView& view, float width, const TextMeasure& measure);

/// Volume against amount with the line through the origin and the free line, each with the 95 % band of where it may lie,
/// and below it what is left of each volume beside the line through the origin.
ClassPicture draw_class_lines(const ClassView& view, float width, float height, const TextMeasure& measure);

/// A ring around a dot that is pointed at.
void ring(Picture& picture, Point at);

/// The dot nearest to `at`, at most 14 px away; ~0 for none.
std::size_t dot_near(const std::vector<Point>& places, Point at);

}  // namespace overwater
