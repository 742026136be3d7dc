// Two faults that go together, one because of the other: with the signs of both, both are found, a rule says
// why, and the remedy of what was brought about tells to put its cause right first.
#include <algorithm>

#include "rules/reasoning/assessment.hpp"
#include "shipped.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

struct Pair {
    const char* because;  // the cause
    const char* comes;    // what it brings about
    const char* rule;
    const char* remedy;  // of what was brought about
    const char* first;   // what its early steps must speak of
    const char* signs;   // of both, as in a case file
};

// Common practice of the trade, no source; the boats are invented.
const std::vector<Pair> pairs = {
    {"rod_seal_worn", "air_in_oil", "r_air_where_oil_got_out", "bleed_lock_to_lock", "leak",
     "rig: {helm: manual_pump, rams: '1'}\nhistory: in_service\ncomplaints: [springy_wheel]\n"
     "answers: {wet_at_rod: drops, rod_surface: clean, wheel_sponge: 3 in}"},
    {"fitting_not_retightened", "air_in_oil", "r_air_by_the_loose_joint", "bleed_lock_to_lock", "leak",
     "rig: {helm: manual_pump, rams: '1'}\nhistory: just_fitted\ncomplaints: [springy_wheel]\n"
     "answers: {wet_at_seat: wet, fitting_tightness: nips_up, wheel_sponge: 3 in}"},
    {"suction_air_leak", "air_in_oil", "r_stream_is_drawn_in", "bleed_lock_to_lock", "leak",
     "rig: {helm: cable_valve, rams: '2'}\nhistory: after_other_work\ncomplaints: [foam_or_milk]\n"
     "answers: {bubbles_turning: stream, wheel_sponge: 3 in}"},
    {"bolts_galled", "bracket_loose", "r_loose_because_galled", "torque_bracket", "galled",
     "rig: {helm: manual_pump, rams: '1'}\nhistory: just_fitted\ncomplaints: [loose_or_clunking]\n"
     "answers: {bracket_bolts: loose, bolt_runs: seizes}"},
    {"rod_seal_worn", "wrong_oil", "r_topped_up_with_what_was_there", "flush_and_refill", "leak",
     "rig: {helm: manual_pump, rams: '1'}\nhistory: in_service\ncomplaints: [weep_at_rod]\n"
     "answers: {oil_added: other_oil, level_falling: falls, wet_at_rod: runs, rod_surface: clean}"},
    {"pump_mount_loose", "belt_slipping", "r_loose_mount_slack_belt", "tension_belt", "mount",
     "rig: {helm: cable_valve, rams: '2'}\nhistory: in_service\ncomplaints: [noise_at_full_lock]\n"
     "answers: {squeal: squeals, belt_tension: slack, pump_mount: loose}"},
    {"drive_stop_missing", "rod_bent", "r_no_stop_bent_rod", "renew_rod", "stop",
     "rig: {helm: manual_pump, rams: '1'}\nhistory: in_service\ncomplaints: [weep_at_rod]\n"
     "answers: {drive_stops: missing, rod_straight: bent}"},
    {"core_wet", "bracket_loose", "r_soft_core_lets_bolts_go", "torque_bracket", "core",
     "rig: {helm: cable_valve, rams: '2'}\nhistory: in_service\ncomplaints: [water_at_transom]\n"
     "answers: {core_state: soft, bracket_bolts: loose, bracket_moves: moves}"},
    {"hose_clamp_loose", "hose_chafed", "r_loose_clamp_wore_the_hose", "renew_hose_and_guard", "rubbed",
     "rig: {helm: manual_pump, rams: '1'}\nhistory: in_service\ncomplaints: [hose_chafe]\n"
     "answers: {hose_clamps: loose_or_missing, hose_skin: chafed}"},
    {"wiper_missing", "rod_seal_worn", "r_torn_wiper_ate_the_seal", "renew_rod_seal", "rod",
     "rig: {helm: manual_pump, rams: '1'}\nhistory: in_service\ncomplaints: [weep_at_rod]\n"
     "answers: {rod_wiper: missing_or_torn, wet_at_rod: runs, rod_surface: clean}"},
    {"tape_in_oil", "strainer_blocked", "r_shreds_end_in_the_strainer", "clean_strainer", "tape",
     "rig: {helm: cable_valve, rams: '2'}\nhistory: just_fitted\ncomplaints: [noise_all_the_time]\n"
     "answers: {tape_shreds: shreds, strainer: blocked}"},
    {"rams_set_unequal", "rod_ends_worn", "r_set_unequal_wears_the_pins", "renew_rod_ends", "unequal",
     "rig: {helm: manual_pump, rams: '2', ram_stroke: 9 in}\nhistory: after_other_work\n"
     "complaints: [loose_or_clunking]\n"
     "answers: {rod_end_play: loose, ram_mark_port: 4 3/4 in, ram_mark_starboard: 4 1/4 in}"},
};

