#pragma once

#include <optional>
#include <string>

#include "core/lesson/practice.hpp"
#include "web/draw/dial_picture.hpp"

namespace overwater {

/// What the practice pages hold beside the record.
struct PracticeDesk {
    // The student's side
    std::string code;           ///< as typed
    Message problem{""};        ///< why it starts nothing; without a key: nothing to say
    std::string word;           ///< the teacher's, as typed
    bool word_refused = false;
    DialZoom zoom = DialZoom::around;
    Field looked_at = Field::count;  ///< the reading whose instrument was looked at last
    bool to_be_seen = false;         ///< another one was gone to

    // The teacher's side
    PracticeSettings made;  ///< of the class
    std::string seed = "0";
    std::string students = "24";
};

/// Whether results of a run may be shown: as the conventions say, or as the code of a practice run says, whatever the
/// conventions were changed to.
bool may_be_shown(const Record& record, std::size_t run);

/// More would not fit on a board or a sheet.
inline constexpr int most_practice_students = 120;

/// The number in `text`, from `low` to `high`; nothing where it is none.
std::optional<int> whole_number(std::string_view text, int low, int high);

}  // namespace overwater
