// Faults in conditions, formulas, proofs, and rules or worksheets that go round in a circle. Each case
// changes one place of the garden pump's files and compares every message.
#include "reading/reading_support.hpp"

using namespace hardover_tests;

TEST_CASE("A fault in a condition or formula is reported at its own letter") {
    const std::vector<Change> changes = {
        {"A name misspelt in a condition is reported at its own column", "rules.yaml",
         "hose_lie is kinked or", "hose_lay is kinked or",
         "rules.yaml:18:9: unknown name 'hose_lay' (did you mean 'hose_lie'?)\n"},
        {"A reading misspelt in a condition is reported at its own column", "rules.yaml",
         "motor_sound is silent", "motor_sound is silend",
         "rules.yaml:30:50: 'motor_sound' is never 'silend' (did you mean 'silent'?)\n"},
        {"A fact that no rule derives is unknown", "rules.yaml", "when: fact.suction_side",
         "when: fact.sucktion_side",
         "rules.yaml:4:9: unknown name 'fact.sucktion_side' (did you mean 'fact.suction_side'?)\n"},
        {"A quoted condition is reported at its own column too", "rules.yaml", "when: rig.drive is hand",
         "when: \"rig.drive is hnd\"",
         "rules.yaml:24:23: 'rig.drive' is never 'hnd' (did you mean 'hand'?)\n"},
        {"A folded condition is reported where it begins", "rules.yaml", "when: rig.drive is hand",
         "when: >-\n"
         "    rig.drive is hnd",
         "rules.yaml:24:9: 'rig.drive' is never 'hnd' (did you mean 'hand'?)\n"},
        {"A formula of the wrong dimension is refused", "checks.yaml", "formula: flow / expected",
         "formula: flow * expected",
         "checks.yaml:72:54: the formula gives a quantity in m^6/s^2, not a plain number (check the formula "
         "against the "
         "unit of its result)\n"},
        {"A formula sees only inputs and earlier results", "checks.yaml", "formula: volume / time",
         "formula: share * rated",
         "checks.yaml:70:48: unknown name 'share' (known names: volume, time, rated, lift)\n"},
        {"Advice sees inputs and results, not the outside", "checks.yaml", "when: share < 0.8",
         "when: flow_share is low",
         "checks.yaml:78:13: unknown name 'flow_share' (known names: volume, time, rated, lift, flow, "
         "expected, share)\n"},
        {"A guard comparing length with time is refused", "checks.yaml", "condition: lift < 30 ft",
         "condition: lift < 30 s",
         "checks.yaml:76:24: compares a length with a time (both sides must be of one kind)\n"},
        {"A worksheet input in another unit than its rig field is refused", "checks.yaml", "from: rig.lift",
         "from: rig.rated_flow",
         "checks.yaml:68:40: 'rig.rated_flow' is in gal/min, but the input is in ft\n"},
        {"A worksheet input cannot come from a choice", "checks.yaml", "from: rig.lift", "from: rig.drive",
         "checks.yaml:68:40: 'rig.drive' is not measured, so a worksheet cannot take it\n"},
        {"An example of another dimension is refused", "checks.yaml", "example: 25 s", "example: 25 ft",
         "checks.yaml:66:85: '25 ft' is a length, expected a time such as 4.5 s (write it like 4.5 s)\n"},
        {"An input and a result of one name are refused", "checks.yaml", "    flow: {name: Flow,",
         "    volume: {name: Flow,",
         "checks.yaml:70:5: 'volume' is already an input of worksheet 'bucket_flow'\n"
         "checks.yaml:72:54: unknown name 'flow' (known names: volume, time, rated, lift, expected)\n"},
        {"A proof that its check does not get is refused", "causes.yaml", "proved_when: strainer is blocked",
         "proved_when: flow is nothing",
         "causes.yaml:27:16: 'proved_when' uses 'flow', which the check 'lift_strainer' does not get\n"},
        {"A proof that rests on the rig alone is refused", "causes.yaml", "proved_when: fuse is blown",
         "proved_when: rig.drive is electric",
         "causes.yaml:55:16: 'proved_when' uses no finding of the check 'look_at_fuse'\n"},
        {"A rule that waits for its own fact is refused", "rules.yaml",
         "when: prime is one of (runs_back, sinks) or air_in_flow is spits", "when: fact.suction_side",
         "rules.yaml:11:3: rules go round in a circle: 'r_water_runs_back' waits for 'r_water_runs_back' (no "
         "fact may rest on itself)\n"},
        {"A worksheet that waits for its own result is refused", "checks.yaml", "    rated: {",
         "    again: {name: Again, unit: count, from: flow_share}\n"
         "    rated: {",
         "checks.yaml:61:3: worksheets go round in a circle: 'bucket_flow' waits for 'bucket_flow' (an input "
         "must not rest on the worksheet's own result)\n"},
    };
    for (const Change& change : changes) {
        DYNAMIC_SECTION(change.what) {
            CHECK(faults_after(change) == change.faults);
        }
    }
}
