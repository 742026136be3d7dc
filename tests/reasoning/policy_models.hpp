// Small random troubleshooting models whose best policy can be worked out exactly, and plain policies to
// compare with. Used by the tests and by the benchmark of the policy.
#pragma once

#include <algorithm>
#include <cmath>
#include <functional>
#include <map>
#include <unordered_map>
#include <vector>

#include "reasoning/chance.hpp"
#include "rules/reasoning/roll_out.hpp"

namespace hardover_tests {

using namespace hardover;

// questions: one fault of ten, ten remedies that help with one to three faults each and not always, five
// questions. opening: the same, and all but every fourth remedy needs one of three covers opened first (3 to
// 12 minutes, once). set_up: one fault of ten, one remedy for each (eight remedies, which fail now and then),
// five questions that belong to three checks with minutes for setting up; half of the remedies are proved
// first in one of these checks. several: six faults, any of them together, all to be put right.
enum class ModelClass { questions, opening, set_up, several };

inline double link_chance(Chance& chance) {
    return chance.upto(99) < 35 ? chance.between(0.6, 0.98) : chance.between(0.02, 0.2);
}

inline void add_questions(Decision& decision, ModelClass kind, Chance& chance) {
    double setting_up[3];
    for (double& minutes : setting_up) minutes = chance.between(0.5, 2.5);
    for (int q = 0; q < 5; ++q) {
        Question question;
        question.finding = q;
        question.minutes = chance.between(0.2, 2);
        if (kind == ModelClass::set_up) {
            question.check = q % 3;
            question.setting_up = setting_up[q % 3];
        }
        decision.questions.push_back(question);
    }
    if (kind != ModelClass::set_up) return;
    for (std::size_t a = 0; a < decision.repairs.actions.size(); a += 2) {
        RepairAction& action = decision.repairs.actions[a];
        const int check = static_cast<int>(a / 2 % 3);
        const double minutes = setting_up[check] + chance.between(0.2, 2);
        if (minutes >= action.minutes) continue;
        action.proof_check = check;
        action.proof_setting_up = setting_up[check];
        action.proof_minutes = minutes;
    }
}

inline void add_covers(Decision& decision, Chance& chance) {
    double opening[3];
    for (double& minutes : opening) minutes = chance.between(3, 12);
    for (std::size_t a = 0; a < decision.repairs.actions.size(); ++a) {
        if (a % 4 == 3) continue;
        RepairAction& action = decision.repairs.actions[a];
        action.proof_check = static_cast<int>(a % 4);
        action.proof_setting_up = opening[a % 4];
        action.minutes += opening[a % 4];
    }
}

// Per fault: the remedies for it, each with the chance that it works.
using Treatments = std::vector<std::vector<std::pair<int, double>>>;

inline Treatments random_treatments(ModelClass kind, int faults, int remedies, Chance& chance) {
    Treatments treated_by(static_cast<std::size_t>(faults));
    if (kind == ModelClass::set_up) {
        for (auto& treated : treated_by) treated = {{chance.upto(remedies - 1), chance.between(0.8, 1)}};
        return treated_by;
    }
    for (int a = 0; a < remedies; ++a) {
        std::vector<std::size_t> order(treated_by.size());
        for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
        const int treats = 1 + chance.upto(2);
        for (int n = 0; n < treats; ++n) {
            std::swap(order[n], order[n + chance.upto(faults - 1 - n)]);
            treated_by[order[n]].push_back({a, chance.between(0.5, 1)});
        }
    }
    return treated_by;
}

// A hypothesis for every set of its remedies that would work.
inline void add_fault(Decision& decision, double prior, const std::vector<std::pair<int, double>>& remedies) {
    for (unsigned works = 0; works < 1u << remedies.size(); ++works) {
        RepairNeed need;
        need.any_one = true;
        need.hopeless = works == 0;
        double weight = prior;
        for (std::size_t n = 0; n < remedies.size(); ++n) {
            const bool helps = (works >> n & 1) != 0;
            weight *= helps ? remedies[n].second : 1 - remedies[n].second;
            // A proof finds the fault also where the remedy will fail.
            if (helps || need.hopeless) need.actions.push_back(remedies[n].first);
        }
        std::sort(need.actions.begin(), need.actions.end());
        decision.repairs.needs.push_back(need);
        decision.weights.push_back(weight);
    }
}

inline Decision single_fault_model(ModelClass kind, Chance& chance) {
    constexpr int faults = 10;
    const int remedies = kind == ModelClass::set_up ? 8 : 10;
    Decision decision;
    decision.repairs.call_for_help = 60;
    double prior[faults];
    double sum = 0;
    for (double& p : prior) sum += p = -std::log(chance.between(1e-9, 1));
    for (int a = 0; a < remedies; ++a) {
        RepairAction action;
        action.minutes = chance.between(1, 10);
        decision.repairs.actions.push_back(action);
    }
    if (kind == ModelClass::opening) add_covers(decision, chance);
    const Treatments treated_by = random_treatments(kind, faults, remedies, chance);
    add_questions(decision, kind, chance);
    std::vector<int> fault_of;
    for (int i = 0; i < faults; ++i) {
        add_fault(decision, prior[i] / sum, treated_by[i]);
        fault_of.resize(decision.weights.size(), i);
    }
    for (std::size_t q = 0; q < decision.questions.size(); ++q) {
        double yes[faults];
        for (double& p : yes) p = link_chance(chance);
        std::vector<double> chances;
        for (int fault : fault_of) chances.push_back(yes[fault]);
        for (int fault : fault_of) chances.push_back(1 - yes[fault]);
        decision.chances.push_back(chances);
    }
    return decision;
}

inline Decision several_faults_model(Chance& chance) {
    constexpr int faults = 6;
    Decision decision;
    decision.repairs.call_for_help = 60;
    double prior[faults];
    double nothing = 1;
    for (double& p : prior) nothing *= 1 - (p = chance.between(0.03, 0.35));
    for (int a = 0; a < faults; ++a) {
        RepairAction action;
        action.minutes = chance.between(1, 10);
        decision.repairs.actions.push_back(action);
    }
    add_questions(decision, ModelClass::several, chance);
    for (unsigned present = 1; present < 1u << faults; ++present) {
        RepairNeed need;
        double weight = 1 / (1 - nothing);
        for (int i = 0; i < faults; ++i) {
            const bool in = (present >> i & 1) != 0;
            weight *= in ? prior[i] : 1 - prior[i];
            if (in) need.actions.push_back(i);
        }
        decision.repairs.needs.push_back(need);
        decision.weights.push_back(weight);
    }
    for (int q = 0; q < 5; ++q) {
        double link[faults];
        for (double& p : link) p = link_chance(chance);
        std::vector<double> yes;
        std::vector<double> no;
        for (const RepairNeed& need : decision.repairs.needs) {
            double sound = 0.98;
            for (int i : need.actions) sound *= 1 - link[i];
            yes.push_back(1 - sound);
            no.push_back(sound);
        }
        yes.insert(yes.end(), no.begin(), no.end());
        decision.chances.push_back(yes);
    }
    return decision;
}

inline Decision random_decision(ModelClass kind, unsigned seed) {
    Chance chance(seed);
    return kind == ModelClass::several ? several_faults_model(chance) : single_fault_model(kind, chance);
}

// Expected minutes of the best policy of all, by dynamic programming over every set of answers and every set
// of remedies applied. Written apart from the engine: uses nothing of it but the plain structs. Questions
// with two readings; proofs that no question answers.
class BestPolicy {
  public:
    explicit BestPolicy(const Decision& decision) : d_(decision), actions_(d_.repairs.actions.size()) {
        for (const RepairNeed& need : d_.repairs.needs) {
            unsigned mask = 0;
            for (int action : need.actions) mask |= 1u << action;
            masks_.push_back(mask);
        }
        std::size_t states = 1;
        for (std::size_t q = 0; q < d_.questions.size(); ++q) states *= 3;
        minutes_.resize(states << actions_);
        for (std::size_t answers = states; answers-- > 0;) work_out(answers);
    }

