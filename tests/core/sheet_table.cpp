#include <doctest/doctest.h>

#include <algorithm>
#include <string>

#include "core/lesson/marking.hpp"
#include "core/lesson/practice.hpp"
#include "core/lesson/sheet_table.hpp"
#include "core/lesson/text_table.hpp"

using namespace overwater;

namespace {

using Rows = std::vector<std::vector<std::string>>;

/// Record A of the method (invented), what a class has in common.
Record class_record() {
    Record record;
    const auto type = [&](Field field, const char* text) { record.shared.edit(field).text = text; };
    type(Field::metal, "magnesium");
    type(Field::acid, "hydrochloric");
    type(Field::number_at_closed_end, "largest");
    type(Field::tube_capacity, "50");
    type(Field::end_space, "2.35");
    type(Field::level_difference, "112");
    type(Field::liquid_stands, "higher_inside");
    type(Field::temperature, "21.4");
    type(Field::barometer, "99.62");
    record.runs[0].entries.edit(Field::mass_of_metal).text = "0.0412";
    return record;
}

const std::vector<ColumnName>& names() {
    static const std::vector<ColumnName> all{{"Group", "group"},
                                             {"Run", "run"},
                                             {"Practice code", "practice_code"},
                                             {"Mean", "mean"},
                                             {"Scale reading", "scale_reading"},
                                             {"Mass of metal", "mass_of_metal"},
                                             {"Barometer", "barometer"},
                                             {"Liquid stands", "liquid_stands"},
                                             {"Gas volume", "gas_volume"},
                                             {"Dry-gas pressure", "dry_gas_pressure"},
                                             {"Percent error", "percent_error"}};
    return all;
}

ClassTable sheets(std::string_view text) {
    static const std::vector<ChoiceName> choices{{"higher inside", Field::liquid_stands, "higher_inside"}};
    return read_sheets(text, names(), choices, class_record());
}

bool says(const ClassTable& table, std::string_view key) {
    return std::any_of(table.problems.begin(), table.problems.end(), [&](const Message& m) { return m.key == key; });
}

std::string argument(const ClassTable& table, std::string_view key, std::string_view name) {
    for (const Message& message : table.problems) {
        for (const Argument& a : message.arguments) {
            if (message.key == key && a.name == name) return a.text;
        }
    }
    return "";
}

const Answer* answer(const std::vector<Answer>& answers, std::string_view step) {
    for (const Answer& one : answers) {
        if (one.step == step) return &one;
    }
    return nullptr;
}

}  // namespace

TEST_CASE("Delimited text is taken apart by RFC 4180, section 2") {
    // Its rules 1 to 7, in the examples given there, and what spreadsheets write besides.
    CHECK(read_table("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n").rows == Rows{{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}});
    CHECK(read_table("aaa,bbb,ccc\r\nzzz,yyy,xxx").rows == Rows{{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}});
    CHECK(read_table("\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx").rows == Rows{{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}});
    CHECK(read_table("\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx").rows ==
          Rows{{"aaa", "b\r\nbb", "ccc"}, {"zzz", "yyy", "xxx"}});
    CHECK(read_table("\"aaa\",\"b\"\"bb\",\"ccc\"").rows == Rows{{"aaa", "b\"bb", "ccc"}});
    CHECK(read_table("a\tb;c,d\n1,5\t2").rows == Rows{{"a", "b;c,d"}, {"1,5", "2"}});
    CHECK(read_table("a;b,c\n1,5;2").rows == Rows{{"a", "b,c"}, {"1,5", "2"}});
    CHECK(read_table("\"a;b\",c\n1,2").rows == Rows{{"a;b", "c"}, {"1", "2"}});
    CHECK(read_table("a,b\r1,2\n3,4").rows == Rows{{"a", "b"}, {"1", "2"}, {"3", "4"}});
    CHECK(read_table("\xef\xbb\xbf" "a,b\n1,2").rows == Rows{{"a", "b"}, {"1", "2"}});
    CHECK(read_table("\n\na,b\n,,\n\r\n1,\n").rows == Rows{{"a", "b"}, {"1", ""}});
    CHECK(read_table("a,b\n1,2,").rows == Rows{{"a", "b"}, {"1", "2", ""}});
    CHECK(read_table(" a , \"b \"\n").rows == Rows{{"a", "b"}});
    CHECK(read_table("").rows.empty());
    CHECK(read_table("a,\"b\nc").open_quote);
    CHECK_FALSE(read_table("a,\"b\"\nc").open_quote);
    // The line in which a row begins.
    CHECK(read_table("a\r\n\r\n\"b\nc\"\rd\ne").lines == std::vector<std::size_t>{1, 3, 5, 6});
}

TEST_CASE("A number keeps its sign, in signs that spreadsheets know") {
    const std::string written = delimited({{"+0.1", "\u22120,2", "-1+2", "=1", "-"}}, ';');
    CHECK(written == "\xef\xbb\xbf" "+0.1;-0,2;\"'-1+2\";\"'=1\";\"'-\"\r\n");
}

