// What is known about one job, by the names that conditions and formulas use: rig, history, complaints,
// answers, worksheet results and facts derived by rules, each worked out when it is first asked for.
#pragma once

#include <optional>
#include <set>
#include <string>
#include <unordered_map>
#include <vector>

#include "rules/model/facts.hpp"
#include "rules/model/knowledge.hpp"
#include "rules/reasoning/assessment.hpp"

namespace hardover {

class Situation {
  public:
    // Both must outlive the situation.
    Situation(const Knowledge& knowledge, const Facts& facts);
    Situation(const Situation&) = delete;
    Situation& operator=(const Situation&) = delete;

    // The value of a name; Unknown also for names there are not.
    Value value_of(const std::string& name);

    Truth holds(const Expression& condition);

    // What is known about a finding: the technician's answer; else what its worksheet gives; else what a
    // complaint says (the worst, when several do). Empty: nothing.
    std::optional<Answer> answer_to(Index finding);

    // Worked out as far as its inputs are known.
    const WorkedSheet& worked(Index worksheet);

    // A rule's condition. Facts it uses are derived first; a rule that would need itself is unknown.
    Truth rule_holds(Index rule);

    // yes: a rule derived it; no: no rule can any more; unknown: depends on what is not known yet.
    Truth derived(const std::string& fact);

    // Names of a condition that are known.
    std::vector<std::string> known_names(const Expression& condition);

    // Rig fields whose assumption was used for anything so far.
    const std::set<Index>& assumed() const { return assumed_; }

  private:
    struct Name {
        enum class Kind { rig, history, complaint, finding, result };
        Kind kind = Kind::rig;
        Index index = none;
        int result = -1;
    };

    Value rig_value(Index field);
    Value history_value() const;
    Value complaint_value() const;
    Value finding_value(Index finding);
    Value result_value(Index worksheet, int result);
    WorkedSheet work_out_here(Index worksheet);

    const Knowledge& knowledge_;
    const Facts& facts_;
    std::unordered_map<std::string, Name> names_;
    std::unordered_map<std::string, std::vector<Index>> derived_by_;  // fact -> rules
    enum class Progress { untouched, running, done };
    std::vector<Progress> rule_progress_;
    std::vector<Truth> rule_truth_;
    std::vector<Progress> sheet_progress_;
    std::vector<WorkedSheet> sheets_;
    std::set<Index> assumed_;
    Lookup lookup_;
};

}  // namespace hardover
