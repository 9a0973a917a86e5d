#pragma once

#include "web/app/second_part.hpp"
#include "web/draw/picture.hpp"

namespace overwater {

class App;
class Ui;

/// What a first visit does without. Everything that can be reached through functions of this namespace alone goes into a
/// WebAssembly module of its own; tools/second_part.mjs finds it by the name of this namespace.
namespace second_part {

/// Draws the page at hand, one of those that are listed in second_part_pages.cpp.
void draw_page(SecondPartThere, App& app, Ui& ui, float top);
/// The vessel of the run at hand, which is not the tube over water.
Picture vessel_picture(SecondPartThere, const App& app, float width, float height, const TextMeasure& measure);

}  // namespace second_part

/// The gate: the same; while the second part is not there, says so.
void draw_page_of_second_part(App& app, Ui& ui, float top);

}  // namespace overwater
