// The knowledge that is shipped reads without a fault and makes sense.
#include "app/rig/functions.hpp"
#include "reading/reading_support.hpp"

using namespace hardover;
using namespace hardover_tests;

TEST_CASE("The shipped knowledge reads without a fault or warning") {
    const KnowledgeRead read = read_knowledge_folder(source_path("knowledge"), rig::rig_functions());
    INFO(as_text(read.faults));
    REQUIRE(read.knowledge.has_value());
    CHECK(read.faults.empty());
    CHECK(as_text(check_sense(*read.knowledge)) == "");
}