    double minutes() const { return minutes_[0]; }

  private:
    bool still_wrong(std::size_t h, unsigned done) const {
        if (d_.repairs.needs[h].hopeless) return true;
        return d_.repairs.needs[h].any_one ? (done & masks_[h]) == 0 : (done & masks_[h]) != masks_[h];
    }

    void work_out(std::size_t answers) {
        std::vector<double> weights = d_.weights;
        unsigned set_up = 0;
        std::size_t place = 1;
        for (std::size_t q = 0; q < d_.questions.size(); ++q, place *= 3) {
            const std::size_t digit = answers / place % 3;
            if (digit == 0) continue;
            if (d_.questions[q].check >= 0) set_up |= 1u << d_.questions[q].check;
            for (std::size_t h = 0; h < weights.size(); ++h) {
                weights[h] *= d_.chances[q][(digit - 1) * weights.size() + h];
            }
        }
        for (unsigned done = 1u << actions_; done-- > 0;) {
            minutes_[(answers << actions_) + done] = best_from(answers, done, weights, set_up);
        }
    }

    double best_from(std::size_t answers, unsigned done, const std::vector<double>& weights,
                     unsigned set_up) const {
        double mass = 0;
        std::vector<double> present(actions_, 0.0);
        for (std::size_t h = 0; h < weights.size(); ++h) {
            if (!still_wrong(h, done)) continue;
            mass += weights[h];
            for (int action : d_.repairs.needs[h].actions) present[action] += weights[h];
        }
        for (std::size_t a = 0; a < actions_; ++a) {
            const RepairAction& action = d_.repairs.actions[a];
            if (action.proof_check >= 0 && (done >> a & 1) != 0) set_up |= 1u << action.proof_check;
        }
        double best = mass * d_.repairs.call_for_help;
        for (std::size_t a = 0; a < actions_; ++a) {
            if ((done >> a & 1) != 0) continue;
            const RepairAction& action = d_.repairs.actions[a];
            const bool paid = action.proof_check >= 0 && (set_up >> action.proof_check & 1) != 0;
            const double saved = paid ? action.proof_setting_up : 0;
            const double step = action.proof_minutes >= 0
                                    ? mass * (action.proof_minutes - saved) + present[a] * action.minutes
                                    : mass * (action.minutes - saved);
            best = std::min(best, step + minutes_[(answers << actions_) + (done | 1u << a)]);
        }
        std::size_t place = 1;
        for (std::size_t q = 0; q < d_.questions.size(); ++q, place *= 3) {
            if (answers / place % 3 != 0) continue;
            const Question& question = d_.questions[q];
            const bool paid = question.check >= 0 && (set_up >> question.check & 1) != 0;
            const double asking = mass * (question.minutes + (paid ? 0 : question.setting_up));
            best = std::min(best, asking + minutes_[((answers + place) << actions_) + done] +
                                      minutes_[((answers + 2 * place) << actions_) + done]);
        }
        return best;
    }

