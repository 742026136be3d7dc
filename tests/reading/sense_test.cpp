// Sense checks: what reads well and still cannot be meant.
#include "reading/reading_support.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

std::string sense_after(const Change& change) {
    return as_text(check_sense(pump_knowledge({change})));
}

}  // namespace

namespace {

// A cause that shows just what a kinked hose shows, but for `kinked` times how often it lies in a kink.
std::string twin_of_kinked_hose(const std::string& kinked, const std::string& more) {
    return "- cause: hose_too_thin\n  name: Hose too thin\n  about: The hose is too thin.\n"
           "  odds: {just_installed: 1, in_use: 1}\n"
           "  shows:\n    hose_lie: {kinked: " +
           kinked +
           "}\n    flow: {weak: usually, nothing: seldom}\n"
           "    flow_share: {low: often, short: sometimes}\n"
           "  proof: walk_the_hose\n  proved_when: hose_lie is kinked\n  source: invented\n" +
           more + "- cause: nozzle_clogged";
}

Change with_twin(const std::string& kinked, const std::string& more) {
    return {"", "causes.yaml", "- cause: nozzle_clogged", twin_of_kinked_hose(kinked, more)};
}

const std::string same_cure =
    "- same_cure: kinked_or_thin\n  causes: [hose_kinked, hose_too_thin]\n"
    "  why: Either way another hose goes on.\n";

}  // namespace

TEST_CASE("Causes that nothing tells apart are a fault when their remedies differ") {
    CHECK(sense_after(with_twin("always", "  remedy: clean_nozzle\n")) ==
          "causes.yaml:71:3: no finding tells 'hose_too_thin' from 'hose_kinked', and their remedies differ "
          "(give one of them a finding of its own under 'shows')\n");
    CHECK(sense_after(with_twin("always", "  remedy: straighten_hose\n")) ==
          "causes.yaml:71:3: warning: no finding tells 'hose_too_thin' from 'hose_kinked'; the remedy is the "
          "same (give one of them a finding of its own under 'shows', or say so in an entry 'same_cure' with "
          "the reason)\n");
}

TEST_CASE("Causes that hardly anything tells apart are warned of, with what tells most") {
    CHECK(
        sense_after(with_twin("usually", "  remedy: clean_nozzle\n")) ==
        "causes.yaml:71:3: warning: hardly anything tells 'hose_too_thin' from 'hose_kinked', and their "
        "remedies differ: most of all 'hose_lie', on 22 of 100 boats (give one of them a finding of its own "
        "under 'shows'; 30 of 100 boats are asked for)\n");
    CHECK(sense_after(with_twin("often", "  remedy: clean_nozzle\n")) == "");
}

TEST_CASE("A cause that comes from one with the same remedy has no order to keep") {
    CHECK(sense_after({"", "causes.yaml", "  remedy: straighten_hose",
                       "  remedy: straighten_hose\n  comes_from: [suction_air]"}) == "");
    CHECK(sense_after({"", "causes.yaml", "  remedy: straighten_hose",
                       "  remedy: tighten_clamps\n  comes_from: [suction_air]"})
              .find("'hose_kinked' comes from 'suction_air' and has the same remedy") != std::string::npos);
}

TEST_CASE("What a remedy is the remedy of anyway is not named under what its work also cures") {
    CHECK(sense_after({"", "causes.yaml", "- remedy: clean_strainer",
                       "- remedy: clean_strainer\n  also_cures: [nozzle_clogged]"}) == "");
    CHECK(sense_after({"", "causes.yaml", "- remedy: clean_strainer",
                       "- remedy: clean_strainer\n  also_cures: [strainer_blocked]"})
              .find("'clean_strainer' is the remedy of 'strainer_blocked' anyway") != std::string::npos);
}

