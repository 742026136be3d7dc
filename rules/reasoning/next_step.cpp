#include "rules/reasoning/next_step.hpp"

#include <algorithm>
#include <set>

#include "rules/reasoning/bystanders.hpp"
#include "rules/reasoning/narrowing.hpp"
#include "rules/reasoning/repairs.hpp"
#include "rules/reasoning/roll_out.hpp"
#include "rules/reasoning/second_look.hpp"
#include "rules/reasoning/step_maker.hpp"

namespace hardover {

namespace {

constexpr double worth_a_thing = 1e-9;  // share of the minutes left that an answer must save to count

// What a rule wants asked is asked although it saves no minutes, when it takes at most so many minutes, or at
// most this share of what would be done otherwise: two wrenches on a nut before the flange is cut loose. From
// memory.
constexpr double cheap_to_ask = 5;
constexpr double cheap_beside = 1.0 / 3;

// A proof counts as settled, and its remedy comes next whatever else could be asked, once its cause is this
// probable. Below, the plan decides as for any other cause. In simulated jobs 0.9 put the true cause first
// more often for no more minutes than going by the proof alone.
constexpr double sure_of_proof = 0.9;

// Once a remedy has left something wrong, and before help is called, a proved cause comes next that is at
// least so probable: it was seen on the boat, and whoever comes would have to put it right first. From
// memory; on simulated jobs the minutes were the same as with 0.5, and a technician looks at far less.
constexpr double sure_enough_next = 0.15;

// What a cause comes from is put right first without proof, where none can be had, from here.
constexpr double more_likely_than_not = 0.5;

// A cause this probable is proved or cleared, where a rule asks for it, before another proved one is put
// right. From memory.
constexpr double still_likely = 0.1;

// The heaviest hypotheses, until they make up a share of those listed.
struct Heaviest {
    std::size_t most;
    double share;
};
constexpr Heaviest planned_for{48, 0.99};
// Before asking ends the doubt beyond the first causes is looked at, and much of it lies in the last percent:
// by what the plan looks at the true cause was among the first three in 98.7 of 100 of 3,755 simulated jobs,
// by these in 99.0 to 99.2, for one question more.
constexpr Heaviest doubted{64, 0.997};

std::vector<Hypothesis> heaviest(const std::vector<Hypothesis>& listed, const Heaviest& limit) {
    double all = 0;
    for (const Hypothesis& hypothesis : listed) all += hypothesis.probability;
    double share = 0;
    std::size_t taken = 0;
    while (taken < std::min(limit.most, listed.size()) && share <= limit.share * all) {
        share += listed[taken++].probability;
    }
    return {listed.begin(), listed.begin() + static_cast<std::ptrdiff_t>(taken)};
}

bool is_check(const NextStep& step) {
    return step.kind == NextStep::Kind::check || step.kind == NextStep::Kind::prove;
}

bool same_step(const NextStep& a, const NextStep& b) {
    const bool same_check = is_check(a) && is_check(b);
    return (same_check || a.kind == b.kind) && a.index == b.index;
}

class Adviser {
  public:
    Adviser(const PreparedKnowledge& prepared, const Effort& effort, const Fired& fired,
            const DiagnosisCase& diagnosis, const Ranking& ranking)
        : prepared_(prepared),
          knowledge_(prepared.knowledge()),
          effort_(effort),
          fired_(fired),
          diagnosis_(diagnosis),
          ranking_(ranking),
          listed_(without_bystanders(ranking.hypotheses, diagnosis.usual_prior(),
                                     diagnosis.usual_prior_not_listed())),
          hypotheses_(heaviest(listed_, planned_for)),
          repairs_(repairs_for(knowledge_, hypotheses_, effort_)),
          outlook_(decision_for(diagnosis.network(), hypotheses_, repairs_.model, open_questions())),
          roll_out_(outlook_),
          make_(knowledge_, effort_, repairs_, outlook_, roll_out_, blocked_by_) {}

    Advice advise(const std::optional<SecondLook>& second_look) {
        second_look_ = second_look;
        steps_ = roll_out_.weigh(outlook_.start());
        for (const Weighed& step : steps_) {
            if (step.kind == Weighed::Kind::ask ? saves_anything(step) : true) useful_.push_back(step);
        }
        Advice advice;
        advice.next = choose();
        advice.minutes_left = advice.next.minutes + advice.next.minutes_after;
        advice.sets_missing = 1;
        for (const Hypothesis& h : hypotheses_) advice.sets_missing -= h.probability;
        advice.sets_missing = std::max(0.0, advice.sets_missing);
        add_others(advice);
        advice.weighed_in = weighed_in(advice.next);
        return advice;
    }

