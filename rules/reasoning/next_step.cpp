#include "rules/reasoning/next_step.hpp"

#include <algorithm>
#include <cmath>

#include "rules/reasoning/effort.hpp"
#include "rules/reasoning/outlook.hpp"
#include "rules/reasoning/repairs.hpp"

namespace hardover {

namespace {

constexpr double worth_a_thing = 1e-9;      // share of the minutes left that an answer must save to count
constexpr std::size_t looked_at_twice = 8;  // questions looked at two steps ahead
constexpr std::size_t most_in_bundle = 3;   // findings of one check weighed together

// Something to ask or check, weighed.
struct Candidate {
    Index check = none;
    std::vector<int> findings;  // those that were weighed, the most useful first
    double minutes = 0;
    double after = 0;
    double total() const { return minutes + after; }
};

class Adviser {
  public:
    Adviser(const Knowledge& knowledge, const Facts& facts, Situation& situation, const Fired& fired,
            const DiagnosisCase& diagnosis, const Ranking& ranking)
        : knowledge_(knowledge),
          fired_(fired),
          ranking_(ranking),
          effort_(knowledge, facts, situation, diagnosis),
          repairs_(repairs_for(knowledge, ranking.hypotheses, effort_)),
          outlook_(diagnosis.network(), ranking.hypotheses, repairs_.model) {}

    Advice advise() {
        weigh_questions();
        look_twice();
        bundle_findings();
        std::stable_sort(candidates_.begin(), candidates_.end(), [](const Candidate& a, const Candidate& b) {
            if (a.total() != b.total()) return a.total() < b.total();
            return a.minutes < b.minutes;
        });
        Advice advice;
        advice.next = choose();
        for (const Hypothesis& h : ranking_.hypotheses) advice.sets_missing -= h.probability;
        advice.sets_missing = std::max(0.0, 1 + advice.sets_missing);
        advice.minutes_left = advice.next.minutes + advice.next.minutes_after;
        add_others(advice);
        return advice;
    }

    // The findings with readings that a step would answer.
    std::vector<Index> weighed_in(const NextStep& step) const {
        for (const Candidate& candidate : candidates_) {
            const bool same = candidate.check == none ? step.kind == NextStep::Kind::ask &&
                                                            candidate.findings.front() == step.index
                                                      : is_check(step) && candidate.check == step.index;
            if (same) return candidate.findings;
        }
        if (!is_check(step)) return {};
        std::vector<Index> findings;
        for (Index finding : step.findings) {
            if (knowledge_.findings[static_cast<std::size_t>(finding)].readings.size() > 1) {
                findings.push_back(finding);
            }
        }
        return findings;
    }

  private:
    bool saves_anything(double after) const {
        const double now = outlook_.plan().minutes;
        return now - after > worth_a_thing * std::max(1.0, now);
    }

    void weigh_questions() {
        for (std::size_t f = 0; f < knowledge_.findings.size(); ++f) {
            const Finding& finding = knowledge_.findings[f];
            const std::optional<FindingEffort>& effort = effort_.of(static_cast<Index>(f));
            if (!effort || finding.readings.size() < 2) continue;
            if (effort->blocked) {
                for (Index need : needs_of(static_cast<Index>(f))) blocked_by_.push_back(need);
                continue;
            }
            const Question question{static_cast<int>(f), finding.check, effort_.setting_up(finding.check),
                                    effort->minutes};
            questions_.push_back(question);
            candidates_.push_back({finding.check,
                                   {question.finding},
                                   question.setting_up + question.minutes,
                                   outlook_.minutes_after({question.finding})});
        }
    }

    std::vector<Index> needs_of(Index finding) const {
        std::vector<Index> needs =
            effort_.missing_needs(knowledge_.findings[static_cast<std::size_t>(finding)].check);
        for (Index measured : effort_.of(finding)->measured) {
            for (Index need :
                 effort_.missing_needs(knowledge_.findings[static_cast<std::size_t>(measured)].check)) {
                needs.push_back(need);
            }
        }
        return needs;
    }

    // Looks one step further on the questions that save most or tell most: two answers together may save what
    // neither saves alone.
    void look_twice() {
        std::vector<std::size_t> closest;
        const auto add_first = [&](auto before) {
            std::vector<std::size_t> order(questions_.size());
            for (std::size_t q = 0; q < order.size(); ++q) order[q] = q;
            std::stable_sort(order.begin(), order.end(), before);
            for (std::size_t n = 0; n < std::min(looked_at_twice / 2, order.size()); ++n) {
                if (std::find(closest.begin(), closest.end(), order[n]) == closest.end()) {
                    closest.push_back(order[n]);
                }
            }
        };
        std::vector<double> rate;
        for (const Question& question : questions_) {
            rate.push_back(outlook_.information(question.finding) / (question.setting_up + question.minutes));
        }
        add_first(
            [&](std::size_t a, std::size_t b) { return candidates_[a].total() < candidates_[b].total(); });
        add_first([&](std::size_t a, std::size_t b) { return rate[a] > rate[b]; });
        std::vector<Question> others;
        double best = outlook_.plan().minutes;
        for (std::size_t q : closest) {
            others.push_back(questions_[q]);
            best = std::min(best, candidates_[q].total());
        }
        for (std::size_t q : closest) {
            // A pair counts only when it beats its better half: else the first answer adds nothing to the
            // second.
            const double after = outlook_.minutes_after(questions_[q], others);
            if (candidates_[q].minutes + after < best * (1 - worth_a_thing)) candidates_[q].after = after;
        }
    }

