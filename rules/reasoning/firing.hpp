// Which rules fire and what they ask for. A rule fires only when its condition is yes; unknown fires nothing.
#pragma once

#include <map>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "rules/reasoning/assessment.hpp"
#include "rules/reasoning/situation.hpp"

namespace hardover {

// What one fired rule says about causes.
struct RuleEvidence {
    Index rule = none;
    std::vector<std::pair<Index, double>> favours;  // cause, factor on its odds
    std::vector<Index> rules_out;                   // causes
};

// A finding that a rule wants asked next.
struct Ask {
    Index finding = none;
    Index rule = none;
};

struct Fired {
    std::vector<FiredRule> rules;
    std::map<std::string, bool> derived;  // facts that are settled
    std::vector<RuleEvidence> evidence;   // in knowledge order; only rules that say something about causes
    std::vector<Ask> asks;                // as they come in the rules
    std::vector<Index> runs;              // worksheets
    std::vector<Index> cautions;
    std::vector<Index> deferrals;  // by rules, and those whose own condition is yes
    std::vector<Index> stops;
    // Needs not to be had, whatever is marked of them: a stop bars them, this rig does, or what they take is
    // not to be had.
    std::set<Index> barred;
};

Fired fire(const Knowledge& knowledge, Situation& situation);

}  // namespace hardover
