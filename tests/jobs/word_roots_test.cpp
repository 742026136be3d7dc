// Roots of words: endings, words of one entry, words that are said together, and what the check finds idle.
#include "app/jobs/word_roots.hpp"

#include <set>

#include "app/jobs/same_words_check.hpp"
#include "app/jobs/search.hpp"
#include "jobs_support.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

using Words = std::vector<std::string>;

SameWords same(const std::string& id, Words words) {
    SameWords entry;
    entry.id = id;
    entry.name = id;
    entry.words = std::move(words);
    return entry;
}

Knowledge with(std::vector<SameWords> entries) {
    Knowledge knowledge;
    knowledge.same_words = std::move(entries);
    Complaint complaint;
    complaint.id = "noise_at_full_lock";
    complaint.name = "Noise at full lock";
    complaint.words = {"groans when hard over", "hard work"};
    knowledge.complaints.push_back(complaint);
    return knowledge;
}

std::string warnings(const Knowledge& knowledge) {
    std::string all;
    for (const Fault& fault : check_same_words(knowledge)) all += fault.what + "\n";
    return all;
}

}  // namespace

TEST_CASE("Forms of a word have one root") {
    const std::vector<Words> alike = {{"groan", "groans", "groaned", "groaning"},
                                      {"hose", "hoses"},
                                      {"drip", "drips", "dripping"},
                                      {"spring", "springs"},
                                      {"whine", "whines", "whining"},
                                      {"bleed", "bleeds", "bleeding"},
                                      {"pull", "pulls", "pulled"},
                                      {"buzz", "buzzes", "buzzing"},
                                      {"box", "boxes"},
                                      {"wobble", "wobbles", "wobbling"},
                                      {"hiss", "hisses"},
                                      {"boat's", "boats"}};
    for (const Words& forms : alike) {
        for (const std::string& form : forms) {
            INFO(form);
            CHECK(plain_root(form) == plain_root(forms.front()));
        }
    }
}

TEST_CASE("Words that only look like forms of one another keep roots of their own") {
    for (const auto& [a, b] : std::vector<std::pair<std::string, std::string>>{
             {"string", "str"}, {"speed", "spe"}, {"wander", "wand"}, {"filler", "fill"}, {"loss", "low"}}) {
        INFO(a << " " << b);
        CHECK(plain_root(a) != plain_root(b));
    }
}

TEST_CASE("Words said together are taken together, before each by itself") {
    const WordRoots roots({same("heavy", {"hard", "stiff"}), same("lock", {"hard over", "full lock"})});
    CHECK(roots.of("It groans when hard over") == Words{"groan", "=lock"});
    CHECK(roots.of("hard to turn, and stiffly so") == Words{"=heavy", "turn", "=heavy"});
    CHECK(roots.of("over hard") == Words{"over", "=heavy"});
    CHECK(roots.of("full locks") == Words{"=lock"});
    CHECK(roots.of("") == Words{});
}

TEST_CASE("Small words count only within words said together") {
    const WordRoots roots({same("by_itself", {"by itself", "on its own"})});
    CHECK(roots.of("It turns on its own") == Words{"turn", "=by_itself"});
    CHECK(roots.of("It is on the boat") == Words{});
}

TEST_CASE("Words that find nothing, or are found by others already, are warned of") {
    CHECK(warnings(with({same("noise", {"noise", "groan", "howl"})})).empty());
    CHECK(warnings(with({same("noise", {"noise", "groan", "groaning"})})) ==
          "'groaning' of 'noise' is found by 'groan' already\n");
    CHECK(warnings(with({same("noise", {"noise", "groan"}), same("moan", {"groans", "moan", "work"})})) ==
          "'groans' of 'moan' is found by 'groan' already, which stands in 'noise'\n");
    CHECK(warnings(with({same("noise", {"noise", "the"})})) ==
          "'the' of 'noise' is in every sentence, the search passes over it\n");
    CHECK(warnings(with({same("belt", {"belt", "fan belt"})})) ==
          "no text of the knowledge has a word of 'belt', so it finds nothing\n");
}

TEST_CASE("The shipped entries of same words are many, and none is idle") {
    CHECK(shipped().same_words.size() >= 40);
    CHECK(warnings(shipped()) == "");
}

TEST_CASE("A false friend does not find what it sounds like") {
    const SearchIndex index(shipped());
    const auto first = [&](const std::string& words) {
        const auto hits = index.find(words, {"complaint"}, 1, false);
        return hits.empty() ? std::string() : hits.front().to.id;
    };
    // "hard over" is no heavy wheel, "straight line" no hose, "low speed" no oil that goes down.
    CHECK(first("hard over") != "hard_both_ways");
    CHECK(first("does not run in a straight line") == "wander");
    CHECK(first("wanders at low speed") == "wander");
    CHECK(first("the other way is heavy, this way is easy") == "hard_one_way");
}
