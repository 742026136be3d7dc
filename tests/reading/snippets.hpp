// Pieces of knowledge files to be taken or refused, kept in tests/reading/snippets: each after a line
// "=== its name".
#pragma once

#include <sstream>
#include <string>
#include <vector>

#include "support.hpp"

namespace hardover_tests {

struct Snippet {
    std::string name;
    std::string text;
};

inline std::vector<Snippet> snippets_of(const std::string& file) {
    std::vector<Snippet> snippets;
    std::istringstream lines(file_text(source_path("tests/reading/snippets/" + file)));
    for (std::string line; std::getline(lines, line);) {
        if (line.rfind("=== ", 0) == 0) {
            snippets.push_back({line.substr(4), ""});
        } else if (!snippets.empty()) {
            snippets.back().text += line + "\n";
        }
    }
    return snippets;
}

}  // namespace hardover_tests
