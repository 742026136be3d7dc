#include "rules/reasoning/outlook.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace hardover {

namespace {

// Mixes a number well (S. Vigna's splitmix64, public domain).
std::uint64_t mixed(std::uint64_t x) {
    x += 0x9e3779b97f4a7c15u;
    x = (x ^ (x >> 30)) * 0xbf58476d1ce4e5b9u;
    x = (x ^ (x >> 27)) * 0x94d049bb133111ebu;
    return x ^ (x >> 31);
}

std::uint64_t key_of_answer(int question, int reading) {
    return mixed(static_cast<std::uint64_t>(question) * 64 + static_cast<std::uint64_t>(reading) + 1);
}

std::uint64_t key_of_action(int action) {
    return mixed((std::uint64_t{1} << 40) + static_cast<std::uint64_t>(action));
}

// P(no worse) per level of each cause that a finding is linked to.
using Shown = std::vector<std::pair<int, std::vector<double>>>;

std::vector<double> chances_of(const FaultNetwork::Finding& finding, const Shown& shown,
                               const std::vector<Hypothesis>& hypotheses,
                               std::vector<const std::vector<double>*>& shown_by) {
    for (const auto& [cause, no_worse] : shown) shown_by[static_cast<std::size_t>(cause)] = &no_worse;
    const std::vector<double> stray = no_worse_than(finding.stray);
    const std::vector<double> unlisted = no_worse_than(finding.unlisted);
    const std::size_t levels = stray.size();
    const std::size_t count = hypotheses.size();
    std::vector<double> chances(levels * count);
    for (std::size_t h = 0; h < count; ++h) {
        double better = 0;
        for (std::size_t k = levels; k-- > 0;) {
            double share = hypotheses[h].unlisted ? stray[k] * unlisted[k] : stray[k];
            for (int cause : hypotheses[h].causes) {
                const std::vector<double>* by = shown_by[static_cast<std::size_t>(cause)];
                if (by) share *= (*by)[k];
            }
            chances[k * count + h] = std::max(0.0, share - better);
            better = share;
        }
    }
    for (const auto& [cause, no_worse] : shown) shown_by[static_cast<std::size_t>(cause)] = nullptr;
    return chances;
}

}  // namespace

Decision decision_for(const FaultNetwork& network, const std::vector<Hypothesis>& hypotheses,
                      RepairModel repairs, std::vector<Question> questions) {
    Decision decision{std::move(repairs), {}, std::move(questions), {}};
    double sum = 0;
    for (const Hypothesis& hypothesis : hypotheses) sum += hypothesis.probability;
    for (const Hypothesis& hypothesis : hypotheses) {
        const bool first = decision.weights.empty();
        decision.weights.push_back(sum > 0 ? hypothesis.probability / sum : first ? 1 : 0);
    }
    std::vector<int> question_of(network.findings.size(), -1);
    for (std::size_t q = 0; q < decision.questions.size(); ++q) {
        question_of[static_cast<std::size_t>(decision.questions[q].finding)] = static_cast<int>(q);
    }
    std::vector<char> possible(network.causes.size(), 0);
    for (const Hypothesis& hypothesis : hypotheses) {
        for (int cause : hypothesis.causes) possible[static_cast<std::size_t>(cause)] = 1;
    }
    std::vector<Shown> shown(decision.questions.size());
    for (std::size_t i = 0; i < network.causes.size(); ++i) {
        if (!possible[i]) continue;
        for (const FaultLink& link : network.causes[i]) {
            const int q = question_of[static_cast<std::size_t>(link.finding)];
            if (q < 0) continue;
            shown[static_cast<std::size_t>(q)].push_back(
                {static_cast<int>(i), no_worse_than(link.how_often)});
        }
    }
    std::vector<const std::vector<double>*> shown_by(network.causes.size(), nullptr);
    std::vector<int> by_chance_alone;  // questions that no cause in the hypotheses has to do with
    for (std::size_t q = 0; q < decision.questions.size(); ++q) {
        const auto& finding = network.findings[static_cast<std::size_t>(decision.questions[q].finding)];
        decision.same_as.push_back(static_cast<int>(q));
        if (shown[q].empty()) {
            const auto same = std::find_if(by_chance_alone.begin(), by_chance_alone.end(), [&](int other) {
                const int finding_of_other = decision.questions[static_cast<std::size_t>(other)].finding;
                const auto& o = network.findings[static_cast<std::size_t>(finding_of_other)];
                return o.stray == finding.stray && o.unlisted == finding.unlisted;
            });
            if (same != by_chance_alone.end()) {
                decision.same_as.back() = *same;
                decision.chances.push_back(decision.chances[static_cast<std::size_t>(*same)]);
                continue;
            }
            by_chance_alone.push_back(static_cast<int>(q));
        }
        decision.chances.push_back(chances_of(finding, shown[q], hypotheses, shown_by));
    }
    return decision;
}

