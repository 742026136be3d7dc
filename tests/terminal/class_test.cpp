// A class from the roster to merged results, through the built program: an instructor's PC, two students'
// PCs, and files carried between them.
#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <sstream>

#include "support.hpp"
#include "terminal/program.hpp"
#include "terminal/records_of_own.hpp"

using namespace hardover_tests;
using nlohmann::json;
namespace fs = std::filesystem;

namespace {

// A room with an instructor's PC and a stick that goes round.
class Room {
  public:
    Room() {
        write_file(passphrase(), "six words nobody would guess\n");
        const Ran made = instructor({"new", "Evening"});
        INFO(made.err);
        REQUIRE(made.code == 0);
        write_file(stick.file("roster.csv"),
                   "seat,name,group\nA01,Invented One,Port\nA02,,Starboard\nA03,,\n");
        REQUIRE(instructor({"roster", "import", stick.file("roster.csv")}).code == 0);
    }

    std::string passphrase() const { return stick.file("passphrase"); }

    Ran instructor(std::vector<std::string> words) const { return on("instructor.db", std::move(words)); }

    Ran on(const std::string& records, std::vector<std::string> words, const std::string& input = "") const {
        words.insert(words.begin(),
                     {"--records", stick.file(records), "class", "--passphrase-file", passphrase()});
        return run_program(words, input);
    }

    // Takes the set at a seat, answers, and hands it in.
    void take(const std::string& set, const std::string& seat, const std::string& typed) const {
        const std::string records = "pc_" + seat + ".db";
        const Ran taken = on(records, {"take", stick.file(set), "--seat", seat}, typed);
        INFO(taken.err << taken.out);
        REQUIRE(taken.code == 0);
        const Ran handed = on(records, {"hand-in", stick.path(), "--seat", seat});
        INFO(handed.err);
        REQUIRE(handed.code == 0);
    }

    TemporaryFolder stick;
};

// A text as one line, whatever the width it was wrapped to.
std::string unwrapped(const std::string& text) {
    std::istringstream in(text);
    std::string line;
    for (std::string word; in >> word;) line += (line.empty() ? "" : " ") + word;
    return line;
}

json figures(const Room& room, const std::string& records) {
    const Ran ran = room.on(records, {"figures", "--json"});
    INFO(ran.err);
    REQUIRE(ran.code == 0);
    return json::parse(ran.out);
}

}  // namespace

TEST_CASE("A class goes from the roster to merged results, the same in any order and however often") {
    const Room room;
    const Ran made = room.instructor({"set", "make", room.stick.path(), "quiz topic=signs count=3 seed=4",
                                      "boat level=1 seed=3", "--title", "First", "--json"});
    INFO(made.err);
    REQUIRE(made.code == 0);
    CHECK(json::parse(made.out)["id"] == "S1");
    CHECK(json::parse(made.out)["seats"].size() == 3);

    room.take("S1.hardover-set", "A01", "a @ 90\nb\n?\ncall\nno\ncall\nyes\n");
    room.take("S1.hardover-set", "A02", "b\nb\n");  // leaves in the middle
    const std::string first = room.stick.file("S1_A01.hardover-hand-in");
    const std::string other = room.stick.file("S1_A02.hardover-hand-in");

    fs::copy_file(room.stick.file("instructor.db"), room.stick.file("second.db"));
    const Ran merged = room.instructor({"merge", first, other});
    INFO(merged.err);
    CHECK(merged.code == 0);
    CHECK(unwrapped(merged.out).find("seat A01, set S1: 7 of 7 records are new.") != std::string::npos);
    CHECK(unwrapped(merged.out).find("Not handed in yet, S1: A03") != std::string::npos);
    const Ran again = room.instructor({"merge", other, first, other});
    CHECK(unwrapped(again.out).find("3 files, 0 refused, 0 new records.") != std::string::npos);
    REQUIRE(room.on("second.db", {"merge", other}).code == 0);
    REQUIRE(room.on("second.db", {"merge", first}).code == 0);
    const json results = figures(room, "instructor.db");
    CHECK(results == figures(room, "second.db"));
    CHECK(results["answers"] == 5);
    CHECK(results["boats"]["boats"] == 1);
    CHECK(results["learners"] == 2);
    CHECK(room.instructor({"check"}).code == 0);

    // Going on at the seat and handing in once more brings what is new, no more.
    room.take("S1.hardover-set", "A02", "c\ncall\nyes\n");
    const Ran later = room.instructor({"merge", other});
    INFO(later.out);
    CHECK(unwrapped(later.out).find("seat A02, set S1: 4 of 7 records are new.") != std::string::npos);
    CHECK(figures(room, "instructor.db")["answers"] == 6);
}

