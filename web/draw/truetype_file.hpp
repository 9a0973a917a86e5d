#pragma once

#include <cstddef>
#include <memory>

#include "web/draw/packed_font.hpp"

namespace overwater {

struct TruetypeFile {
    std::unique_ptr<unsigned char[]> bytes;
    std::size_t size = 0;
};

/// A TrueType file with the glyphs and tables of a font, for a browser to load.
TruetypeFile truetype_file(const UnpackedFont& font);

}  // namespace overwater
