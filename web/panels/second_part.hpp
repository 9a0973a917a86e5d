#pragma once

#include "web/app/second_part.hpp"
#include "web/draw/picture.hpp"

namespace overwater {

class App;
class Ui;

/// The pages that a first visit does without. What can be reached through functions of this namespace alone goes into a
/// WebAssembly module of its own (tools/second_part.mjs finds it by this namespace's name). So each function declared here
/// costs a first visit nothing but the gate, draw_page_of_second_part(); nothing else may call one.
namespace second_part {

/// Codes of practice runs for a class, and their key.
void draw_codes_page(SecondPartThere, App& app, Ui& ui, float top);
/// Formulas and equations as typed: set, weighed, balanced, with amounts.
void draw_equations_page(SecondPartThere, App& app, Ui& ui, float top);
/// The vessel of the run at hand, which is not the tube over water.
Picture vessel_picture(SecondPartThere, const App& app, float width, float height, const TextMeasure& measure);

}  // namespace second_part

/// The gate: draws the page at hand, which is one of the second part; while that is not there, says so.
void draw_page_of_second_part(App& app, Ui& ui, float top);

}  // namespace overwater
