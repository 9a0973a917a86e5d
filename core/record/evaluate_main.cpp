// The program `evaluate`: records in, outcomes out, as JSON (record.md).

#include <cstdio>
#include <string>
#include <string_view>
#include <vector>

#include "core/quantity/catalogue.hpp"
#include "core/quantity/number_format.hpp"
#include "core/record/json.hpp"
#include "core/record/outcome_json.hpp"
#include "generated/text_en.hpp"

namespace {

using namespace overwater;

// What a programmer asks the program itself; what it says of a record comes from the catalogue.
constexpr const char* usage = R"(Usage: evaluate [FILE...]

Reads Overwater records (JSON; standard input for "-" or without a FILE) and prints what follows from each: every
output with its value, or what it waits for, or why it is not possible; checks; conventions. One record is printed
over many lines, several on one line each, in their order.

  --compact   one line a record, always
  --help      this text

Exit status: 0; 2 if a record could not be read. Then a line {"overwater": "problem", "key": ...} stands in its place and
the sentence on standard error.
)";

struct Input {
    bool opened = false;
    std::string text;
};

/// Reads all of it, but not more than shows that it is too much.
Input read_input(const std::string& name) {
    Input input;
    std::FILE* file = name == "-" ? stdin : std::fopen(name.c_str(), "rb");
    if (!file) return input;
    char block[4096];
    std::size_t count = 0;
    while (input.text.size() <= most_record_bytes && (count = std::fread(block, 1, sizeof block, file)) > 0) {
        input.text.append(block, count);
    }
    input.opened = std::ferror(file) == 0;
    if (file != stdin) std::fclose(file);
    return input;
}

std::string_view sentence_of(std::string_view key, bool one) {
    static const Catalogue catalogue(text_keys, text_en);
    return catalogue.sentence(key, one);
}

std::string shown(const Argument& argument) {
    switch (argument.kind) {
        case Argument::Kind::count: return std::to_string(argument.count);
        case Argument::Kind::field: return std::string{argument.field};
        case Argument::Kind::text: return argument.text;
        case Argument::Kind::quantity: break;
    }
    const double value = from_base(argument.base, argument.unit);
    const std::string number = argument.significant ? format_significant(value, argument.digits, DecimalSign::point)
                                                    : format_fixed(value, argument.digits, DecimalSign::point);
    return number + " " + std::string{info(argument.unit).symbol};
}

/// The sentence of a message: each place `{name}` takes its argument. Without a sentence, the key and the arguments.
std::string sentence(const Message& message) {
    bool one = false;
    for (const Argument& argument : message.arguments) {
        if (argument.kind == Argument::Kind::count) one = argument.count == 1;
    }
    const std::string_view row = sentence_of(message.key, one);
    std::string out;
    if (row.empty()) {
        out = message.key;
        for (const Argument& argument : message.arguments) out += " " + shown(argument);
        return out;
    }
    for (std::size_t at = 0; at < row.size();) {
        const std::size_t end = row[at] == '{' ? row.find('}', at) : std::string_view::npos;
        if (end == std::string_view::npos) {
            out += row[at++];
            continue;
        }
        const std::string_view place = row.substr(at + 1, end - at - 1);
        for (const Argument& argument : message.arguments) {
            if (argument.name == place) out += shown(argument);
        }
        at = end + 1;
    }
    return out;
}

void say(const std::string& source, const Message& message) {
    std::fprintf(stderr, "evaluate: %s: %s\n", source == "-" ? "standard input" : source.c_str(),
                 sentence(message).c_str());
}

/// Prints the outcome of one record; false if it could not be read.
bool evaluate_one(const std::string& source, JsonLayout layout) {
    const Input input = read_input(source);
    LoadResult loaded;
    if (input.opened) {
        loaded = record_from_json(input.text);
    } else {
        loaded.problem = Message{"import.cannot_open"};
    }
    if (!loaded.problem.key.empty()) say(source, loaded.problem);
    if (!loaded.record) {
        std::fputs(problem_to_json(loaded.problem, source, layout).c_str(), stdout);
        return false;
    }
    std::fputs(outcome_to_json(*loaded.record, assess_runs(*loaded.record), layout).c_str(), stdout);
    return true;
}

}  // namespace

int main(int count, char** words) {
    std::vector<std::string> sources;
    bool compact = false;
    bool options = true;
    for (int i = 1; i < count; ++i) {
        const std::string word = words[i];
        if (options && word == "--help") return std::fputs(usage, stdout) < 0 ? 2 : 0;
        if (options && word == "--compact") {
            compact = true;
        } else if (options && word == "--") {
            options = false;
        } else if (options && word.size() > 1 && word[0] == '-') {
            std::fprintf(stderr, "evaluate: unknown option %s\n\n%s", word.c_str(), usage);
            return 2;
        } else {
            sources.push_back(word);
        }
    }
    if (sources.empty()) sources.emplace_back("-");
    const JsonLayout layout = compact || sources.size() > 1 ? JsonLayout::compact : JsonLayout::indented;
    bool all_read = true;
    for (const std::string& source : sources) all_read = evaluate_one(source, layout) && all_read;
    // A full disk or a closed pipe must not look like success.
    if (std::fflush(stdout) != 0 || std::ferror(stdout) != 0) return 2;
    return all_read ? 0 : 2;
}
