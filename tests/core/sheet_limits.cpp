#include <doctest/doctest.h>

#include <random>
#include <string>
#include <vector>

#include "core/lesson/practice.hpp"
#include "core/lesson/sheet_table.hpp"
#include "core/lesson/text_table.hpp"

using namespace overwater;

// How much of a table is taken, how much is said of it, and what comes back of what was written.

namespace {

using Rows = std::vector<std::vector<std::string>>;

ClassTable sheets(const std::string& text) { return read_sheets(text, {}, {}, Record{}); }

/// The first message with this key, or none.
const Message* said(const ClassTable& table, std::string_view key) {
    for (const Message& message : table.problems) {
        if (message.key == key) return &message;
    }
    return nullptr;
}
const Argument* place(const ClassTable& table, std::string_view key, std::string_view name) {
    const Message* message = said(table, key);
    if (message == nullptr) return nullptr;
    for (const Argument& argument : message->arguments) {
        if (argument.name == name) return &argument;
    }
    return nullptr;
}
long long count_in(const ClassTable& table, std::string_view key, std::string_view name) {
    const Argument* argument = place(table, key, name);
    return argument == nullptr ? -1 : argument->count;
}
std::string text_in(const ClassTable& table, std::string_view key, std::string_view name) {
    const Argument* argument = place(table, key, name);
    return argument == nullptr ? "nothing" : argument->text;
}

std::string repeated(std::string_view piece, int times) {
    std::string text;
    for (int i = 0; i < times; ++i) text += piece;
    return text;
}

}  // namespace

TEST_CASE("a table of a million bytes is read, one byte more is none") {
    std::string text = "group,gas_volume\n1,43.2\n";
    text.append(1'000'000 - text.size(), '\n');
    CHECK(said(sheets(text), "table.too_long") == nullptr);
    CHECK(sheets(text).sheets.size() == 1);
    CHECK(said(sheets(text + "\n"), "table.too_long") != nullptr);
    CHECK(sheets(text + "\n").sheets.empty());
}

TEST_CASE("a thousand sheets are taken, and it is said how many were not") {
    const auto with = [](int groups) {
        std::string text = "group,gas_volume\n";
        for (int i = 1; i <= groups; ++i) text += std::to_string(i) + ",43.2\n";
        return sheets(text);
    };
    CHECK(with(1000).sheets.size() == 1000);
    CHECK(with(1000).problems.empty());
    const ClassTable more = with(1002);
    CHECK(more.sheets.size() == 1000);
    CHECK(count_in(more, "table.too_many", "number") == 2);
}

TEST_CASE("two hundred columns are read") {
    CHECK(sheets(repeated(",", 199) + "gas_volume\n" + repeated(",", 199) + "43.2\n").sheets.size() == 1);
    CHECK(said(sheets(repeated(",", 200) + "gas_volume\n" + repeated(",", 200) + "43.2\n"), "table.no_answers") !=
          nullptr);
}

TEST_CASE("twelve columns that are not known are named, and all are counted") {
    const auto with = [](int unknown) {
        std::string header = "gas_volume";
        for (int i = 1; i <= unknown; ++i) header += ",colour " + std::to_string(i);
        return sheets(header + "\n43.2\n");
    };
    const std::string twelve =
        "colour 1; colour 2; colour 3; colour 4; colour 5; colour 6; colour 7; colour 8; colour 9; "
        "colour 10; colour 11; colour 12";
    CHECK(text_in(with(12), "table.unknown_columns", "columns") == twelve);
    CHECK(count_in(with(12), "table.unknown_columns", "number") == 12);
    CHECK(text_in(with(13), "table.unknown_columns", "columns") == twelve);
    CHECK(count_in(with(13), "table.unknown_columns", "number") == 13);
    CHECK(text_in(with(1), "table.unknown_columns", "columns") == "colour 1");
    CHECK(said(with(0), "table.unknown_columns") == nullptr);
}

TEST_CASE("twenty problems are told, the others counted") {
    const auto with = [](int wrong) { return sheets("group,gas_volume\n" + repeated("Ada,43.2\n", wrong)); };
    CHECK(with(20).problems.size() == 20);
    CHECK(said(with(20), "table.more_problems") == nullptr);
    CHECK(with(23).problems.size() == 21);
    CHECK(count_in(with(23), "table.more_problems", "number") == 3);
    CHECK(count_in(with(1), "table.no_group", "line") == 2);
}

