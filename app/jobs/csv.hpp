// One record of a CSV file as RFC 4180 has it. Knows nothing of what stands in it.
#pragma once

#include <string>
#include <vector>

namespace hardover {

// Commas between, CR LF at the end; quoted where a field has a comma, a quote or a line end. A spreadsheet
// would take a field that starts with = + - or @ for a formula, so such a text is led in by an apostrophe; a
// plain number is not.
std::string csv_record(const std::vector<std::string>& fields);

}  // namespace hardover
