// What an answer would change: expected minutes after each thing that could be asked, over the listed
// hypotheses. Pure numbers: findings by index, no texts.
#pragma once

#include <vector>

#include "rules/reasoning/fault_network.hpp"
#include "rules/reasoning/ranking.hpp"
#include "rules/reasoning/repair_plan.hpp"

namespace hardover {

// Something that can be asked or looked at.
struct Question {
    int finding = 0;
    int check = -1;         // -1: no check
    double setting_up = 0;  // of the check, once for all its findings
    double minutes = 0;
};

class Outlook {
  public:
    // Network and hypotheses must outlive the object; `model` has a need for every hypothesis.
    Outlook(const FaultNetwork& network, const std::vector<Hypothesis>& hypotheses, RepairModel model);
    Outlook(const Outlook&) = delete;
    Outlook& operator=(const Outlook&) = delete;

    // When nothing more is asked.
    const RepairPlan& plan() const { return plan_; }
    const RepairModel& model() const { return model_; }

    // Expected minutes, without the asking, when all of these findings are answered and nothing more is
    // asked. Never more than plan().minutes: who knows more can still do the same.
    double minutes_after(const std::vector<int>& findings);

    // The same for one question, when one more of `others` may be asked after its answer: look-ahead of two.
    double minutes_after(const Question& question, const std::vector<Question>& others);

    // Bits that the answer tells about the hypotheses; for choosing what to look at more closely.
    double information(int finding);

    // Expected minutes when `action` is applied at once, without proof, and then the plan is followed.
    double minutes_applying(int action);

  private:
    using Weights = std::vector<double>;
    const std::vector<double>& chances_of(int finding);
    double after_answer(const Weights& weights, const std::vector<char>& proof_known);
    double after_all(const Weights& weights, const std::vector<int>& findings, std::size_t from,
                     const std::vector<char>& proof_known);
    std::vector<char> known_after(const std::vector<int>& findings) const;

    const FaultNetwork& network_;
    const std::vector<Hypothesis>& hypotheses_;
    RepairModel model_;
    RepairPlanner planner_;
    Weights weights_;
    RepairPlan plan_;
    std::vector<std::vector<double>> chances_;  // per finding: [reading * hypotheses + hypothesis]
};

}  // namespace hardover