TEST_CASE("A hand-in that was changed is refused with one message and the others are merged") {
    const Room room;
    REQUIRE(room.instructor({"set", "make", room.stick.path(), "quiz topic=signs count=2"}).code == 0);
    room.take("S1.hardover-set", "A01", "a\na\n");
    room.take("S1.hardover-set", "A02", "b\nb\n");
    const std::string path = room.stick.file("S1_A01.hardover-hand-in");
    std::string text = file_text(path);
    text.replace(text.find("\"answer\":\"a\""), 12, "\"answer\":\"b\"");
    write_file(path, text);
    const Ran merged = room.instructor({"merge", path, room.stick.file("S1_A02.hardover-hand-in")});
    CHECK(merged.code == 1);
    CHECK(unwrapped(merged.out).find("was changed after it was made") != std::string::npos);
    CHECK(unwrapped(merged.out).find("2 files, 1 refused, 4 new records.") != std::string::npos);
}

TEST_CASE("A hand-in that is not there is named, and the others are merged all the same") {
    const Room room;
    REQUIRE(room.instructor({"set", "make", room.stick.path(), "quiz topic=signs count=2"}).code == 0);
    room.take("S1.hardover-set", "A02", "b\nb\n");
    const std::string gone = room.stick.file("S1_A09.hardover-hand-in");
    const Ran merged = room.instructor({"merge", gone, room.stick.file("S1_A02.hardover-hand-in")});
    CHECK(merged.code == 1);
    CHECK(unwrapped(merged.out).find(gone + ": the file cannot be read") != std::string::npos);
    CHECK(unwrapped(merged.out).find("2 files, 1 refused, 4 new records.") != std::string::npos);
    CHECK(room.instructor({"merge", gone}).err.find(gone) != std::string::npos);
}

TEST_CASE("A task whose number cannot be names the task, and what it may be") {
    const Room room;
    for (const auto& [task, told] : {std::pair("quiz count=0", "count has to be from 1 to 200, not 0"),
                                     std::pair("quiz count=201", "count has to be from 1 to 200, not 201"),
                                     std::pair("boat level=9", "level has to be from 1 to 5, not 9")}) {
        const Ran ran = room.instructor({"set", "make", room.stick.path(), task});
        INFO(ran.err);
        CHECK(ran.code == 1);
        CHECK(unwrapped(ran.err).find(std::string("task '") + task + "': " + told) != std::string::npos);
    }
}

