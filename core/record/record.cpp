#include "core/record/record.hpp"

namespace overwater {

const Answer* answer_to(const std::vector<Answer>& answers, std::string_view step) {
    for (const Answer& answer : answers) {
        if (answer.step == step) return &answer;
    }
    return nullptr;
}

const Entry& entry_for(const Record& record, std::size_t run, Field field) {
    if (run < record.runs.size()) {
        const Entry& own = record.runs[run].entries.at(field);
        if (!own.blank()) return own;
    }
    return record.shared.at(field);
}

}  // namespace overwater
