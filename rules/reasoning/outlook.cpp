#include "rules/reasoning/outlook.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <span>

#include "rules/reasoning/keyed.hpp"

namespace hardover {

namespace {

std::uint64_t key_of_answer(int question, int reading) {
    return mixed(static_cast<std::uint64_t>(question) * 64 + static_cast<std::uint64_t>(reading) + 1);
}

std::uint64_t key_of_action(int action) {
    return mixed((std::uint64_t{1} << 40) + static_cast<std::uint64_t>(action));
}

// A cause that a finding is linked to: P(no worse) per level.
struct Shown {
    int cause = 0;
    const double* no_worse = nullptr;
};

// Adds up from the last level.
void add_no_worse(const std::vector<double>& distribution, std::vector<double>& out) {
    const std::size_t first = out.size();
    out.resize(first + distribution.size());
    double sum = 0;
    for (std::size_t k = distribution.size(); k-- > 0;) out[first + k] = sum += distribution[k];
}

// Works out the chances of the readings of one finding after the other.
class ReadingChances {
  public:
    explicit ReadingChances(const std::vector<Hypothesis>& hypotheses, std::size_t causes)
        : hypotheses_(hypotheses), shown_by_(causes, nullptr) {
        std::vector<std::pair<int, int>> in_hypothesis;
        for (std::size_t h = 0; h < hypotheses.size(); ++h) {
            if (hypotheses[h].unlisted) unlisted_.push_back(static_cast<int>(h));
            for (int cause : hypotheses[h].causes) in_hypothesis.push_back({cause, static_cast<int>(h)});
        }
        with_cause_ = Rows<int>::of_pairs(causes, in_hypothesis);
    }

    bool possible(std::size_t cause) const { return !with_cause_[cause].empty(); }

    // Adds those of a finding, by [level * hypotheses + hypothesis], and which hypotheses it concerns.
    void add(const FaultNetwork::Finding& finding, std::span<const Shown> shown, Decision& decision) {
        concerned_ = unlisted_;
        for (const Shown& by : shown) {
            shown_by_[static_cast<std::size_t>(by.cause)] = by.no_worse;
            const std::span<const int> with = with_cause_[static_cast<std::size_t>(by.cause)];
            concerned_.insert(concerned_.end(), with.begin(), with.end());
        }
        std::sort(concerned_.begin(), concerned_.end());
        concerned_.erase(std::unique(concerned_.begin(), concerned_.end()), concerned_.end());
        decision.concerned.push_back(concerned_);
        stray_.clear();
        add_no_worse(finding.stray, stray_);
        unlisted_share_.clear();
        add_no_worse(finding.unlisted, unlisted_share_);
        std::span<double> chances;
        decision.chances.add();
        for (std::size_t k = 0; k < stray_.size(); ++k) {
            const double better = k + 1 < stray_.size() ? stray_[k + 1] : 0;
            chances = decision.chances.append(hypotheses_.size(), std::max(0.0, stray_[k] - better));
        }
        for (int h : concerned_) write(static_cast<std::size_t>(h), chances);
        for (const Shown& by : shown) shown_by_[static_cast<std::size_t>(by.cause)] = nullptr;
    }

  private:
    void write(std::size_t h, std::span<double> chances) const {
        double better = 0;
        for (std::size_t k = stray_.size(); k-- > 0;) {
            double share = hypotheses_[h].unlisted ? stray_[k] * unlisted_share_[k] : stray_[k];
            for (int cause : hypotheses_[h].causes) {
                const double* by = shown_by_[static_cast<std::size_t>(cause)];
                if (by) share *= by[k];
            }
            chances[k * hypotheses_.size() + h] = std::max(0.0, share - better);
            better = share;
        }
    }

