// The knowledge book: every entry has its place, every link leads somewhere, nothing comes from outside.
#include "app/reports/knowledge_book.hpp"

#include <map>
#include <nlohmann/json.hpp>
#include <set>

#include "app/reports/html.hpp"
#include "app/reports/knowledge_text.hpp"
#include "jobs/jobs_support.hpp"
#include "support.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

// Every value of an attribute, as ` href="..."`.
std::vector<std::string> values_of(const std::string& html, const std::string& attribute) {
    std::vector<std::string> values;
    const std::string start = " " + attribute + "=\"";
    for (std::size_t at = html.find(start); at != std::string::npos; at = html.find(start, at)) {
        at += start.size();
        values.push_back(html.substr(at, html.find('"', at) - at));
    }
    return values;
}

const std::vector<BookPage>& shipped_book() {
    static const std::vector<BookPage> book = knowledge_book(shipped());
    return book;
}

const BookPage& page_named(const std::string& file) {
    for (const BookPage& page : shipped_book()) {
        if (page.file == file) return page;
    }
    FAIL("no page " << file);
    return shipped_book().front();
}

bool holds(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

template <typename E>
void check_all_there(const std::string& file, const std::string& kind, const std::vector<E>& entries) {
    const std::string& html = page_named(file).html;
    for (const E& entry : entries) {
        INFO(file << " " << kind << " " << entry.id);
        CHECK(holds(html, " id=\"" + kind + "-" + entry.id + "\""));
        CHECK(holds(html, " href=\"" + file + "#" + kind + "-" + entry.id + "\""));
    }
}

}  // namespace

TEST_CASE("Every entry has its place in the book and is linked from its page") {
    const Knowledge& k = shipped();
    check_all_there("complaints.html", "complaint", k.complaints);
    check_all_there("words.html", "same_words", k.same_words);
    check_all_there("findings.html", "finding", k.findings);
    check_all_there("checks.html", "check", k.checks);
    check_all_there("causes.html", "cause", k.causes);
    check_all_there("causes.html", "same_cure", k.same_cures);
    check_all_there("remedies.html", "remedy", k.remedies);
    check_all_there("rules.html", "rule", k.rules);
    check_all_there("worksheets.html", "worksheet", k.worksheets);
    check_all_there("cautions.html", "caution", k.cautions);
    check_all_there("cautions.html", "deferral", k.deferrals);
    check_all_there("cautions.html", "stop", k.stops);
    check_all_there("rig.html", "rig_field", k.rig_fields);
    check_all_there("rig.html", "history", k.histories);
    check_all_there("rig.html", "need", k.needs);
    check_all_there("rig.html", "part", k.parts);
    check_all_there("rig.html", "setting", k.setting_entries);
    check_all_there("sources.html", "source", k.sources);
}

TEST_CASE("Every link of the book leads to a place in it, and no place is there twice") {
    std::map<std::string, std::set<std::string>> places;
    for (const BookPage& page : shipped_book()) {
        places[page.file];
        for (const std::string& id : values_of(page.html, "id")) {
            INFO(page.file << "#" << id);
            CHECK(places[page.file].insert(id).second);
        }
    }
    int links = 0;
    for (const BookPage& page : shipped_book()) {
        for (const std::string& to : values_of(page.html, "href")) {
            const std::size_t mark = to.find('#');
            const auto target = places.find(to.substr(0, mark));
            INFO(page.file << " -> " << to);
            REQUIRE(target != places.end());
            if (mark != std::string::npos) CHECK(target->second.count(to.substr(mark + 1)) == 1);
            ++links;
        }
    }
    CHECK(links > 1000);
}

TEST_CASE("The search box knows every entry by an address in the book") {
    const std::string& html = page_named("index.html").html;
    const std::string start = "const entries = ";
    const std::size_t at = html.find(start) + start.size();
    const auto entries = nlohmann::json::parse(html.substr(at, html.find(";\n", at) - at));
    std::size_t there = 0;
    for (const BookPage& page : shipped_book()) {
        if (page.file != "index.html") there += page.entries;
    }
    CHECK(entries.size() == there);
    for (const auto& entry : entries) {
        const std::string to = entry[1];
        INFO(to);
        CHECK(holds(page_named(to.substr(0, to.find('#'))).html,
                    " id=\"" + to.substr(to.find('#') + 1) + "\""));
    }
}

TEST_CASE("The book needs nothing from outside") {
    for (const BookPage& page : shipped_book()) {
        INFO(page.file);
        for (const char* outside : {"http:", "https:", " src=", "@import", "url(", "<link"}) {
            INFO(outside);
            CHECK_FALSE(holds(page.html, outside));
        }
        CHECK(page.html.rfind("<!DOCTYPE html>\n", 0) == 0);
    }
}

TEST_CASE("Cautions stand before the steps") {
    const std::string& html = page_named("checks.html").html;
    for (std::size_t at = html.find("<article"); at != std::string::npos;
         at = html.find("<article", at + 1)) {
        const std::string entry = html.substr(at, html.find("</article>", at) - at);
        const std::size_t cautions = entry.find("<dt>Cautions before the steps</dt>");
        if (cautions != std::string::npos) CHECK(cautions < entry.find("<dt>Steps</dt>"));
    }
}

TEST_CASE("Text that looks like HTML is shown as it is written") {
    CHECK(html::text("a < b & \"c\" > d") == "a &lt; b &amp; &quot;c&quot; &gt; d");
    Knowledge knowledge = shipped();
    knowledge.causes.front().name = "</script><b>Loud</b>";
    for (const BookPage& page : knowledge_book(knowledge)) {
        INFO(page.file);
        CHECK_FALSE(holds(page.html, "<b>Loud"));
        CHECK_FALSE(holds(page.html, "</script><b>"));
    }
}

TEST_CASE("Causes with the same cure stand on the page of the causes, with the reason") {
    Knowledge knowledge = shipped();
    SameCure same;
    same.id = "either_way";
    same.name = "One; the other";
    same.causes = {0, 1};
    same.why = "Either way the hose is renewed.";
    knowledge.same_cures.push_back(same);
    for (const BookPage& page : knowledge_book(knowledge)) {
        if (page.file != "causes.html") continue;
        const std::size_t at = page.html.find("<article id=\"same_cure-either_way\">");
        REQUIRE(at != std::string::npos);
        const std::string entry = page.html.substr(at, page.html.find("</article>", at) - at);
        CHECK(holds(entry, "Either way the hose is renewed."));
        CHECK(holds(entry, "causes.html#cause-" + knowledge.causes[0].id));
    }
    const Result<std::string> text = entry_text(knowledge, "either_way");
    REQUIRE_OK(text);
    CHECK(holds(text.value(), "Why: Either way the hose is renewed."));
}