TEST_CASE(
    "A graded set opens with its start code, says nothing of marks, and is marked behind the passphrase") {
    const Room room;
    const Ran made =
        room.instructor({"set", "make", room.stick.path(), "quiz topic=signs count=2", "--graded", "--json"});
    INFO(made.err);
    REQUIRE(made.code == 0);
    const std::string code = json::parse(made.out)["start_code"].get<std::string>();
    CHECK(room.instructor({"set", "start-code", "S1"}).out == code + "\n");
    const std::string set = room.stick.file("S1.hardover-set");
    const Ran wrong = room.on("pc.db", {"take", set, "--seat", "A01"}, "acorn actor agent album\na\na\n");
    CHECK(wrong.code == 1);
    CHECK(wrong.err.find("this is not the start code of set S1") != std::string::npos);
    const Ran taken = room.on("pc.db", {"take", set, "--seat", "A01"}, code + "\na\nb @ 80\n");
    INFO(taken.err << taken.out);
    CHECK(taken.code == 0);
    CHECK(taken.out.find("Noted.") != std::string::npos);
    // As a verdict says it; a cause may be called "Wrong oil".
    for (const char* telling : {"Right.", "Right is", "Not right", "Partly right", "seed"}) {
        INFO(telling);
        CHECK(taken.out.find(telling) == std::string::npos);
    }
    REQUIRE(room.on("pc.db", {"hand-in", room.stick.path(), "--seat", "a01"}).code == 0);
    REQUIRE(room.instructor({"merge", room.stick.file("S1_A01.hardover-hand-in")}).code == 0);
    CHECK(figures(room, "instructor.db")["answers"] == 2);
    const Ran without = run_program({"--records", room.stick.file("instructor.db"), "class", "figures"});
    CHECK(without.out.find("marked once the passphrase is given") != std::string::npos);
}

TEST_CASE("A wrong passphrase gives one message, and the passphrase never stands on the command line") {
    const Room room;
    write_file(room.stick.file("wrong"), "six words somebody would guess\n");
    const std::vector<std::string> make = {
        "--records",   room.stick.file("instructor.db"), "class", "set", "make", room.stick.path(),
        "quiz count=2"};
    std::vector<std::string> words = make;
    words.insert(words.end(), {"--passphrase-file", room.stick.file("wrong")});
    const Ran wrong = run_program(words);
    CHECK(wrong.code == 1);
    CHECK(unwrapped(wrong.err).find("do not open the class '") != std::string::npos);
    CHECK(unwrapped(wrong.err).find("they are not its passphrase") != std::string::npos);
    CHECK_FALSE(fs::exists(room.stick.file("S1.hardover-set")));
    const Ran nobody = run_program(make);
    CHECK(nobody.code == 1);
    CHECK(nobody.err.find("--passphrase-file FILE") != std::string::npos);
    words = make;
    words.insert(words.end(), {"--passphrase-file", "-"});
    CHECK(run_program(words, "six words nobody would guess\n").code == 0);
    write_file(room.stick.file("new"), "other words nobody would guess\n");
    REQUIRE(room.instructor({"passphrase", "--new-passphrase-file", room.stick.file("new")}).code == 0);
    CHECK(room.instructor({"set", "make", room.stick.path(), "quiz count=2"}).code == 1);
}

TEST_CASE("A set killed in the middle of a quiz goes on with every answer there") {
    const Room room;
    REQUIRE(room.instructor({"set", "make", room.stick.path(), "quiz topic=signs count=3 seed=4"}).code == 0);
    const std::string records = room.stick.file("pc.db");
    {
        RunningProgram taking(
            {"--records", records, "class", "take", room.stick.file("S1.hardover-set"), "--seat", "A03"});
        REQUIRE(taking.wait_for_prompt(1));
        taking.type("a");
        REQUIRE(taking.wait_for_prompt(2));
        taking.type("b");
        REQUIRE(taking.wait_for_prompt(3));
        taking.kill_hard();
    }
    const Ran again = room.on("pc.db", {"take", room.stick.file("S1.hardover-set"), "--seat", "A03"}, "c\n");
    INFO(again.out);
    CHECK(again.out.find("3 of 3") != std::string::npos);
    CHECK(again.out.find("2 of 3") == std::string::npos);
    CHECK(again.out.find("All 1 tasks are done.") != std::string::npos);
    const Ran taken = room.on("pc.db", {"taken", "--json"});
    CHECK(json::parse(taken.out)[0]["records"] == 5);
    CHECK(room.on("pc.db", {"purge", "--seat", "A03"}).code == 1);
    REQUIRE(room.on("pc.db", {"hand-in", room.stick.path(), "--seat", "A03"}).code == 0);
    CHECK(room.on("pc.db", {"purge", "--seat", "A03"}).code == 0);
}

