#include "core/record/outcome_json.hpp"

#include "core/record/conventions_json.hpp"
#include "core/record/json_members.hpp"

namespace overwater {

namespace {

constexpr int outcome_version = 1;

int indent_of(JsonLayout layout) { return layout == JsonLayout::compact ? -1 : 2; }

std::string finished(const Json& json, JsonLayout layout) { return json_text(json, indent_of(layout)) + '\n'; }

/// The number of an output in the unit it is shown in. The outcome holds kelvin, which is not the base of temperatures.
double shown(Output output, double number) {
    return output == Output::absolute_temperature ? number : from_base(number, unit_of(output));
}

Json value_json(Output output, double number) {
    Json json = Json::object();
    json["si"] = number;
    json["unit"] = info(unit_of(output)).key;
    json["value"] = shown(output, number);
    return json;
}

Json argument_json(const Argument& argument) {
    Json json = Json::object();
    switch (argument.kind) {
        case Argument::Kind::quantity:
            json["value"] = from_base(argument.base, argument.unit);
            json["unit"] = info(argument.unit).key;
            json[argument.significant ? "figures" : "decimals"] = argument.digits;
            break;
        case Argument::Kind::count: json["count"] = argument.count; break;
        case Argument::Kind::field: json["field"] = argument.field; break;
        case Argument::Kind::text: json["text"] = argument.text; break;
    }
    return json;
}

/// Adds key and arguments to `json`.
void put_message(Json& json, const Message& message) {
    json["key"] = message.key;
    Json& arguments = json["arguments"] = Json::object();
    for (const Argument& argument : message.arguments) arguments[std::string{argument.name}] = argument_json(argument);
}

Json names_json(FieldSet fields) {
    Json names = Json::array();
    for (std::size_t i = 0; i < field_count; ++i) {
        const auto field = static_cast<Field>(i);
        if (fields.has(field)) names.push_back(name_of(field));
    }
    return names;
}

Json state_json(const Assessment& assessment, Output output) {
    const OutputState& state = assessment.state(output);
    Json json = Json::object();
    switch (state.kind) {
        case OutputState::Kind::value:
            json["state"] = "value";
            json.update(value_json(output, assessment.outcome[output]));
            break;
        case OutputState::Kind::waiting:
            json["state"] = "waiting";
            json["for"] = names_json(state.waiting_for);
            break;
        case OutputState::Kind::not_possible:
            json["state"] = "not_possible";
            put_message(json["reason"] = Json::object(), state.reason);
            break;
        case OutputState::Kind::not_asked: json["state"] = "not_asked"; break;
    }
    return json;
}

std::string_view name_of(Check::Weight weight) {
    switch (weight) {
        case Check::Weight::doubt: return "doubt";
        case Check::Weight::refusal: return "refusal";
        case Check::Weight::note: break;
    }
    return "note";
}

Json check_json(const Check& check) {
    Json json = Json::object();
    json["field"] = overwater::name_of(check.field);
    json["weight"] = name_of(check.weight);
    put_message(json, check.message);
    return json;
}

/// The outputs that `method` changes.
Json way_json(const Assessment& assessment, const Method& method) {
    const Outcome<double> other = outcome_by(assessment, method);
    Json json = Json::object();
    for (std::size_t i = 0; i < output_count; ++i) {
        const auto output = static_cast<Output>(i);
        if (!other.ready.has(output) || other[output] == assessment.outcome[output]) continue;
        json[std::string{overwater::name_of(output)}] = value_json(output, other[output]);
    }
    return json;
}

Json other_ways_json(const Assessment& assessment) {
    Json json = Json::object();
    Method wrong_way;
    wrong_way.volume = Method::Volume::reading_taken_as_gas;
    Json way = way_json(assessment, wrong_way);
    if (!way.empty()) json["wrong_way"] = std::move(way);
    return json;
}

Json run_json(const Run& run, const Assessment& assessment) {
    Json json = Json::object();
    json["name"] = run.name;
    Json& outputs = json["outputs"] = Json::object();
    for (std::size_t i = 0; i < output_count; ++i) {
        const auto output = static_cast<Output>(i);
        outputs[std::string{overwater::name_of(output)}] = state_json(assessment, output);
    }
    Json& checks = json["checks"] = Json::array();
    for (const Check& check : assessment.checks) checks.push_back(check_json(check));
    json["other_ways"] = other_ways_json(assessment);
    return json;
}

}  // namespace

std::vector<Assessment> assess_runs(const Record& record) {
    std::vector<Assessment> assessments;
    for (std::size_t run = 0; run < record.runs.size(); ++run) {
        assessments.push_back(assess(readings_of(record, run), record.conventions));
    }
    return assessments;
}

std::string outcome_to_json(const Record& record, const std::vector<Assessment>& assessments, JsonLayout layout) {
    Json json = Json::object();
    json["overwater"] = "outcome";
    json["version"] = outcome_version;
    json["record"] = record.name;
    json["conventions"] = conventions_json(record.conventions, record.conventions_kept);
    Json& runs = json["runs"] = Json::array();
    for (std::size_t run = 0; run < record.runs.size() && run < assessments.size(); ++run) {
        runs.push_back(run_json(record.runs[run], assessments[run]));
    }
    return finished(json, layout);
}

std::string problem_to_json(const Message& problem, const std::string& source, JsonLayout layout) {
    Json json = Json::object();
    json["overwater"] = "problem";
    json["version"] = outcome_version;
    json["source"] = source;
    put_message(json, problem);
    return finished(json, layout);
}

}  // namespace overwater
