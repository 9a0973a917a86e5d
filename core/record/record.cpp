#include "core/record/record.hpp"

namespace overwater {

const Answer* answer_to(const std::vector<Answer>& answers, std::string_view step) {
    for (const Answer& answer : answers) {
        if (answer.step == step) return &answer;
    }
    return nullptr;
}

Output sought_output(const Record& record) {
    return sought_output(record.conventions.conversion != Conventions::Conversion::none,
                         target_by_key(entry_for(record, 0, Field::target).text));
}

const Entry& entry_for(const Record& record, std::size_t run, Field field) {
    if (run < record.runs.size()) {
        const Entry& own = record.runs[run].entries.at(field);
        if (!own.blank()) return own;
    }
    return record.shared.at(field);
}

Readings readings_of(const Record& record, std::size_t run) {
    return read_all([&](Field field) -> const Entry& { return entry_for(record, run, field); });
}

}  // namespace overwater
