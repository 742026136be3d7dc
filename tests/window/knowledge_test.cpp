// The place Knowledge and the bench's search: one finds an entry, follows its links, and comes back.
#include <algorithm>
#include <catch2/catch.hpp>

#include "shop.hpp"
#include "support.hpp"

using namespace hardover;
using namespace hardover::window;
using namespace hardover_tests;
using WindowPlace = hardover::window::Place;

namespace {

std::string link_holding(const Shop& shop, const std::string& part) {
    for (const Mark& mark : shop.harness->marks()) {
        if (mark.control && mark.id.rfind("link.", 0) == 0 && mark.id.find(part) != std::string::npos)
            return mark.id;
    }
    FAIL("no link to " << part);
    return "";
}

}  // namespace

TEST_CASE("An entry's links lead on, Esc leads back entry by entry, and then to where one came from") {
    Shop shop;
    shop.start_job("Grey Heron", "tight to port");
    carry_out(*shop.state, KnowledgeAction{ShowKnowledge{{"cause", "air_in_oil"}}});
    shop.harness->frames(4);
    CHECK(shop.state->place == WindowPlace::knowledge);
    CHECK(shop.harness->shows("Air left in the oil"));
    CHECK(shop.harness->shows("In job 1"));
    carry_out(*shop.state, KnowledgeAction{ShowKnowledge{{"remedy", "bleed_lock_to_lock"}}});
    shop.harness->frames(4);
    CHECK(shop.harness->shows("Bleed lock to lock"));
    shop.harness->press(Key::escape);
    CHECK(shop.state->known.page.key.id == "air_in_oil");
    shop.harness->click("known.forward");
    CHECK(shop.state->known.page.key.id == "bleed_lock_to_lock");
    shop.harness->press(Key::escape);
    shop.harness->press(Key::escape);
    CHECK(shop.state->place == WindowPlace::job);
}

TEST_CASE("A link inside an entry is pressed with keys alone") {
    Shop shop(1280, 1600);
    carry_out(*shop.state, KnowledgeAction{ShowKnowledge{{"cause", "air_in_oil"}}});
    shop.harness->frames(4);
    const std::string link = link_holding(shop, ".part.");
    for (int i = 0; i < 40 && shop.harness->focused() != link; ++i) shop.harness->press(Key::tab);
    REQUIRE(shop.harness->focused() == link);
    shop.harness->press(Key::enter);
    CHECK(shop.state->known.page.key.kind == "part");
}

TEST_CASE("The knowledge is searched as one types, and browsed by kind") {
    Shop shop;
    carry_out(*shop.state, GoTo{WindowPlace::knowledge});
    shop.harness->frames(4);
    shop.harness->click("kind.worksheet");
    CHECK(shop.harness->has("entry.worksheet.turns_lock_to_lock"));
    shop.harness->type("/");
    shop.harness->type("kinked hose");
    const std::vector<SearchHit>& hits = shop.state->known.hits;
    REQUIRE(hits.size() >= 3);
    CHECK(std::any_of(hits.begin(), hits.begin() + 3, [](const SearchHit& hit) {
        return hit.to == EntryKey{"cause", "hose_kinked"};
    }));
    shop.harness->press(Key::tab);
    shop.harness->press(Key::escape);
    CHECK(shop.state->known.filter.empty());
}

TEST_CASE("On the bench a complaint in the customer's words waits for the boat's name, then starts the job") {
    Shop shop;
    shop.harness->type("/");
    shop.harness->type("groans");
    REQUIRE(shop.harness->has("hit.complaint.noise_at_full_lock"));
    shop.harness->click("hit.complaint.noise_at_full_lock");
    CHECK_FALSE(shop.state->job.has_value());
    CHECK(shop.harness->focused() == "new.boat");
    CHECK(shop.harness->shows("Noise at full lock"));
    shop.harness->type("Grey Heron");
    shop.harness->click("new.words");
    shop.harness->press(Key::enter);
    REQUIRE(shop.state->job.has_value());
    CHECK(shop.state->job->words == "groans");
    const Index groans = find(shop.state->knowledge.complaints, "noise_at_full_lock");
    CHECK(shop.state->job->facts.complaints.contains(groans));
}

TEST_CASE("What is found on the bench opens where it belongs") {
    Shop shop;
    shop.start_job("Little Auk", "");
    carry_out(*shop.state, GoTo{WindowPlace::bench});
    carry_out(*shop.state, SearchBench{"auk"});
    shop.harness->frames(4);
    shop.harness->click("hit.job.1");
    CHECK(shop.state->place == WindowPlace::job);
    carry_out(*shop.state, GoTo{WindowPlace::bench});
    carry_out(*shop.state, SearchBench{"turns lock to lock"});
    shop.harness->frames(4);
    shop.harness->click("hit.worksheet.turns_lock_to_lock");
    CHECK(shop.state->place == WindowPlace::worksheets);
    CHECK(shop.state->sheets.open == "turns_lock_to_lock");
}

TEST_CASE(
    "A job in hand on the bench says how far it has come, what is next and how long ago it was touched") {
    Shop shop;
    shop.start_job("Grey Heron", "tight to port");
    shop.harness->click("complaint.hard_one_way");
    shop.harness->click("dock.begin");
    const std::string heading = shop.state->page.card.heading;
    carry_out(*shop.state, GoTo{WindowPlace::bench});
    shop.harness->frames(4);
    CHECK(shop.harness->shows("Finding the cause"));
    CHECK(shop.harness->shows("Next: " + heading));
    CHECK(shop.harness->shows("just now"));
    CHECK(time_ago("2026-11-25T12:00:00Z", "2026-11-25T12:45:00Z") == "45 min ago");
    CHECK(time_ago("2026-11-25T12:00:00Z", "2026-11-25T15:10:00Z") == "3 h ago");
    CHECK(time_ago("2026-11-24T12:00:00Z", "2026-11-25T15:10:00Z") == "yesterday");
    CHECK(time_ago("2026-11-20T12:00:00Z", "2026-11-25T15:10:00Z") == "5 days ago");
    CHECK(time_ago("", "2026-11-25T15:10:00Z").empty());
}