    const std::vector<Hypothesis>& hypotheses_;
    std::vector<int> unlisted_;            // hypotheses with something unlisted
    Rows<int> with_cause_;                 // hypotheses, by cause
    std::vector<const double*> shown_by_;  // by cause
    // Of the finding at hand: P(no worse), and the hypotheses it concerns.
    std::vector<double> stray_;
    std::vector<double> unlisted_share_;
    std::vector<int> concerned_;
};

// P(no worse) of the questions' findings under their causes, question by question.
class ShownBy {
  public:
    ShownBy(const FaultNetwork& network, const std::vector<Question>& questions,
            const ReadingChances& chances) {
        std::vector<int> question_of(network.findings.size(), -1);
        for (std::size_t q = 0; q < questions.size(); ++q) {
            question_of[static_cast<std::size_t>(questions[q].finding)] = static_cast<int>(q);
        }
        const auto each_link = [&](auto visit) {
            for (std::size_t i = 0; i < network.causes.size(); ++i) {
                if (!chances.possible(i)) continue;
                for (const FaultLink& link : network.causes[i]) {
                    const int q = question_of[static_cast<std::size_t>(link.finding)];
                    if (q >= 0) visit(static_cast<int>(i), q, link.how_often);
                }
            }
        };
        std::size_t numbers = 0;
        std::size_t links = 0;
        each_link([&](int, int, const std::vector<double>& how_often) {
            ++links;
            numbers += how_often.size();
        });
        numbers_.reserve(numbers);  // what is shown points into it
        std::vector<std::pair<int, Shown>> shown;
        shown.reserve(links);
        each_link([&](int cause, int q, const std::vector<double>& how_often) {
            const std::size_t at = numbers_.size();
            add_no_worse(how_often, numbers_);
            shown.push_back({q, {cause, numbers_.data() + at}});
        });
        shown_ = Rows<Shown>::of_pairs(questions.size(), shown);
    }
    ShownBy(const ShownBy&) = delete;
    ShownBy& operator=(const ShownBy&) = delete;

    std::span<const Shown> of(std::size_t question) const { return shown_[question]; }

  private:
    std::vector<double> numbers_;
    Rows<Shown> shown_;  // by question
};

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
    ReadingChances chances(hypotheses, network.causes.size());
    const ShownBy shown(network, decision.questions, chances);
    std::vector<int> by_chance_alone;  // questions that no cause in the hypotheses has to do with
    std::size_t levels = 0;
    for (const Question& question : decision.questions) {
        levels += network.findings[static_cast<std::size_t>(question.finding)].stray.size();
    }
    decision.chances.reserve(decision.questions.size(), levels * hypotheses.size());
    decision.concerned.reserve(decision.questions.size(), decision.questions.size() * hypotheses.size() / 4);
    for (std::size_t q = 0; q < decision.questions.size(); ++q) {
        const auto& finding = network.findings[static_cast<std::size_t>(decision.questions[q].finding)];
        decision.same_as.push_back(static_cast<int>(q));
        if (shown.of(q).empty()) {
            const auto same = std::find_if(by_chance_alone.begin(), by_chance_alone.end(), [&](int other) {
                const int finding_of_other = decision.questions[static_cast<std::size_t>(other)].finding;
                const auto& o = network.findings[static_cast<std::size_t>(finding_of_other)];
                return o.stray == finding.stray && o.unlisted == finding.unlisted;
            });
            if (same != by_chance_alone.end()) {
                decision.same_as.back() = *same;
                decision.chances.add_same_as(static_cast<std::size_t>(*same));
                decision.concerned.add_same_as(static_cast<std::size_t>(*same));
                continue;
            }
            by_chance_alone.push_back(static_cast<int>(q));
        }
        chances.add(finding, shown.of(q), decision);
    }
    return decision;
}

Outlook::Outlook(Decision decision) : decision_(std::move(decision)), planner_(decision_.repairs) {
    static_cast<Standing&>(start_) = planner_.start(decision_.weights);
    start_.asked.assign(decision_.questions.size(), 0);
    find_proofs();
    find_same();
    find_rest();
    plan_.minutes = planner_.minutes(start_);
    plan_.order = planner_.order();
    plan_each_ = planner_.minutes_each(plan_.order, start_);
    screen_.emplace(decision_.repairs, start_, plan_.order, plan_each_);
}

void Outlook::find_proofs() {
    const std::vector<RepairAction>& actions = decision_.repairs.actions;
    std::vector<std::pair<int, int>> proves;  // question, action
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
        for (int q : parts) proves.push_back({q, static_cast<int>(a)});
        proof_questions_[a] = std::move(parts);
    }
    proves_ = Rows<int>::of_pairs(decision_.questions.size(), proves);
}

