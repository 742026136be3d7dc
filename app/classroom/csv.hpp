// Reads comma-separated values (RFC 4180) with the place of every field, so that a fault can be named at
// line and column. Knows no roster.
#pragma once

#include <string>
#include <vector>

#include "rules/result/result.hpp"

namespace hardover::classroom {

struct CsvField {
    std::string text;
    int line = 1;
    int column = 1;  // in letters, from 1
};

// The rows of a text; lines may end with CR LF or LF, empty lines are passed over, and so is a byte order
// mark. `name` is the file's, for errors: a quote that is never closed, a letter after a closing quote, a
// quote inside a field that does not begin with one, text that is not UTF-8.
Result<std::vector<std::vector<CsvField>>> read_csv(const std::string& text, const std::string& name);

// "names.csv:3:7".
std::string place_in(const std::string& name, int line, int column);

}  // namespace hardover::classroom