TEST_CASE("of a long cell the first forty bytes are said, whole letters only") {
    const auto of = [](const std::string& code) {
        return text_in(sheets("practice_code,gas_volume\n" + code + ",43.2\n"), "table.no_code", "code");
    };
    CHECK(of(std::string(40, 'a')) == std::string(40, 'a'));
    CHECK(of(std::string(41, 'a')) == std::string(40, 'a'));
    const std::string letter = "\u00e9";  // two bytes
    CHECK(of(std::string(38, 'a') + letter + "b") == std::string(38, 'a') + letter);
    CHECK(of(std::string(39, 'a') + letter) == std::string(39, 'a'));
    CHECK(of(std::string(38, 'a') + "\U0001F600") == std::string(38, 'a'));  // four bytes
}

TEST_CASE("a group is a number from 1 to 99999, a run one from 1 to 6") {
    const auto group = [](const std::string& text) {
        const ClassTable table = sheets("group,gas_volume\n" + text + ",43.2\n");
        return said(table, "table.no_group") == nullptr && table.sheets.size() == 1 ? table.sheets[0].group : -1;
    };
    CHECK(group("1") == 1);
    CHECK(group("90") == 90);
    CHECK(group("99999") == 99999);
    CHECK(group("000012") == 12);
    for (const char* none : {"0", "100000", "0000012", "-1", "1.5", "1a", ":", "/"})
        CHECK_MESSAGE(group(none) == -1, none);
    const auto run = [](const std::string& text) {
        const ClassTable table = sheets("group,run,gas_volume\n1," + text + ",43.2\n");
        return table.problems.empty() ? static_cast<int>(table.sheets.at(0).record.runs.size()) : -1;
    };
    CHECK(run("1") == 1);
    CHECK(run("6") == 6);
    CHECK(run("0") == -1);
    CHECK(run("7") == -1);
    // Rows that do not say which run they are follow one another.
    const auto rows = [](int count) { return sheets("group,gas_volume\n" + repeated("1,43.2\n", count)); };
    CHECK(rows(6).problems.empty());
    CHECK(rows(6).sheets.at(0).record.runs.size() == 6);
    CHECK(count_in(rows(7), "table.no_run", "line") == 8);
}

TEST_CASE("rows of one group or of one code are one sheet") {
    PracticeSettings settings;
    settings.difficulty = Difficulty::easy;
    const std::string first = code_of(settings);
    settings.student = 1;
    const std::string second = code_of(settings);
    const auto groups = [](const ClassTable& table) {
        std::vector<int> all;
        for (const ClassSheet& sheet : table.sheets) all.push_back(sheet.group);
        return all;
    };
    const std::string header = "group,practice_code,run,gas_volume\n";
    CHECK(groups(sheets(header + "," + first + ",1,40\n," + second + ",1,41\n," + first + ",2,42\n")) ==
          std::vector{1, 2});
    CHECK(groups(sheets(header + "7," + first + ",1,40\n8," + first + ",1,41\n")) == std::vector{7, 8});
    // A code once in a group is enough; another one in the same group is another sheet.
    CHECK(groups(sheets(header + "7," + first + ",1,40\n7,,2,41\n")) == std::vector{7});
    CHECK(groups(sheets(header + "7," + first + ",1,40\n7," + second + ",1,41\n")) == std::vector{7, 7});
    CHECK(groups(sheets(header + "7," + first + ",1,40\n," + first + ",1,41\n")) == std::vector{7, 2});
    CHECK(groups(sheets(header + ",,,40\n,,,41\n")) == std::vector{1, 2});
}

TEST_CASE("unknown units, lone brackets and second columns of one kind") {
    CHECK(sheets("gas_volume (mL),run\n43.2,1\n").problems.empty());
    CHECK(text_in(sheets("gas_volume,gas_volume (mL)\n43.2,1\n"), "table.unknown_columns", "columns") ==
          "gas_volume (mL)");
    CHECK(text_in(sheets("gas_volume,run (mL)\n43.2,1\n"), "table.unknown_columns", "columns") == "run (mL)");
    CHECK(text_in(sheets("gas_volume,(mL)\n43.2,1\n"), "table.unknown_columns", "columns") == "(mL)");
    CHECK(text_in(sheets("gas_volume,mass (kPa)\n43.2,1\n"), "table.unknown_columns", "columns") == "mass (kPa)");
    // A bracket without its end does as well.
    const ClassTable open = sheets("gas_volume (L\n0.0432\n");
    REQUIRE(open.sheets.size() == 1);
    CHECK(open.sheets[0].record.runs[0].answers.at(0).unit == UnitId::litre);
    CHECK(sheets("gas_volume ()\n43.2\n").problems.empty());
}

TEST_CASE("cells beyond the header count only where something stands in them") {
    CHECK(sheets("group,gas_volume\n1,43.2,,\n").problems.empty());
    CHECK(count_in(sheets("group,gas_volume\n1,43.2\n2,43.2,,x\n"), "table.too_many_cells", "line") == 3);
}

