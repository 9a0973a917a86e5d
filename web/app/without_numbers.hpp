#pragma once

#include "core/bench/entry.hpp"

namespace overwater {

/// What another reading with the same instrument keeps: how it is read, not what was read.
inline Entry without_numbers(Entry entry) {
    entry.text.clear();
    entry.repeats.clear();
    entry.kept.clear();
    return entry;
}

}  // namespace overwater
