// The search of the knowledge book as a reader has it: its script run by node, and, where there is one, the
// page opened from disk in a real browser.
#include <fstream>
#include <sstream>

#include "app/reports/knowledge_book.hpp"
#include "outside/process.hpp"
#include "scratch_folder.hpp"
#include "shipped.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

// The book in a folder of its own.
class BookOnDisk {
  public:
    BookOnDisk() {
        for (const BookPage& page : knowledge_book(shipped()))
            std::ofstream(folder_.file(page.file), std::ios::binary) << page.html;
    }
    std::string file(const std::string& name) const { return folder_.file(name); }

  private:
    ScratchFolder folder_;
};

bool is_there(const std::string& program) {
    return run_process({program, "--version"}).code == 0;
}

std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines;
    std::istringstream in(text);
    for (std::string line; std::getline(in, line);) lines.push_back(line);
    return lines;
}

// What the page shows for an address and, where given, for what is typed then.
std::vector<std::string> shown(const BookOnDisk& book, const std::string& search, const std::string& hash,
                               const std::string& typed = "") {
    std::vector<std::string> words{"node", source_path("tests/outside/book_search.js"),
                                   book.file("index.html"), search, hash};
    if (!typed.empty()) words.push_back(typed);
    const Finished ran = run_process(words);
    REQUIRE(ran.code == 0);
    return lines_of(ran.out);
}

}  // namespace

TEST_CASE("The book's search finds complaints in the customer's words, by typing and by the address") {
    if (!is_there("node")) {
        WARN("node is not there: the book's script is not run");
        return;
    }
    const BookOnDisk book;
    const std::string groans = "complaint\tcomplaints.html#complaint-noise_at_full_lock";
    CHECK(shown(book, "?find=groans+when+hard+over", "").at(1) == groans);
    CHECK(shown(book, "", "#find=groans%20when%20hard%20over").at(1) == groans);
    CHECK(shown(book, "", "", "groans when hard over").at(1) == groans);
    for (const auto& [typed, complaint] :
         std::vector<std::pair<std::string, std::string>>{{"she meanders all over", "wander"},
                                                          {"stiff when I turn left", "hard_one_way"},
                                                          {"auto pilot overshoots", "pilot_hunts"},
                                                          {"wand", "wander"}}) {
        INFO(typed);
        CHECK(shown(book, "", "", typed).at(1) == "complaint\tcomplaints.html#complaint-" + complaint);
    }
    const auto nothing = shown(book, "", "", "qwertz");
    CHECK(nothing.at(0) == "Nothing is found. Try another word for it.");
    CHECK(nothing.at(1) == "address\t#find=qwertz");
    CHECK(shown(book, "", "") == std::vector<std::string>{""});
}

TEST_CASE("A browser that opens the book from disk finds by the page's address") {
    if (!is_there("chromium")) {
        WARN("chromium is not there: the book is not opened in a browser");
        return;
    }
    const BookOnDisk book;
    for (const std::string asked : {"?find=hose+rub", "#find=hose%20rub"}) {
        INFO(asked);
        const ScratchFolder profile;
        const Finished ran =
            run_process({"timeout", "120", "chromium", "--headless", "--no-sandbox", "--disable-gpu",
                         "--user-data-dir=" + profile.file("profile"), "--virtual-time-budget=5000",
                         "--dump-dom", "file://" + book.file("index.html") + asked});
        REQUIRE(ran.code == 0);
        const std::size_t found = ran.out.find("<div id=\"found\">");
        REQUIRE(found != std::string::npos);
        const std::size_t first = ran.out.find("href=\"", found);
        REQUIRE(first != std::string::npos);
        CHECK(ran.out.substr(first + 6, 36) == "complaints.html#complaint-hose_chafe");
    }
}
