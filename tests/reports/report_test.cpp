// The texts made from a page and from the knowledge.
#include "app/reports/job_report.hpp"
#include "app/reports/knowledge_text.hpp"
#include "support.hpp"

using namespace hardover;

namespace {

JobPage small_page() {
    JobPage page;
    page.title = "Job 3 · Old Penny";  // invented boat
    page.phase = "Putting it right";
    page.words = "tight to starboard";
    page.stops = {"Steering lost: The boat is not to be run until it steers both ways."};
    page.cautions = {{"injection", "Oil under pressure", "A jet goes through skin.", "Never feel by hand."}};
    page.answers = {{"wheel_feel", "Feel of the wheel", "Firm", "answered", true}};
    page.causes = {{"hose_kinked", "Hose kinked at full lock", 0.9, "90 %", "proved", true, {}, {}}};
    page.events = {{1, "2026-11-25T15:00:00Z", "Opened for Old Penny", true},
                   {2, "2026-11-25T15:01:00Z", "Feel of the wheel: springy", false}};
    page.deferrals = {"Torque figures: the maker decides."};
    return page;
}

}  // namespace

TEST_CASE("A job report says stop and caution before what was done") {
    const std::string text = job_report(small_page());
    const std::size_t stop = text.find("STOP");
    const std::size_t caution = text.find("Oil under pressure");
    const std::size_t done = text.find("What was done");
    const std::size_t deferral = text.find("Not ours to decide");
    REQUIRE(stop != std::string::npos);
    REQUIRE(deferral != std::string::npos);
    CHECK(stop < caution);
    CHECK(caution < done);
    CHECK(done < deferral);
}

TEST_CASE("A job report leaves out what was taken back") {
    const std::string text = job_report(small_page());
    CHECK(text.find("Opened for Old Penny") != std::string::npos);
    CHECK(text.find("springy") == std::string::npos);
}

TEST_CASE("Lines are broken by letters, not bytes, and a long word stands alone") {
    CHECK(wrapped("ab cd ef", 5) == "ab cd\nef");
    CHECK(wrapped("½½ ½½ ½½", 5) == "½½ ½½\n½½");
    CHECK(wrapped("one_very_long_word to go", 6, 2) == "one_very_long_word\n  to go");
    CHECK(wrapped("", 10).empty());
}

TEST_CASE("An id nobody knows is answered with the nearest one") {
    Knowledge knowledge;
    Cause cause;
    cause.id = "air_in_oil";
    cause.name = "Air left in the oil";
    knowledge.causes.push_back(cause);
    const Result<std::string> known = entry_text(knowledge, "air_in_oil");
    REQUIRE_OK(known);
    CHECK(known.value().find("Air left in the oil") != std::string::npos);
    const Result<std::string> unknown = entry_text(knowledge, "air_in_oli");
    REQUIRE_FALSE(unknown.ok());
    CHECK(unknown.error().text() == "nothing is known under 'air_in_oli' (did you mean 'air_in_oil'?)");
}

TEST_CASE("A kind of entry is listed by its plural name") {
    Knowledge knowledge;
    Stop stop;
    stop.id = "steering_lost";
    stop.name = "Steering lost";
    knowledge.stops.push_back(stop);
    const Result<std::vector<EntryLine>> lines = entries_of_kind(knowledge, "stops");
    REQUIRE_OK(lines);
    REQUIRE(lines.value().size() == 1);
    CHECK(lines.value().front().id == "steering_lost");
    CHECK_FALSE(entries_of_kind(knowledge, "stop signs").ok());
}
