// What `hardover knowledge check` says of small knowledge bases with one thing wrong in their sense, end to
// end. The base is the garden pump, changed in one place.
#include "reading/reading_support.hpp"
#include "terminal/program.hpp"

using namespace hardover_tests;

namespace {

Ran check_after(const std::vector<Change>& changes) {
    std::vector<hardover::KnowledgeFile> files = garden_pump();
    for (const Change& change : changes) apply(change, files);
    const TemporaryFolder folder;
    for (const hardover::KnowledgeFile& file : files) write_file(folder.file(file.name), file.text);
    return run_program({"knowledge", "check", folder.path()});
}

bool holds(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("Knowledge check passes a base in which nothing is wrong") {
    const Ran ran = check_after({});
    INFO(ran.out << ran.err);
    CHECK(ran.code == 0);
    CHECK(holds(ran.out, "0 faults, 0 warnings"));
}

TEST_CASE("Knowledge check refuses rules that wait for each other, at the first of them") {
    const Ran ran =
        check_after({{"", "rules.yaml", "when: prime is one of (runs_back, sinks) or air_in_flow is spits",
                      "when: fact.delivery_throttled"},
                     {"", "rules.yaml", "when: hose_lie is kinked or nozzle_off is much_more",
                      "when: not fact.suction_side"}});
    INFO(ran.out << ran.err);
    CHECK(ran.code == 1);
    CHECK(holds(ran.out, "rules.yaml:11:3: rules go round in a circle: 'r_water_runs_back' waits for "));
}

TEST_CASE("Knowledge check names a cause that no rig can have") {
    const Ran ran =
        check_after({{"", "causes.yaml", "possible_when: rig.drive is electric",
                      "possible_when: rig.drive is not one of (electric, hand) and rig.lift > 3 ft"}});
    INFO(ran.out << ran.err);
    CHECK(holds(ran.out,
                "causes.yaml:44:3: warning: there is no rig on which the cause 'fuse_blown' is possible"));
}

TEST_CASE("Knowledge check names a finding that nothing uses") {
    const Ran ran =
        check_after({{"", "causes.yaml", "    suction_vacuum: {high: usually, some: 0.2}\n", ""}});
    INFO(ran.out << ran.err);
    CHECK(holds(ran.out, "findings.yaml:52:3: warning: nothing uses the finding 'suction_vacuum'"));
}

TEST_CASE("Knowledge check fails on warnings only when it is told to be strict") {
    std::vector<hardover::KnowledgeFile> files = garden_pump();
    apply({"", "findings.yaml", "  minutes: 1\n", ""}, files);
    const TemporaryFolder folder;
    for (const hardover::KnowledgeFile& file : files) write_file(folder.file(file.name), file.text);
    const Ran lenient = run_program({"knowledge", "check", folder.path()});
    INFO(lenient.out << lenient.err);
    CHECK(lenient.code == 0);
    CHECK(holds(lenient.out, "0 faults, 1 warning\n"));
    CHECK(run_program({"knowledge", "check", folder.path(), "--strict"}).code == 1);
}