TEST_CASE("What is written can be read again, and begins no formula") {
    const Rows rows{{"Group", "Points"}, {"=1+2", "1,5"}, {"+x", "a \"b\" c"}, {"-y", "two\nlines"}, {"@sum", ""}, {"ä", "−1"}};
    for (const char separator : {',', ';', '\t'}) {
        const std::string text = delimited(rows, separator);
        CHECK(text.substr(0, 3) == "\xef\xbb\xbf");
        CHECK(text.ends_with("\r\n"));
        Rows expected = rows;
        for (std::size_t row : {1U, 2U, 3U, 4U}) expected[row][0] = '\'' + expected[row][0];
        expected[5][1] = "-1";
        CHECK(read_table(text).rows == expected);
    }
}

TEST_CASE("One row a run: groups, runs, units in brackets, in cells, and chosen by the open record") {
    const ClassTable table = sheets(
        "Group\tRun\tMass of metal (g)\tScale reading (mL)\tGas volume [mL]\tDry gas pressure\tMean (L/mol)\n"
        "3\t2\t0,0412\t9,15\t43,20\t95,97 kPa\t22,7\n"
        "3\t1\t0,0412\t10,15\t42,20\t\t22,7\n"
        "4\t\t0,0400\t9,15 mL\t43,2\t720 mmHg\t\n");
    CHECK(table.problems.empty());
    REQUIRE(table.sheets.size() == 2);
    CHECK(table.sheets[0].group == 3);
    const Record& third = table.sheets[0].record;
    REQUIRE(third.runs.size() == 2);
    CHECK(entry_for(third, 1, Field::scale_reading).text == "9,15");
    CHECK(entry_for(third, 0, Field::scale_reading).text == "10,15");
    CHECK(entry_for(third, 0, Field::scale_reading).unit == UnitId::millilitre);
    CHECK(entry_for(third, 0, Field::barometer).text == "99.62");
    REQUIRE(answer(third.runs[1].answers, "gas_volume") != nullptr);
    CHECK(answer(third.runs[1].answers, "gas_volume")->text == "43,20");
    CHECK(answer(third.runs[1].answers, "gas_volume")->unit == UnitId::millilitre);
    CHECK(answer(third.runs[0].answers, "dry_gas_pressure") == nullptr);
    CHECK(third.answers.size() == 1);
    CHECK(answer(third.answers, "mean")->unit == UnitId::litre_per_mole);
    CHECK(table.sheets[1].group == 4);
    CHECK(table.sheets[1].record.runs.size() == 1);
    CHECK(answer(table.sheets[1].record.runs[0].answers, "dry_gas_pressure")->unit == UnitId::none);
    // By hand: record A, method.md: 43.20 mL; 95.974 kPa is 719.9 mmHg.
    const MarkedSheet marked = mark_sheet(table.sheets[1].record);
    CHECK(marked.steps[0].judgement == Judgement::right);
    CHECK(marked.steps[2].judgement == Judgement::right);
}

TEST_CASE("The names of the records do as well, in any spelling of words; choices by name or words") {
    const ClassTable table = sheets("group;scale_reading;LIQUID STANDS;dry-gas pressure\n1;9,15;higher inside;96\n2;9,15;higher_outside;96\n");
    CHECK(table.problems.empty());
    REQUIRE(table.sheets.size() == 2);
    CHECK(entry_for(table.sheets[0].record, 0, Field::liquid_stands).text == "higher_inside");
    CHECK(entry_for(table.sheets[1].record, 0, Field::liquid_stands).text == "higher_outside");
}

TEST_CASE("Names in other languages: accents, their capitals, apostrophes and hard spaces make no difference") {
    const std::vector<ColumnName> french{{"Relev\u00e9", "group"},
                                         {"\u00c9cart en pourcentage", "percent_error"},
                                         {"Volume d\u2019extr\u00e9mit\u00e9", "end_space"},
                                         {"Fl\u00fcssigkeit", "level_difference"},
                                         {"Ma\u00df", "scale_reading"}};
    const auto problems = [&](const std::string& header) {
        return read_sheets(header + ";\u00e9cart en pourcentage\n1;1\n", french, {}, class_record()).problems.size();
    };
    for (const char* name : {"Volume d'extr\u00e9mit\u00e9", "VOLUME D\u2019EXTR\u00c9MIT\u00c9", "Volume\u00a0d\u2019extremite",
                             "FL\u00dcSSIGKEIT", "Flussigkeit", "RELEV\u00c9", "ma\u00df"}) {
        CHECK_MESSAGE(problems(name) == 0, name);
    }
    // Half a letter at the end.
    CHECK(problems("\xc3") == 1);
    CHECK(problems("Mas") == 1);
}

TEST_CASE("Without groups each row is a sheet; a mass that was put down is the one that counts") {
    Record open = class_record();
    open.runs[0].entries.edit(Field::mass_from).text = "ribbon";
    open.runs[0].entries.edit(Field::barometer).text = "747.2 mmHg";
    const ClassTable table = read_sheets("Mass of metal,Barometer,Gas volume\n0.0412,747,43.2\n0.0400,748,43.2", names(), {}, open);
    REQUIRE(table.sheets.size() == 2);
    CHECK(table.sheets[1].group == 2);
    const Record& first = table.sheets[0].record;
    CHECK(entry_for(first, 0, Field::mass_from).text == "weighed");
    CHECK(entry_for(first, 0, Field::barometer).unit == UnitId::millimetre_of_mercury);
}

