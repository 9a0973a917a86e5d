#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/bench/entry.hpp"
#include "core/bench/readings.hpp"
#include "core/result/conventions.hpp"
#include "core/result/outcome.hpp"

/// A record in memory. What its JSON looks like, and what may be missing, is in record.md and record.schema.json.

namespace overwater {

/// A student's own answer to a step, as typed.
struct Answer {
    std::string step;  ///< name of the output, or "mean"
    std::string text;
    UnitId unit = UnitId::none;
    std::string kept;  ///< unknown members, as JSON text of an object
    friend bool operator==(const Answer&, const Answer&) = default;
};

/// When a reading's text was changed, and to what.
struct Change {
    std::string time;  ///< UTC, 2026-01-31T09:30:00Z
    int run = 0;       ///< index of the run; -1: shared
    std::string field;
    std::string text;
    std::string kept;  ///< unknown members, as JSON text of an object
    friend bool operator==(const Change&, const Change&) = default;
};

struct Run {
    std::string name;
    Entries entries;
    std::vector<Answer> answers;
    std::string left_out;  ///< reason why the run does not count; empty: it counts
    std::string notes;
    std::string kept;  ///< unknown members, as JSON text of an object

    bool counts() const { return left_out.empty(); }
    friend bool operator==(const Run&, const Run&) = default;
};

inline constexpr std::size_t most_runs = 6;
inline constexpr int record_version = 1;

struct Record {
    std::string id;
    std::string name;
    std::string created;  ///< UTC
    std::string saved;    ///< UTC
    bool invented = false;  ///< demo data: never mixed with a person's own
    std::string apparatus = "tube_over_water";
    std::string reaction = "metal_with_acid";  ///< the kind; which metal and which acid are entries
    std::string target = "molar_volume";
    Entries shared;  ///< room, tube, acid and metal, valid for every run that has none of its own
    std::vector<Run> runs{1};
    Conventions conventions;
    std::string conventions_kept;  ///< unknown members and choices of the conventions, as JSON text of an object
    std::string practice_code;
    std::vector<Answer> answers;  ///< those that belong to the whole record, such as the mean
    std::vector<Change> history;
    std::string notes;
    std::string kept;  ///< unknown members, as JSON text of an object
    friend bool operator==(const Record&, const Record&) = default;
};

/// The last line that is sought in the record's first run.
Output sought_output(const Record& record);

/// The answer to `step` among `answers`, or nothing.
const Answer* answer_to(const std::vector<Answer>& answers, std::string_view step);

/// The entry that counts for `run`: its own where something was put down, else the shared one.
const Entry& entry_for(const Record& record, std::size_t run, Field field);

/// All readings of `run`, understood.
Readings readings_of(const Record& record, std::size_t run);

}  // namespace overwater
