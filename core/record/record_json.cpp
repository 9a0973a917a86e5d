#include "core/record/record_json.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/record/conventions_json.hpp"
#include "core/record/entries_json.hpp"
#include "core/record/migrate.hpp"

namespace overwater {

namespace {

constexpr std::string_view record_format = "record";

void read_run(const Json& object, const JsonPlace& place, Complaints& complaints, Run& into) {
    JsonMembers members(object, place, complaints);
    members.text("name", into.name);
    if (const Json* entries = members.object("entries")) {
        read_entries(*entries, members.place_of("entries"), complaints, into.entries);
    }
    if (const Json* answers = members.object("answers")) {
        read_answers(*answers, members.place_of("answers"), complaints, into.answers);
    }
    members.text("left_out", into.left_out);
    members.text("notes", into.notes);
    into.kept = members.kept();
}

/// Calls `read(object, place, element)` for each object in `array`, with a new element of `into`.
template <class Element, class Read>
void read_list(const Json& array, const JsonPlace& place, Complaints& complaints, std::vector<Element>& into,
               Read read) {
    int index = 0;
    for (const Json& item : array) {
        const JsonPlace here{&place, {}, index++};
        Element element;
        if (item.is_object()) {
            read(item, here, element);
        } else {
            complaints.wrong_type(here, "object");
        }
        into.push_back(std::move(element));
    }
}

void read_runs(const Json& array, const JsonPlace& place, Complaints& complaints, std::vector<Run>& into) {
    if (array.size() > most_runs) {
        complaints.refuse(Message{"import.too_many_runs"}.count("count", static_cast<long long>(array.size())));
        return;
    }
    into.clear();
    read_list(array, place, complaints, into,
              [&](const Json& item, const JsonPlace& here, Run& run) { read_run(item, here, complaints, run); });
    if (into.empty()) into.emplace_back();
}

void read_change(const Json& object, const JsonPlace& place, Complaints& complaints, Change& into) {
    JsonMembers members(object, place, complaints);
    members.text("time", into.time);
    double run = -1;
    members.number("run", run);
    into.run = -1;
    if (run >= -1 && run < static_cast<double>(most_runs) && run == std::floor(run)) {
        into.run = static_cast<int>(run);
    } else {
        complaints.out_of_range(members.place_of("run"));
    }
    members.text("field", into.field);
    members.text("text", into.text);
    into.kept = members.kept();
}

Json change_json(const Change& change) {
    Json json = Json::object();
    put_text(json, "time", change.time);
    if (change.run >= 0) json["run"] = change.run;
    put_text(json, "field", change.field);
    put_text(json, "text", change.text);
    add_kept(json, change.kept);
    return json;
}

bool is_known(Field field, const std::string& name) {
    const auto& known = choices_of(field);
    return std::find(known.begin(), known.end(), name) != known.end();
}

/// What stands on the bench and what is sought are members of the record and entries like every other choice: the entry
/// counts, and a record that has the member alone is given the entry. The member itself is kept only where it is not
/// known here: a choice taken back must not come again with the next opening.
void adopt(Entries& shared, Field field, std::string& member) {
    if (!is_known(field, member)) return;
    const std::string_view usual = choices_of(field).front();
    if (member != usual && shared.at(field).text.empty()) shared.edit(field).text = member;
    member = usual;
}

const std::string& named(const Entries& shared, Field field, const std::string& member) {
    const std::string& entry = shared.at(field).text;
    return is_known(field, entry) ? entry : member;
}

Json run_json(const Run& run) {
    Json json = Json::object();
    json["name"] = run.name;
    json["entries"] = entries_json(run.entries);
    if (!run.answers.empty()) json["answers"] = answers_json(run.answers);
    put_text(json, "left_out", run.left_out);
    put_text(json, "notes", run.notes);
    add_kept(json, run.kept);
    return json;
}

Record read_members(const Json& object, Complaints& complaints) {
    Record record;
    const JsonPlace root;
    JsonMembers members(object, root, complaints);
    members.understood("overwater");
    members.understood("version");
    members.text("id", record.id);
    members.text("name", record.name);
    members.text("created", record.created);
    members.text("saved", record.saved);
    members.flag("invented", record.invented);
    members.text("apparatus", record.apparatus);
    members.text("reaction", record.reaction);
    members.text("target", record.target);
    if (const Json* conventions = members.object("conventions")) {
        read_conventions(*conventions, members.place_of("conventions"), complaints, record.conventions,
                         record.conventions_kept);
    }
    if (const Json* shared = members.object("shared")) {
        read_entries(*shared, members.place_of("shared"), complaints, record.shared);
    }
    adopt(record.shared, Field::apparatus, record.apparatus);
    adopt(record.shared, Field::target, record.target);
    if (const Json* runs = members.array("runs")) {
        read_runs(*runs, members.place_of("runs"), complaints, record.runs);
    }
    if (const Json* answers = members.object("answers")) {
        read_answers(*answers, members.place_of("answers"), complaints, record.answers);
    }
    members.text("practice_code", record.practice_code);
    if (const Json* history = members.array("history")) {
        read_list(*history, members.place_of("history"), complaints, record.history,
                  [&](const Json& item, const JsonPlace& here, Change& change) {
                      read_change(item, here, complaints, change);
                  });
    }
    members.text("notes", record.notes);
    record.kept = members.kept();
    return record;
}

}  // namespace

LoadResult read_record(Json json) {
    LoadResult result;
    const auto version = version_of(json, record_format);
    if (!version) {
        result.problem = Message{"import.not_a_record"};
        return result;
    }
    result.newer = *version > record_version;
    if (!result.newer) migrate(json, static_cast<int>(*version));
    Complaints complaints(result.newer);
    Record record = read_members(json, complaints);
    if (complaints.any()) {
        result.problem = *complaints.first();
        return result;
    }
    if (result.newer) result.problem = Message{"import.newer"};
    result.record = std::move(record);
    return result;
}

Json record_json(const Record& record) {
    Json json = Json::object();
    json["overwater"] = record_format;
    json["version"] = record_version;
    json["id"] = record.id;
    json["name"] = record.name;
    put_text(json, "created", record.created);
    put_text(json, "saved", record.saved);
    json["invented"] = record.invented;
    json["apparatus"] = named(record.shared, Field::apparatus, record.apparatus);
    json["reaction"] = record.reaction;
    json["target"] = named(record.shared, Field::target, record.target);
    json["conventions"] = conventions_json(record.conventions, record.conventions_kept);
    json["shared"] = entries_json(record.shared);
    Json& runs = json["runs"] = Json::array();
    for (const Run& run : record.runs) runs.push_back(run_json(run));
    if (!record.answers.empty()) json["answers"] = answers_json(record.answers);
    put_text(json, "practice_code", record.practice_code);
    if (!record.history.empty()) {
        Json& history = json["history"] = Json::array();
        for (const Change& change : record.history) history.push_back(change_json(change));
    }
    put_text(json, "notes", record.notes);
    add_kept(json, record.kept);
    return json;
}

}  // namespace overwater
