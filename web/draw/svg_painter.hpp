#pragma once

#include <string>
#include <string_view>

#include "web/draw/picture.hpp"
#include "web/draw/theme.hpp"
#include "web/ui/node.hpp"

namespace overwater {

/// The family names under which the page may have loaded the font, the first one first.
inline constexpr std::string_view svg_font_family = "Overwater Sans, 'Source Sans 3', sans-serif";

/// A picture as an `svg` element: attributes only, no style, one child for each mark. The description becomes its
/// `aria-label` (with `role` img) where there is one.
Element svg_of(const Picture& picture, const Theme& theme);

/// An element tree as markup. Everything from outside is escaped; names must be plain ASCII names.
std::string to_markup(const Element& element);

}  // namespace overwater
