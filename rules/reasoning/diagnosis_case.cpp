#include "rules/reasoning/diagnosis_case.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>
#include <utility>

namespace hardover {

namespace {

bool in_range(Index index, std::size_t count) {
    return index >= 0 && static_cast<std::size_t>(index) < count;
}

// Per 1000 comebacks of this history; of all histories by their share when it is not known.
double odds_of(const Cause& cause, const std::vector<History>& histories, Index history) {
    if (in_range(history, cause.odds.size())) return cause.odds[static_cast<std::size_t>(history)];
    double weighted = 0;
    double shares = 0;
    for (std::size_t h = 0; h < std::min(cause.odds.size(), histories.size()); ++h) {
        weighted += histories[h].share * cause.odds[h];
        shares += histories[h].share;
    }
    return shares > 0 ? weighted / shares : 0;
}

double scaled(double prior, double scale) {
    const double odds = prior / (1 - prior) * scale;
    return odds / (1 + odds);
}

// Faults on average when there is at least one, all odds being scaled.
double mean_faults(const std::vector<double>& all_odds, double scale) {
    double sum = 0;
    double per_none = 1;  // 1 / P(no fault)
    for (double unscaled : all_odds) {
        const double odds = unscaled * scale;
        sum += odds / (1 + odds);
        per_none *= 1 + odds;
    }
    return sum / (1 - 1 / per_none);
}

constexpr double rounding = 4e-15;  // of a sum over all causes, relative

// The odds in the knowledge are of boats that came back: there something is wrong. The scale on the odds (at
// most 1) with which independent faults, given that there is at least one, are as many as the odds say.
double scale_for_comebacks(const std::vector<double>& priors) {
    const double stated = std::accumulate(priors.begin(), priors.end(), 0.0);
    const double wanted = std::max(stated, fewest_faults);
    std::vector<double> all_odds;
    for (double prior : priors) all_odds.push_back(prior / (1 - prior));
    const auto too_many = [&](double log_scale) {
        return mean_faults(all_odds, std::exp(log_scale)) - wanted;
    };
    double low = std::log(1e-6);
    double high = 0;
    double above = too_many(high);
    if (!(stated > 0) || above <= 0) return 1;
    double below = too_many(low);
    double log_scale = low;
    // By false position; an end that stays a second time counts half (the Illinois rule, Dowell & Jarratt
    // 1971).
    int stayed = 0;
    for (int step = 0; step < 60 && below < 0; ++step) {
        log_scale = (low * above - high * below) / (above - below);
        const double here = too_many(log_scale);
        if (std::abs(here) <= rounding * wanted) break;
        if (here > 0) {
            high = log_scale;
            above = here;
            if (stayed < 0) below /= 2;
            stayed = -1;
        } else {
            low = log_scale;
            below = here;
            if (stayed > 0) above /= 2;
            stayed = 1;
        }
    }
    return std::exp(log_scale);
}

}  // namespace

DiagnosisCase::DiagnosisCase(const Knowledge& knowledge, const Facts& facts, const Fired& fired,
                             Situation& situation) {
    const PreparedKnowledge& prepared = situation.prepared();
    for (std::size_t f = 0; f < knowledge.findings.size(); ++f) {
        const PreparedCondition& possible_when = prepared.finding_possible_when(static_cast<Index>(f));
        makes_sense_.push_back(situation.holds(possible_when) != Truth::no);
    }
    Stages stages(knowledge, facts, situation);
    build_priors(knowledge, facts, situation);
    const AllTold told = what_was_told(knowledge, stages);
    build_network(knowledge, prepared.network(facts.complaints), stages, told);
    take_rules(knowledge, fired, stages);
    take_findings(told);
    take_remedies(knowledge, facts);
}

void DiagnosisCase::build_priors(const Knowledge& knowledge, const Facts& facts, Situation& situation) {
    for (std::size_t i = 0; i < knowledge.causes.size(); ++i) {
        const Cause& cause = knowledge.causes[i];
        const PreparedCondition& possible_when =
            situation.prepared().cause_possible_when(static_cast<Index>(i));
        const bool impossible = situation.holds(possible_when) == Truth::no;
        const double odds = odds_of(cause, knowledge.histories, facts.history);
        impossible_here_.push_back(impossible);
        prior_.push_back(impossible ? 0 : std::clamp(odds / 1000, least_prior, greatest_prior));
    }
    unlisted_prior_ = std::clamp(knowledge.settings.not_listed_odds / 1000, least_prior, greatest_prior);
    std::vector<double> all = prior_;
    all.push_back(unlisted_prior_);
    const double scale = scale_for_comebacks(all);
    for (double& prior : prior_) prior = scaled(prior, scale);
    unlisted_prior_ = scaled(unlisted_prior_, scale);
}

// What a rule says of a cause that was put right counts as far as it was known before that.
void DiagnosisCase::take_rules(const Knowledge& knowledge, const Fired& fired, Stages& stages) {
    ruled_out_by_.assign(knowledge.causes.size(), none);
    if (!stages.any()) {
        for (const RuleEvidence& evidence : fired.evidence) add_rule(evidence);
        return;
    }
    std::map<int, std::vector<RuleEvidence>> known_before{{Stages::never, fired.evidence}};
    for (std::size_t i = 0; i < knowledge.causes.size(); ++i) {
        const int put_right_at = stages.put_right_at(static_cast<Index>(i));
        if (known_before.contains(put_right_at)) continue;
        known_before[put_right_at] = fire(knowledge, stages.at(put_right_at - 1)).evidence;
    }
    std::map<Index, RuleEvidence> by_rule;
    for (const auto& [put_right_at, said] : known_before) {
        const auto spoken_of = [&, at = put_right_at](Index cause) {
            return in_range(cause, knowledge.causes.size()) && stages.put_right_at(cause) == at;
        };
        for (const RuleEvidence& evidence : said) {
            RuleEvidence& kept = by_rule[evidence.rule];
            kept.rule = evidence.rule;
            for (const auto& favour : evidence.favours) {
                if (spoken_of(favour.first)) kept.favours.push_back(favour);
            }
            for (Index cause : evidence.rules_out) {
                if (spoken_of(cause)) kept.rules_out.push_back(cause);
            }
        }
    }
    for (auto& [rule, evidence] : by_rule) {
        if (!evidence.favours.empty() || !evidence.rules_out.empty()) add_rule(std::move(evidence));
    }
}

void DiagnosisCase::add_rule(RuleEvidence evidence) {
    for (Index cause : evidence.rules_out) {
        if (!in_range(cause, ruled_out_by_.size())) continue;
        Index& by = ruled_out_by_[static_cast<std::size_t>(cause)];
        if (by == none) by = evidence.rule;
    }
    EvidenceItem item;
    item.kind = Weight::Kind::rule;
    item.index = evidence.rule;
    item.rule = std::move(evidence);
    items_.push_back(std::move(item));
}

void DiagnosisCase::take_remedies(const Knowledge& knowledge, const Facts& facts) {
    put_right_.assign(knowledge.causes.size(), false);
    not_cured_.assign(knowledge.causes.size(), false);
    for (const auto& [remedy, outcome] : facts.tried) {
        if (!in_range(remedy, knowledge.remedies.size())) continue;
        std::vector<bool> cures(knowledge.causes.size(), false);
        for (std::size_t i = 0; i < cures.size(); ++i) {
            if (!puts_right(knowledge, remedy, static_cast<Index>(i))) continue;
            cures[i] = put_right_[i] = true;
            if (outcome != Outcome::cured) not_cured_[i] = true;
        }
        if (outcome == Outcome::cured) {
            cured_ = true;
        } else {
            any_not_cured_ = true;
        }
        if (outcome == Outcome::better) better_.push_back(std::move(cures));
    }
    if (!cured_ && !any_not_cured_) return;
    EvidenceItem item;
    item.kind = Weight::Kind::remedy;
    items_.push_back(std::move(item));
}

FaultCase DiagnosisCase::with(const std::vector<bool>& in_use) const {
    FaultCase given;
    given.likelihood.resize(network_->findings.size());
    bool with_remedies = false;
    for (std::size_t n = 0; n < items_.size(); ++n) {
        if (!in_use[n]) continue;
        if (items_[n].kind == Weight::Kind::remedy) with_remedies = true;
    }
    set_findings(given, in_use);
    set_priors(given, in_use);
    set_requirements(given, with_remedies);
    return given;
}

void DiagnosisCase::set_priors(FaultCase& given, const std::vector<bool>& in_use) const {
    given.prior = prior_;
    given.unlisted_prior = unlisted_prior_;
    std::vector<double> factor(prior_.size(), 1.0);
    for (std::size_t n = 0; n < items_.size(); ++n) {
        if (!in_use[n] || items_[n].kind != Weight::Kind::rule) continue;
        for (const auto& [cause, by] : items_[n].rule.favours) {
            if (in_range(cause, factor.size()) && by > 0) factor[static_cast<std::size_t>(cause)] *= by;
        }
        for (Index cause : items_[n].rule.rules_out) {
            if (in_range(cause, factor.size())) factor[static_cast<std::size_t>(cause)] = 0;
        }
    }
    for (std::size_t i = 0; i < factor.size(); ++i) {
        if (factor[i] == 1 || prior_[i] == 0) continue;
        const double odds = prior_[i] / (1 - prior_[i]) * factor[i];
        given.prior[i] = factor[i] == 0 ? 0 : std::min(odds / (1 + odds), greatest_favoured);
    }
}

// Something is wrong. After remedies that did not cure: something other than what they put right; after one
// that helped: also something it puts right. After a cure: nothing but what the remedies put right.
void DiagnosisCase::set_requirements(FaultCase& given, bool with_remedies) const {
    Requirement something;
    something.unlisted = true;
    something.causes.assign(prior_.size(), true);
    if (with_remedies) {
        for (std::size_t i = 0; i < prior_.size(); ++i) something.causes[i] = !not_cured_[i];
        for (const std::vector<bool>& causes : better_) given.requirements.push_back({causes, false});
        if (cured_) {
            given.unlisted_prior = 0;
            for (std::size_t i = 0; i < prior_.size(); ++i) {
                if (!put_right_[i]) given.prior[i] = 0;
            }
        }
    }
    given.requirements.push_back(std::move(something));
}

}  // namespace hardover