  private:
    // The findings with readings that a step would answer, the one it was chosen for alone where there is
    // one. What is looked at again was not chosen for what each reading would do.
    std::vector<Index> weighed_in(const NextStep& step) const {
        std::vector<Index> findings;
        if (step.again) return findings;
        if (step.kind == NextStep::Kind::remedy || step.kind == NextStep::Kind::stop_asking) return findings;
        if (chosen_for_ != none) return {chosen_for_};
        for (Index finding : step.findings) {
            if (knowledge_.findings[static_cast<std::size_t>(finding)].readings.size() > 1) {
                findings.push_back(finding);
            }
        }
        return findings;
    }

    // Findings with readings that can be had now. Remembers the needs of those that cannot.
    std::vector<Question> open_questions() {
        std::vector<Question> questions;
        for (std::size_t f = 0; f < knowledge_.findings.size(); ++f) {
            const Finding& finding = knowledge_.findings[f];
            const std::optional<FindingEffort>& effort = effort_.of(static_cast<Index>(f));
            if (!effort || finding.readings.size() < 2) continue;
            if (effort->blocked) {
                for (Index need : needs_of(static_cast<Index>(f))) blocked_by_.insert(need);
                continue;
            }
            questions.push_back(
                {static_cast<int>(f), finding.check, effort_.setting_up(finding.check), effort->minutes});
        }
        return questions;
    }

    std::vector<Index> needs_of(Index finding) const {
        std::vector<Index> needs = effort_.missing_for(finding);
        for (Index measured : effort_.of(finding)->measured) {
            for (Index need : effort_.missing_for(measured)) needs.push_back(need);
        }
        return needs;
    }

    Index finding_of(const Weighed& step) const { return make_.finding_of(step); }

    // What to do when nothing is asked: the best action, or calling for help.
    const Weighed& best_action() const {
        return *std::find_if(steps_.begin(), steps_.end(),
                             [](const Weighed& step) { return step.kind != Weighed::Kind::ask; });
    }

    NextStep step_of(const Weighed& weighed) const { return make_.step_of(weighed, best_action()); }

    // A question saves minutes alone, or with others after it; then its answer must be able to change what is
    // done.
    bool saves_anything(const Weighed& question) {
        const double planned = outlook_.plan().minutes;
        if (planned - question.alone > worth_a_thing * std::max(1.0, planned)) return true;
        return question.rolled && question.total() < best_action().total() * (1 - worth_a_thing) &&
               roll_out_.may_change(outlook_.start(), question.index);
    }

    // The plan's next step; before a cause is put right, what it comes from; before anything is put right or
    // help is called, what is worth one more look.
    NextStep choose() {
        NextStep planned = choose_by_plan();
        while (const std::optional<NextStep> first = origin_of(planned)) planned = *first;
        if (planned.kind != NextStep::Kind::remedy && planned.kind != NextStep::Kind::stop_asking) {
            return planned;
        }
        // Once something was put right, what is proved besides is not doubted any further.
        if (planned.kind == NextStep::Kind::remedy && !nothing_tried() && is_proved(planned.cause)) {
            return planned;
        }
        const std::optional<int> question = narrowing(planned);
        if (!question) return planned;
        const auto weighed = std::find_if(steps_.begin(), steps_.end(), [&](const Weighed& step) {
            return step.kind == Weighed::Kind::ask && step.index == *question;
        });
        chosen_for_ = finding_of(*weighed);
        NextStep look = step_of(*weighed);
        look.narrows = true;
        return look;
    }

    // By its place among the questions.
    std::optional<int> narrowing(const NextStep& planned) const {
        const bool help = planned.kind == NextStep::Kind::stop_asking && nothing_tried();
        const std::vector<Hypothesis> hypotheses = heaviest(listed_, doubted);
        // What would be put right does not matter here, so that no repairs are given.
        const Decision decision =
            decision_for(diagnosis_.network(), hypotheses, {}, outlook_.decision().questions);
        return narrowing_question(decision, hypotheses, ranking_.causes,
                                  help ? Before::help : Before::remedy);
    }

    bool is_proved(Index cause) const {
        return std::any_of(ranking_.causes.begin(), ranking_.causes.end(),
                           [&](const RankedCause& ranked) { return ranked.cause == cause && ranked.proved; });
    }