TEST_CASE("Nothing is lost without a word") {
    ClassTable table = sheets("Group,Colour,Gas volume,Scale reading (furlong),Gas volume\n1,red,43.2,9,43.3\n");
    REQUIRE(says(table, "table.unknown_columns"));
    CHECK(argument(table, "table.unknown_columns", "columns") == "Colour; Scale reading (furlong); Gas volume");
    CHECK(table.sheets.size() == 1);
    table = sheets("Group,Gas volume\n1,43,20\n2,43.2,\n");
    CHECK(says(table, "table.too_many_cells"));
    REQUIRE(table.sheets.size() == 1);
    CHECK(table.sheets[0].group == 2);
    table = sheets("Group,Gas volume\nAda,43.2\n");
    CHECK(says(table, "table.no_group"));
    REQUIRE(table.sheets.size() == 1);
    CHECK(table.sheets[0].group == 1);
    CHECK(says(sheets("Group,Run,Gas volume\n1,7,43.2\n"), "table.no_run"));
    CHECK(says(sheets("Group,Liquid stands,Gas volume\n1,upwards,43.2\n"), "table.no_choice"));
    CHECK(says(sheets("Practice code,Gas volume\n12345,43.2\n"), "table.no_code"));
    CHECK(says(sheets("Group,Run,Gas volume,Mean\n1,1,43.2,22.7\n1,2,43.2,22.8\n"), "table.answer_twice"));
    CHECK(says(sheets("Group,Run,Gas volume\n1,1,43.2\n1,1,43.3\n"), "table.answer_twice"));
    CHECK(says(sheets("Group,Scale reading\n1,9.15\n"), "table.no_answers"));
    CHECK(says(sheets("Group,Gas volume\n"), "table.header_only"));
    CHECK(says(sheets(" \n"), "table.empty"));
    CHECK(says(sheets("Group,Gas volume\n1,\"43.2\n2,43"), "table.open_quote"));
}

TEST_CASE("A practice code brings its true readings; what is misread is known") {
    PracticeSettings settings;
    settings.seed = 417;
    settings.student = 3;
    const PracticeRun practice = practice_run(settings);
    const Dial* dial = dial_for(practice, 0, Field::scale_reading);
    REQUIRE(dial != nullptr);
    const std::string code = code_of(settings);
    ClassTable table = sheets("Practice code,Run,Gas volume\n" + code + ",1,40 mL\n");
    CHECK(table.problems.empty());
    REQUIRE(table.sheets.size() == 1);
    CHECK(table.sheets[0].record.runs.size() == practice.record.runs.size());
    CHECK(entry_for(table.sheets[0].record, 0, Field::scale_reading).text ==
          entry_for(practice.truth, 0, Field::scale_reading).text);
    CHECK(misread(table.sheets[0].record).empty());
    // By a whole division: more than half of one.
    Dial wrong = *dial;
    wrong.position += dial->division;
    const std::string off = perfect_reading(wrong) + ' ' + std::string(info(dial->unit).symbol);
    table = sheets("Practice code,Scale reading,Gas volume\n" + code + "," + off + ",40 mL\n");
    REQUIRE(table.sheets.size() == 1);
    const std::vector<Misread> found = misread(table.sheets[0].record);
    REQUIRE(found.size() == 1);
    CHECK(found[0].field == Field::scale_reading);
    CHECK(found[0].run == 0);
    // A record as its student left it.
    Record own = practice.record;
    own.runs[0].entries.edit(Field::scale_reading).text = off;
    CHECK(complete_from_code(own));
    CHECK(entry_for(own, 0, Field::scale_reading).text == off);
    CHECK(entry_for(own, 0, Field::temperature).text == entry_for(practice.truth, 0, Field::temperature).text);
    CHECK(misread(own).size() == 1);
    Record none;
    CHECK_FALSE(complete_from_code(none));
}

TEST_CASE("Hostile text of a megabyte is read or refused, and never said in full") {
    const auto repeated = [](std::string_view piece) {
        std::string text = "Group,Gas volume\n";
        while (text.size() + piece.size() <= longest_table) text += piece;
        return text;
    };
    for (const char* piece : {"\n", "\"", ",", "1,43.2\n", "x,1\n", "1,2,3\n", "\"a\"\"\n", "\xff\xfe\0;", "=cmd|' /C calc'!A0,1\n"}) {
        const ClassTable table = sheets(repeated(piece));
        CHECK(table.sheets.size() <= most_sheets);
        CHECK(table.problems.size() <= 22);
        for (const Message& message : table.problems) {
            for (const Argument& a : message.arguments) CHECK(a.text.size() < 600);
        }
    }
    std::string wide(longest_table, ',');
    CHECK(says(sheets(wide + "\n"), "table.too_long"));
    wide.resize(longest_table);
    CHECK(sheets(wide).sheets.empty());
}
