#pragma once

#include <string>

#include "core/bench/field.hpp"
#include "web/ui/ui.hpp"

namespace overwater {

class App;
struct Doubt;
struct Instrument;

/// What stands behind a reading: how far it may be off.
struct ReadingDoubt {
    std::string number;     ///< in the row's own unit: "± 0.05"; "class B" for the tube; empty where there is none
    std::string with_unit;  ///< "± 0.05 mL"
    std::string spoken;     ///< accessible name of the button that shows more
};
ReadingDoubt reading_doubt(const App& app, Field field);

/// The instrument assumed for a reading, and the one that counts: chosen or assumed. Nothing where there is none.
const Instrument* assumed_for(const App& app, Field field);
const Instrument* instrument_of(const App& app, Field field);
std::string instrument_words(const App& app, const Instrument& instrument);

/// The limit of the tube's scale, where the scale was read.
const Doubt* class_limit(const App& app);
/// "class B" of a burette or cylinder; empty for a tube without a class.
std::string class_words(const App& app);
/// The doubt whose size stands behind the reading, or nothing.
const Doubt* doubt_shown(const App& app, Field field);
/// False for water weighed, whose doubt is in millilitres beside a reading in grams.
bool in_unit_of_row(const App& app, Field field);
/// The half-width in the unit of the reading: "0.05", and with sign and unit "± 0.05 mL".
std::string number_in_row(const App& app, Field field, const Doubt& doubt);
std::string size_in_row(const App& app, Field field, const Doubt& doubt);

/// Where the parts of a reading's doubt can be put down, below its row within `area.w`; returns the height taken.
/// `row` and `field_height` are those of the readings.
float draw_doubt_panel(App& app, Ui& ui, Rect area, Field field, float row, float field_height);

}  // namespace overwater
