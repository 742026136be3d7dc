// When each answer was given and when each cause was put right, counted in remedies tried; and what was known
// at any stage. Says nothing about probabilities.
#pragma once

#include <limits>
#include <map>
#include <memory>
#include <vector>

#include "rules/model/facts.hpp"
#include "rules/model/knowledge.hpp"
#include "rules/reasoning/situation.hpp"

namespace hardover {

struct TimedAnswer {
    int stage = 0;
    Answer answer;
};

// The facts as they stood at the end of a stage: later answers are gone, what they replaced is back. What was
// tried stays as it is.
Facts facts_at(const Facts& facts, int stage);

class Stages {
  public:
    // All must outlive the object; `now` is the situation with all facts.
    Stages(const Knowledge& knowledge, const Facts& facts, Situation& now);

    // Some answer was given after a remedy.
    bool any() const { return any_; }

    // What was told about a finding, the earliest first, once a stage: answers, results of its worksheet
    // (in the stage of an input), and in stage 0 what a complaint says. One at most when !any().
    std::vector<TimedAnswer> about(Index finding);

    // The first stage in which the cause is no longer there; `never` when its remedy was not tried.
    static constexpr int never = std::numeric_limits<int>::max();
    int put_right_at(Index cause) const;

    // The situation at the end of a stage.
    Situation& at(int stage);

  private:
    struct Then {
        Facts facts;
        Situation situation;
        Then(const PreparedKnowledge& prepared, Facts then)
            : facts(std::move(then)), situation(prepared, facts) {}
    };
    std::vector<int> directly(Index finding) const;
    void collect(Index finding, std::vector<int>& stages, int depth) const;

    const Knowledge& knowledge_;
    const Facts& facts_;
    Situation& now_;
    bool any_ = false;
    int last_ = 0;
    std::map<int, std::unique_ptr<Then>> then_;
};

}  // namespace hardover
