// Every case file of tests/cases, with the shipped knowledge: the right cause comes first.
// Each case names its published row or says that it is invented.
#include <algorithm>
#include <filesystem>

#include "app/rig/functions.hpp"
#include "rules/reading/reading.hpp"
#include "rules/reasoning/assessment.hpp"
#include "support.hpp"

using namespace hardover;
using namespace hardover_tests;

TEST_CASE("Each case file gives the expected cause first") {
    const KnowledgeRead read = read_knowledge_folder(source_path("knowledge"), rig::rig_functions());
    REQUIRE(read.knowledge.has_value());
    const Knowledge& knowledge = *read.knowledge;

    std::vector<std::string> files;
    for (const auto& entry : std::filesystem::directory_iterator(source_path("tests/cases"))) {
        files.push_back(entry.path().string());
    }
    std::sort(files.begin(), files.end());
    REQUIRE(files.size() >= 8);

    for (const std::string& file : files) {
        INFO(file);
        const CaseRead found = read_case({file, file_text(file)}, knowledge);
        for (const Fault& fault : found.faults) UNSCOPED_INFO(fault.text());
        REQUIRE(found.found.has_value());
        const Assessment assessment = assess(knowledge, found.found->facts);
        REQUIRE(assessment.ranking.size() >= 3);
        std::vector<std::string> first_three;
        for (int i = 0; i < 3; ++i) {
            const RankedCause& ranked = assessment.ranking[i];
            first_three.push_back(knowledge.causes[ranked.cause].id);
            UNSCOPED_INFO(first_three.back() << " " << ranked.probability);
        }
        const CaseExpectation& expect = found.found->expect;
        CHECK_FALSE((expect.first.empty() && expect.among_first_three.empty()));
        if (!expect.first.empty()) CHECK(first_three.front() == expect.first);
        for (const std::string& cause : expect.among_first_three) {
            CHECK(std::count(first_three.begin(), first_three.end(), cause) == 1);
        }
    }
}
