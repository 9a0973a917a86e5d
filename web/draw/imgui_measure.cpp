#include "web/draw/imgui_measure.hpp"

namespace overwater {

float ImguiMeasure::width(std::string_view words, Face face, float size) const {
    if (words.empty() || !(size > 0)) return 0;
    return fonts_.of(face)->CalcTextSizeA(size, 1e9f, 0, words.data(), words.data() + words.size()).x;
}

}  // namespace overwater
