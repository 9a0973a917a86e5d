// Explains answers for compare_slips.py: one JSON object a line on standard input, {"record", "run", "answers":
// [{"step", "text", "unit"}]}, and one a line back, {"kind", "explanations": [{"slips", "rank", "value", "exact"}]}.

#include <cstdio>
#include <string>
#include <vector>

#include <nlohmann/json.hpp>

#include "core/lesson/stated.hpp"
#include "core/record/json.hpp"

using namespace overwater;
using nlohmann::json;

namespace {

bool read_line(std::string& line) {
    line.clear();
    for (int c = std::getchar(); c != EOF && c != '\n'; c = std::getchar()) line += static_cast<char>(c);
    return !line.empty();
}

Output output_by(const std::string& name) {
    for (std::size_t i = 0; i < output_count; ++i) {
        if (output_names[i] == name) return static_cast<Output>(i);
    }
    return Output::count;
}

json listed(const std::vector<SlipExplanation>& explanations) {
    json list = json::array();
    for (const SlipExplanation& explanation : explanations) {
        json slips = json::array();
        for (std::uint8_t i = 0; i < explanation.slips.count; ++i) {
            slips.push_back(std::string(slip_table[explanation.slips.slips[i]].name));
        }
        list.push_back({{"slips", slips},
                        {"rank", explanation.rank},
                        {"value", explanation.value},
                        {"exact", explanation.exact},
                        {"weight", explanation.weight}});
    }
    return list;
}

json explained(const json& question) {
    constexpr const char* kinds[] = {"right", "right_by_route", "explained", "unexplained"};
    const LoadResult loaded = record_from_json(question["record"].dump());
    if (!loaded.record) return {{"kind", "no record"}};
    const auto run = question.value("run", std::size_t{0});
    const Assessment assessment = assess(
        read_all([&](Field field) -> const Entry& { return entry_for(*loaded.record, run, field); }),
        loaded.record->conventions);
    std::vector<StatedValue> answers;
    for (const json& one : question["answers"]) {
        const Output output = output_by(one["step"].get<std::string>());
        if (output == Output::count || !assessment.has(output)) return {{"kind", "no such step"}, {"step", one["step"]}};
        const UnitId unit = unit_by_key(one.value("unit", std::string())).value_or(UnitId::none);
        const StatedAnswer answer = read_answer(output, one["text"].get<std::string>(), unit);
        if (!answer.value) return {{"kind", "no number"}, {"step", one["step"]}};
        answers.push_back(*answer.value);
    }
    const SlipFinding finding = find_slips(assessment, answers);
    return {{"kind", kinds[static_cast<int>(finding.kind)]},
            {"right", assessment.outcome[answers.back().output]},
            {"explanations", listed(finding.explanations)},
            {"nearest", listed(finding.nearest)}};
}

}  // namespace

int main() {
    for (std::string line; read_line(line);) {
        std::printf("%s\n", explained(json::parse(line)).dump().c_str());
        std::fflush(stdout);
    }
    return 0;
}
