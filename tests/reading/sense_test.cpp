// Sense checks: what reads well and still cannot be meant.
#include "reading/reading_support.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

std::string sense_after(const Change& change) {
    return as_text(check_sense(pump_knowledge({change})));
}

}  // namespace

TEST_CASE("Causes that nothing tells apart are a fault when their remedies differ") {
    const std::string twin =
        "- cause: hose_too_thin\n  name: Hose too thin\n  about: The hose is too thin.\n"
        "  odds: {just_installed: 1, in_use: 1}\n"
        "  shows:\n    hose_lie: {kinked: always}\n    flow: {weak: usually, nothing: seldom}\n"
        "    flow_share: {low: often, short: sometimes}\n"
        "  proof: walk_the_hose\n  proved_when: hose_lie is kinked\n  source: invented\n";
    CHECK(sense_after({"", "causes.yaml", "- cause: nozzle_clogged",
                       twin + "  remedy: clean_nozzle\n- cause: nozzle_clogged"}) ==
          "causes.yaml:71:3: no finding tells 'hose_too_thin' from 'hose_kinked', and their remedies differ "
          "(give one "
          "of them a finding of its own under 'shows')\n");
    CHECK(sense_after({"", "causes.yaml", "- cause: nozzle_clogged",
                       twin + "  remedy: straighten_hose\n- cause: nozzle_clogged"}) ==
          "causes.yaml:71:3: warning: no finding tells 'hose_too_thin' from 'hose_kinked'; the remedy is the "
          "same "
          "(give one of them a finding of its own under 'shows')\n");
    CHECK(
        sense_after(
            {"", "causes.yaml", "- cause: nozzle_clogged",
             twin + "  remedy: clean_nozzle\n  possible_when: rig.drive is hand\n- cause: nozzle_clogged"}) ==
        "");
}

TEST_CASE("A proof that the cause does not show is warned of") {
    CHECK(sense_after({"", "causes.yaml", "    fuse: {blown: always}\n", ""}) ==
          "causes.yaml:44:3: warning: 'fuse_blown' is proved by a finding that it does not show (add the "
          "finding to its "
          "'shows')\n");
}

TEST_CASE("A question or cause that no rig can have is warned of") {
    CHECK(sense_after({"", "findings.yaml", "possible_when: rig.drive is electric",
                       "possible_when: rig.drive is electric and rig.drive is hand"}) ==
          "findings.yaml:10:3: warning: there is no rig on which the finding 'motor_sound' is possible (look "
          "at its "
          "'possible_when')\n");
    CHECK(
        sense_after({"", "causes.yaml", "possible_when: rig.drive is electric",
                     "possible_when: rig.drive is not one of (electric, hand) and rig.lift > 3 ft"}) ==
        "causes.yaml:44:3: warning: there is no rig on which the cause 'fuse_blown' is possible (look at its "
        "'possible_when')\n");
    CHECK(sense_after({"", "causes.yaml", "possible_when: rig.drive is electric",
                       "possible_when: rig.lift > 29 ft"}) == "");
}

TEST_CASE("What nothing uses is warned of") {
    CHECK(sense_after({"", "causes.yaml", "    suction_vacuum: {high: usually, some: 0.2}\n", ""}) ==
          "findings.yaml:52:3: warning: nothing uses the finding 'suction_vacuum'\n");
    CHECK(sense_after({"", "rules.yaml", "    - stop: wet_motor\n", ""}) ==
          "setup.yaml:129:3: warning: no rule orders the stop 'wet_motor'\n");
    CHECK(sense_after({"", "setup.yaml", "- deferral: mains_wiring",
                       "- caution: hot\n  name: Hot\n  hurts: It burns.\n  avoid: Wait.\n  source: "
                       "invented\n- deferral: mains_wiring"}) ==
          "setup.yaml:118:3: warning: no check, remedy or rule carries the caution 'hot'\n");
    CHECK(sense_after({"", "findings.yaml", "  check: gauge_suction\n", ""}) ==
          "checks.yaml:27:3: warning: the check 'gauge_suction' gets no finding (name it in a finding's "
          "'check')\n");
}

TEST_CASE("A setting left to its default is warned of") {
    CHECK(sense_after(
              {"", "setup.yaml",
               "- setting: misreading\n  value: 0.02\n  about: Share of measurements that are simply wrong.\n"
               "  source: invented\n",
               ""}) ==
          "setup.yaml:3:3: warning: the setting 'misreading' is not given (without it 0.02 is taken, and "
          "nobody can see "
          "where that comes from)\n");
}

TEST_CASE("Texts too long for a page and sentences too long for a reader are warned of") {
    CHECK(sense_after(
              {"", "findings.yaml", "name: Fuse\n", "name: The fuse in the holder on the motor's side\n"}) ==
          "findings.yaml:18:3: warning: 'name' of 'fuse' has 42 letters, more than 32 (The fuse in the "
          "holder on the "
          "motor's side)\n");
    CHECK(
        sense_after(
            {"", "causes.yaml", "about: Sand sits in the nozzle.",
             "about: Sand sits in the nozzle and it does not go away by itself but stays and stays and stays "
             "until somebody takes the nozzle off and rinses it out. So be it."}) ==
        "causes.yaml:71:3: warning: a sentence in 'about' of 'nozzle_clogged' has 29 words, more than 25\n");
    CHECK(sense_after({"", "checks.yaml",
                       "steps: [Wipe the shaft dry., Run the pump., Count the drops for two minutes.]",
                       "steps: [One., Two., Three., Four., Five., Six., Seven., Eight.]"}) ==
          "checks.yaml:51:3: warning: 'watch_seal' has 8 steps, more than 7\n");
}
