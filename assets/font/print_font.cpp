// Writes the fonts as web/draw/truetype_file.cpp makes them, for compare_font.py to read with fontTools.
// usage: print_font WEIGHT, 0 regular or 1 semibold; the file goes to the standard output.

#include <cstdio>
#include <cstdlib>

#include "web/draw/truetype_file.hpp"

int main(int count, char** words) {
    if (count != 2) return 2;
    const auto file = overwater::truetype_file(overwater::unpacked_font(std::atoi(words[1]) != 0 ? 1 : 0));
    return std::fwrite(file.bytes.get(), 1, file.size, stdout) == file.size ? 0 : 1;
}
