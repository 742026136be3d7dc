// What goes out of a class, from the built program: tables, the class sheet, QTI items, a quiz on paper.
#include <filesystem>

#include "support.hpp"
#include "terminal/program.hpp"

using namespace hardover_tests;

namespace {

bool holds(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("questions go out as QTI and on paper, the same for the same seed, without any class on file") {
    const TemporaryFolder folder;
    const auto run = [&](const std::string& what, const std::string& out, const std::string& seed) {
        return run_program({"--records", folder.file("records.db"), "class", what, folder.file(out),
                            "--topic", "place", "--count", "3", "--seed", seed});
    };
    const Ran zip = run("qti", "one.zip", "5");
    INFO(zip.err);
    REQUIRE(zip.code == 0);
    CHECK(holds(zip.out, "3 questions as QTI 2.2"));
    REQUIRE(run("qti", "two.zip", "5").code == 0);
    CHECK(file_text(folder.file("one.zip")) == file_text(folder.file("two.zip")));
    REQUIRE(run("qti", "other.zip", "6").code == 0);
    CHECK(file_text(folder.file("one.zip")) != file_text(folder.file("other.zip")));
    REQUIRE(run("qti", "folder", "5").code == 0);
    for (const char* name : {"imsmanifest.xml", "items/q01.xml", "items/q01.png", "items/q03.xml"}) {
        INFO(name);
        CHECK(std::filesystem::is_regular_file(folder.file(std::string("folder/") + name)));
    }
    const Ran paper = run("paper", "quiz.pdf", "5");
    INFO(paper.err);
    REQUIRE(paper.code == 0);
    CHECK(holds(paper.out, "The quiz with its key is written to"));
    CHECK(file_text(folder.file("quiz.pdf")).rfind("%PDF-", 0) == 0);
}

TEST_CASE("questions do not go among other files, nor into a folder that is made up on the way") {
    const TemporaryFolder folder;
    const auto qti = [&](const std::string& out, const std::string& count) {
        return run_program({"--records", folder.file("records.db"), "class", "qti", folder.file(out),
                            "--topic", "place", "--count", count, "--seed", "5"});
    };
    REQUIRE(qti("set", "3").code == 0);
    const Ran again = qti("set", "2");
    CHECK(again.code == 1);
    CHECK(holds(again.err, "there are files in this folder already"));
    CHECK(std::filesystem::exists(folder.file("set/items/q03.xml")));
    CHECK(qti("stick/set", "2").code == 1);
    CHECK(qti("stick/set.zip", "2").code == 1);
    CHECK_FALSE(std::filesystem::exists(folder.file("stick")));
    REQUIRE(qti("SET.ZIP", "2").code == 0);
    CHECK(file_text(folder.file("SET.ZIP")).rfind("PK", 0) == 0);
    REQUIRE(run_program({"--records", folder.file("records.db"), "learner", "add", "Ann"}).code == 0);
    const Ran backup =
        run_program({"--records", folder.file("records.db"), "records", "backup", folder.file("stick/copy")});
    CHECK(backup.code == 1);
    CHECK(holds(backup.err, folder.file("stick") + ": this folder is not there"));
    CHECK_FALSE(std::filesystem::exists(folder.file("stick")));
}

TEST_CASE("a topic that is not there, a folder that cannot be and a missing class are refused in one line") {
    const TemporaryFolder folder;
    const std::string records = folder.file("records.db");
    const Ran topic =
        run_program({"--records", records, "class", "qti", folder.file("x.zip"), "--topic", "plase"});
    CHECK(topic.code == 1);
    CHECK(holds(topic.err, "plase"));
    CHECK(holds(topic.err, "place"));
    write_file(folder.file("in_the_way"), "a file");
    const Ran place =
        run_program({"--records", records, "class", "qti", folder.file("in_the_way"), "--topic", "place"});
    CHECK(place.code == 1);
    CHECK(holds(place.err, folder.file("in_the_way")));
    for (const char* what : {"csv", "sheet"}) {
        const Ran none = run_program({"--records", records, "class", what, folder.file("out")});
        CHECK(none.code == 1);
        CHECK(holds(none.err, "hardover: "));
        CHECK_FALSE(std::filesystem::exists(folder.file("out")));
    }
}

TEST_CASE("a class goes out as tables and as a sheet, with names only when asked for") {
    const TemporaryFolder folder;
    const std::string records = folder.file("records.db");
    write_file(folder.file("passphrase"), "four invented words here\n");
    const auto run = [&](std::vector<std::string> words) {
        std::vector<std::string> all{"--records", records, "class"};
        all.insert(all.end(), words.begin(), words.end());
        return run_program(all);
    };
    const Ran made = run({"new", "Invented", "--passphrase-file", folder.file("passphrase")});
    INFO(made.err);
    REQUIRE(made.code == 0);
    const Ran csv = run({"csv", folder.file("tables")});
    INFO(csv.err);
    REQUIRE(csv.code == 0);
    for (const char* name : {"answers_v1.csv", "boats_v1.csv", "learners_v1.csv", "items_v1.csv"}) {
        INFO(name);
        CHECK(holds(csv.out, name));
        const std::string text = file_text(folder.file(std::string("tables/") + name));
        CHECK(text.find("\r\n") == text.size() - 2);  // the names of the columns alone
        CHECK_FALSE(holds(text, ",name,"));
    }
    REQUIRE(run({"csv", folder.file("named"), "--names"}).code == 0);
    CHECK(holds(file_text(folder.file("named/learners_v1.csv")), "seat,name,group"));
    const Ran sheet = run({"sheet", folder.file("sheet.pdf"), "--paper", "a4"});
    INFO(sheet.err);
    REQUIRE(sheet.code == 0);
    CHECK(holds(sheet.out, "1 page."));
    CHECK(file_text(folder.file("sheet.pdf")).rfind("%PDF-", 0) == 0);
    const Ran figures = run({"figures"});
    CHECK(figures.code == 0);
    CHECK(holds(figures.out, "Nobody has handed in anything yet."));
}