TEST_CASE("Causes that are never on the same rig need not be told apart") {
    CHECK(sense_after({"", "causes.yaml", "- cause: fuse_blown",
                       "- cause: lever_broken\n  name: Lever broken\n  about: The lever is broken off.\n"
                       "  odds: {just_installed: 1, in_use: 1}\n  possible_when: rig.drive is hand\n"
                       "  shows:\n    flow: {nothing: always}\n    motor_sound: {silent: always}\n"
                       "    fuse: {blown: always}\n  proof: look_at_fuse\n  proved_when: fuse is blown\n"
                       "  remedy: clean_nozzle\n  source: invented\n- cause: fuse_blown"}) == "");
}

TEST_CASE("A pair that one remedy cures may be said to look alike, but only when it does") {
    CHECK(sense_after(with_twin("always", "  remedy: straighten_hose\n" + same_cure)) == "");
    CHECK(sense_after(with_twin("usually", "  remedy: straighten_hose\n" + same_cure)) == "");
    CHECK(
        sense_after(with_twin("often", "  remedy: straighten_hose\n" + same_cure)) ==
        "causes.yaml:83:3: 'hose_kinked' and 'hose_too_thin' can be told apart: by 'hose_lie', on 47 of 100 "
        "boats (take them out of 'kinked_or_thin')\n");
    CHECK(faults_after(with_twin("always", "  remedy: clean_nozzle\n" + same_cure)) ==
          "causes.yaml:84:11: 'hose_too_thin' and 'hose_kinked' have different remedies (give them a finding "
          "that tells them apart)\n");
    CHECK(faults_after(with_twin("always",
                                 "  remedy: straighten_hose\n- same_cure: alone\n"
                                 "  causes: [hose_too_thin]\n  why: None.\n")) ==
          "causes.yaml:84:11: 'causes' needs at least two\n");
}

TEST_CASE("A proof that the cause does not show is warned of") {
    CHECK(sense_after({"", "causes.yaml", "    fuse: {blown: always}\n", ""}) ==
          "causes.yaml:44:3: warning: 'fuse_blown' is proved by a finding that it does not show (add the "
          "finding to its "
          "'shows')\n");
}

TEST_CASE("A proof that sound boats show one time in twenty or oftener is warned of") {
    const std::string warned =
        "causes.yaml:44:3: warning: the proof of 'fuse_blown' does not prove it: it is met on 972 of 1,000 "
        "boats with it and on 60 of 1,000 boats without (ask more of 'proved_when', or give sound boats a "
        "reading of their own)\n";
    const auto with_stray = [](const std::string& share) {
        return Change{"", "findings.yaml", "  check: look_at_fuse\n",
                      "  check: look_at_fuse\n  stray: {blown: " + share + "}\n"};
    };
    CHECK(sense_after(with_stray("0.06")) == warned);
    CHECK(sense_after(with_stray("0.04")) == "");
}

TEST_CASE("Work of a quarter of an hour without parts may rest on a likely sign") {
    const auto with_stray = [](const std::string& share) {
        return Change{"", "findings.yaml",
                      "  readings: {kinked: ", "  stray: {kinked: " + share + "}\n  readings: {kinked: "};
    };
    CHECK(sense_after(with_stray("0.1")) == "");
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
    for (const char* possible : {"rig.lift > 29 ft", "rig.lift = 1 ft", "rig.lift >= 30 ft",
                                 "rig.outlets = 1", "rig.outlets >= 4", "rig.outlets is known"}) {
        INFO(possible);
        CHECK(sense_after({"", "causes.yaml", "possible_when: rig.drive is electric",
                           std::string("possible_when: ") + possible}) == "");
    }
    for (const char* impossible : {"rig.lift > 31 ft", "rig.outlets > 4", "rig.outlets < 1"}) {
        INFO(impossible);
        CHECK(sense_after({"", "causes.yaml", "possible_when: rig.drive is electric",
                           std::string("possible_when: ") + impossible})
                  .find("there is no rig on which the cause 'fuse_blown' is possible") != std::string::npos);
    }
}

