#include "rules/reasoning/diagnosis_case.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "rules/reasoning/evidence.hpp"

namespace hardover {

namespace {

bool in_range(Index index, std::size_t count) {
    return index >= 0 && static_cast<std::size_t>(index) < count;
}

// Every bad reading keeps at least `least_stray`, the sound one at least `least_sound`; adds to 1.
std::vector<double> usable_stray(const Finding& finding, double setting) {
    const std::size_t levels = std::max<std::size_t>(1, finding.readings.size());
    std::vector<double> stray = finding.stray;
    if (stray.size() != levels) {
        const double each = levels > 1 ? setting / static_cast<double>(levels - 1) : 0;
        stray.assign(levels, each);
    }
    double bad = 0;
    for (std::size_t k = 0; k + 1 < levels; ++k) bad += stray[k] = std::max(stray[k], least_stray);
    const double most = 1 - least_sound;
    if (bad > most) {
        for (std::size_t k = 0; k + 1 < levels; ++k) stray[k] *= most / bad;
        bad = most;
    }
    stray[levels - 1] = 1 - bad;
    return stray;
}

// The sound share is at least `least_sound`; adds to 1.
std::vector<double> usable_link(std::vector<double> how_often) {
    const double sum = std::accumulate(how_often.begin(), how_often.end(), 0.0);
    const double bad = sum - how_often.back();
    const double most = (1 - least_sound) * std::max(1.0, sum);
    if (bad > most) {
        for (double& share : how_often) share *= most / bad;
    }
    const double left = std::accumulate(how_often.begin(), how_often.end() - 1, 0.0);
    how_often.back() = std::max(0.0, 1 - left);
    return how_often;
}

// "Not on this list" makes a finding bad with the share `shows`, spread over its bad readings like stray.
std::vector<double> unlisted_share(const std::vector<double>& stray, double shows) {
    const double bad = 1 - stray.back();
    std::vector<double> share = stray;
    for (std::size_t k = 0; k + 1 < share.size(); ++k) share[k] *= shows / bad;
    share.back() = share.size() > 1 ? 1 - shows : 1;
    return share;
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
double mean_faults(const std::vector<double>& priors, double scale) {
    double sum = 0;
    double log_none = 0;
    for (double prior : priors) {
        const double p = scaled(prior, scale);
        sum += p;
        log_none += std::log1p(-p);
    }
    return sum / -std::expm1(log_none);
}

// The odds in the knowledge are of boats that came back: there something is wrong. The scale on the odds (at
// most 1) with which independent faults, given that there is at least one, are as many as the odds say.
double scale_for_comebacks(const std::vector<double>& priors) {
    const double stated = std::accumulate(priors.begin(), priors.end(), 0.0);
    const double wanted = std::max(stated, fewest_faults);
    double low = 1e-6;
    double high = 1;
    if (!(stated > 0) || mean_faults(priors, high) <= wanted) return high;
    for (int step = 0; step < 60; ++step) {
        const double middle = std::sqrt(low * high);
        (mean_faults(priors, middle) < wanted ? low : high) = middle;
    }
    return high;
}

int reading_of(const std::vector<double>& likelihood) {
    const auto positive = std::count_if(likelihood.begin(), likelihood.end(), [](double l) { return l > 0; });
    if (positive != 1) return -1;
    return static_cast<int>(std::max_element(likelihood.begin(), likelihood.end()) - likelihood.begin());
}

}  // namespace

DiagnosisCase::DiagnosisCase(const Knowledge& knowledge, const Facts& facts, const Fired& fired,
                             Situation& situation) {
    for (const Finding& finding : knowledge.findings) {
        makes_sense_.push_back(situation.holds(finding.possible_when) != Truth::no);
    }
    build_network(knowledge);
    build_priors(knowledge, facts, situation);
    take_rules(knowledge, fired);
    take_findings(knowledge, situation);
    take_remedies(knowledge, facts);
}

void DiagnosisCase::build_network(const Knowledge& knowledge) {
    const Settings& settings = knowledge.settings;
    std::vector<bool> linked(knowledge.findings.size(), false);
    for (const Cause& cause : knowledge.causes) {
        std::vector<FaultLink> links;
        for (const Shows& shows : cause.shows) {
            if (!in_range(shows.finding, knowledge.findings.size())) continue;
            const Finding& finding = knowledge.findings[static_cast<std::size_t>(shows.finding)];
            if (shows.how_often.empty() || shows.how_often.size() != finding.readings.size()) continue;
            links.push_back({shows.finding, usable_link(shows.how_often)});
            linked[static_cast<std::size_t>(shows.finding)] = true;
        }
        network_.causes.push_back(std::move(links));
    }
    for (std::size_t f = 0; f < knowledge.findings.size(); ++f) {
        const std::vector<double> stray = usable_stray(knowledge.findings[f], settings.stray);
        const double shows = linked[f] ? std::clamp(settings.not_listed_shows, 0.0, 1 - least_sound) : 0;
        network_.findings.push_back({stray, unlisted_share(stray, shows)});
    }
}

void DiagnosisCase::build_priors(const Knowledge& knowledge, const Facts& facts, Situation& situation) {
    for (const Cause& cause : knowledge.causes) {
        const bool impossible = situation.holds(cause.possible_when) == Truth::no;
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

void DiagnosisCase::take_rules(const Knowledge& knowledge, const Fired& fired) {
    ruled_out_by_.assign(knowledge.causes.size(), none);
    for (const RuleEvidence& evidence : fired.evidence) {
        EvidenceItem item;
        item.kind = Weight::Kind::rule;
        item.index = evidence.rule;
        item.rule = evidence;
        for (Index cause : evidence.rules_out) {
            if (!in_range(cause, ruled_out_by_.size())) continue;
            Index& by = ruled_out_by_[static_cast<std::size_t>(cause)];
            if (by == none) by = evidence.rule;
        }
        items_.push_back(std::move(item));
    }
}

void DiagnosisCase::take_findings(const Knowledge& knowledge, Situation& situation) {
    for (std::size_t f = 0; f < knowledge.findings.size(); ++f) {
        if (!makes_sense_[f]) continue;
        const auto index = static_cast<Index>(f);
        const std::optional<Answer> answer = situation.answer_to(index);
        if (!answer) continue;
        std::optional<std::vector<double>> likelihood =
            likelihood_of(knowledge.findings[f], *answer, knowledge.settings.misreading);
        if (!likelihood) continue;
        EvidenceItem item;
        item.index = index;
        item.reading = std::holds_alternative<int>(answer->given) ? reading_of(*likelihood) : -1;
        item.likelihood = std::move(*likelihood);
        items_.push_back(std::move(item));
    }
}

void DiagnosisCase::take_remedies(const Knowledge& knowledge, const Facts& facts) {
    put_right_.assign(knowledge.causes.size(), false);
    not_cured_.assign(knowledge.causes.size(), false);
    for (const auto& [remedy, outcome] : facts.tried) {
        if (!in_range(remedy, knowledge.remedies.size())) continue;
        std::vector<bool> cures(knowledge.causes.size(), false);
        for (std::size_t i = 0; i < cures.size(); ++i) {
            if (knowledge.causes[i].remedy != remedy) continue;
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
    given.likelihood.resize(network_.findings.size());
    bool with_remedies = false;
    for (std::size_t n = 0; n < items_.size(); ++n) {
        if (!in_use[n]) continue;
        const EvidenceItem& item = items_[n];
        if (item.kind == Weight::Kind::finding) {
            given.likelihood[static_cast<std::size_t>(item.index)] = item.likelihood;
        }
        if (item.kind == Weight::Kind::remedy) with_remedies = true;
    }
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
