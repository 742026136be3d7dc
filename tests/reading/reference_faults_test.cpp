// Faults of reference: ids and words that stand for nothing. Each case changes one place of the
// garden pump's files and compares every message.
#include "reading/reading_support.hpp"

using namespace hardover_tests;

TEST_CASE("A reference to nothing is reported at its place with the nearest right spelling") {
    const std::vector<Change> changes = {
        {"An unknown finding is met with the nearest", "causes.yaml",
         "    prime: {runs_back: usually, sinks: 0.2}", "    prim: {runs_back: usually, sinks: 0.2}",
         "causes.yaml:10:5: unknown finding 'prim' (did you mean 'prime'?)\n"},
        {"An unknown reading is met with the nearest", "causes.yaml",
         "    prime: {runs_back: usually, sinks: 0.2}", "    prime: {run_back: usually, sinks: 0.2}",
         "causes.yaml:10:13: unknown reading 'run_back' of finding 'prime' (did you mean 'runs_back'?)\n"},
        {"An unknown remedy is reported at its name", "causes.yaml", "  remedy: clean_strainer",
         "  remedy: clean_the_strainer_well",
         "causes.yaml:28:11: unknown remedy 'clean_the_strainer_well'\n"},
        {"An unknown check is reported", "findings.yaml", "  check: look_at_fuse", "  check: look_at_fuze",
         "findings.yaml:23:10: unknown check 'look_at_fuze' (did you mean 'look_at_fuse'?)\n"},
        {"An unknown part is reported", "findings.yaml", "  part: motor\n", "  part: moter\n",
         "findings.yaml:16:9: unknown part 'moter' (did you mean 'motor'?)\n"},
        {"An unknown source is reported", "causes.yaml",
         "  remedy: renew_foot_valve\n"
         "  source: invented\n",
         "  remedy: renew_foot_valve\n"
         "  source: inventd\n",
         "causes.yaml:15:11: unknown source 'inventd' (did you mean 'invented'?)\n"},
        {"An unknown caution in a list is reported at its own column", "checks.yaml",
         "  cautions: [open_well]", "  cautions: [mains, open_wel]",
         "checks.yaml:25:21: unknown caution 'open_wel' (did you mean 'open_well'?)\n"},
        {"A caution named twice is reported", "checks.yaml", "  cautions: [open_well]",
         "  cautions: [open_well, open_well]",
         "checks.yaml:25:25: 'open_well' is given twice in 'cautions'\n"},
        {"An unknown need is reported", "checks.yaml", "  needs: [well_open]", "  needs: [wel_open]",
         "checks.yaml:24:11: unknown need 'wel_open' (did you mean 'well_open'?)\n"},
        {"An unknown need that another takes is reported", "setup.yaml", "  name: Well cover can be lifted",
         "  name: Well cover can be lifted\n  takes: [wel_open]",
         "setup.yaml:59:11: unknown need 'wel_open' (did you mean 'well_open'?)\n"},
        {"An unknown need that a caution comes with is reported", "setup.yaml",
         "  hurts: Somebody can fall in.", "  hurts: Somebody can fall in.\n  comes_with: wel_open",
         "setup.yaml:116:15: unknown need 'wel_open' (did you mean 'well_open'?)\n"},
        {"An unknown worksheet result is met with the nearest", "findings.yaml", "from: bucket_flow.share",
         "from: bucket_flow.shares",
         "findings.yaml:86:9: worksheet 'bucket_flow' has no result 'shares' (did you mean 'share'?)\n"},
        {"An unknown worksheet is reported", "findings.yaml", "from: bucket_flow.share",
         "from: buckt_flow.share",
         "findings.yaml:86:9: unknown worksheet 'buckt_flow' (did you mean 'bucket_flow'?)\n"},
        {"An unknown cause in a rule is reported", "rules.yaml", "- favour: suction_air",
         "- favour: suction_aire",
         "rules.yaml:6:15: unknown cause 'suction_aire' (did you mean 'suction_air'?)\n"},
        {"An unknown action is met with the nearest", "rules.yaml", "- rule_out: fuse_blown",
         "- ruleout: fuse_blown", "rules.yaml:26:7: unknown action 'ruleout' (did you mean 'rule_out'?)\n"},
        {"A favour without its weight is reported", "rules.yaml", "      by: slightly\n", "",
         "rules.yaml:6:7: an action of rule 'r_open_hose_points_at_suction' has no 'by'\n"},
        {"Two actions in one are refused", "rules.yaml", "    - caution: mains\n",
         "    - caution: mains\n"
         "      stop: wet_motor\n",
         "rules.yaml:34:7: one action each, after its own '- '\n"},
        {"An unknown history in the odds is met with the nearest", "causes.yaml",
         "odds: {just_installed: 120, in_use: 260}", "odds: {just_instaled: 120, in_use: 260}",
         "causes.yaml:7:9: 'odds' does not name the history 'just_installed'\n"
         "causes.yaml:7:10: unknown history 'just_instaled' (did you mean 'just_installed'?)\n"},
        {"Odds that leave a history out are refused", "causes.yaml",
         "odds: {just_installed: 120, in_use: 260}", "odds: {just_installed: 120}",
         "causes.yaml:7:9: 'odds' does not name the history 'in_use'\n"},
        {"An unknown origin of a cause is met with the nearest", "causes.yaml", "  remedy: clean_strainer",
         "  remedy: clean_strainer\n  comes_from: [hose_kink]",
         "causes.yaml:29:16: unknown cause 'hose_kink' (did you mean 'hose_kinked'?)\n"},
        {"An origin's own source must be there", "causes.yaml", "  remedy: clean_strainer",
         "  remedy: clean_strainer\n  comes_from: {hose_kinked: inventd}",
         "causes.yaml:29:29: unknown source 'inventd' (did you mean 'invented'?)\n"},
        {"An unknown cause under what a remedy also cures is met with the nearest", "causes.yaml",
         "- remedy: clean_strainer", "- remedy: clean_strainer\n  also_cures: [nozzle_clog]",
         "causes.yaml:119:16: unknown cause 'nozzle_clog' (did you mean 'nozzle_clogged'?)\n"},
        {"A cause that comes from itself is refused", "causes.yaml", "  remedy: clean_strainer",
         "  remedy: clean_strainer\n  comes_from: [strainer_blocked]",
         "causes.yaml:29:16: 'strainer_blocked' comes from itself (name under 'comes_from' only what is "
         "there "
         "before it)\n"},
        {"Causes that come from each other are told once, as a chain, where the first names the next",
         "causes.yaml", "  remedy: clean_strainer\n  source: invented\n- cause: suction_air\n",
         "  remedy: clean_strainer\n  comes_from: [suction_air]\n  source: invented\n- cause: suction_air\n"
         "  comes_from: {strainer_blocked: invented}\n",
         "causes.yaml:29:16: causes go round in a circle: 'strainer_blocked' comes from 'suction_air' comes "
         "from 'strainer_blocked' (name under 'comes_from' only what is there before it)\n"},
        {"An unknown setting is met with the nearest", "setup.yaml", "- setting: stray", "- setting: strey",
         "setup.yaml:17:3: unknown setting 'strey' (did you mean 'stray'?)\n"},
        {"An unknown word of the scale is met with the nearest", "causes.yaml",
         "    flow: {nothing: usually, weak: sometimes}", "    flow: {nothing: usualy, weak: sometimes}",
         "causes.yaml:9:21: 'usualy' is neither a number nor a word of the scale 'how_often' (did you mean "
         "'usually'?)\n"},
        {"A complaint that reports an unknown reading is refused", "setup.yaml", "says: {flow: weak}",
         "says: {flow: weka}",
         "setup.yaml:105:16: unknown reading 'weka' of finding 'flow' (did you mean 'weak'?)\n"},
    };
    for (const Change& change : changes) {
        DYNAMIC_SECTION(change.what) {
            CHECK(faults_after(change) == change.faults);
        }
    }
}