TEST_CASE("What nothing uses is warned of") {
    CHECK(sense_after({"", "causes.yaml", "    suction_vacuum: {high: usually, some: 0.2}\n", ""}) ==
          "findings.yaml:52:3: warning: nothing uses the finding 'suction_vacuum'\n");
    CHECK(sense_after({"", "rules.yaml", "    - stop: wet_motor\n", ""}) ==
          "setup.yaml:129:3: warning: no rule orders the stop 'wet_motor'\n");
    CHECK(sense_after(
              {"", "setup.yaml", "- need: well_open", "- need: ladder\n  name: Ladder\n- need: well_open"}) ==
          "setup.yaml:57:3: warning: nothing needs 'ladder'\n");
    CHECK(sense_after({"", "setup.yaml", "  name: Well cover can be lifted\n",
                       "  name: Well cover can be lifted\n  possible_when: rig.lift > 31 ft\n"}) ==
          "setup.yaml:57:3: warning: there is no rig on which the need 'well_open' is possible (look at its "
          "'possible_when')\n");
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

TEST_CASE("A finding of which only a complaint speaks is warned of, for it changes nothing") {
    CHECK(sense_after({"", "findings.yaml", "- finding: motor_sound",
                       "- finding: wet_grass\n  name: Wet grass\n  ask: Is the grass wet?\n"
                       "  readings: {wet: Wet, dry: Dry}\n  minutes: 1\n  source: invented\n"
                       "- finding: motor_sound"}) ==
          "findings.yaml:10:3: warning: nothing uses the finding 'wet_grass'\n");
    CHECK(as_text(check_sense(
              pump_knowledge({{"", "findings.yaml", "- finding: motor_sound",
                               "- finding: wet_grass\n  name: Wet grass\n  ask: Is the grass wet?\n"
                               "  readings: {wet: Wet, dry: Dry}\n  minutes: 1\n  source: invented\n"
                               "- complaint: grass_is_wet\n  name: The grass is wet\n  words: [wet grass]\n"
                               "  says: {wet_grass: wet}\n  source: invented\n- finding: motor_sound"}}))) ==
          "findings.yaml:10:3: warning: only complaints speak of the finding 'wet_grass', so it changes "
          "nothing "
          "(name it in the 'shows' of the causes that produce it)\n");
}

TEST_CASE("A remedy that cures nothing, a rule that never fires and a cause without odds are warned of") {
    CHECK(sense_after({"", "causes.yaml", "remedy: straighten_hose", "remedy: clean_nozzle"})
              .find("warning: the remedy 'straighten_hose' cures no cause") != std::string::npos);
    CHECK(
        sense_after({"", "rules.yaml", "when: rig.drive is hand", "when: rig.lift > 31 ft"}) ==
        "rules.yaml:23:3: warning: the rule 'r_hand_pump_has_no_fuse' can never fire (look at its 'when')\n");
    CHECK(
        sense_after({"", "causes.yaml", "odds: {just_installed: 150, in_use: 60}",
                     "odds: {just_installed: 0, in_use: 0}"}) ==
        "causes.yaml:58:3: warning: 'hose_kinked' is impossible: its odds are 0 in every history (give odds "
        "above 0 where it turns up at all)\n");
}

TEST_CASE("A finding that does not say what it takes is warned of when it is read") {
    const KnowledgeRead read = read_changed({{"", "findings.yaml", "  minutes: 1\n", ""}});
    CHECK(read.knowledge.has_value());
    CHECK(as_text(read.faults) ==
          "findings.yaml:3:3: warning: finding 'flow' does not say what it takes (without 'minutes' it is "
          "taken "
          "as 1 min)\n");
}

TEST_CASE("Text that is too hard to read is warned of, with its grade and what is allowed") {
    const std::string text = sense_after({"", "causes.yaml", "about: Sand sits in the nozzle.",
                                          "about: Particulate contamination accumulates within the nozzle, "
                                          "progressively diminishing available "
                                          "throughput."});
    CHECK(text.find("warning: 'about' of 'nozzle_clogged' is hard to read: grade ") != std::string::npos);
    CHECK(sense_after({"", "causes.yaml", "about: Sand sits in the nozzle.",
                       "about: Sand gathers in the nozzle, and less and less water can come out of it."}) ==
          "");
}