TEST_CASE("a table that holds a header alone, or nothing, says which") {
    CHECK(said(sheets(""), "table.empty") != nullptr);
    CHECK(said(sheets("gas_volume\n"), "table.header_only") != nullptr);
    CHECK(sheets("gas_volume\n43.2").sheets.size() == 1);
}

TEST_CASE("whatever was written is read again") {
    // Cells of all that has a meaning somewhere: separators, quotes, ends of lines, spaces, signs that begin a formula.
    constexpr std::string_view signs = ",;\t\"\r\n a1.=+-@'";
    std::mt19937 words(20);
    const auto draw = [&words](std::size_t count) { return static_cast<std::size_t>(words() % count); };
    for (int i = 0; i < 3000; ++i) {
        const std::size_t columns = 1 + draw(3);
        Rows rows(1 + draw(3), std::vector<std::string>(columns));
        Rows expected;
        for (auto& row : rows) {
            bool holds = false;
            std::vector<std::string> back;
            for (std::string& cell : row) {
                for (std::size_t length = draw(4); length > 0; --length) cell += signs[draw(signs.size())];
                std::string read = cell;
                const bool number = cell.size() > 1 && (cell[0] == '+' || cell[0] == '-') &&
                                    cell.find_first_not_of(".,0123456789", 1) == std::string::npos;
                // An apostrophe stands before a formula; spaces around a cell do not count.
                if (!cell.empty() && !number && std::string_view("=+-@\t\r").find(cell[0]) != std::string_view::npos) {
                    read = "'" + cell;
                }
                while (!read.empty() && read.back() == ' ') read.pop_back();
                read.erase(0, std::min(read.find_first_not_of(' '), read.size()));
                holds = holds || !read.empty();
                back.push_back(read);
            }
            if (holds) expected.push_back(back);
        }
        for (const char separator : {',', ';', '\t'}) {
            // Without a word in the header line there is nothing that tells the separator.
            if (expected.size() != rows.size()) continue;
            CHECK(read_table(delimited(rows, separator)).rows == expected);
        }
    }
}

TEST_CASE("quotes stand only where they are needed") {
    const auto line = [](const std::vector<std::string>& header, const std::vector<std::string>& row, char separator) {
        const std::string text = delimited({header, row}, separator);
        return text.substr(3);
    };
    // In the header line a tab, or a semicolon before a comma, would be taken for the separator; later lines may have them.
    CHECK(line({"a;b", "c"}, {"a;b", "c"}, ',') == "\"a;b\",c\r\na;b,c\r\n");
    CHECK(line({"a\tb", "c"}, {"a\tb", "c"}, ';') == "\"a\tb\";c\r\na\tb;c\r\n");
    CHECK(line({"a,b", "c"}, {"a,b", "c"}, ';') == "a,b;c\r\na,b;c\r\n");
    CHECK(line({"a;b,", "c"}, {"a,b", "c"}, '\t') == "a;b,\tc\r\na,b\tc\r\n");
    // One column has no separator that could be found: none may stand open.
    CHECK(line({"a"}, {"b;c"}, ',') == "a\r\n\"b;c\"\r\n");
    CHECK(line({"a", "b"}, {"+1,5", "-0.2"}, ';') == "a;b\r\n+1,5;-0.2\r\n");
    CHECK(line({"a", "b"}, {"+", "-1e5"}, ';') == "a;b\r\n\"'+\";\"'-1e5\"\r\n");
}

TEST_CASE("a quote within a cell is a sign like another, and one that ends it ends it") {
    CHECK(read_table("a,b\n1 \"x\",2").rows == Rows{{"a", "b"}, {"1 \"x\"", "2"}});
    CHECK(read_table("30\",b;c\n1,2").separator == ';');  // inches open no quote: the semicolon counts
    CHECK(read_table("\"a\";\"b,c\"\n1;2").rows == Rows{{"a", "b,c"}, {"1", "2"}});
    CHECK(read_table(" \"a;b\" ,c\n1,2").rows == Rows{{"a;b", "c"}, {"1", "2"}});
    CHECK(read_table("\"a\"x,b\n1,2").rows == Rows{{"ax", "b"}, {"1", "2"}});
    CHECK(read_table("\"a\"\"\"").rows == Rows{{"a\""}});
    CHECK(read_table("\"").open_quote);
    CHECK(read_table("\"a\"\"").open_quote);
    CHECK_FALSE(read_table("\"a\"").open_quote);
    CHECK(read_table("a,b\n1,\"2").rows == Rows{{"a", "b"}, {"1", "2"}});
}
