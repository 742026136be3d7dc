// A class's results and figures as comma-separated values (RFC 4180) for a spreadsheet or a school's own
// program: UTF-8, CR LF, first line the names of the columns, decimal points, days as ISO 8601, stable ids. A
// text that a spreadsheet would take for a formula gets an apostrophe in front. Pure: writes no file.
//
// The columns are listed in DEVELOPERS.md; a new order or meaning of columns gives the file a new version.
#pragma once

#include <string>
#include <vector>

#include "app/classroom/figures.hpp"
#include "app/classroom/results.hpp"

namespace hardover::classroom {

struct CsvFile {
    std::string name;  // "answers_v1.csv"
    std::string text;
};

// Answers, boats, learners and items, in this order. With names the tables with a seat carry a column `name`
// after it; disputed results stand among the answers and boats and are flagged.
std::vector<CsvFile> results_csv(const ClassResults& results, const ClassFigures& figures, bool with_names);

}  // namespace hardover::classroom