    const Decision& d_;
    std::size_t actions_;
    std::vector<unsigned> masks_;
    std::vector<double> minutes_;
};

// What a policy does from a position: a question, an action, or calling for help.
using Policy = std::function<Weighed(Outlook&, const Position&)>;

// Expected minutes of a policy followed to the end, exactly: every answer is taken, times its chance.
class Followed {
  public:
    Followed(Outlook& outlook, Policy policy) : outlook_(outlook), policy_(std::move(policy)) {}

    double minutes() { return from(outlook_.start()); }

  private:
    double from(const Position& here) {
        if (here.live.empty() || here.mass < 1e-12) return 0;
        const auto known = known_.find(here.key);
        if (known != known_.end()) return known->second;
        const Weighed step = policy_(outlook_, here);
        double minutes = here.mass * outlook_.decision().repairs.call_for_help;
        Position after;
        if (step.kind == Weighed::Kind::act) {
            minutes = outlook_.acting(here, step.index);
            outlook_.act(here, step.index, after);
            minutes += from(after);
        } else if (step.kind == Weighed::Kind::ask) {
            minutes = here.mass * outlook_.asking(here, step.index);
            outlook_.ask(here, step.index, after);
            for (int reading = 0; reading < outlook_.readings_of(step.index); ++reading) {
                outlook_.take_answer(here, step.index, reading, after);
                minutes += from(after);
            }
        }
        known_[here.key] = minutes;
        return minutes;
    }

