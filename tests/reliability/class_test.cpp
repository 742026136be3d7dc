// A class in odd surroundings: without a network, with clocks set back at a seat or at the instructor's, with
// the key of a seat's PC gone or another's, with the records reached by two ways at once.
#include <algorithm>
#include <filesystem>

#include "cut_off.hpp"
#include "records_seen.hpp"
#include "support.hpp"
#include "tally.hpp"
#include "terminal/program.hpp"

using namespace hardover_tests;
namespace fs = std::filesystem;

namespace {

bool holds(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

std::string in_one_line(std::string text) {
    std::replace(text.begin(), text.end(), '\n', ' ');
    return text;
}

// A class of two seats with a set, each PC with records of its own.
class Room {
  public:
    Room() {
        write_file(folder.file("passphrase"), "six words nobody would guess\n");
        write_file(folder.file("roster.csv"), "seat\nA01\nA02\n");
    }

    Ran on(const std::string& pc, std::vector<std::string> words, const std::string& input = "",
           const Surroundings& around = {}) const {
        words.insert(words.begin(), {"--records", folder.file(pc + ".db"), "class", "--passphrase-file",
                                     folder.file("passphrase")});
        return run_program(words, input, around);
    }

    void begin(const Surroundings& around = {}) const {
        must("instructor", {"new", "Evening"}, "", around);
        must("instructor", {"roster", "import", folder.file("roster.csv")}, "", around);
        must("instructor", {"set", "make", folder.path(), "quiz topic=signs count=3 seed=4"}, "", around);
    }
    void sit(const std::string& pc, const std::string& seat, const Surroundings& around = {}) const {
        must(pc, {"take", folder.file("S1.hardover-set"), "--seat", seat}, "a @ 90\nb\n?\n", around);
        must(pc, {"hand-in", folder.path(), "--seat", seat}, "", around);
    }
    std::string must(const std::string& pc, const std::vector<std::string>& words,
                     const std::string& input = "", const Surroundings& around = {}) const {
        const Ran ran = on(pc, words, input, around);
        INFO(words.front() << ": " << ran.err << ran.out);
        CHECK(ran.code == 0);
        return in_one_line(ran.out);
    }
    std::string hand_in(const std::string& seat) const {
        return folder.file("S1_" + seat + ".hardover-hand-in");
    }
    // The sequences of an attempt's records as the instructor's program has them.
    std::vector<std::string> collected() const {
        return see_records(
                   folder.file("instructor.db"),
                   "SELECT group_concat(sequence) FROM (SELECT attempt, sequence FROM class_records ORDER "
                   "BY attempt, sequence) GROUP BY attempt")
            .rows;
    }

    TemporaryFolder folder;
};

Surroundings at(const char* when) {
    Surroundings around;
    around.clock = when;
    return around;
}

}  // namespace

TEST_CASE("A class goes from its keys to its figures without a network interface and opens no socket") {
    if (!whole_run()) return;
    if (const std::string why = cannot_cut_off(); !why.empty()) return leave_out_network(why);
    const Room room;
    Surroundings around;
    const std::string trace = room.folder.file("trace");
    around.through = cut_off(trace);
    const auto run = [&](const std::string& pc, const std::vector<std::string>& words,
                         const std::string& input = "") {
        room.must(pc, words, input, around);
        INFO(words.front() << ": " << reached_out(trace, false));
        CHECK(reached_out(trace, false).empty());
        ++tried(no_network).tried;
        ++tried(no_network).carried_on;
    };
    run("instructor", {"new", "Evening"});
    run("instructor", {"roster", "import", room.folder.file("roster.csv")});
    run("instructor", {"set", "make", room.folder.path(), "quiz topic=signs count=3 seed=4"});
    run("seat", {"take", room.folder.file("S1.hardover-set"), "--seat", "A01"}, "a @ 90\nb\n?\n");
    run("seat", {"hand-in", room.folder.path(), "--seat", "A01"});
    run("instructor", {"merge", room.hand_in("A01")});
    run("instructor", {"figures"});
    run("instructor", {"csv", room.folder.file("csv")});
    run("instructor", {"sheet", room.folder.file("class.pdf")});
    run("instructor", {"qti", room.folder.file("items.zip"), "--count", "3"});
    run("instructor", {"recovery-sheet", room.folder.file("recovery.pdf")});
    run("instructor", {"project", "--seed", "7", "--level", "1"}, "quit\n");
}

TEST_CASE(
    "With clocks set back at a seat or at the instructor's, records keep their order and all are taken") {
    const Room room;
    room.begin(at("2026-11-26 08:00:00"));
    const Surroundings back = at("2001-01-01 00:00:00");
    room.must("first", {"take", room.folder.file("S1.hardover-set"), "--seat", "A01"}, "a @ 90\nq\n",
              at("2026-11-26 08:00:00"));
    room.sit("first", "A01", back);  // goes on, in another century
    room.sit("second", "A02", at("2026-11-26 08:00:00"));
    CHECK(holds(room.must("instructor", {"merge", room.hand_in("A01"), room.hand_in("A02")}, "", back),
                "2 files, 0 refused"));
    room.must("instructor", {"check"}, "", back);
    const auto collected = room.collected();
    REQUIRE(collected.size() == 2);
    for (const std::string& sequences : collected) CHECK(sequences.rfind("1,2,3", 0) == 0);
    Tried& line = tried("clock set back at a seat and at the instructor's");
    line = {line.fault, 2, 0, 2, static_cast<long>(collected.size()), 0, ""};
}

TEST_CASE(
    "A seat whose PC lost its records, or which moves to another PC, hands in and is told to be elsewhere") {
    const Room room;
    room.begin();
    room.sit("first", "A01");
    const std::string merged = room.must("instructor", {"merge", room.hand_in("A01")});
    CHECK_FALSE(holds(merged, "another PC"));
    fs::remove(room.hand_in("A01"));
    room.sit("fresh", "A01");  // a new key, a new attempt
    const std::string again = room.must("instructor", {"merge", room.hand_in("A01")});
    INFO(again);
    CHECK(holds(again, "another PC"));
    CHECK(room.collected().size() == 2);  // the first attempt stays
    room.must("instructor", {"check"});
    Tried& line = tried("a seat's PC with another key than before");
    line = {line.fault, 1, 0, 1, 2, 0, ""};
}

TEST_CASE("Two programs that reach one folder by different ways, as on a share, lose nothing") {
    const char* fault = "programs reaching one folder by two ways (bind mount)";
    const TemporaryFolder folder;
    fs::create_directory(folder.file("here"));
    fs::create_directory(folder.file("there"));
    constexpr int each = 20;
    std::string notes;
    for (int i = 0; i < each; ++i) notes += "note " + std::to_string(i) + "\n";
    write_file(folder.file("notes"), notes + "q\n");
    Surroundings around;
    around.folder = folder.path();
    around.through = {"unshare", "-rm", "sh", "-c",
                      "mount --bind here there || exit 99; \"$0\" --records here/records.db learner add A07 "
                      ">/dev/null || exit 98; "
                      "\"$0\" --records here/records.db interview --boat Tern <notes >one & first=$!; "
                      "\"$0\" --records there/records.db interview --boat Gull <notes >two; second=$?; "
                      "wait $first && exit $second"};
    const Ran ran = run_program({}, "", around);
    if (ran.code == 99) {
        tried(fault).left_out = "no folder can be mounted here";
        return;
    }
    INFO(ran.err);
    CHECK(ran.code == 0);
    const std::string told = in_one_line(file_text(folder.file("one")) + file_text(folder.file("two")));
    long refused = 0;
    const std::string held = "another program is holding the records file";
    for (std::size_t n = told.find(held); n != std::string::npos; n = told.find(held, n + 1)) ++refused;
    const auto seen =
        see_records(folder.file("here/records.db"), "SELECT 1 FROM events WHERE kind = 'noted'");
    CHECK(seen.trouble.empty());
    const long found = static_cast<long>(seen.rows.size());
    CHECK(found == 2 * each - refused);
    Tried& line = tried(fault);
    line = {line.fault, 2, refused, 2, 2 * each - refused, std::max(0L, 2 * each - refused - found), ""};
}
