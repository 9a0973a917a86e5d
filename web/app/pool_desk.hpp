#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/pool/class_set.hpp"
#include "core/pool/pattern.hpp"
#include "core/record/record.hpp"

namespace overwater {

/// What one run of a group comes to.
struct PoolRun {
    std::optional<ClassPoint> point;
    double half_width = 0;       ///< of the molar volume's 95 % interval, m³/mol; 0: not known
    double relative_mass_u = 0;  ///< u(m)/m
    std::string why_not;         ///< no point: what is missing or cannot be, in words
};

struct PoolGroup {
    std::string name;  ///< a number, never a person's name
    Record record;
    bool pasted = false;  ///< came from the text, and makes room when that is read again
    bool left_out = false;
    std::string reason;  ///< why
    std::vector<PoolRun> runs;
};

/// What the page of the class set holds; nothing of it is in the record that is open.
struct PoolDesk {
    std::string text;                   ///< typed or pasted
    std::vector<std::string> problems;  ///< what was not taken, in words
    std::string from_open;              ///< readings that the open record gave, in words
    std::vector<PoolGroup> groups;
    std::vector<Field> fields;  ///< readings in which groups differ
    ClassSet set;
    std::vector<Pattern> patterns;
    bool states_differ = false;          ///< not all runs are compared with the same accepted value
    bool not_kept = false;               ///< the last change is not in storage
    std::vector<std::vector<PoolGroup>> done;    ///< the groups before each step, the last one last
    std::vector<std::vector<PoolGroup>> undone;  ///< the groups before each step back
    std::string open_step;                       ///< the field that is being typed in: its letters are one step
    bool removed = false;                        ///< the last step took groups away
    std::size_t open = ~std::size_t{0};  ///< the group whose readings are shown
};

}  // namespace overwater