TEST_CASE("The roster is changed seat by seat, and a fault in a table is told at its place") {
    const Room room;
    REQUIRE(room.instructor({"roster", "add", "B01", "--name", "Invented Four"}).code == 0);
    REQUIRE(room.instructor({"roster", "rename", "A01"}).code == 0);
    REQUIRE(room.instructor({"roster", "group", "A03", "Port"}).code == 0);
    REQUIRE(room.instructor({"roster", "remove", "A02"}).code == 0);
    const json roster = json::parse(room.instructor({"roster", "list", "--json"}).out);
    REQUIRE(roster.size() == 3);
    CHECK(roster[0] == json({{"seat", "A01"}, {"name", ""}, {"group", "Port"}}));
    CHECK(roster[1]["group"] == "Port");
    CHECK(roster[2]["name"] == "Invented Four");
    write_file(room.stick.file("bad.csv"), "seat\nC 1\n");
    const Ran bad = room.instructor({"roster", "import", room.stick.file("bad.csv")});
    CHECK(bad.code == 1);
    CHECK(bad.err.find("bad.csv:2:1: 'C 1' is no code of a seat") != std::string::npos);
    const Ran odd = room.instructor({"set", "make", room.stick.path(), "quiz topic=wanders"});
    CHECK(odd.err.find("there is no topic 'wanders' (did you mean 'wander'?)") != std::string::npos);
    const Ran task = room.instructor({"set", "make", room.stick.path(), "boat count=2"});
    CHECK(task.err.find("task 'boat count=2': 'count' is nothing a boat has") != std::string::npos);
}

TEST_CASE("What the signatures protect against is said, and what not") {
    const Ran ran = run_program({"class", "protects"});
    CHECK(ran.out.find("protect against:") != std::string::npos);
    CHECK(unwrapped(ran.out).find("Someone else in the seat") != std::string::npos);
    CHECK(unwrapped(ran.out).find("It is no security for exams.") != std::string::npos);
}

TEST_CASE("The demo class is built with files as a real one has and says that it is invented") {
    const TemporaryFolder folder;
    const std::string out = folder.file("demo");
    const Ran demo = run_program({"class", "demo", out});
    INFO(demo.err << demo.out);
    REQUIRE(demo.code == 0);
    CHECK(demo.out.find("invented") != std::string::npos);
    CHECK(demo.out.find("Merged 58 hand-ins") != std::string::npos);
    CHECK(unwrapped(demo.out).find("Merged once more in the other order: 0 records are new.") !=
          std::string::npos);
    CHECK(demo.out.find("Refused.") != std::string::npos);
    CHECK(unwrapped(demo.out).find("checked again: 0 faults") != std::string::npos);
    CHECK(file_text(out + "/roster.csv").find("Invented learner 20") != std::string::npos);
    const std::vector<std::string> seat = {"--records", out + "/records.db", "class", "--passphrase-file",
                                           out + "/passphrase.txt"};
    std::vector<std::string> merge = seat;
    merge.insert(merge.end(), {"merge", out + "/hand-ins/S1_A01.hardover-hand-in"});
    const Ran again = run_program(merge);
    CHECK(again.out.find("nothing new") != std::string::npos);
    CHECK(run_program({"class", "demo", out}).code == 1);
}

