// The job sheet as a PDF of one or two pages, black on white. The same sheet gives the same bytes.
#pragma once

#include <string>

#include "app/reports/job_sheet.hpp"
#include "app/reports/pdf_wish.hpp"

namespace hardover {

// Writes the file as a whole or not at all; a file of that name is replaced. Long content is set smaller,
// then shortened with "and N more in the record"; stops, and the names of cautions and deferrals, are never
// left out. Errors: no typeface, cairo's own, what write_whole_file says, content that two pages cannot hold.
Result<PdfMade> write_pdf(const JobSheet& sheet, const std::string& path, const PdfWish& wish);

}  // namespace hardover
