// kill -9 at random moments: what the program has confirmed is there afterwards, and it goes on from there.
#include "dialogues.hpp"
#include "killed_commands.hpp"
#include "killed_records.hpp"
#include "records_seen.hpp"
#include "scratch_folder.hpp"
#include "support.hpp"
#include "tally.hpp"

using namespace hardover_tests;

namespace {

void require_nothing_lost(const KillOutcome& outcome) {
    for (const std::string& trouble : outcome.troubles) UNSCOPED_INFO(trouble);
    CHECK(outcome.troubles.empty());
    CHECK(outcome.lost == 0);
}

void kill_and_require(const Dialogue& dialogue, int kills, unsigned seed) {
    std::mt19937 random(seed);
    const KillOutcome outcome = kill_dialogue(dialogue, kills, random);
    require_nothing_lost(outcome);
    CHECK(outcome.kills == kills);
    CHECK(outcome.confirmed > kills / 2);
    CHECK(outcome.went_on > kills / 2);
}

void kill_and_require(const Command& command, int kills, unsigned seed) {
    std::mt19937 random(seed);
    const KillOutcome outcome = kill_command(command, kills, random);
    require_nothing_lost(outcome);
    CHECK(outcome.kills == kills);
    CHECK(outcome.went_on == kills);
}

void kill_at_every_write_and_require(Command command) {
    command.fault += ", at each write";
    if (const std::string why = cannot_trace(); !why.empty()) {
        tried(command.fault).left_out = why;
        WARN("left out: " << why);
        return;
    }
    const KillOutcome outcome = kill_at_every_write(command);
    require_nothing_lost(outcome);
    CHECK(outcome.kills > 5);
    CHECK(outcome.went_on > outcome.kills);
}

}  // namespace

TEST_CASE("An interview killed at any moment keeps every confirmed answer and goes on from there") {
    const ScratchFolder folder;
    kill_and_require(interview_dialogue(folder.file("records.db")), so_many(320, 8), 20261126);
}

TEST_CASE("A practice boat left by a kill keeps every confirmed step and goes on from there") {
    const ScratchFolder folder;
    kill_and_require(practice_dialogue(folder.file("records.db")), so_many(100, 4), 20261127);
}

TEST_CASE("A quiz left by a kill keeps every confirmed answer and goes on from there") {
    const ScratchFolder folder;
    kill_and_require(quiz_dialogue(folder.file("records.db")), so_many(130, 4), 20261128);
}

TEST_CASE("A records file killed on its way to the newest version is the old or the new one, and whole") {
    kill_and_require(migration(40), so_many(90, 6), 20261129);
    kill_at_every_write_and_require(migration(3));
}

TEST_CASE("Counts of other shops killed while they are merged are all there or none") {
    kill_and_require(merging_of_counts(), so_many(50, 3), 20261130);
    if (whole_run()) kill_at_every_write_and_require(merging_of_counts());
}

TEST_CASE("A backup killed on its way leaves the records whole and no half copy that counts as one") {
    kill_and_require(backing_up(), so_many(80, 3), 20261201);
    if (whole_run()) kill_at_every_write_and_require(backing_up());
}

TEST_CASE("Records killed while a backup is brought back are the old or the new ones, and the old are kept") {
    kill_and_require(restoring(), so_many(50, 2), 20261202);
    if (whole_run()) kill_at_every_write_and_require(restoring());
}

TEST_CASE("Damaged records killed while they are put right are as found or mended, and go on to be mended") {
    kill_and_require(mending(), so_many(60, 2), 20261205);
    if (whole_run()) kill_at_every_write_and_require(mending());
}

TEST_CASE("Records of another computer killed while they are merged are all there or none") {
    kill_and_require(merging_of_records(), so_many(60, 2), 20261203);
    if (whole_run()) kill_at_every_write_and_require(merging_of_records());
}

TEST_CASE("Hand-ins of a class killed while they are merged are each there as a whole or not at all") {
    kill_and_require(merging_of_hand_ins(), so_many(60, 2), 20261204);
}

TEST_CASE("The kills find a program that confirms answers before it has written them") {
    const ScratchFolder folder;
    Dialogue careless;
    careless.records = folder.file("records.db");
    careless.arguments = [&] { return std::vector<std::string>{careless.records}; };
    careless.line = [](int n) { return "answer " + std::to_string(n); };
    careless.trace = [](int n) { return "answer " + std::to_string(n); };
    careless.on_record = "SELECT answer FROM answers";
    careless.around.program = HARDOVER_CARELESS;
    std::mt19937 random(1);
    CHECK(kill_dialogue(careless, 10, random).lost > 0);
}

TEST_CASE("What is lost is counted: a row gone, a row confirmed but never written, a row nobody gave") {
    const std::vector<std::string> before = {"a", "b", "c"};
    CHECK(count_lost(before, {"d", "e"}, 1, {"a", "b", "c", "d"}) == 0);
    CHECK(count_lost(before, {"d", "e"}, 1, {"a", "b", "c", "d", "e"}) == 0);
    CHECK(count_lost(before, {"d", "e"}, 0, {"a", "b", "c"}) == 0);
    CHECK(count_lost(before, {"d", "e"}, 2, {"a", "b", "c", "d"}) == 1);
    CHECK(count_lost(before, {"d", "e"}, 1, {"a", "b", "d"}) == 1);
    CHECK(count_lost(before, {"d", "e"}, 1, {"a", "b", "c", "e"}) > 0);
    CHECK(count_lost(before, {"d"}, 1, {"a", "c", "b", "d"}) > 0);
    CHECK(count_lost(before, {"d"}, 1, {"a", "b", "c", "x", "d"}) > 0);
}
