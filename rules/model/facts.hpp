// What the technician has told so far: the only input of the reasoning beside the knowledge.
// A value type: taking an answer back is the same Facts without it. Knows no clock and no order of entry but
// this: how many remedies had been tried when an answer was given (its stage; 0 = before any of them).
#pragma once

#include <map>
#include <set>
#include <string>
#include <variant>
#include <vector>

#include "rules/model/knowledge.hpp"

namespace hardover {

struct CannotTell {
    friend bool operator==(const CannotTell&, const CannotTell&) = default;
};

// One answer to a finding: a reading (its index, 0 = worst), a measured quantity, or "can't tell".
struct Answer {
    std::variant<CannotTell, int, Quantity> given;
    friend bool operator==(const Answer&, const Answer&) = default;
};

// A rig field as known: a quantity or the id of a choice.
using RigValue = std::variant<Quantity, std::string>;

// What became of a remedy that was applied.
enum class Outcome { cured, better, not_cured };

// An answer that was given again after a remedy: still evidence about the boat as it was then.
struct EarlierAnswer {
    Index finding = none;
    int stage = 0;
    Answer answer;
    friend bool operator==(const EarlierAnswer&, const EarlierAnswer&) = default;
};

struct Facts {
    std::map<Index, RigValue> rig;  // by rig field; missing = unknown (the field's assumption is used)
    Index history = none;           // none = unknown
    std::set<Index> complaints;
    std::map<Index, Answer> answers;     // by finding: the latest
    std::map<Index, int> answered_at;    // by finding: stage of the latest answer; missing = 0
    std::vector<EarlierAnswer> earlier;  // by stage; a finding at most once a stage, below its latest
    std::map<Index, Outcome> tried;      // by remedy
    std::map<Index, int> tried_as;       // by remedy: 1 for the first tried, 2, ...; missing = 1
    std::set<Index> unavailable;         // needs that are not available now
    double shop_rate = 0;                // price of an hour; 0 = as in the knowledge

    friend bool operator==(const Facts&, const Facts&) = default;
};

// How many remedies have been tried.
int present_stage(const Facts& facts);

// The stage of the latest answer about a finding; 0 where there is none.
int answer_stage(const Facts& facts, Index finding);

// There is an answer about the finding from after the last remedy.
bool answered_now(const Facts& facts, Index finding);

// 1 for the remedy tried first; 0 for one that was not tried.
int tried_as(const Facts& facts, Index remedy);

}  // namespace hardover