// Asking one that a proof or the setting up of a proof hangs on leaves something else to do.
bool Outlook::changes_minutes(int question) const {
    return !proves_[static_cast<std::size_t>(question)].empty() ||
           planner_.proves_something(decision_.questions[static_cast<std::size_t>(question)].check);
}

void Outlook::find_same() {
    for (std::size_t q = 0; q < decision_.questions.size(); ++q) {
        const int question = static_cast<int>(q);
        const int same = decision_.same_as.empty() ? question : decision_.same_as[q];
        const bool alike = !changes_minutes(question) && !changes_minutes(same);
        same_as_.push_back(alike ? same : question);
    }
}

// A hypothesis of those that a question does not concern, to read their chances from.
void Outlook::find_rest() {
    std::vector<int> all(decision_.weights.size());
    std::iota(all.begin(), all.end(), 0);
    const bool looked_for = !decision_.concerned.empty();
    for (std::size_t q = 0; q < decision_.questions.size(); ++q) {
        if (!looked_for) decision_.concerned.push_back(all);
        const std::span<const int> concerned = decision_.concerned[q];
        std::size_t h = 0;
        while (h < concerned.size() && concerned[h] == static_cast<int>(h)) ++h;
        rest_.push_back(h < all.size() ? static_cast<int>(h) : -1);
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
    const double* chance = decision_.chances[question].data() + reading * decision_.weights.size();
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

double Outlook::screened(const Position& position, int question) {
    const std::span<const int> concerned = decision_.concerned[question];
    const bool other_minutes = changes_minutes(question);
    if (other_minutes) {
        ask(position, question, asked_);
        screen_->minutes_of_steps(asked_);
    }
    double minutes = 0;
    const std::size_t count = decision_.weights.size();
    const int readings = readings_of(question);
    const auto answer = [&](int reading) {
        if (reading >= readings) return PlanScreen::AfterAnswer{};
        const double* chances = decision_.chances[question].data() + reading * count;
        return PlanScreen::AfterAnswer{rest_[question] < 0 ? 0 : chances[rest_[question]], chances};
    };
    for (int reading = 0; reading < readings; reading += 2) {
        const Two after = screen_->minutes_after(answer(reading), answer(reading + 1), concerned);
        minutes += after.first();
        minutes += after.second();
    }
    if (other_minutes) screen_->minutes_of_steps(position);
    return minutes;
}

// visit(chance of the reading, for_each) with for_each(add) calling add(weight, chance) of every hypothesis,
// those that the question does not concern taken together.
template <typename Visit>
void Outlook::each_reading(int question, Visit visit) const {
    const std::span<const int> concerned = decision_.concerned[question];
    const std::vector<double>& weights = decision_.weights;
    const int rest = rest_[question];
    double not_concerned = rest < 0 ? 0 : 1;
    for (int h : concerned) {
        if (rest >= 0) not_concerned -= weights[h];
    }
    const std::span<const double> all_chances = decision_.chances[question];
    for (std::size_t at = 0; at < all_chances.size(); at += weights.size()) {
        const double* chances = all_chances.data() + at;
        double mass = rest < 0 ? 0 : not_concerned * chances[rest];
        for (int h : concerned) mass += weights[h] * chances[h];
        visit(mass, [&](auto add) {
            if (rest >= 0) add(not_concerned, chances[rest]);
            for (int h : concerned) add(weights[h], chances[h]);
        });
    }
}

double Outlook::information(int question) const {
    double bits = 0;
    each_reading(question, [&](double mass, auto for_each) {
        for_each([&](double weight, double chance) {
            if (weight > 0 && chance > 0) bits += weight * chance * std::log2(chance / mass);
        });
    });
    return bits;
}

double Outlook::most_information(int question) const {
    double times_usual = 0;
    each_reading(question, [&](double mass, auto for_each) {
        double squares = 0;
        for_each([&](double weight, double chance) { squares += std::max(0.0, weight) * chance * chance; });
        if (mass > 0) times_usual += squares / mass;
    });
    return std::log2(std::max(1.0, times_usual));
}

double Outlook::least_minutes(const Position& position) const {
    double minutes = 0;
    for (std::size_t n = 0; n < position.live.size(); ++n) {
        minutes += position.weight[n] * planner_.least_minutes(position.live[n]);
    }
    return minutes;
}

}  // namespace hardover
