// A class's figures on paper: sentences, plots and tables on one to three pages, black on white. The same
// figures give the same bytes.
#pragma once

#include <string>

#include "app/classroom/figures_page.hpp"
#include "app/reports/pdf_wish.hpp"
#include "rules/result/result.hpp"

namespace hardover {

struct ClassSheet {
    classroom::FiguresPage page;
    std::string class_name;
    std::string day;  // of the last result, ISO 8601; "" when there is none
};
ClassSheet make_class_sheet(const classroom::ClassResults& results, const classroom::ClassFigures& figures,
                            bool with_names);

// Writes the file as a whole or not at all. Tables that do not fit are cut, with the number of rows left out.
// Errors: no typeface, cairo's own, what write_whole_file says.
Result<PdfMade> write_class_sheet_pdf(const ClassSheet& sheet, const std::string& path, const PdfWish& wish);

}  // namespace hardover
