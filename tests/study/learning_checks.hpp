// The published and computed check values of tests/reference/learning_checks.yaml, and the class of 24 in
// them.
#pragma once

#include <yaml-cpp/yaml.h>

#include <string>
#include <vector>

#include "support.hpp"

namespace hardover_tests {

inline YAML::Node learning_checks(const std::string& section) {
    static const YAML::Node file = YAML::LoadFile(source_path("tests/reference/learning_checks.yaml"));
    return file[section];
}

// Rows such as '111011010001', the first `columns` of each.
inline std::vector<std::vector<int>> matrix_of(const YAML::Node& rows, std::size_t columns) {
    std::vector<std::vector<int>> matrix;
    for (const auto& row : rows) {
        std::vector<int> answers;
        for (const char letter : row.as<std::string>().substr(0, columns)) answers.push_back(letter - '0');
        matrix.push_back(answers);
    }
    return matrix;
}

inline std::vector<double> numbers_of(const YAML::Node& list) {
    return list.as<std::vector<double>>();
}

}  // namespace hardover_tests
