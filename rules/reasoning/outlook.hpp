// What may still be asked and tried, over the listed hypotheses, and how a job moves on with each answer and
// each remedy. Pure numbers: findings by index, no texts.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "rules/reasoning/fault_network.hpp"
#include "rules/reasoning/plan_screen.hpp"
#include "rules/reasoning/ranking.hpp"
#include "rules/reasoning/repair_plan.hpp"
#include "rules/reasoning/rows.hpp"

namespace hardover {

// Something that can be asked or looked at.
struct Question {
    int finding = 0;
    int check = -1;         // -1: no check
    double setting_up = 0;  // of the check, once for all its findings
    double minutes = 0;
};

// What there is to decide.
struct Decision {
    RepairModel repairs;          // with a need for every hypothesis
    std::vector<double> weights;  // per hypothesis; adds to 1
    std::vector<Question> questions;
    Rows<double> chances;  // per question: [reading * hypotheses + hypothesis]
    // Per question: the first one with the same chances, or itself. Empty: not looked for.
    std::vector<int> same_as{};
    // Per question: the hypotheses that have something to do with it, ascending; all others have the same
    // chances. Empty: not looked for.
    Rows<int> concerned{};
};

// The chances of every reading under every hypothesis, from the network; weights made to add to 1.
Decision decision_for(const FaultNetwork& network, const std::vector<Hypothesis>& hypotheses,
                      RepairModel repairs, std::vector<Question> questions);

// A job some steps ahead: what may still be wrong, what has been applied, asked and set up.
struct Position : Standing {
    std::vector<char> asked;  // per question
    std::uint64_t key = 0;    // names the answers and the remedies so far, in whatever order
};

class Outlook {
  public:
    explicit Outlook(Decision decision);
    Outlook(const Outlook&) = delete;
    Outlook& operator=(const Outlook&) = delete;

    const Decision& decision() const { return decision_; }
    RepairPlanner& planner() { return planner_; }
    PlanScreen& screen() { return *screen_; }
    // About what is left after the question (times the mass), without a plan. The screen stands at the
    // position.
    double screened(const Position& position, int question);

    // Nothing asked, nothing tried.
    const Position& start() const { return start_; }
    // From the start, when nothing more is asked.
    const RepairPlan& plan() const { return plan_; }

    int readings_of(int question) const;

    // An earlier question whose answers tell the same and leave the same to do; else the question itself.
    int same_as(int question) const { return same_as_[static_cast<std::size_t>(question)]; }

    // Minutes of a question from here.
    double asking(const Position& position, int question) const;
    // Everything but what may still be wrong after an answer; then that, reading by reading.
    void ask(const Position& before, int question, Position& after) const;
    void take_answer(const Position& before, int question, int reading, Position& after) const;

    // Position::key after an answer.
    static std::uint64_t key_after(const Position& before, int question, int reading);

    // Minutes (times the mass) of applying an action now, proved first where the plan proves it.
    double acting(const Position& position, int action) const;
    // After it, the boat not being right.
    void act(const Position& before, int action, Position& after) const;

    // Expected minutes, without the asking, when these questions are answered from the start and nothing more
    // is asked. Never more than plan().minutes: who knows more can still do the same.
    double minutes_after(const std::vector<int>& questions);

    // Bits that the answer tells about the hypotheses; for choosing what to look at more closely.
    double information(int question) const;
    // Never less, without a logarithm for every number: log2 of 1 + chi-square, averaged, is more than the
    // mean divergence (Jensen's inequality).
    double most_information(int question) const;

    // No policy takes less (times the mass).
    double least_minutes(const Position& position) const;

  private:
    template <typename Visit>
    void each_reading(int question, Visit visit) const;
    double after_all(const Position& position, const std::vector<int>& questions, std::size_t from);
    void find_proofs();
    void find_same();
    void find_rest();
    bool changes_minutes(int question) const;
    void answer_proofs(int question, Position& position) const;

    Decision decision_;
    RepairPlanner planner_;
    Rows<int> proves_;                               // per question: actions whose proof it is part of
    std::vector<std::vector<int>> proof_questions_;  // per action; empty: no proof that can be asked
    std::vector<int> same_as_;                       // per question
    std::vector<int> rest_;                          // per question: a hypothesis it does not concern, or -1
    Position start_;
    Position asked_;  // of screened(), kept for its memory
    RepairPlan plan_;
    std::vector<double> plan_each_;  // minutes of plan() per hypothesis
    std::optional<PlanScreen> screen_;
};

}  // namespace hardover
