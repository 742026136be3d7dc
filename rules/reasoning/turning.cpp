#include "rules/reasoning/turning.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "rules/reasoning/leading.hpp"

namespace hardover {

namespace {

constexpr double no_matter = 1e300;  // the lead of a cause nothing comes near to

// How far the first cause is ahead of every other, in the ratio of probabilities; below 1 it is first no
// more.
double lead_of(const Leading& now, Index first) {
    double other = 0;
    for (std::size_t i = 0; i < now.all.size(); ++i) {
        if (static_cast<Index>(i) != first) other = std::max(other, now.all[i]);
    }
    const double own = now.all[static_cast<std::size_t>(first)];
    return other > 0 ? own / other : own > 0 ? no_matter : 0;
}

// The facts with another answer in that stage, whatever stood there.
Facts with_answer(const Facts& facts, const AsIf& as_if) {
    Facts other = facts;
    const Answer answer = as_if.reading < 0 ? Answer{CannotTell{}} : Answer{as_if.reading};
    if (!facts.answers.contains(as_if.finding) || answer_stage(facts, as_if.finding) == as_if.stage) {
        other.answers[as_if.finding] = answer;
        if (as_if.stage > 0) other.answered_at[as_if.finding] = as_if.stage;
        return other;
    }
    auto at = other.earlier.begin();
    while (at != other.earlier.end() && at->stage < as_if.stage) ++at;
    while (at != other.earlier.end() && at->stage == as_if.stage && at->finding != as_if.finding) ++at;
    if (at != other.earlier.end() && at->stage == as_if.stage) {
        at->answer = answer;
    } else {
        other.earlier.insert(at, {as_if.finding, as_if.stage, answer});
    }
    return other;
}

Facts with_answers(Facts facts, const std::vector<AsIf>& answers) {
    for (const AsIf& answer : answers) facts = with_answer(facts, answer);
    return facts;
}

class Turner {
  public:
    Turner(const PreparedKnowledge& prepared, const Facts& facts)
        : prepared_(prepared),
          knowledge_(prepared.knowledge()),
          facts_(facts),
          situation_(prepared, facts),
          diagnosis_(knowledge_, facts, fire(knowledge_, situation_), situation_),
          given_(diagnosis_.with_all()),
          now_(leading(diagnosis_, given_)) {}

    Turning turn() {
        Turning turning;
        turning.first = now_.first;
        turning.probability = now_.probability;
        if (now_.first == none) return turning;
        turning.by_answering = smallest(unanswered(), true);
        std::stable_sort(turning.by_answering.begin(), turning.by_answering.end(),
                         [](const Turn& a, const Turn& b) { return a.chance > b.chance; });
        turning.if_wrong = smallest(given_answers(), false);
        std::stable_sort(turning.if_wrong.begin(), turning.if_wrong.end(), [](const Turn& a, const Turn& b) {
            return a.first_probability > b.first_probability;
        });
        return turning;
    }

  private:
    // What one finding, or one given answer, might be instead.
    using Options = std::vector<AsIf>;

    std::vector<Options> unanswered() {
        std::vector<Options> all;
        for (std::size_t f = 0; f < knowledge_.findings.size(); ++f) {
            const auto finding = static_cast<Index>(f);
            const std::size_t readings = knowledge_.findings[f].readings.size();
            if (readings < 2 || !diagnosis_.makes_sense(finding) || situation_.answer_to(finding)) continue;
            Options options;
            for (std::size_t r = 0; r < readings; ++r) options.push_back({finding, static_cast<int>(r), 0});
            all.push_back(std::move(options));
        }
        return all;
    }

    std::vector<Options> given_answers() const {
        std::vector<Options> all;
        for (const EvidenceItem& item : diagnosis_.items()) {
            if (item.kind != Weight::Kind::finding) continue;
            Options options{{item.index, -1, item.stage}};
            const std::size_t readings = item.reading < 0 ? 0 : item.likelihood.size();
            for (std::size_t r = 0; r < readings; ++r) {
                if (static_cast<int>(r) != item.reading) {
                    options.push_back({item.index, static_cast<int>(r), item.stage});
                }
            }
            all.push_back(std::move(options));
        }
        return all;
    }

    // By the answers given so far; what rules would make of it is not in it.
    double chance_of(const std::vector<AsIf>& answers) const {
        FaultCase then = given_;
        for (const AsIf& answer : answers) {
            std::vector<double>& likelihood = then.likelihood[static_cast<std::size_t>(answer.finding)];
            likelihood.assign(
                diagnosis_.network().findings[static_cast<std::size_t>(answer.finding)].stray.size(), 0.0);
            likelihood[static_cast<std::size_t>(answer.reading)] = 1;
        }
        const Posterior p = posterior(diagnosis_.network(), then);
        return p.possible ? std::exp(p.log_evidence - now_.log_evidence) : 0;
    }

    // Looks at one set of answers; keeps it when it turns the first cause. Gives the lead left.
    double look_at(const std::vector<AsIf>& answers, bool to_be_read, std::vector<Turn>& turns) const {
        const double chance = to_be_read ? chance_of(answers) : 0;
        if (to_be_read && chance < least_turning_chance) return no_matter;
        const Leading then = leading(prepared_, with_answers(facts_, answers));
        if (then.first == none) return no_matter;
        if (then.first != now_.first) turns.push_back({answers, chance, then.first, then.probability});
        return lead_of(then, now_.first);
    }

    std::vector<Turn> smallest(const std::vector<Options>& all, bool to_be_read) const {
        std::vector<Turn> turns;
        std::vector<std::pair<double, std::size_t>> by_lead;
        for (std::size_t n = 0; n < all.size(); ++n) {
            double lead = no_matter;
            for (const AsIf& option : all[n]) lead = std::min(lead, look_at({option}, to_be_read, turns));
            by_lead.push_back({lead, n});
        }
        if (!turns.empty()) return turns;
        std::stable_sort(by_lead.begin(), by_lead.end(),
                         [](const auto& a, const auto& b) { return a.first < b.first; });
        if (by_lead.size() > most_promising) by_lead.resize(most_promising);
        for (std::size_t a = 0; a < by_lead.size(); ++a) {
            for (std::size_t b = a + 1; b < by_lead.size(); ++b) {
                const auto [first, second] = std::minmax(by_lead[a].second, by_lead[b].second);
                for (const AsIf& one : all[first]) {
                    for (const AsIf& other : all[second]) look_at({one, other}, to_be_read, turns);
                }
            }
        }
        return turns;
    }

    const PreparedKnowledge& prepared_;
    const Knowledge& knowledge_;
    const Facts& facts_;
    Situation situation_;
    DiagnosisCase diagnosis_;
    FaultCase given_;
    Leading now_;
};

}  // namespace

Turning what_would_turn(const PreparedKnowledge& prepared, const Facts& facts) {
    return Turner(prepared, facts).turn();
}

}  // namespace hardover
