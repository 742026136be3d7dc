// Letters for comparing names and words: small and large count as the same, in every script that has both.
// Knows no records.
#pragma once

#include <sqlite3.h>

#include <string>
#include <string_view>

namespace hardover {

// For comparing only. Letters that are written as one sign or as two (Ö) come out the same; what is no UTF-8
// keeps its bytes but for A to Z.
std::string folded(std::string_view text);

// How many letters a text has; of what is no UTF-8 how many bytes.
std::size_t letters_in(const std::string& text);

namespace records_detail {

// Gives the database the SQL function `folded`. SQLite's code.
int add_folded_function(sqlite3* handle);

}  // namespace records_detail

}  // namespace hardover
