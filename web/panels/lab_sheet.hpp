#pragma once

#include <string>

#include "web/draw/picture.hpp"

namespace overwater {

class App;
class HtmlPage;

enum class LabSheet {
    filled,  ///< what was read, and what it comes to as far as it may be shown
    blank    ///< the same readings to be filled in by hand
};

/// The record at hand as a document to be printed: cautions, readings with their doubt, the tube, the working of the run
/// at hand, result, verdict, gap, room for remarks. All that a person typed is escaped.
std::string lab_sheet_html(App& app, const TextMeasure& measure, LabSheet kind);

/// All cautions, under their heading.
void print_cautions(const App& app, HtmlPage& html);

}  // namespace overwater
