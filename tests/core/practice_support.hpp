#pragma once

#include <cmath>
#include <string>

#include "core/lesson/practice.hpp"
#include "core/record/record.hpp"

/// Practice runs as one line of text, for comparison with an independent implementation.

namespace overwater::test {

inline std::string sheet_line(const Entries& entries) {
    std::string line;
    for (const auto& [field, entry] : entries.all()) {
        if (!line.empty()) line += ',';
        line += std::string(name_of(field)) + ' ' + entry.text;
        if (entry.unit != UnitId::none) line += ' ' + std::string(info(entry.unit).key);
    }
    return line;
}

/// What a perfect reader puts down: the shared sheet, then each run's.
inline std::string truth_line(const PracticeRun& practice) {
    std::string line = sheet_line(practice.truth.shared);
    for (const Run& run : practice.truth.runs) line += ';' + sheet_line(run.entries);
    return line;
}

/// Each dial: field, run, kind, unit, ends (tenths) and division (thousandths); and what went wrong, its size in
/// 10^-9 of the base unit.
inline std::string dial_line(const PracticeRun& practice) {
    std::string line;
    for (const Dial& dial : practice.dials) {
        line += std::string(name_of(dial.field)) + ' ' + std::to_string(dial.run) + ' ' +
                std::string(name_of(dial.kind)) + ' ' + std::string(info(dial.unit).key);
        if (!shows_digits(dial.kind)) {
            line += ' ' + std::to_string(static_cast<int>(dial.low * 10)) + ' ' +
                    std::to_string(static_cast<int>(dial.high * 10)) + ' ' +
                    std::to_string(static_cast<int>(dial.division * 1000 + 0.5));
        }
        line += ',';
    }
    if (practice.mishap) {
        line += std::string(name_of(practice.mishap->cause)) + ' ' + std::to_string(practice.mishap->run) + ' ' +
                std::to_string(practice.mishap->sign) + ' ' + std::to_string(std::llround(practice.mishap->size * 1e9));
    }
    return line;
}

}  // namespace overwater::test
