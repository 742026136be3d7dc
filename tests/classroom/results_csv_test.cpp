// The class's results as comma-separated values: form, columns as documented, and what is kept out.
#include "app/classroom/results_csv.hpp"

#include <catch2/catch.hpp>
#include <fstream>
#include <sstream>

#include "app/classroom/csv.hpp"
#include "classroom/class_support.hpp"
#include "support.hpp"

using namespace hardover;
using namespace hardover::classroom;
using namespace hardover_tests;

namespace {

using Rows = std::vector<std::vector<std::string>>;

ClassResults small_class() {
    std::vector<std::vector<int>> table(6, {1, 0, 1});
    table[2] = {0, 0, -1};
    ClassResults results = class_of(table);
    results.seats[0].name = "=cmd(\"x\"), the first";
    results.seats[1].name = "Ünal";
    results.items[0].review.answer = "-12.5 in";
    results.items[1].review.sure = 0.7;
    results.items[1].origin.disputed = true;
    results.boats.push_back(worked("A01", 20501, 0.1, -8.25));
    results.boats.back().faults = {"air_in_oil", "hose_kinked"};
    return results;
}

Rows rows_of(const CsvFile& file) {
    const auto read = read_csv(file.text, file.name);
    REQUIRE(read.ok());
    Rows rows;
    for (const auto& row : read.value()) {
        rows.emplace_back();
        for (const CsvField& field : row) rows.back().push_back(field.text);
    }
    return rows;
}

std::string cell(const Rows& rows, std::size_t row, const std::string& column) {
    for (std::size_t c = 0; c < rows[0].size(); ++c) {
        if (rows[0][c] == column) return rows[row][c];
    }
    FAIL("there is no column " << column);
    return "";
}

// Columns that the table of DEVELOPERS.md names for a file: lines "| answers_v1.csv | `set_id`, ... |".
std::vector<std::string> documented(const std::string& file) {
    std::ifstream page(source_path("DEVELOPERS.md"));
    std::vector<std::string> columns;
    for (std::string line; std::getline(page, line);) {
        if (line.rfind("| " + file + " |", 0) != 0) continue;
        for (std::size_t at = line.find('`'); at != std::string::npos; at = line.find('`', at)) {
            const std::size_t end = line.find('`', at + 1);
            columns.push_back(line.substr(at + 1, end - at - 1));
            at = end + 1;
        }
    }
    return columns;
}

}  // namespace

TEST_CASE("the columns of the class's tables are those the documentation lists, in its order") {
    const ClassResults results = small_class();
    const auto files = results_csv(results, make_figures(results, Knowledge{}), false);
    REQUIRE(files.size() == 4);
    for (const CsvFile& file : files) {
        INFO(file.name);
        CHECK(rows_of(file)[0] == documented(file.name));
    }
}

TEST_CASE("every line of a class's table ends in CR LF and has as many fields as the first") {
    const ClassResults results = small_class();
    for (const bool names : {false, true}) {
        for (const CsvFile& file : results_csv(results, make_figures(results, Knowledge{}), names)) {
            INFO(file.name);
            std::size_t line_ends = 0;
            for (std::size_t at = file.text.find('\n'); at != std::string::npos;
                 at = file.text.find('\n', at + 1)) {
                CHECK(file.text[at - 1] == '\r');
                ++line_ends;
            }
            const Rows rows = rows_of(file);
            CHECK(rows.size() == line_ends);
            for (const auto& row : rows) CHECK(row.size() == rows[0].size());
        }
    }
}

TEST_CASE("names leave the instructor's PC only when asked for") {
    const ClassResults results = small_class();
    const ClassFigures figures = make_figures(results, Knowledge{});
    for (const CsvFile& file : results_csv(results, figures, false)) {
        CHECK(file.text.find("the first") == std::string::npos);
        CHECK(file.text.find("Ünal") == std::string::npos);
    }
    const auto named = results_csv(results, figures, true);
    const Rows answers = rows_of(named[0]);
    CHECK(answers[0][1] == "seat");
    CHECK(answers[0][2] == "name");
    CHECK(cell(answers, 4, "name") == "Ünal");
    CHECK(cell(rows_of(named[2]), 2, "name") == "Ünal");
}

TEST_CASE("a text that a spreadsheet would run as a formula gets an apostrophe, a negative figure does not") {
    const ClassResults results = small_class();
    const auto files = results_csv(results, make_figures(results, Knowledge{}), true);
    const Rows answers = rows_of(files[0]);
    CHECK(cell(answers, 1, "name") == "'=cmd(\"x\"), the first");
    CHECK(files[0].text.find("\"'=cmd(\"\"x\"\"), the first\"") != std::string::npos);
    CHECK(cell(answers, 1, "response") == "'-12.5 in");
    CHECK(cell(rows_of(files[1]), 1, "minutes_by_luck") == "-8.25");
}

TEST_CASE(
    "figures in a class's tables read back as they were, days are ISO 8601, and what is not told is empty") {
    const ClassResults results = small_class();
    const auto files = results_csv(results, make_figures(results, Knowledge{}), false);
    const Rows answers = rows_of(files[0]);
    CHECK(answers.size() == 18);
    CHECK(cell(answers, 2, "confidence") == "0.7");
    CHECK(cell(answers, 1, "confidence").empty());
    CHECK(cell(answers, 1, "seconds").empty());
    CHECK(cell(answers, 2, "flags") == "disputed");
    CHECK(cell(answers, 1, "day") == "2026-02-16");  // 20500 days after 1970-01-01
    const Rows boats = rows_of(files[1]);
    CHECK(std::stod(cell(boats, 1, "minutes_by_choices")) == 0.1);
    CHECK(cell(boats, 1, "faults") == "air_in_oil hose_kinked");
    const Rows items = rows_of(files[3]);
    CHECK(cell(items, 1, "verdict") == "too_few");
    CHECK(cell(items, 2, "with_rest").empty());  // nobody had it right
    CHECK_FALSE(cell(items, 2, "share_right").empty());
}