    // One candidate a check: the finding that is best alone, joined by others of the check while that saves.
    void bundle_findings() {
        std::vector<Candidate> kept;
        std::vector<char> taken(candidates_.size(), 0);
        for (std::size_t c = 0; c < candidates_.size(); ++c) {
            if (taken[c]) continue;
            std::vector<std::size_t> of_check{c};
            if (candidates_[c].check != none) {
                for (std::size_t other = c + 1; other < candidates_.size(); ++other) {
                    if (candidates_[other].check == candidates_[c].check) of_check.push_back(other);
                }
            }
            for (std::size_t other : of_check) taken[other] = 1;
            const Candidate candidate = best_bundle(of_check);
            if (saves_anything(candidate.after)) kept.push_back(candidate);
        }
        candidates_ = std::move(kept);
    }

    Candidate best_bundle(std::vector<std::size_t> of_check) {
        std::stable_sort(of_check.begin(), of_check.end(), [&](std::size_t a, std::size_t b) {
            return candidates_[a].total() < candidates_[b].total();
        });
        Candidate best = candidates_[of_check.front()];
        Candidate joined = best;
        for (std::size_t n = 1; n < of_check.size() && joined.findings.size() < most_in_bundle; ++n) {
            const Question& question = questions_[of_check[n]];
            joined.findings.push_back(question.finding);
            joined.minutes += question.minutes;
            joined.after = std::min(best.after, outlook_.minutes_after(joined.findings));
            if (joined.total() < best.total()) {
                best = joined;
            } else {
                joined = best;
            }
        }
        return best;
    }

    NextStep choose() {
        if (const std::optional<NextStep> proved = remedy_of_proved()) return *proved;
        if (const std::optional<NextStep> asked = asked_by_rule()) return *asked;
        if (!candidates_.empty() && candidates_.front().total() < outlook_.plan().minutes) {
            return step_of(candidates_.front());
        }
        return act();
    }

    std::optional<NextStep> remedy_of_proved() {
        for (const RankedCause& cause : ranking_.causes) {
            if (!cause.proved || cause.put_right || cause.probability <= 0) continue;
            for (std::size_t a = 0; a < repairs_.repairs.size(); ++a) {
                if (repairs_.repairs[a].remedy !=
                    knowledge_.causes[static_cast<std::size_t>(cause.cause)].remedy)
                    continue;
                NextStep step;
                step.kind = NextStep::Kind::remedy;
                step.index = repairs_.repairs[a].remedy;
                step.cause = cause.cause;
                step.minutes = outlook_.model().actions[a].minutes;
                step.minutes_after = outlook_.minutes_applying(static_cast<int>(a)) - step.minutes;
                return step;
            }
        }
        return std::nullopt;
    }

    std::optional<NextStep> asked_by_rule() {
        for (const Ask& ask : fired_.asks) {
            for (const Candidate& candidate : candidates_) {
                if (!asks_for(candidate, ask.finding)) continue;
                NextStep step = step_of(candidate);
                step.asked_by = ask.rule;
                return step;
            }
        }
        return std::nullopt;
    }

    bool asks_for(const Candidate& candidate, Index finding) const {
        return std::any_of(candidate.findings.begin(), candidate.findings.end(), [&](int f) {
            const std::vector<Index>& measured = effort_.of(f)->measured;
            return f == finding || std::find(measured.begin(), measured.end(), finding) != measured.end();
        });
    }

    NextStep step_of(const Candidate& candidate) {
        NextStep step;
        step.minutes = candidate.minutes;
        step.minutes_after = candidate.after;
        for (int finding : candidate.findings) list_finding(step, finding);
        if (candidate.check == none) {
            step.kind = NextStep::Kind::ask;
            step.index = candidate.findings.front();
            return step;
        }
        step.kind = NextStep::Kind::check;
        step.index = candidate.check;
        for (Index finding : effort_.open_findings(candidate.check)) add_once(step.findings, finding);
        if (!outlook_.plan().order.empty()) {
            const Repair& first = repairs_.repairs[static_cast<std::size_t>(outlook_.plan().order.front())];
            if (first.proof && first.proof->check == candidate.check) {
                step.kind = NextStep::Kind::prove;
                step.cause = first.cause;
            }
        }
        return step;
    }