Outlook::Outlook(Decision decision) : decision_(std::move(decision)), planner_(decision_.repairs) {
    static_cast<Standing&>(start_) = planner_.start(decision_.weights);
    start_.asked.assign(decision_.questions.size(), 0);
    find_proofs();
    find_same();
    plan_.minutes = planner_.minutes(start_);
    plan_.order = planner_.order();
    plan_each_ = planner_.minutes_each(plan_.order, start_);
    screen_.emplace(decision_.repairs, start_, plan_.order, plan_each_);
}

void Outlook::find_proofs() {
    const std::vector<RepairAction>& actions = decision_.repairs.actions;
    proves_.resize(decision_.questions.size());
    proof_questions_.resize(actions.size());
    for (const Question& question : decision_.questions) {
        const auto checks = static_cast<std::size_t>(question.check + 1);
        if (start_.set_up.size() < checks) start_.set_up.resize(checks);
    }
    for (std::size_t a = 0; a < actions.size(); ++a) {
        if (!actions[a].proved_first()) continue;
        std::vector<int> parts;
        for (int finding : actions[a].proof_findings) {
            const auto found = std::find_if(decision_.questions.begin(), decision_.questions.end(),
                                            [&](const Question& q) { return q.finding == finding; });
            if (found == decision_.questions.end()) break;
            parts.push_back(static_cast<int>(found - decision_.questions.begin()));
        }
        if (parts.size() != actions[a].proof_findings.size()) continue;
        for (int q : parts) proves_[static_cast<std::size_t>(q)].push_back(static_cast<int>(a));
        proof_questions_[a] = std::move(parts);
    }
}

// Asking one that a proof or the setting up of a proof hangs on leaves something else to do.
void Outlook::find_same() {
    const auto changes_proofs = [&](std::size_t question) {
        const int check = decision_.questions[question].check;
        return !proves_[question].empty() || planner_.proves_something(check);
    };
    for (std::size_t q = 0; q < decision_.questions.size(); ++q) {
        const int same = decision_.same_as.empty() ? static_cast<int>(q) : decision_.same_as[q];
        const bool alike = !changes_proofs(q) && !changes_proofs(static_cast<std::size_t>(same));
        same_as_.push_back(alike ? same : static_cast<int>(q));
    }
}

int Outlook::readings_of(int question) const {
    return static_cast<int>(decision_.chances[question].size() / decision_.weights.size());
}

double Outlook::asking(const Position& position, int question) const {
    const Question& q = decision_.questions[question];
    const bool paid = q.check >= 0 && position.set_up[q.check];
    return q.minutes + (paid ? 0 : q.setting_up);
}

