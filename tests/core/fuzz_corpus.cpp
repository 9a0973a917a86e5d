#include <doctest/doctest.h>

/// The seeds of the fuzz targets and what they once found, through the same promises. (Under Node there are no files.)
#ifndef __EMSCRIPTEN__

#include <filesystem>

#include "tests/core/record_samples.hpp"
#include "tests/fuzz/course.hpp"
#include "tests/fuzz/entry.hpp"
#include "tests/fuzz/equation.hpp"
#include "tests/fuzz/formula.hpp"
#include "tests/fuzz/link.hpp"
#include "tests/fuzz/number.hpp"
#include "tests/fuzz/outcome.hpp"
#include "tests/fuzz/plan.hpp"
#include "tests/fuzz/practice.hpp"
#include "tests/fuzz/record.hpp"
#include "tests/fuzz/sheets.hpp"
#include "tests/fuzz/stored.hpp"
#include "tests/fuzz/table.hpp"

using namespace overwater;

namespace {

struct Promise {
    const char* name;
    std::string_view (*holds)(std::string_view bytes);
};

constexpr Promise promises[]{
    {"number", fuzz::holds_for_number},   {"entry", fuzz::holds_for_entry},
    {"outcome", fuzz::holds_for_outcome}, {"record", fuzz::holds_for_record},
    {"stored", fuzz::holds_for_stored},   {"plan", fuzz::holds_for_plan},
    {"table", fuzz::holds_for_table},     {"sheets", fuzz::holds_for_sheets},
    {"link", fuzz::holds_for_link},       {"practice", fuzz::holds_for_practice},
    {"formula", fuzz::holds_for_formula}, {"equation", fuzz::holds_for_equation},
    {"course", fuzz::holds_for_course},
};

}  // namespace

TEST_CASE("every promise holds for the bytes kept from fuzzing") {
    const std::string corpus = "tests/fuzz/corpus/";
    std::size_t folders = 0;
    for (const auto& folder : std::filesystem::directory_iterator(OVERWATER_SOURCE_FOLDER "/" + corpus)) {
        folders += folder.is_directory() ? 1 : 0;
    }
    CHECK(folders == std::size(promises));
    for (const Promise& promise : promises) {
        int files = 0;
        const std::string path = corpus + promise.name;
        for (const auto& file : std::filesystem::directory_iterator(OVERWATER_SOURCE_FOLDER "/" + path)) {
            const std::string name = file.path().filename().string();
            INFO(path << '/' << name);
            const std::string bytes = file_text(path + '/' + name);
            CHECK(promise.holds(bytes) == "");
            // Cut off anywhere, as what is still being typed or stands on a full disk.
            for (std::size_t size = 0; size < bytes.size(); size += 1 + bytes.size() / 16) {
                CHECK(promise.holds(std::string_view(bytes).substr(0, size)) == "");
            }
            ++files;
        }
        INFO(path);
        CHECK(files > 0);
    }
}

#endif
