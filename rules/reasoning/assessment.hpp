// Everything the program has to say about a job so far: the result of assess(). Plain values; every id is an
// index into the Knowledge it was made with, every text a person reads is made from these by the pages.
#pragma once

#include <map>
#include <set>
#include <string>
#include <vector>

#include "rules/model/facts.hpp"
#include "rules/model/knowledge.hpp"
#include "rules/reasoning/prepared_knowledge.hpp"

namespace hardover {

// One piece of evidence for (positive) or against (negative) a cause.
struct Weight {
    enum class Kind {
        finding,
        rule,
        remedy  // what became of the remedies that were tried, all together
    };
    Kind kind = Kind::finding;
    Index index = none;   // finding or rule; none for remedy
    int reading = -1;     // the reading answered; -1 for soft evidence: `value` says what was measured
    double decibans = 0;  // 10 log10 of the change in odds; all weights of a cause add up to its whole change
    int stage = 0;        // finding: how many remedies had been tried when it was answered
    bool earlier = false;  // finding: it was answered again since
};

struct RankedCause {
    Index cause = none;
    double prior = 0;           // for this history and rig, before any answer, given that something is wrong
    double probability = 0;     // that this cause is present, alone or with others
    Index ruled_out_by = none;  // rule
    bool impossible_here = false;  // possible_when is no on this rig
    bool proved = false;           // proved_when holds
    bool put_right = false;        // its remedy was tried; not among what is still wrong unless that cured it
    std::vector<Weight> weights;   // heaviest first
};

// A set of faults present together and its probability.
struct FaultSet {
    std::vector<Index> causes;  // ascending; empty with not_listed: only something not on the list
    bool not_listed = false;
    double probability = 0;
};

struct FiredRule {
    Index rule = none;
    std::vector<std::string> because;  // names in its condition that were known
};

// A worksheet that could be worked out, or what it still needs.
struct WorkedSheet {
    Index worksheet = none;
    std::vector<Value> inputs;        // as used, in the order of the worksheet's inputs
    std::vector<bool> input_assumed;  // from a rig field's assumption
    std::vector<Value> results;       // Unknown where an input is missing
    std::vector<std::string> advice;
    std::string refused;      // not empty: why it does not hold for these inputs
    bool called_for = false;  // a rule that fired runs it
    bool complete() const;
};

struct NextStep {
    enum class Kind {
        ask,          // a question, answered at once: index = finding
        check,        // something to be done first: index = check, findings = what it gets that is still open
        prove,        // the check that proves the leading cause: index = check, cause = which
        remedy,       // apply it and try: index = remedy, cause = which
        stop_asking,  // nothing on the list is worth trying: call for help
        done          // a remedy has cured it
    };
    Kind kind = Kind::ask;
    Index index = none;
    Index cause = none;
    std::vector<Index> findings;
    Index asked_by = none;          // rule that puts it first
    Index ahead_of = none;          // cause that comes from the one looked for or put right here
    bool again = false;             // looked at before a remedy that may have taken it away
    bool narrows = false;           // asked in case it is none of the first causes; may save no minutes
    double minutes = 0;             // of this step
    double minutes_after = 0;       // expected after it, until the boat is right
    std::vector<Index> blocked_by;  // needs not to be had now (only when nothing else is left)

    // What each outcome would do, for "why this question": reading, its chance, the first cause then.
    struct Branch {
        Index finding = none;
        int reading = -1;
        double chance = 0;
        Index first = none;
        double first_probability = 0;
    };
    std::vector<Branch> branches;
};

struct Assessment {
    std::vector<RankedCause> ranking;  // most probable first; ruled-out and impossible ones at the end with 0
    double not_listed = 0;             // "something not on this list" is present
    double several = 0;                // more than one fault (the unlisted counts as one)
    // The most probable sets, heaviest first, at most 8; those less probable than 1e-5 are left out.
    std::vector<FaultSet> sets;
    double bound = 0;         // largest error of any probability above; 0: exact
    double sets_missing = 0;  // share of all possible sets that the next step did not look at
    double log_evidence = 0;  // natural log of the probability of all answers

    std::vector<FiredRule> fired;
    std::map<std::string, bool> derived;
    std::vector<WorkedSheet> worksheets;  // all of them, in knowledge order
    // Per finding used: likelihood per reading of the latest answer, greatest = 1.
    std::map<Index, std::vector<double>> evidence;
    // Earlier answers that cannot both be right with the later one and no misreading: they are left out.
    std::vector<EarlierAnswer> set_aside;

    std::vector<Index> cautions;  // raised by rules
    std::vector<Index> deferrals;
    std::vector<Index> stops;
    std::set<Index> barred;      // needs not to be had; see Fired::barred
    std::vector<Index> assumed;  // rig fields whose assumption was used

    NextStep next;
    std::vector<NextStep> also;  // the next best steps, cheapest first, at most 5
    double minutes_left = 0;     // expected minutes until the boat is right

    // Not empty when the rules leave no cause possible or contradict the answers.
    std::string conflict;
};

// What an assessment holds beyond the ranking and the next step. Each costs about as much as the ranking
// itself, several times over for the weights of many answers.
struct Detail {
    bool weights = true;     // RankedCause::weights
    bool branches = true;    // NextStep::branches
    bool worksheets = true;  // Assessment::worksheets; else empty
};

// The reasoning. Pure: equal arguments give an equal result to the last digit. Never fails: an odd set of
// facts gives an Assessment that says so (`conflict`).
Assessment assess(const PreparedKnowledge& prepared, const Facts& facts, const Detail& detail = {});

}  // namespace hardover
