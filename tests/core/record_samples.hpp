#pragma once

#include <fstream>
#include <iterator>
#include <random>
#include <string>

#include "core/record/record.hpp"

/// Records to test with.

namespace overwater {

#ifndef __EMSCRIPTEN__
inline std::string file_text(const std::string& path) {
    std::ifstream file(std::string{OVERWATER_SOURCE_FOLDER "/"} + path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}
#endif

class RecordMaker {
public:
    explicit RecordMaker(std::mt19937_64& generator) : generator_(generator) {}

    Record record() {
        Record record;
        record.id = text();
        record.name = text();
        record.created = text();
        record.saved = text();
        record.invented = one_of(2) == 0;
        record.apparatus = text();
        record.reaction = text();
        record.target = text();
        record.shared = entries();
        record.runs.clear();
        for (unsigned i = 0, runs = 1 + one_of(6); i < runs; ++i) record.runs.push_back(run());
        record.conventions = conventions();
        record.conventions_kept = kept();
        record.practice_code = text();
        record.answers = answers();
        for (unsigned i = 0, changes = one_of(4); i < changes; ++i) record.history.push_back(change());
        record.notes = text();
        record.kept = kept();
        return record;
    }

private:
    unsigned one_of(unsigned n) { return static_cast<unsigned>(generator_() % n); }

    /// Anything a person might type, and much that no one would.
    std::string text() {
        static const std::string pieces[]{"0.0390", "21,4",   " ",  "\xE2\x88\x92", "inHg", "\"",       "\\", "\n",
                                          "{",      "\xC3\xA9", "}", "]",            "\t",   "\xF0\x9F\xA7\xAA", "\x01", ":"};
        std::string out;
        for (unsigned i = 0, count = one_of(5); i < count; ++i) out += pieces[one_of(std::size(pieces))];
        return out;
    }

    std::string kept() {
        static const std::string samples[]{"", "", R"({"later":1})", R"({"later":{"deep":[null,true,"x"]}})",
                                           R"({"one":"a","two":-2.5})"};
        return samples[one_of(std::size(samples))];
    }

    Entry entry(Field field) {
        Entry entry;
        entry.text = text();
        if (!is_choice(field) && one_of(2) == 0) {
            const auto units = units_of(info(field).measure);
            if (!units.empty()) entry.unit = units[one_of(static_cast<unsigned>(units.size()))];
        }
        entry.instrument = text();
        entry.plus_minus = text();
        entry.shape = text();
        for (unsigned i = 0, repeats = one_of(3); i < repeats; ++i) entry.repeats.push_back(text());
        entry.kept = kept();
        return entry;
    }

    Entries entries() {
        Entries entries;
        for (std::size_t i = 0; i < field_count; ++i) {
            const auto field = static_cast<Field>(i);
            if (one_of(3) != 0) continue;
            entries.edit(field) = entry(field);
            entries.tidy(field);
        }
        if (one_of(3) == 0) entries.keep(R"({"later_field":{"text":"7","unit":"furlong"}})");
        return entries;
    }

    std::vector<Answer> answers() {
        static const char* const steps[]{"gas_volume", "mean", "a \"later\" step"};
        std::vector<Answer> answers;
        for (const char* step : steps) {
            if (one_of(2) == 0) continue;
            Answer answer;
            answer.step = step;
            answer.text = text();
            answer.unit = static_cast<UnitId>(one_of(unit_count));
            answer.kept = kept();
            answers.push_back(answer);
        }
        return answers;
    }

    Change change() {
        Change change;
        change.time = text();
        change.run = static_cast<int>(one_of(7)) - 1;
        change.field = text();
        change.text = text();
        change.kept = kept();
        return change;
    }

    Run run() {
        Run run;
        run.name = text();
        run.entries = entries();
        run.answers = answers();
        run.left_out = text();
        run.notes = text();
        run.kept = kept();
        return run;
    }

    Conventions conventions() {
        Conventions c;
        c.standard = static_cast<StandardConditions>(one_of(6));
        c.own_celsius = static_cast<double>(one_of(100000)) / 777.0 - 50;
        c.own_pressure = 50000 + static_cast<double>(one_of(1000000)) / 17.0;
        c.molar_mass_digits = static_cast<Conventions::MolarMassDigits>(one_of(4));
        c.vapour = static_cast<Conventions::Vapour>(one_of(5));
        c.vapour_rows = static_cast<Conventions::VapourRows>(one_of(2));
        c.round = static_cast<Conventions::Round>(one_of(2));
        c.rounding = static_cast<Rounding>(one_of(2));
        c.decimal_sign = static_cast<DecimalSign>(one_of(2));
        const auto units = units_of(Measure::pressure);
        if (one_of(2) == 0) c.pressure_unit = units[one_of(static_cast<unsigned>(units.size()))];
        c.conversion = static_cast<Conventions::Conversion>(one_of(2));
        c.accepted = static_cast<Conventions::Accepted>(one_of(3));
        c.percent_error = static_cast<Conventions::PercentError>(one_of(2));
        c.answers = static_cast<Conventions::Answers>(one_of(3));
        c.headline = static_cast<Conventions::Headline>(one_of(2));
        return c;
    }

    std::mt19937_64& generator_;
};

inline Record random_record(std::mt19937_64& generator) { return RecordMaker(generator).record(); }

}  // namespace overwater
