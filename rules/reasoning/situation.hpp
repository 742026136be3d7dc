// What is known about one job, by the names that conditions and formulas use: rig, history, complaints,
// answers, worksheet results and facts derived by rules, each worked out when it is first asked for.
#pragma once

#include <optional>
#include <set>
#include <string>
#include <vector>

#include "rules/model/facts.hpp"
#include "rules/model/knowledge.hpp"
#include "rules/reasoning/assessment.hpp"
#include "rules/reasoning/prepared_knowledge.hpp"

namespace hardover {

class Situation {
  public:
    // The facts and the knowledge itself must outlive the situation.
    Situation(const PreparedKnowledge& prepared, const Facts& facts);
    Situation(const Situation&) = delete;
    Situation& operator=(const Situation&) = delete;

    const PreparedKnowledge& prepared() const { return prepared_; }
    const Facts& facts() const { return facts_; }

    // The value of a name; Unknown also for names there are not.
    Value value_of(const std::string& name);

    Truth holds(const Expression& condition);
    Truth holds(const PreparedCondition& condition);

    // What is known about a finding: the technician's answer; else what its worksheet gives; else what a
    // complaint says (the worst, when several do). Empty: nothing.
    const std::optional<Answer>& answer_to(Index finding);

    // Worked out as far as its inputs are known.
    const WorkedSheet& worked(Index worksheet);

    // A rule's condition. Facts it uses are derived first; a rule that would need itself is unknown.
    Truth rule_holds(Index rule);
    // Quicker, where only that counts: whether it is yes. Most rules wait for an answer.
    bool rule_fires(Index rule);

    // yes: a rule derived it; no: no rule can any more; unknown: depends on what is not known yet.
    Truth derived(const std::string& fact);

    // Names of a condition that are known.
    std::vector<std::string> known_names(const Expression& condition);
    std::vector<std::string> known_names(const PreparedCondition& condition);

    // Rig fields whose assumption was used for anything so far.
    const std::set<Index>& assumed() const { return assumed_; }

  private:
    const Value& value_at(int name);
    Value work_out_value(const KnownName& name);
    Value rig_value(Index field);
    Value history_value() const;
    Value complaint_value() const;
    Value finding_value(Index finding);
    Value result_value(Index worksheet, int result);
    std::optional<Answer> work_out_answer(Index finding);
    WorkedSheet work_out_here(Index worksheet);
    Truth derived_by(const std::vector<Index>& rules);

    PreparedKnowledge prepared_;
    const Knowledge& knowledge_;
    const Facts& facts_;
    // What has been found out so far. While a worksheet is being worked out a value may rest on its being
    // unknown, so that nothing is kept then.
    std::vector<Value> values_;                    // by name
    std::vector<char> value_known_;                // by name
    std::vector<std::optional<Truth>> condition_;  // by text; only of those that name no fact
    NamedValues named_;                            // of the condition looked at
    std::vector<std::optional<Answer>> answers_;   // by finding
    std::vector<char> answer_known_;               // by finding
    int sheets_running_ = 0;
    enum class Progress { untouched, running, done };
    std::vector<Progress> rule_progress_;
    std::vector<Truth> rule_truth_;
    std::vector<Progress> sheet_progress_;
    std::vector<WorkedSheet> sheets_;
    std::set<Index> assumed_;
};

}  // namespace hardover
