// The garden pump, the small base of the tests of reading, for the fuzz targets.
#pragma once

#include <filesystem>
#include <vector>

#include "fuzz/target.hpp"
#include "rules/reading/reading.hpp"

namespace hardover_fuzz {

inline std::vector<hardover::KnowledgeFile> garden_pump_files() {
    const std::string folder = "tests/reading/garden_pump/";
    std::vector<hardover::KnowledgeFile> files;
    for (const auto& entry : std::filesystem::directory_iterator(HARDOVER_SOURCE_DIR "/" + folder)) {
        const std::string name = entry.path().filename().string();
        files.push_back({name, source_file(folder + name)});
    }
    return files;
}

inline hardover::Knowledge garden_pump() {
    hardover::KnowledgeRead read = read_knowledge(garden_pump_files(), hardover::Functions());
    demand(read.knowledge.has_value(), "the garden pump cannot be read");
    return *std::move(read.knowledge);
}

}  // namespace hardover_fuzz
