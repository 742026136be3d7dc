// The garden pump: a second small knowledge base, in whole or with one place changed, and faults as text.
#pragma once

#include <catch2/catch.hpp>
#include <string>
#include <vector>

#include "rules/reading/reading.hpp"
#include "support.hpp"

namespace hardover_tests {

inline std::vector<hardover::KnowledgeFile> garden_pump() {
    std::vector<hardover::KnowledgeFile> files;
    for (const char* name : {"causes.yaml", "checks.yaml", "findings.yaml", "rules.yaml", "setup.yaml"}) {
        files.push_back({name, file_text(source_path("tests/reading/garden_pump/") + name)});
    }
    return files;
}

// One place of one file, the text now there, the text to put there, and all faults that must come of it.
struct Change {
    std::string what;
    std::string file;
    std::string from;
    std::string to;
    std::string faults = "";
};

// The first place where `from` stands is changed; it must be there.
inline void apply(const Change& change, std::vector<hardover::KnowledgeFile>& files) {
    for (hardover::KnowledgeFile& file : files) {
        if (file.name != change.file) continue;
        const std::size_t at = file.text.find(change.from);
        INFO(change.file << " no longer holds: " << change.from);
        REQUIRE(at != std::string::npos);
        file.text.replace(at, change.from.size(), change.to);
        return;
    }
    FAIL("no file " << change.file);
}

inline std::string as_text(const std::vector<hardover::Fault>& faults) {
    std::string lines;
    for (const hardover::Fault& fault : faults) lines += fault.text() + "\n";
    return lines;
}

inline hardover::KnowledgeRead read_changed(const std::vector<Change>& changes) {
    std::vector<hardover::KnowledgeFile> files = garden_pump();
    for (const Change& change : changes) apply(change, files);
    return hardover::read_knowledge(files, hardover::Functions{});
}

// All messages, a line each. Knowledge with faults must not be given out.
inline std::string faults_after(const Change& change) {
    const hardover::KnowledgeRead read = read_changed({change});
    CHECK_FALSE(read.knowledge.has_value());
    return as_text(read.faults);
}

// The garden pump as shipped with the tests; it must read without a fault.
inline hardover::Knowledge pump_knowledge(const std::vector<Change>& changes = {}) {
    hardover::KnowledgeRead read = read_changed(changes);
    INFO(as_text(read.faults));
    REQUIRE(read.knowledge.has_value());
    REQUIRE(read.faults.empty());
    return std::move(*read.knowledge);
}

}  // namespace hardover_tests
