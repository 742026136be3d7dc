// Search in the customer's words: the right complaint first, and everything else by its name.
#include "app/jobs/search.hpp"

#include <algorithm>

#include "jobs_support.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

const SearchIndex& shipped_index() {
    static const SearchIndex index(shipped());
    return index;
}

std::string first_complaint(const std::string& words) {
    for (const SearchHit& hit : search(shipped_index(), shipped(), {}, words, 12)) {
        if (hit.to.kind == "complaint") return hit.to.id;
    }
    return "none";
}

std::string first_of_all(const std::string& words) {
    const auto hits = search(shipped_index(), shipped(), {}, words, 12);
    return hits.empty() ? "none" : hits.front().to.kind + " " + hits.front().to.id;
}

struct Said {
    const char* words;
    const char* means;
};

}  // namespace

// Invented sentences, none of them word for word in the knowledge.
TEST_CASE("Forty things customers say bring the complaint they mean before all others") {
    const Said said[] = {{"groans", "noise_at_full_lock"},
                         {"tight to starboard", "hard_one_way"},
                         {"it's awfully stiff turning left", "hard_one_way"},
                         {"easy to port but heavy to starboard", "hard_one_way"},
                         {"she wanders all over the bay", "wander"},
                         {"can't hold a straight course", "wander"},
                         {"keep correcting the wheel all the time", "wander"},
                         {"there is oil on the fitting", "weep_at_fitting"},
                         {"a hose fitting is dripping", "weep_at_fitting"},
                         {"whines when I turn it all the way", "noise_at_full_lock"},
                         {"howling at full lock", "noise_at_full_lock"},
                         {"clunking whenever I turn", "loose_or_clunking"},
                         {"there is play in it, I can wag the drive", "loose_or_clunking"},
                         {"sticks at the same spot every time", "binds_at_one_place"},
                         {"binds part way round", "binds_at_one_place"},
                         {"the wheel kicks back in my hands", "kick_back"},
                         {"wheel jerks out of my hand in a wake", "kick_back"},
                         {"pulls to port when I give it throttle", "pulls_under_power"},
                         {"the engines don't point the same way", "drives_not_parallel"},
                         {"one outboard lags behind the other", "drives_not_parallel"},
                         {"steering gets heavy when I trim up", "changes_with_trim"},
                         {"very heavy both ways", "hard_both_ways"},
                         {"hard to turn in either direction", "hard_both_ways"},
                         {"stiff on cold mornings", "heavy_when_cold"},
                         {"does not go all the way to the stop", "short_of_lock"},
                         {"more turns to port than to starboard", "sides_not_alike"},
                         {"it hums all the time", "noise_all_the_time"},
                         {"the wheel feels spongy and springs back", "springy_wheel"},
                         {"wheel moves in jerks", "jerky"},
                         {"the wheel creeps round by itself", "creep"},
                         {"takes far too many turns from lock to lock", "too_many_turns"},
                         {"I turn left and she goes right", "turns_wrong_way"},
                         {"the wheel is locked solid", "locks_solid"},
                         {"wheel spins and nothing happens", "nothing_moves"},
                         {"the upper helm turns the lower wheel", "other_wheel_moves"},
                         {"autopilot hunts back and forth", "pilot_hunts"},
                         {"autopilot does nothing", "pilot_does_not_steer"},
                         {"oil on the ram rod", "weep_at_rod"},
                         {"oil dripping on my feet behind the wheel", "weep_at_helm_shaft"},
                         {"the oil is milky and foams", "foam_or_milk"},
                         {"keeps losing oil but I see no leak", "oil_lost_unseen"},
                         {"water coming in at the transom", "water_at_transom"}};
    int right = 0;
    for (const Said& each : said) {
        INFO(each.words);
        CHECK(first_complaint(each.words) == each.means);
        right += first_complaint(each.words) == each.means ? 1 : 0;
    }
    CHECK(right >= 40);
}

TEST_CASE("A complaint in the customer's words stands before causes, checks and worksheets") {
    CHECK(first_of_all("groans at full lock") == "complaint noise_at_full_lock");
    CHECK(first_of_all("tight to starboard") == "complaint hard_one_way");
}

TEST_CASE("A word that is not finished, or has a slip in it, finds what is meant") {
    CHECK(first_complaint("wand") == "wander");
    CHECK(first_complaint("spongey wheel") == first_complaint("spongy wheel"));
    CHECK(first_complaint("autopliot hunts") == first_complaint("autopilot hunts"));
}

TEST_CASE("Causes, checks and worksheets are found by their names") {
    for (const Cause& cause : shipped().causes) {
        INFO(cause.name);
        const auto hits = shipped_index().find(cause.name, {"cause"}, 3, false);
        REQUIRE_FALSE(hits.empty());
        const bool among = std::any_of(hits.begin(), hits.end(),
                                       [&](const SearchHit& hit) { return hit.to.id == cause.id; });
        CHECK(among);
    }
    for (const Worksheet& sheet : shipped().worksheets) {
        INFO(sheet.name);
        CHECK(shipped_index().find(sheet.name, {"worksheet"}, 1, false).front().to.id == sheet.id);
    }
}

TEST_CASE("A job is found by its boat, its number and its complaint, open or handed back") {
    JobRow open, shut;
    open.number = 12;
    open.summary = {"Grey Heron", "in hand", "wander"};
    shut.number = 7;
    shut.summary = {"Little Auk", "handed back", "noise_at_full_lock"};
    const std::vector<JobRow> jobs{open, shut};
    const auto ids = [&](const std::string& words) {
        std::vector<std::string> found;
        for (const SearchHit& hit : search(shipped_index(), shipped(), jobs, words, 12)) {
            if (hit.to.kind == "job") found.push_back(hit.to.id);
        }
        return found;
    };
    CHECK(ids("heron") == std::vector<std::string>{"12"});
    CHECK(ids("job 7") == std::vector<std::string>{"7"});
    CHECK(ids("noise at full lock") == std::vector<std::string>{"7"});
    CHECK(search(shipped_index(), shipped(), jobs, "little auk", 12).front().to.id == "7");
    CHECK(search(shipped_index(), shipped(), jobs, "  ", 12).empty());
}