// An action whose proof is now answered is applied without.
void Outlook::answer_proofs(int question, Position& position) const {
    for (int action : proves_[question]) {
        const std::vector<int>& parts = proof_questions_[action];
        if (!std::all_of(parts.begin(), parts.end(), [&](int q) { return position.asked[q] != 0; })) continue;
        position.step_minutes[action] = decision_.repairs.actions[action].minutes;
        position.extra_minutes[action] = 0;
    }
}

void Outlook::ask(const Position& before, int question, Position& after) const {
    after.done = before.done;
    after.step_minutes = before.step_minutes;
    after.extra_minutes = before.extra_minutes;
    after.asked = before.asked;
    after.set_up = before.set_up;
    after.asked[question] = 1;
    planner_.set_up_check(decision_.questions[question].check, after);
    answer_proofs(question, after);
}

void Outlook::take_answer(const Position& before, int question, int reading, Position& after) const {
    const double* chance = &decision_.chances[question][reading * decision_.weights.size()];
    const std::size_t count = before.live.size();
    after.live.resize(count);
    after.weight.resize(count);
    std::size_t kept = 0;
    double mass = 0;
    for (std::size_t n = 0; n < count; ++n) {
        const double weight = before.weight[n] * chance[before.live[n]];
        after.live[kept] = before.live[n];
        after.weight[kept] = weight;
        kept += weight > 0 ? 1 : 0;
        mass += weight;
    }
    after.live.resize(kept);
    after.weight.resize(kept);
    after.mass = mass;
    after.key = key_after(before, question, reading);
}

std::uint64_t Outlook::key_after(const Position& before, int question, int reading) {
    return before.key ^ key_of_answer(question, reading);
}

double Outlook::acting(const Position& position, int action) const {
    double minutes = position.mass * position.step_minutes[action];
    if (position.extra_minutes[action] > 0) {
        minutes += planner_.present(position, action) * position.extra_minutes[action];
    }
    return minutes;
}

void Outlook::act(const Position& before, int action, Position& after) const {
    planner_.apply(action, before, after);
    after.asked = before.asked;
    after.key = before.key ^ key_of_action(action);
}

double Outlook::after_all(const Position& position, const std::vector<int>& questions, std::size_t from) {
    if (from == questions.size()) {
        double unchanged = 0;
        for (std::size_t n = 0; n < position.live.size(); ++n) {
            unchanged += position.weight[n] * plan_each_[position.live[n]];
        }
        return std::min(unchanged, planner_.minutes(position));
    }
    Position after;
    ask(position, questions[from], after);
    double minutes = 0;
    for (int reading = 0; reading < readings_of(questions[from]); ++reading) {
        take_answer(position, questions[from], reading, after);
        if (after.mass > 0) minutes += after_all(after, questions, from + 1);
    }
    return minutes;
}

double Outlook::minutes_after(const std::vector<int>& questions) {
    return std::min(plan_.minutes, after_all(start_, questions, 0));
}

double Outlook::information(int question) const {
    const std::vector<double>& chances = decision_.chances[question];
    const std::vector<double>& weights = decision_.weights;
    const std::size_t count = weights.size();
    double bits = 0;
    for (std::size_t at = 0; at < chances.size(); at += count) {
        double mass = 0;
        for (std::size_t h = 0; h < count; ++h) mass += weights[h] * chances[at + h];
        // Most hypotheses have nothing to do with a finding and share one chance: one logarithm for them.
        double chance_before = -1;
        double told = 0;
        for (std::size_t h = 0; h < count; ++h) {
            const double chance = chances[at + h];
            if (!(weights[h] > 0 && chance > 0)) continue;
            if (chance != chance_before) told = std::log2(chance / mass);
            chance_before = chance;
            bits += weights[h] * chance * told;
        }
    }
    return bits;
}

double Outlook::least_minutes(const Position& position) const {
    double minutes = 0;
    for (std::size_t n = 0; n < position.live.size(); ++n) {
        minutes += position.weight[n] * planner_.least_minutes(position.live[n]);
    }
    return minutes;
}

}  // namespace hardover
