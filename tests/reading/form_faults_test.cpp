// Faults of form: YAML itself, keys, sorts of values, ids. Each case changes one place of the
// garden pump's files and compares every message.
#include "reading/reading_support.hpp"

using namespace hardover_tests;

TEST_CASE("A fault of form is reported at its place with what would be right") {
    const std::vector<Change> changes = {
        {"A missing key is reported at its entry", "findings.yaml", "  ask: How much water comes?\n", "",
         "findings.yaml:3:3: finding 'flow' has no 'ask'\n"},
        {"A misspelt key is met with the right one", "findings.yaml", "  ask: How much", "  aks: How much",
         "findings.yaml:5:3: unknown key 'aks' in finding 'flow' (did you mean 'ask'?)\n"},
        {"An unknown key is met with those possible there", "setup.yaml", "  name: Motor\n",
         "  name: Motor\n"
         "  colour: blue\n",
         "setup.yaml:62:3: unknown key 'colour' in part 'motor' (possible here: part, name, source)\n"},
        {"A key given twice is reported with the line of the first", "causes.yaml", "  remedy: renew_fuse\n",
         "  remedy: renew_fuse\n"
         "  remedy: renew_fuse\n",
         "causes.yaml:57:3: key 'remedy' is given twice in cause 'fuse_blown' (the first is in line 56)\n"},
        {"A key without a value is reported", "causes.yaml", "  remedy: renew_fuse\n", "  remedy:\n",
         "causes.yaml:56:3: 'remedy' has no value in cause 'fuse_blown'\n"},
        {"A text where a list belongs is reported", "checks.yaml", "  tools: [Rope]", "  tools: Rope",
         "checks.yaml:22:10: 'tools' must be a list (write [a, b], or each on a line of its own after '- "
         "')\n"},
        {"A list where a text belongs is reported", "findings.yaml", "  name: Fuse\n", "  name: [Fuse]\n",
         "findings.yaml:19:9: 'name' must be a text (put a text that holds ': ' or '#' in quotes)\n"},
        {"A step that YAML takes for a map is reported with the advice to quote it", "checks.yaml",
         "Look at the strainer.]", "Look: the strainer.]",
         "checks.yaml:21:54: each of 'steps' must be a text (put a text that holds ': ' or '#' in quotes)\n"},
        {"An empty list where one is needed is reported", "causes.yaml",
         "  after: [Look for spits in the flow.]", "  after: []",
         "causes.yaml:136:10: 'after' of remedy 'tighten_clamps' is empty (give at least one)\n"},
        {"An empty text is reported", "findings.yaml", "  name: Fuse\n", "  name: \"\"\n",
         "findings.yaml:19:9: 'name' is empty\n"},
        {"A word where a number belongs is reported", "checks.yaml", "minutes: 15", "minutes: long",
         "checks.yaml:23:12: 'minutes' must be a number of minutes, not 'long' (or a time with its unit, "
         "such as 2 h)\n"},
        {"A decimal comma is met with the decimal point", "setup.yaml",
         "value: 0.02\n"
         "  about: Share",
         "value: 0,02\n"
         "  about: Share",
         "setup.yaml:18:10: 'value' must be a number, not '0,02' (write a decimal point)\n"},
        {"A negative time is refused", "checks.yaml", "minutes: 15", "minutes: -15",
         "checks.yaml:23:12: 'minutes' must not be less than 0\n"},
        {"An unknown kind of entry is met with the nearest", "findings.yaml", "- finding: fuse",
         "- findin: fuse", "findings.yaml:18:3: unknown kind of entry 'findin' (did you mean 'finding'?)\n"},
        {"An entry that does not begin with its kind is refused", "rules.yaml",
         "- rule: r_wet_motor\n"
         "  when: seal_drip is fast and rig.drive is electric\n",
         "- when: seal_drip is fast and rig.drive is electric\n"
         "  rule: r_wet_motor\n",
         "rules.yaml:44:3: unknown kind of entry 'when' (an entry begins with its kind and id, as '- "
         "finding: wheel_feel')\n"},
        {"An id in capitals is refused", "causes.yaml", "- cause: fuse_blown", "- cause: Fuse_Blown",
         "causes.yaml:44:10: cause 'Fuse_Blown' is not written as an id (small letters, digits and "
         "underscores, such as wheel_feel)\n"
         "rules.yaml:26:17: unknown cause 'fuse_blown' (did you mean 'Fuse_Blown'?)\n"
         "rules.yaml:32:15: unknown cause 'fuse_blown' (did you mean 'Fuse_Blown'?)\n"},
        {"A finding named like a word of the rule language is refused", "findings.yaml",
         "- finding: nozzle_off", "- finding: not",
         "causes.yaml:78:5: unknown finding 'nozzle_off'\n"
         "causes.yaml:80:16: unknown name 'nozzle_off'\n"
         "findings.yaml:105:12: finding 'not' is a word of the rule language (choose another)\n"
         "rules.yaml:18:31: unknown name 'nozzle_off'\n"},
        {"An id given twice is reported with the place of the first", "causes.yaml",
         "- cause: nozzle_clogged", "- cause: hose_kinked",
         "causes.yaml:71:3: cause 'hose_kinked' is given twice (the first is at causes.yaml:58)\n"},
        {"A bare no is refused, whatever YAML makes of it", "findings.yaml", "same: The same comes",
         "same: no",
         "findings.yaml:108:48: 'no' without quotes may be read as true or false (write \"no\", or another "
         "word)\n"},
        {"A missing source is a fault", "causes.yaml",
         "  remedy: renew_foot_valve\n"
         "  source: invented\n",
         "  remedy: renew_foot_valve\n", "causes.yaml:3:3: cause 'foot_valve_leaking' has no 'source'\n"},
        {"Anchors and aliases are refused", "findings.yaml",
         "  name: Fuse\n"
         "  ask: How is the fuse?\n",
         "  name: &fuse Fuse\n"
         "  ask: *fuse\n",
         "findings.yaml:19:9: an anchor (&name) is not used in these files (put the text in quotes)\n"
         "findings.yaml:20:8: an alias (*name) is not used in these files (write the text out, or put it in "
         "quotes)\n"},
        {"A tag is refused", "findings.yaml", "  name: Fuse\n", "  name: !text Fuse\n",
         "findings.yaml:19:9: a tag (!name) is not used in these files (put the text in quotes)\n"},
        {"A second document in a file is refused", "rules.yaml", "- rule: r_wet_motor",
         "---\n"
         "- rule: r_wet_motor",
         "rules.yaml:45:1: a second document begins here, but a file holds one (look for a line '---', or at "
         "the indentation)\n"},
        {"A bracket left open is reported inside its entry", "checks.yaml", "tools: [Rope]", "tools: [Rope",
         "checks.yaml:23:10: not readable as YAML: end of sequence flow not found (look at the indentation, "
         "quotes and brackets here and just above)\n"},
        {"A file that is one map and no list is refused", "rules.yaml",
         "- rule: r_open_hose_points_at_suction\n", "",
         "rules.yaml:3:3: expected a list of entries (begin each entry with '- ')\n"
         "rules.yaml:10:1: a second document begins here, but a file holds one (look for a line '---', or at "
         "the indentation)\n"},
    };
    for (const Change& change : changes) {
        DYNAMIC_SECTION(change.what) {
            CHECK(faults_after(change) == change.faults);
        }
    }
}
