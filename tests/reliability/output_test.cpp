// Where the program prints to: a full disk and a closed stream are noticed, and no file is written over.
#include <filesystem>

#include "support.hpp"
#include "tally.hpp"
#include "terminal/program.hpp"

using namespace hardover_tests;

namespace {

// Through a shell that sends the outputs elsewhere: `redirection` as a shell writes it.
Ran run_redirected(const std::vector<std::string>& words, const std::string& redirection) {
    Surroundings around;
    around.through = {"sh", "-c", "exec \"$0\" \"$@\" " + redirection};
    return run_program(words, "", around);
}

const std::vector<std::vector<std::string>> printing = {
    {"--help"}, {"worksheet", "list"}, {"knowledge", "list", "causes"}, {"knowledge", "figures", "--json"}};

}  // namespace

TEST_CASE("What cannot be printed because the disk is full is told, with a code other than 0") {
    for (const std::vector<std::string>& words : printing) {
        const Ran ran = run_redirected(words, ">/dev/full");
        INFO(words.front() << ": " << ran.err);
        Tried& line = tried("standard output on a full disk, or closed");
        ++line.tried;
        line.refused += ran.code == 1 ? 1 : 0;
        CHECK(ran.code == 1);
        CHECK(ran.err.find("what was printed could not all be written") != std::string::npos);
    }
}

TEST_CASE("With its standard streams closed the program writes into none of the files it opens") {
    const TemporaryFolder folder;
    const std::string records = folder.file("records.db");
    REQUIRE(run_program({"--records", records, "interview", "--boat", "Tern"}, "wander\nq\n").code == 0);
    const std::string sheet = folder.file("sheet.pdf");
    REQUIRE(run_program({"--records", records, "job", "sheet", "1", sheet}).code == 0);
    const std::string expected = file_text(sheet);
    for (const char* closed : {">&-", "<&- >&-", "<&- >&- 2>&-"}) {
        INFO(closed);
        std::filesystem::remove(sheet);
        const Ran ran = run_redirected({"--records", records, "job", "sheet", "1", sheet}, closed);
        Tried& line = tried("standard output on a full disk, or closed");
        ++line.tried;
        line.refused += ran.code == 1 ? 1 : 0;
        CHECK(ran.code == 1);
        CHECK(file_text(sheet) == expected);
    }
    CHECK(run_program({"--records", records, "job", "events", "1"}).out.find("wander") != std::string::npos);
}