    void list_finding(NextStep& step, Index finding) const {
        const std::vector<Index>& measured = effort_.of(finding)->measured;
        if (measured.empty()) add_once(step.findings, finding);
        for (Index input : measured) add_once(step.findings, input);
    }

    static void add_once(std::vector<Index>& list, Index index) {
        if (std::find(list.begin(), list.end(), index) == list.end()) list.push_back(index);
    }

    // The first step of the plan when nothing more is asked: prove and put right, or call for help.
    NextStep act() {
        const RepairPlan& plan = outlook_.plan();
        NextStep step;
        if (plan.order.empty()) {
            step.kind = NextStep::Kind::stop_asking;
            step.minutes = plan.minutes;
            std::sort(blocked_by_.begin(), blocked_by_.end());
            blocked_by_.erase(std::unique(blocked_by_.begin(), blocked_by_.end()), blocked_by_.end());
            step.blocked_by = blocked_by_;
            return step;
        }
        const auto first = static_cast<std::size_t>(plan.order.front());
        const Repair& repair = repairs_.repairs[first];
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
            step.minutes = outlook_.model().actions[first].minutes;
        }
        step.minutes_after = plan.minutes - step.minutes;
        return step;
    }

    void add_others(Advice& advice) {
        std::vector<NextStep> others;
        for (const Candidate& candidate : candidates_) others.push_back(step_of(candidate));
        others.push_back(act());
        std::stable_sort(others.begin(), others.end(), [](const NextStep& a, const NextStep& b) {
            return a.minutes + a.minutes_after < b.minutes + b.minutes_after;
        });
        for (const NextStep& other : others) {
            if (other.index == none || advice.also.size() == most_also) continue;
            const bool same_check =
                is_check(other) && is_check(advice.next) && other.index == advice.next.index;
            if (same_check || (other.kind == advice.next.kind && other.index == advice.next.index)) continue;
            advice.also.push_back(other);
        }
    }

    static bool is_check(const NextStep& step) {
        return step.kind == NextStep::Kind::check || step.kind == NextStep::Kind::prove;
    }

    const Knowledge& knowledge_;
    const Fired& fired_;
    const Ranking& ranking_;
    Effort effort_;
    Repairs repairs_;
    Outlook outlook_;
    std::vector<Question> questions_;
    std::vector<Candidate> candidates_;
    std::vector<Index> blocked_by_;
};

// What each reading of a finding would do to the ranking, exactly.
void add_branches(const Knowledge& knowledge, const DiagnosisCase& diagnosis, Index finding,
                  std::vector<NextStep::Branch>& branches) {
    const std::size_t readings = knowledge.findings[static_cast<std::size_t>(finding)].readings.size();
    FaultCase given = diagnosis.with_all();
    const double log_now = posterior(diagnosis.network(), given).log_evidence;
    for (std::size_t r = 0; r < readings; ++r) {
        std::vector<double>& likelihood = given.likelihood[static_cast<std::size_t>(finding)];
        likelihood.assign(readings, 0.0);
        likelihood[r] = 1;
        const Posterior then = posterior(diagnosis.network(), given);
        if (!then.possible) continue;
        NextStep::Branch branch;
        branch.finding = finding;
        branch.reading = static_cast<int>(r);
        branch.chance = std::exp(then.log_evidence - log_now);
        for (std::size_t i = 0; i < then.marginal.size(); ++i) {
            const bool counts = diagnosis.cured() || !diagnosis.put_right()[i];
            if (!counts || then.marginal[i] <= branch.first_probability) continue;
            branch.first = static_cast<Index>(i);
            branch.first_probability = then.marginal[i];
        }
        branches.push_back(branch);
    }
}

}  // namespace

Advice advise(const Knowledge& knowledge, const Facts& facts, Situation& situation, const Fired& fired,
              const DiagnosisCase& diagnosis, const Ranking& ranking) {
    Advice advice;
    if (diagnosis.cured() && ranking.possible) {
        advice.next.kind = NextStep::Kind::done;
        return advice;
    }
    if (!ranking.possible || ranking.hypotheses.empty()) {
        advice.next.kind = NextStep::Kind::stop_asking;
        advice.next.minutes = knowledge.settings.call_for_help;
        advice.minutes_left = advice.next.minutes;
        return advice;
    }
    Adviser adviser(knowledge, facts, situation, fired, diagnosis, ranking);
    advice = adviser.advise();
    for (Index finding : adviser.weighed_in(advice.next)) {
        add_branches(knowledge, diagnosis, finding, advice.next.branches);
    }
    return advice;
}

}  // namespace hardover