    Outlook& outlook_;
    Policy policy_;
    std::unordered_map<std::uint64_t, double> known_;
};

inline Weighed step(Weighed::Kind kind, int index = -1) {
    Weighed weighed;
    weighed.kind = kind;
    weighed.index = index;
    return weighed;
}

// The engine's own.
inline Weighed roll_out_policy(Outlook& outlook, const Position& here, const LookLimits& limits) {
    return RollOut(outlook, limits).weigh(here).front();
}

// Remedies by chance of success over cost, no questions.
inline Weighed chance_over_cost(Outlook& outlook, const Position& here) {
    outlook.planner().minutes(here);
    const int first = outlook.planner().first();
    return first < 0 ? step(Weighed::Kind::call_for_help) : step(Weighed::Kind::act, first);
}

// Remedies by chance of success alone, while that is cheaper than calling for help; no questions.
inline Weighed chance_alone(Outlook& outlook, const Position& here) {
    const Decision& d = outlook.decision();
    int best = -1;
    double best_chance = 0;
    for (std::size_t a = 0; a < d.repairs.actions.size(); ++a) {
        if (here.done[a]) continue;
        const double chance = outlook.planner().present(here, static_cast<int>(a));
        if (chance <= best_chance) continue;
        best_chance = chance;
        best = static_cast<int>(a);
    }
    if (best < 0) return step(Weighed::Kind::call_for_help);
    const bool worth_it = best_chance * d.repairs.call_for_help > here.mass * here.step_minutes[best];
    return worth_it ? step(Weighed::Kind::act, best) : step(Weighed::Kind::call_for_help);
}

// Asks the question that saves most when the plan follows it at once; else the plan's first step.
inline Weighed myopic(Outlook& outlook, const Position& here) {
    const double planned = outlook.planner().minutes(here);
    const int first = outlook.planner().first();
    Weighed best = first < 0 ? step(Weighed::Kind::call_for_help) : step(Weighed::Kind::act, first);
    double best_total = planned * (1 - 1e-9);
    Position after;
    for (std::size_t q = 0; q < here.asked.size(); ++q) {
        if (here.asked[q]) continue;
        const int question = static_cast<int>(q);
        double total = here.mass * outlook.asking(here, question);
        outlook.ask(here, question, after);
        for (int reading = 0; reading < outlook.readings_of(question); ++reading) {
            outlook.take_answer(here, question, reading, after);
            total += outlook.planner().minutes(after);
        }
        if (total >= best_total) continue;
        best_total = total;
        best = step(Weighed::Kind::ask, question);
    }
    return best;
}

// Asks what tells most for its minutes until one fault (or set of them) has four fifths, then chance over
// cost.
inline Weighed information_over_cost(Outlook& outlook, const Position& here) {
    const Decision& d = outlook.decision();
    std::vector<double> weights(d.weights.size(), 0.0);
    std::map<std::vector<double>, double> faults;  // by the answers they give
    for (std::size_t n = 0; n < here.live.size(); ++n) {
        weights[here.live[n]] = here.weight[n] / here.mass;
        std::vector<double> gives;
        for (std::size_t q = 0; q < d.chances.size(); ++q) gives.push_back(d.chances[q][here.live[n]]);
        faults[gives] += weights[here.live[n]];
    }
    double most = 0;
    for (const auto& [gives, share] : faults) most = std::max(most, share);
    int best = -1;
    double best_rate = 1e-9;
    for (std::size_t q = 0; q < here.asked.size(); ++q) {
        if (here.asked[q]) continue;
        double bits = 0;
        for (std::size_t at = 0; at < d.chances[q].size(); at += weights.size()) {
            double mass = 0;
            for (std::size_t h = 0; h < weights.size(); ++h) mass += weights[h] * d.chances[q][at + h];
            for (std::size_t h = 0; h < weights.size(); ++h) {
                const double chance = d.chances[q][at + h];
                if (weights[h] > 0 && chance > 0) bits += weights[h] * chance * std::log2(chance / mass);
            }
        }
        const double rate = bits / outlook.asking(here, static_cast<int>(q));
        if (rate <= best_rate) continue;
        best_rate = rate;
        best = static_cast<int>(q);
    }
    if (best >= 0 && most < 0.8) return step(Weighed::Kind::ask, best);
    return chance_over_cost(outlook, here);
}

}  // namespace hardover_tests
