// The JSON Schema and the reader agree: on the shipped files, on snippets that are broken and on snippets
// that only look odd. The schema is judged by the npm packages ajv and yaml, where they can be installed.
#include <filesystem>
#include <sstream>

#include "outside/process.hpp"
#include "reading/reading_support.hpp"
#include "reading/snippets.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

constexpr int not_there = 77;  // exit code of tests/outside/knowledge_schema

KnowledgeRead read_with_pump(const Snippet& snippet) {
    std::vector<KnowledgeFile> files = garden_pump();
    files.push_back({"snippet.yaml", snippet.text});
    return read_knowledge(files, Functions{});
}

// "yes" or "no" by the name of the file or snippet; empty when the packages are not there.
std::vector<std::string> judged_by_schema(std::vector<std::string> files) {
    const std::string folder =
        (std::filesystem::path(HARDOVER_PROGRAM).parent_path() / "outside/schema").string();
    std::vector<std::string> words{source_path("tests/outside/knowledge_schema"), folder,
                                   source_path("knowledge/schema.json")};
    words.insert(words.end(), files.begin(), files.end());
    const Finished ran = run_process(words);
    if (ran.code == not_there) {
        WARN("ajv and yaml are not there and cannot be fetched from npm: the schema is not judged");
        return {};
    }
    REQUIRE(ran.code == 0);
    std::vector<std::string> lines;
    std::istringstream out(ran.out);
    for (std::string line; std::getline(out, line);) lines.push_back(line);
    return lines;
}

void check_all(const std::vector<std::string>& judged, const std::string& wanted) {
    for (const std::string& line : judged) {
        INFO(line);
        CHECK(line.rfind(wanted + "\t", 0) == 0);
    }
}

}  // namespace

TEST_CASE("The reader refuses every broken snippet") {
    const std::vector<Snippet> snippets = snippets_of("broken.txt");
    CHECK(snippets.size() >= 90);
    for (const Snippet& snippet : snippets) {
        const KnowledgeRead read = read_with_pump(snippet);
        INFO(snippet.name << "\n" << as_text(read.faults));
        CHECK_FALSE(read.knowledge.has_value());
        REQUIRE_FALSE(read.faults.empty());
        CHECK(read.faults.front().place.file == "snippet.yaml");
    }
}

TEST_CASE("The reader takes every odd snippet that is right") {
    const std::vector<Snippet> snippets = snippets_of("odd.txt");
    CHECK(snippets.size() >= 35);
    for (const Snippet& snippet : snippets) {
        const KnowledgeRead read = read_with_pump(snippet);
        INFO(snippet.name << "\n" << as_text(read.faults));
        CHECK(read.knowledge.has_value());
    }
}

// One test, so that the packages are fetched once also where tests run side by side.
TEST_CASE("The schema takes what the reader takes: shipped files, odd snippets, and no broken one") {
    for (const char* broken : {"broken.txt", "items_broken.txt"})
        check_all(judged_by_schema({source_path("tests/reading/snippets/") + broken}), "no");
    for (const char* odd : {"odd.txt", "items_odd.txt"})
        check_all(judged_by_schema({source_path("tests/reading/snippets/") + odd}), "yes");
    std::vector<std::string> files;
    for (const char* folder : {"knowledge", "tests/reading/garden_pump"}) {
        for (const auto& entry : std::filesystem::directory_iterator(source_path(folder))) {
            if (entry.path().extension() == ".yaml") files.push_back(entry.path().string());
        }
    }
    check_all(judged_by_schema(files), "yes");
}
