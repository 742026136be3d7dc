// What a cause that is not on the list is taken to look like: the listed ones on average, and those with the
// boat's complaint once there is one. Judged by going through the causes one by one.
#include <catch2/catch.hpp>
#include <vector>

#include "rules/reasoning/assessment.hpp"
#include "rules/reasoning/prepared_knowledge.hpp"
#include "rules/reasoning/usable_shares.hpp"
#include "small_knowledge.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

constexpr double stray = 0.02;

std::size_t at(Index index) {
    return static_cast<std::size_t>(index);
}

// A garden pump that drips or hums.
struct Pump {
    Knowledge knowledge = empty_knowledge();
    Index drip = add_finding(knowledge, "drip", {"drips", "dry"}, stray);
    Index hum = add_finding(knowledge, "hum", {"loud", "quiet"}, stray);
    Index puddle = add_finding(knowledge, "puddle", {"wet", "dry"}, stray);
    Index seal = add_cause(knowledge, "seal", 30, {{drip, {0.9, 0.1}}, {puddle, {0.75, 0.25}}});
    Index bearing = add_cause(knowledge, "bearing", 60, {{hum, {0.8, 0.2}}});
    Index cracked =
        add_cause(knowledge, "cracked", 10, {{drip, {0.5, 0.5}}, {hum, {0.4, 0.6}}, {puddle, {0.2, 0.8}}});
    Facts facts;

    Pump() { facts.history = 0; }

    Index complain(const std::vector<std::pair<Index, int>>& says) {
        Complaint complaint;
        complaint.id = complaint.name = "complaint_" + std::to_string(knowledge.complaints.size());
        complaint.says = says;
        knowledge.complaints.push_back(complaint);
        return static_cast<Index>(knowledge.complaints.size()) - 1;
    }
};

}  // namespace

TEST_CASE("Without a complaint the typical cause shows what the listed ones show, by their odds") {
    const Pump pump;
    const auto typical = typical_shares(pump.knowledge, {});
    CHECK(typical[0][0] == Approx((30 * 0.9 + 10 * 0.5) / 100));
    CHECK(typical[1][0] == Approx((60 * 0.8 + 10 * 0.4) / 100));
    CHECK(typical[2][0] == Approx((30 * 0.75 + 10 * 0.2) / 100));
}

TEST_CASE("With a complaint it shows what causes with that complaint show, the complaint itself as ever") {
    Pump pump;
    const Index drips = pump.complain({{pump.drip, 0}});
    const auto typical = typical_shares(pump.knowledge, {drips});
    const double seal = 30 * 0.9;
    const double bearing = 60 * stray;  // by chance
    const double cracked = 10 * 0.5;
    const double all = seal + bearing + cracked;
    CHECK(typical[0][0] == Approx((30 * 0.9 + 10 * 0.5) / 100));
    CHECK(typical[1][0] == Approx((bearing * 0.8 + cracked * 0.4) / all));
    CHECK(typical[2][0] == Approx((seal * 0.75 + cracked * 0.2) / all));
}

TEST_CASE("All that a complaint says comes together as often as the listed causes give it together") {
    Pump pump;
    const Index both = pump.complain({{pump.drip, 0}, {pump.hum, 0}});
    const auto typical = typical_shares(pump.knowledge, {both});
    const double first = (30 * 0.9 + 10 * 0.5) / 100;
    const double with_first = 30 * 0.9 + 60 * stray + 10 * 0.5;
    CHECK(typical[0][0] == Approx(first));
    CHECK(typical[1][0] == Approx((60 * stray * 0.8 + 10 * 0.5 * 0.4) / with_first));
    // Two complaints that say the same between them.
    const Index drips = pump.complain({{pump.drip, 0}});
    const Index hums = pump.complain({{pump.hum, 0}});
    CHECK(typical_shares(pump.knowledge, {drips, hums}) == typical);
    const PreparedKnowledge prepared(pump.knowledge);
    const auto one = prepared.network({both});
    const auto two = prepared.network({drips, hums});
    for (std::size_t f = 0; f < one->findings.size(); ++f) {
        CHECK(one->findings[f].unlisted == two->findings[f].unlisted);
    }
    CHECK(prepared.network({both}) == one);  // kept
}

TEST_CASE("What alone proves a cause is that cause's own sign, and no sign of one that is not on the list") {
    Pump pump;
    const Index glass = add_finding(pump.knowledge, "glass", {"split", "pitted", "smooth"}, stray);
    Cause& seal = pump.knowledge.causes[at(pump.seal)];
    Cause& cracked = pump.knowledge.causes[at(pump.cracked)];
    seal.shows.push_back({glass, {0.5, 0.4, 0.1}});
    cracked.shows.push_back({glass, {0.3, 0.6, 0.1}});
    const auto share = [&](int reading) {
        return typical_shares(pump.knowledge, {})[at(glass)][static_cast<std::size_t>(reading)];
    };
    CHECK(share(0) == Approx((30 * 0.5 + 10 * 0.3) / 100));

    seal.proved_when = condition(pump.knowledge, "glass is split");
    CHECK(share(0) == Approx(10 * 0.3 / 100));
    CHECK(share(1) == Approx((30 * 0.4 + 10 * 0.6) / 100));

    // Any reading that does alone, whatever else would; what takes two findings is no cause's own.
    seal.proved_when = condition(pump.knowledge, "glass is one of (split, pitted) or puddle is wet");
    CHECK(share(0) == Approx(10 * 0.3 / 100));
    CHECK(share(1) == Approx(10 * 0.6 / 100));
    CHECK(typical_shares(pump.knowledge, {})[at(pump.puddle)][0] == Approx(10 * 0.2 / 100));
    seal.proved_when = condition(pump.knowledge, "glass is split and puddle is wet");
    CHECK(share(0) == Approx((30 * 0.5 + 10 * 0.3) / 100));

    // The complaint stays as probable as ever, though it be a proof.
    seal.proved_when = condition(pump.knowledge, "drip is drips");
    const Index drips = pump.complain({{pump.drip, 0}});
    CHECK(typical_shares(pump.knowledge, {drips})[at(pump.drip)][0] == Approx((30 * 0.9 + 10 * 0.5) / 100));
}

TEST_CASE("Signs that go with the complaint are no wonder when the cause is not on the list") {
    Pump pump;
    pump.facts.complaints = {pump.complain({{pump.drip, 0}})};
    Pump silent;
    silent.facts.complaints = {silent.complain({})};
    silent.facts.answers[silent.drip] = {0};
    for (Pump* p : {&pump, &silent}) {
        p->facts.answers[p->puddle] = {0};
        p->facts.tried[p->knowledge.causes[static_cast<std::size_t>(p->seal)].remedy] = Outcome::not_cured;
    }
    const double told = assess(pump.knowledge, pump.facts).not_listed;
    const double only_answered = assess(silent.knowledge, silent.facts).not_listed;
    CHECK(told > 1.2 * only_answered);
}
