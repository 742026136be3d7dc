#include "rules/reasoning/step_maker.hpp"

#include <algorithm>

namespace hardover {

namespace {

void add_once(std::vector<Index>& list, Index index) {
    if (std::find(list.begin(), list.end(), index) == list.end()) list.push_back(index);
}

// A check that proves what would be put right first is called its proof, and takes as long.
void make_proof(NextStep& step, const Repair& first) {
    if (!first.proof || first.proof->check != step.index) return;
    step.kind = NextStep::Kind::prove;
    step.cause = first.cause;
    const double more = std::clamp(first.proof->minutes - step.minutes, 0.0, step.minutes_after);
    step.minutes += more;
    step.minutes_after -= more;
}

}  // namespace

StepMaker::StepMaker(const Knowledge& knowledge, const Effort& effort, const Repairs& repairs,
                     const Outlook& outlook, RollOut& roll_out, const std::set<Index>& blocked_by)
    : knowledge_(knowledge),
      effort_(effort),
      repairs_(repairs),
      outlook_(outlook),
      roll_out_(roll_out),
      blocked_by_(blocked_by) {}

Index StepMaker::finding_of(const Weighed& question) const {
    return outlook_.decision().questions[question.index].finding;
}

NextStep StepMaker::step_of(const Weighed& weighed, const Weighed& best_action) const {
    if (weighed.kind != Weighed::Kind::ask) return act(weighed);
    const Index finding = finding_of(weighed);
    NextStep step;
    step.minutes = weighed.minutes;
    step.minutes_after = weighed.after;
    list_finding(step, finding);
    step.index = knowledge_.findings[static_cast<std::size_t>(finding)].check;
    if (step.index == none) {
        step.index = finding;
        return step;
    }
    step.kind = NextStep::Kind::check;
    for (Index open : effort_.open_findings(step.index)) add_once(step.findings, open);
    if (best_action.kind == Weighed::Kind::act) make_proof(step, repairs_.repairs[best_action.index]);
    return step;
}

NextStep StepMaker::put_right(std::size_t action, Index cause) const {
    NextStep step;
    step.kind = NextStep::Kind::remedy;
    step.index = repairs_.repairs[action].remedy;
    step.cause = cause;
    step.minutes = repairs_.model.actions[action].minutes;
    step.minutes_after =
        roll_out_.minutes_applying(outlook_.start(), static_cast<int>(action)) - step.minutes;
    return step;
}

NextStep StepMaker::look_again(const SecondLook& look, double minutes_after) const {
    const Finding& finding = knowledge_.findings[static_cast<std::size_t>(look.finding)];
    NextStep step;
    step.again = true;
    step.cause = look.cause;
    step.minutes = std::max(least_minutes, finding.minutes);
    step.minutes_after = minutes_after;
    step.findings.push_back(look.finding);
    step.index = finding.check;
    if (step.index == none) {
        step.index = look.finding;
        return step;
    }
    step.kind = look.cause == none ? NextStep::Kind::check : NextStep::Kind::prove;
    for (Index open : effort_.open_findings(step.index)) add_once(step.findings, open);
    return step;
}

NextStep StepMaker::act(const Weighed& weighed) const {
    NextStep step;
    if (weighed.kind == Weighed::Kind::call_for_help) {
        step.kind = NextStep::Kind::stop_asking;
        step.minutes = weighed.minutes;
        step.blocked_by.assign(blocked_by_.begin(), blocked_by_.end());
        return step;
    }
    const Repair& repair = repairs_.repairs[weighed.index];
    step.cause = repair.cause;
    if (repair.proof) {
        step.kind = NextStep::Kind::prove;
        step.index = repair.proof->check;
        step.minutes = repair.proof->minutes;
        for (Index finding : repair.proof->findings) list_finding(step, finding);
        for (Index finding : effort_.open_findings(step.index)) add_once(step.findings, finding);
    } else {
        step.kind = NextStep::Kind::remedy;
        step.index = repair.remedy;
        step.minutes = repairs_.model.actions[weighed.index].minutes;
    }
    step.minutes_after = weighed.total() - step.minutes;
    return step;
}

void StepMaker::list_finding(NextStep& step, Index finding) const {
    const std::vector<Index>& measured = effort_.of(finding)->measured;
    if (measured.empty()) add_once(step.findings, finding);
    for (Index input : measured) add_once(step.findings, input);
}

}  // namespace hardover
