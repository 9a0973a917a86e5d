#pragma once

#include "web/app/second_part.hpp"

namespace overwater {

class App;
class Ui;

/// The pages that a first visit does without. What can be reached through functions of this namespace alone goes into a
/// WebAssembly module of its own (tools/second_part.mjs finds it by this namespace's name). So each function declared here
/// costs a first visit nothing but the gate, draw_page_of_second_part(); nothing else may call one.
namespace second_part {

/// Codes of practice runs for a class, and their key.
void draw_codes_page(SecondPartThere, App& app, Ui& ui, float top);

}  // namespace second_part

/// The gate: draws the page at hand, which is one of the second part; while that is not there, says so.
void draw_page_of_second_part(App& app, Ui& ui, float top);

}  // namespace overwater
