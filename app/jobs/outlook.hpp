// What an answer would do, as figures to be drawn with their words beside them: how each answer to a question
// moves the first causes, and which answers would turn the first cause. Pure; worked out only when shown.
#pragma once

#include <string>
#include <vector>

#include "app/jobs/job.hpp"
#include "rules/reasoning/turning.hpp"

namespace hardover {

// A cause as it stands now and as it would stand then.
struct CauseMove {
    std::string name;
    double now = 0;
    double then = 0;
    std::string now_text;  // "24 %"
    std::string then_text;
    bool first = false;  // of all causes, then
};

struct AnswerOutlook {
    std::string answer;  // the reading's text
    double chance = 0;
    std::string chance_text;
    std::vector<CauseMove> causes;  // the same ones in the same order for every answer
};

struct QuestionOutlook {
    std::string name;  // of the finding
    std::vector<AnswerOutlook> answers;
};

// The answers a finding can have, worst first, and the causes that matter for them: each answer's first one,
// and the first ones now; at most five, the most probable now first. No answers: the finding has no readings,
// or all of them are impossible.
QuestionOutlook question_outlook(const PreparedKnowledge& prepared, const Job& job, Index finding);

// One way to turn the first cause.
struct TurnSketch {
    std::string condition;  // "If sponge after bleeding is “Comes back”"
    bool of_given = false;  // answers that were given, if they are wrong
    double chance = 0;      // 0 for given answers
    std::string chance_text;
    std::string first;  // the cause that would come first
    double probability = 0;
    std::string probability_text;
};

struct TurningSketch {
    std::string first;  // now; "": nothing on the list is possible
    double probability = 0;
    std::string probability_text;
    std::vector<TurnSketch> turns;     // at most four of each kind, the most telling first
    std::vector<std::string> nothing;  // said where there are none of a kind
};

TurningSketch turning_sketch(const Knowledge& knowledge, const Turning& turning);

}  // namespace hardover