    bool nothing_tried() const {
        return std::none_of(ranking_.causes.begin(), ranking_.causes.end(),
                            [](const RankedCause& cause) { return cause.put_right; });
    }

    // What the cause that a step puts right comes from, where that is likely: left in place, it brings the
    // cause back. Nothing for other steps. No cause comes from itself, so that there is an end.
    std::optional<NextStep> origin_of(const NextStep& step) {
        if (step.kind != NextStep::Kind::remedy || step.cause == none) return std::nullopt;
        const std::vector<Index>& origins =
            knowledge_.causes[static_cast<std::size_t>(step.cause)].comes_from;
        for (const RankedCause& origin : ranking_.causes) {
            if (origin.put_right ||
                std::find(origins.begin(), origins.end(), origin.cause) == origins.end()) {
                continue;
            }
            std::optional<NextStep> first = origin.proved ? std::nullopt : proof_of_origin(origin, step);
            if (!first && (origin.proved || origin.probability >= more_likely_than_not)) {
                if (const auto action = action_of(origin)) first = make_.put_right(*action, origin.cause);
            }
            if (!first) continue;
            first->ahead_of = step.cause;
            return first;
        }
        return std::nullopt;
    }

    // The cheapest part of its proof that can be had, where it costs less than what it may save: with the
    // origin left in place the step is done twice, without it the look was for nothing.
    std::optional<NextStep> proof_of_origin(const RankedCause& origin, const NextStep& step) {
        const std::vector<Index>& proof = prepared_.proving_findings(origin.cause);
        for (const Weighed& weighed : steps_) {
            if (weighed.kind != Weighed::Kind::ask) continue;
            if (std::find(proof.begin(), proof.end(), finding_of(weighed)) == proof.end()) continue;
            if (origin.probability * step.minutes < (1 - origin.probability) * weighed.minutes) continue;
            chosen_for_ = finding_of(weighed);
            NextStep look = step_of(weighed);
            if (look.kind == NextStep::Kind::check) look.kind = NextStep::Kind::prove;
            look.cause = origin.cause;
            return look;
        }
        return std::nullopt;
    }

    NextStep choose_by_plan() {
        std::optional<NextStep> proved = proved_put_right(sure_of_proof);
        if (!proved && second_look_) return make_.look_again(*second_look_, steps_.front().total());
        if (!proved && !nothing_tried()) proved = proved_put_right(sure_enough_next);
        if (proved) {
            if (const std::optional<NextStep> asked = asked_for_other_proof()) return *asked;
            return *proved;
        }
        if (const std::optional<NextStep> asked = asked_by_rule()) return *asked;
        const Weighed& first = useful_.front();
        if (first.kind == Weighed::Kind::call_for_help) {
            if (const std::optional<NextStep> proved = proved_put_right(sure_enough_next)) return *proved;
        }
        if (first.kind == Weighed::Kind::ask) chosen_for_ = finding_of(first);
        return step_of(first);
    }

    const Cause& cause_of(const RankedCause& ranked) const {
        return knowledge_.causes[static_cast<std::size_t>(ranked.cause)];
    }

    std::optional<std::size_t> action_of(const RankedCause& cause) const {
        for (std::size_t a = 0; a < repairs_.repairs.size(); ++a) {
            if (repairs_.repairs[a].remedy == cause_of(cause).remedy) return a;
        }
        return std::nullopt;
    }

    // Puts right a cause that is proved and at least so sure: of several the one with the greatest odds for
    // its minutes, as for any remedy.
    std::optional<NextStep> proved_put_right(double sure) {
        std::optional<NextStep> best;
        double most = 0;
        for (const RankedCause& cause : ranking_.causes) {
            if (!cause.proved || cause.put_right || cause.probability < sure) continue;
            const auto action = action_of(cause);
            if (!action) continue;
            const double odds = cause.probability / std::max(1 - cause.probability, 1e-12);
            const double worth = odds / repairs_.model.actions[*action].minutes;
            if (best && worth <= most) continue;
            best = make_.put_right(*action, cause.cause);
            most = worth;
        }
        return best;
    }

    // Is the finding part of the proof of a cause that is likely too, and not proved?
    bool proves_another(Index finding) const {
        return std::any_of(ranking_.causes.begin(), ranking_.causes.end(), [&](const RankedCause& cause) {
            if (cause.proved || cause.put_right || cause.probability < still_likely) return false;
            const std::vector<Index>& named = prepared_.proving_findings(cause.cause);
            return std::find(named.begin(), named.end(), finding) != named.end();
        });
    }

