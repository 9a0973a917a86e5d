#pragma once

#include <optional>
#include <vector>

#include "core/explain/gap.hpp"
#include "core/lesson/dial.hpp"
#include "core/lesson/practice_code.hpp"
#include "core/record/record.hpp"
#include "core/result/assess.hpp"

/// A run of one's own for everybody who was not at the bench: the same code always gives the same readings, on every
/// machine and without a network. What the student gets are dials to be read.

namespace overwater {

/// Something that went wrong unseen.
struct Mishap {
    Cause cause = Cause::count;
    double size = 0;  ///< 0 or more, in the base of the cause's unit (gap.hpp)
    int sign = 1;     ///< +1: it makes the result too high
    int run = -1;     ///< index of the run; -1: all
};

struct PracticeRun {
    PracticeSettings settings;
    /// What the student gets: invented, with its code and conventions, tube, metal, acid and so on as entries; the
    /// readings to be taken are without text.
    Record record;
    std::vector<Dial> dials;           ///< in the order of the bench; those of all runs first, then run by run
    Record truth;                      ///< the same record as a perfect reader would fill it in
    std::vector<Assessment> expected;  ///< of the truth, run by run
    std::optional<Mishap> mishap;
};

/// The run that `settings` mean. Settings that have no code (`can_be_coded`) give a record without runs and dials.
PracticeRun practice_run(const PracticeSettings& settings);

/// What the practice code of a record says, or nothing: it has none.
std::optional<PracticeSettings> practice_settings_of(const Record& record);

/// The dial that `field` of run `run` is read from, or nothing: it is given.
const Dial* dial_for(const PracticeRun& practice, std::size_t run, Field field);

}  // namespace overwater
