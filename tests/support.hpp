// What all tests share: results that must be in order, and files of the source tree.
#pragma once

#include <catch2/catch.hpp>
#include <fstream>
#include <sstream>
#include <string>

// Fails with the error's own words when a Result is an error.
#define REQUIRE_OK(result)                                                           \
    do {                                                                             \
        const auto& checked_result = (result);                                       \
        INFO((checked_result.ok() ? std::string() : checked_result.error().text())); \
        REQUIRE(checked_result.ok());                                                \
    } while (false)

namespace hardover_tests {

// A path inside the source tree, as "knowledge/rig.yaml".
inline std::string source_path(const std::string& path) {
    return std::string(HARDOVER_SOURCE_DIR) + "/" + path;
}

inline std::string file_text(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

}  // namespace hardover_tests
