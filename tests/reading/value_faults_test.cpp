// Faults of value: shares, odds, thresholds, units and limits. Each case changes one place of the
// garden pump's files and compares every message.
#include "reading/reading_support.hpp"

using namespace hardover_tests;

TEST_CASE("A value that cannot be is reported at its place with what would be right") {
    const std::vector<Change> changes = {
        {"Shares that add to more than one name their sum", "causes.yaml",
         "    flow: {nothing: usually, weak: sometimes}", "    flow: {nothing: usually, weak: often}",
         "causes.yaml:9:5: the shares of 'flow' add to 1.25, more than 1\n"},
        {"A share for the sound reading is refused", "causes.yaml", "    hose_lie: {kinked: always}",
         "    hose_lie: {free: seldom}",
         "causes.yaml:65:16: 'free' is the sound reading of 'hose_lie', it has what is left (leave it "
         "out)\n"},
        {"A share above one is refused", "causes.yaml", "sinks: 0.2}", "sinks: 1.2}",
         "causes.yaml:10:40: 'sinks' must be a share from 0 to 1\n"},
        {"A cause cannot show a plain measurement", "causes.yaml", "    hose_lie: {kinked: always}",
         "    hose_lie: {kinked: always}\n"
         "    bucket_time: {long: often}",
         "causes.yaml:66:5: finding 'bucket_time' has no readings, so a cause cannot show it\n"},
        {"Odds are per thousand", "causes.yaml", "in_use: 260", "in_use: 2600",
         "causes.yaml:7:39: odds are from 0 to 1000, they are per 1000 comebacks\n"},
        {"The shares of the histories must add to one", "setup.yaml", "share: 0.4", "share: 0.5",
         "setup.yaml:46:3: the shares of all histories add to 1.1, not to 1\n"},
        {"A threshold in the wrong unit is refused", "findings.yaml", "above: 9 psi", "above: 9 in",
         "findings.yaml:58:42: '9 in' is a length, expected a pressure such as 4.5 psi (write it like 4.5 "
         "psi)\n"},
        {"A threshold without a unit is refused", "findings.yaml", "above: 9 psi", "above: 9",
         "findings.yaml:58:42: '9' is a plain number, expected a pressure such as 4.5 psi (write it like 4.5 "
         "psi, with its unit)\n"},
        {"An unknown unit is met with the nearest", "findings.yaml", "  unit: psi", "  unit: pzi",
         "findings.yaml:55:9: unknown unit 'pzi' (did you mean 'psi'?)\n"},
        {"Thresholds out of order are refused", "findings.yaml", "above: 6 psi", "above: 12 psi",
         "findings.yaml:59:37: the limits are out of order: the worst reading comes first (each 'above' "
         "smaller than the one before it)\n"},
        {"Thresholds from below must rise", "findings.yaml", "below: 0.8", "below: 0.3",
         "findings.yaml:91:44: the limits are out of order: the worst reading comes first (each 'below' "
         "larger than the one before it)\n"},
        {"Above and below cannot be mixed", "findings.yaml", "above: 6 psi", "below: 6 psi",
         "findings.yaml:59:37: the limits of one finding are all 'above' or all 'below'\n"},
        {"The sound reading takes no threshold", "findings.yaml", "low: {text: Less than 6 psi}",
         "low: {text: Less than 6 psi, above: 1 psi}",
         "findings.yaml:60:41: the last reading is what is left, it takes no limit\n"},
        {"A reading between thresholds needs its own", "findings.yaml",
         "some: {text: 6 to 9 psi, above: 6 psi}", "some: {text: 6 to 9 psi}",
         "findings.yaml:58:5: reading 'some' has no limit\n"},
        {"A threshold on a finding that is not measured is refused", "findings.yaml", "kinked: Kinked",
         "kinked: {text: Kinked, above: 2 in}",
         "findings.yaml:100:44: a limit needs a finding with 'unit'\n"},
        {"A spread in the wrong unit is refused", "findings.yaml", "spread: 0.5 psi", "spread: 0.5 s",
         "findings.yaml:56:11: '0.5 s' is a time, expected a pressure such as 4.5 psi (write it like 4.5 "
         "psi)\n"},
        {"A finding in another unit than its worksheet is refused", "findings.yaml",
         "  from: bucket_flow.share\n"
         "  unit: count",
         "  from: bucket_flow.flow\n"
         "  unit: count",
         "findings.yaml:86:9: 'bucket_flow.flow' is in gal/min, but the finding is in count\n"},
        {"A stray share for an unknown reading is met with the nearest", "findings.yaml",
         "stray: {sinks: 0.1}", "stray: {sink: 0.1}",
         "findings.yaml:33:11: unknown reading 'sink' of finding 'prime' (did you mean 'sinks'?)\n"},
        {"A finding with one reading asks nothing", "findings.yaml", "{blown: Blown, whole: Whole}",
         "{blown: Blown}", "findings.yaml:21:13: 'readings' needs at least two, worst first\n"},
        {"A finding with neither readings nor unit is refused", "findings.yaml",
         "  readings: {kinked: Kinked, free: Free}\n", "",
         "findings.yaml:97:3: finding 'hose_lie' has neither 'readings' nor 'unit'\n"},
        {"A rig field has either choices or a unit", "setup.yaml",
         "  unit: gal/min\n"
         "  assumed",
         "  assumed", "setup.yaml:80:3: rig_field 'rated_flow' must have either 'choices' or 'unit'\n"},
        {"An assumption outside the limits is refused", "setup.yaml", "assumed: 10 ft", "assumed: 40 ft",
         "setup.yaml:76:12: '40 ft' is too large for 'lift' (at most 30 ft)\n"},
        {"An assumption that is no choice is met with the nearest", "setup.yaml",
         "  choices: {electric: An electric motor, hand: A hand lever}",
         "  choices: {electric: An electric motor, hand: A hand lever}\n"
         "  assumed: electrik",
         "setup.yaml:71:12: 'electrik' is no choice of 'drive' (did you mean 'electric'?)\n"},
        {"Limits the wrong way round are refused", "setup.yaml", "least: 1 ft", "least: 31 ft",
         "setup.yaml:78:9: 'most' is smaller than 'least'\n"},
        {"A setting in the wrong unit is refused", "setup.yaml", "value: 2 h", "value: 2 ft",
         "setup.yaml:34:10: 'value' must be a number of minutes, not '2 ft' (or a time with its unit, such "
         "as 2 h)\n"},
        {"A share setting above one is refused", "setup.yaml", "value: 0.2\n", "value: 20\n",
         "setup.yaml:26:10: the setting 'not_listed_shows' must be a share from 0 to 1\n"},
        {"A favour of nothing is refused with the action that excludes", "rules.yaml", "by: 6", "by: 0",
         "rules.yaml:49:11: 'by' must be more than 0 (to exclude a cause write rule_out)\n"},
    };
    for (const Change& change : changes) {
        DYNAMIC_SECTION(change.what) {
            CHECK(faults_after(change) == change.faults);
        }
    }
}