Assessment assessed(const std::string& text) {
    const CaseRead read = read_case({"pair", text}, shipped());
    for (const Fault& fault : read.faults) UNSCOPED_INFO(fault.text());
    REQUIRE(read.found.has_value());
    return assess(shipped(), read.found->facts);
}

bool among_first_three(const Assessment& assessment, const std::string& cause) {
    return std::any_of(assessment.ranking.begin(), assessment.ranking.begin() + 3,
                       [&](const RankedCause& ranked) { return shipped().causes[ranked.cause].id == cause; });
}

}  // namespace

TEST_CASE(
    "With the signs of a pair both faults are among the first three, and a rule says how they hang "
    "together") {
    for (const Pair& pair : pairs) {
        INFO(pair.comes << " because of " << pair.because);
        const Assessment assessment = assessed(pair.signs);
        for (int i = 0; i < 3; ++i) UNSCOPED_INFO(shipped().causes[assessment.ranking[i].cause].id);
        CHECK(among_first_three(assessment, pair.because));
        CHECK(among_first_three(assessment, pair.comes));
        const Index rule = find(shipped().rules, pair.rule);
        REQUIRE(rule != none);
        CHECK(std::any_of(assessment.fired.begin(), assessment.fired.end(),
                          [&](const FiredRule& fired) { return fired.rule == rule; }));
    }
}

TEST_CASE("The remedy of what a pair brought about speaks of its cause in its first three steps") {
    for (const Pair& pair : pairs) {
        INFO(pair.remedy << " and '" << pair.first << "'");
        const Index index = find(shipped().remedies, pair.remedy);
        REQUIRE(index != none);
        const Remedy& remedy = shipped().remedies[static_cast<std::size_t>(index)];
        CHECK(shipped().causes[find(shipped().causes, pair.comes)].remedy == index);
        const auto early = remedy.steps.begin() + std::min<std::ptrdiff_t>(3, std::ssize(remedy.steps));
        CHECK(std::any_of(remedy.steps.begin(), early, [&](const std::string& step) {
            return step.find(pair.first) != std::string::npos;
        }));
    }
}

TEST_CASE("Work that ends with filling and bleeding says that it cures the air in the oil too") {
    const Index air = find(shipped().causes, "air_in_oil");
    int bleeding = 0;
    for (std::size_t i = 0; i < shipped().remedies.size(); ++i) {
        const Remedy& remedy = shipped().remedies[i];
        const bool bleeds =
            std::any_of(remedy.steps.begin(), remedy.steps.end(), [](const std::string& step) {
                return step.find("ill and bleed.") != std::string::npos ||
                       step.find("ill, and bleed each end") != std::string::npos;
            });
        if (!bleeds) continue;
        INFO(remedy.id);
        CHECK(puts_right(shipped(), static_cast<Index>(i), air));
        ++bleeding;
    }
    CHECK(bleeding > 40);
}