    std::optional<NextStep> asked_for_other_proof() {
        for (const Ask& ask : fired_.asks) {
            if (!proves_another(ask.finding)) continue;
            for (const Weighed& step : steps_) {
                if (step.kind == Weighed::Kind::ask && asks_for(step, ask.finding)) return asked(step, ask);
            }
        }
        return std::nullopt;
    }

    // In the order of the rules, what a check that is open can tell before what lies elsewhere.
    std::optional<NextStep> asked_by_rule() {
        const Weighed* elsewhere = nullptr;
        const Ask* by = nullptr;
        for (const Ask& ask : fired_.asks) {
            const auto step = std::find_if(steps_.begin(), steps_.end(), [&](const Weighed& weighed) {
                return weighed.kind == Weighed::Kind::ask && asks_for(weighed, ask.finding) &&
                       worth_asking(weighed);
            });
            if (step == steps_.end()) continue;
            if (is_open(*step)) return asked(*step, ask);
            if (elsewhere) continue;
            elsewhere = &*step;
            by = &ask;
        }
        if (!elsewhere) return std::nullopt;
        return asked(*elsewhere, *by);
    }

    // Saves minutes, or is cheap and can still change what is done.
    bool worth_asking(const Weighed& question) {
        const double cheap = std::max(cheap_to_ask, cheap_beside * step_of(useful_.front()).minutes);
        const bool tells =
            question.minutes <= cheap && roll_out_.may_change(outlook_.start(), question.index);
        return tells || saves_anything(question);
    }

    // Its check was begun, so that only the look itself is left.
    bool is_open(const Weighed& question) const {
        const Question& asked = outlook_.decision().questions[question.index];
        const bool begun = asked.check != none && asked.setting_up == 0;
        return begun && knowledge_.checks[static_cast<std::size_t>(asked.check)].minutes > 0;
    }

    NextStep asked(const Weighed& weighed, const Ask& ask) {
        chosen_for_ = finding_of(weighed);
        NextStep step = step_of(weighed);
        step.asked_by = ask.rule;
        return step;
    }

    bool asks_for(const Weighed& step, Index finding) const {
        const Index answers = finding_of(step);
        const std::vector<Index>& measured = effort_.of(answers)->measured;
        return answers == finding || std::find(measured.begin(), measured.end(), finding) != measured.end();
    }

    void add_others(Advice& advice) {
        for (const Weighed& weighed : useful_) {
            if (advice.also.size() == most_also) break;
            const NextStep other = step_of(weighed);
            if (other.index == none) continue;
            const bool listed = std::any_of(advice.also.begin(), advice.also.end(),
                                            [&](const NextStep& step) { return same_step(step, other); });
            if (!listed && !same_step(other, advice.next)) advice.also.push_back(other);
        }
    }

    const PreparedKnowledge& prepared_;
    const Knowledge& knowledge_;
    const Effort& effort_;
    const Fired& fired_;
    const DiagnosisCase& diagnosis_;
    const Ranking& ranking_;
    std::set<Index> blocked_by_;          // needs of what could be looked at, were they to be had
    std::vector<Hypothesis> listed_;      // the heaviest first
    std::vector<Hypothesis> hypotheses_;  // the plan is made for
    Repairs repairs_;
    Outlook outlook_;
    RollOut roll_out_;
    StepMaker make_;
    std::vector<Weighed> steps_;   // all, the fewest minutes first
    std::vector<Weighed> useful_;  // without questions that save nothing
    Index chosen_for_ = none;      // the finding that the next step was chosen for
    std::optional<SecondLook> second_look_;
};

}  // namespace

Advice advise(const PreparedKnowledge& prepared, const Facts& facts, const Effort& effort, const Fired& fired,
              const DiagnosisCase& diagnosis, const Ranking& ranking) {
    Advice advice;
    if (diagnosis.cured() && ranking.possible) {
        advice.next.kind = NextStep::Kind::done;
        return advice;
    }
    if (!ranking.possible || ranking.hypotheses.empty()) {
        advice.next.kind = NextStep::Kind::stop_asking;
        advice.next.minutes = prepared.knowledge().settings.call_for_help;
        advice.minutes_left = advice.next.minutes;
        return advice;
    }
    return Adviser(prepared, effort, fired, diagnosis, ranking)
        .advise(second_look(prepared, facts, effort, diagnosis, ranking));
}

}  // namespace hardover