TEST_CASE(
    "A lost passphrase is replaced by the words of the recovery sheet, which stand on it and nowhere else") {
    const Room room;
    const Ran written = room.instructor({"recovery-sheet", room.stick.file("recovery.pdf")});
    INFO(written.err);
    REQUIRE(written.code == 0);
    Surroundings reader;
    reader.program = "pdftotext";
    std::istringstream page(run_program({"-layout", room.stick.file("recovery.pdf"), "-"}, "", reader).out);
    std::string words;
    for (std::string line; std::getline(page, line);) {
        if (line.find("small letters with a blank") == std::string::npos) continue;
        while (words.empty() && std::getline(page, line)) words = line;
    }
    REQUIRE(std::count(words.begin(), words.end(), ' ') >= 7);
    CHECK(file_text(room.stick.file("instructor.db")).find(words) == std::string::npos);
    write_file(room.stick.file("words"), words + "\n");
    write_file(room.stick.file("new"), "six other words this time\n");
    const auto change = [&](const std::string& by) {
        return run_program({"--records", room.stick.file("instructor.db"), "class", "--passphrase-file", by,
                            "passphrase", "--recovery", "--new-passphrase-file", room.stick.file("new")});
    };
    const Ran wrong = change(room.passphrase());
    CHECK(wrong.code == 1);
    CHECK(unwrapped(wrong.err).find("recovery sheet") != std::string::npos);
    const Ran changed = change(room.stick.file("words"));
    INFO(changed.err);
    CHECK(changed.code == 0);
    CHECK(room.instructor({"set", "make", room.stick.path(), "quiz count=3"}).code == 1);
    fs::copy_file(room.stick.file("new"), room.passphrase(), fs::copy_options::overwrite_existing);
    CHECK(room.instructor({"set", "make", room.stick.path(), "quiz count=3"}).code == 0);
}

TEST_CASE("A set of three years ago is offered for deletion, and goes only when that is said") {
    const Room room;
    Surroundings then;
    then.clock = "2023-11-26 08:00:00";
    const std::vector<std::string> of_class = {"--records", room.stick.file("instructor.db"), "class",
                                               "--passphrase-file", room.passphrase()};
    std::vector<std::string> make = of_class;
    make.insert(make.end(), {"set", "make", room.stick.path(), "quiz topic=signs count=3 seed=4"});
    REQUIRE(run_program(make, "", then).code == 0);
    room.take("S1.hardover-set", "A01", "a @ 90\nb\n?\n");
    std::vector<std::string> merge = of_class;
    merge.insert(merge.end(), {"merge", room.stick.file("S1_A01.hardover-hand-in")});
    REQUIRE(run_program(merge, "", then).code == 0);
    REQUIRE(room.instructor({"set", "make", room.stick.path(), "quiz topic=signs count=3 seed=5"}).code == 0);

    CHECK(unwrapped(room.instructor({"list"}).out).find("One set last used more than 24 months ago") !=
          std::string::npos);
    const Ran listed = room.instructor({"clear-out"});
    CHECK(unwrapped(listed.out).find("S1 last used 2023-11-26, 1 hand-in") != std::string::npos);
    CHECK(listed.out.find("S2") == std::string::npos);
    CHECK(figures(room, "instructor.db")["answers"] == 3);
    const Ran gone = room.instructor({"clear-out", "--yes"});
    CHECK(unwrapped(gone.out).find("1 hand-in: deleted") != std::string::npos);
    CHECK(figures(room, "instructor.db")["answers"] == 0);
    CHECK(room.instructor({"check"}).code == 0);
    CHECK(room.instructor({"clear-out", "--yes"}).out.find("No set") == 0);
    const Ran again = room.instructor({"merge", room.stick.file("S1_A01.hardover-hand-in")});
    INFO(again.out);
    CHECK(again.code == 1);
}

TEST_CASE("A set whose folder is not there, or takes no file, is not made") {
    const Room room;
    const Ran refused = room.instructor({"set", "make", room.stick.file("no_stick"), "boat level=1"});
    CHECK(refused.code == 1);
    CHECK(refused.err == "hardover: " + room.stick.file("no_stick") +
                             ": this folder is not there (make it, or look whether the name is right and the "
                             "stick is plugged in)\n");
    CHECK(json::parse(room.instructor({"set", "list", "--json"}).out).empty());
    fs::create_directory(room.stick.file("S1.hardover-set"));  // in the way of the file
    const Ran blocked = room.instructor({"set", "make", room.stick.path(), "boat level=1"});
    CHECK(blocked.code == 1);
    CHECK(json::parse(room.instructor({"set", "list", "--json"}).out).empty());
    fs::remove(room.stick.file("S1.hardover-set"));
    const Ran made = room.instructor({"set", "make", room.stick.path(), "boat level=1", "--json"});
    CHECK(json::parse(made.out)["id"] == "S1");
}
