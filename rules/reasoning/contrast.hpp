// Why one cause rather than another: the most probable set of faults with the one against the most probable
// set with the other. Between two complete sets the log-odds are exactly the sum of what the odds, each rule
// and each finding say.
#pragma once

#include <vector>

#include "rules/reasoning/assessment.hpp"

namespace hardover {

struct ContrastRow {
    enum class Kind {
        odds,    // of a fault that only one of the sets holds: index = cause, none for "not on this list"
        rule,    // index = rule
        finding  // index = finding, all its answers together
    };
    Kind kind = Kind::odds;
    Index index = none;
    double decibans = 0;  // above 0: for the first
};

struct Contrast {
    bool possible = false;  // false: one of the two cannot be, and nothing below has a meaning
    FaultSet with_a;        // holds a, not b; the heaviest found (all looked at up to 8 causes)
    FaultSet with_b;
    std::vector<ContrastRow> rows;  // heaviest first
    double decibans = 0;            // of the first set against the second: the sum of the rows
};

// `none` stands for "something not on this list".
Contrast contrast(const PreparedKnowledge& prepared, const Facts& facts, Index a, Index b);

}  // namespace hardover
