// How the first cause comes about: the rules that fired with the answers and assumptions they rest on, and
// how much the first cause would move without each rule, assumption and answer. Worked out only when asked.
#pragma once

#include <string>
#include <vector>

#include "rules/reasoning/assessment.hpp"

namespace hardover {

// The first cause if something were not known.
struct Without {
    double probability = 0;  // of the cause that is first now
    Index first = none;      // then
    double first_probability = 0;
};

struct TracedRule {
    Index rule = none;
    std::vector<std::string> because;  // names in its condition that were known
    std::vector<Index> findings;       // it rests on, through worksheets and other rules too
    std::vector<Index> assumptions;    // rig fields, likewise
    std::vector<Index> rules;          // that derived facts for it
    Without without;                   // it and what it derives
};

struct TracedAssumption {
    Index rig_field = none;
    std::vector<Index> rules;  // fired, resting on it
    Without without;           // the field being unknown
};

struct TracedAnswer {
    Index finding = none;
    int stage = 0;
    int reading = -1;  // -1: measured
    Without without;
};

struct Trace {
    Index first = none;
    double probability = 0;
    std::vector<TracedRule> rules;              // knowledge order
    std::vector<TracedAssumption> assumptions;  // those used, knowledge order
    std::vector<TracedAnswer> answers;          // those that are evidence
};

Trace trace(const PreparedKnowledge& prepared, const Facts& facts);

}  // namespace hardover
