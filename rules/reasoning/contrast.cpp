#include "rules/reasoning/contrast.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>

#include "rules/reasoning/diagnosis_case.hpp"
#include "rules/reasoning/tied.hpp"

namespace hardover {

namespace {

const double decibans_of_log = 10 / std::log(10.0);

double log_odds(double probability) {
    return std::log(probability) - std::log1p(-probability);
}

bool is_listed(Index cause, std::size_t causes) {
    return cause >= 0 && static_cast<std::size_t>(cause) < causes;
}

// The heaviest set that holds `with` and not `without`.
std::optional<WeighedSet> heaviest(const DiagnosisCase& diagnosis, FaultCase given, Index with,
                                   Index without) {
    if (without == none) {
        given.unlisted_prior = 0;
    } else {
        given.prior[static_cast<std::size_t>(without)] = 0;
    }
    Requirement present{std::vector<bool>(given.prior.size(), false), with == none};
    if (with != none) present.causes[static_cast<std::size_t>(with)] = true;
    given.requirements.push_back(std::move(present));
    std::vector<WeighedSet> sets = heaviest_sets(diagnosis.network(), given, 256);
    if (sets.empty()) return std::nullopt;
    return sets.front();
}

FaultSet as_fault_set(const DiagnosisCase& diagnosis, const FaultCase& given, const WeighedSet& set,
                      double log_evidence) {
    const double weight = log_weight_of_set(diagnosis.network(), given, set.causes, set.unlisted);
    return {{set.causes.begin(), set.causes.end()}, set.unlisted, std::exp(weight - log_evidence)};
}

double log_likely(const FaultNetwork& network, int node, const std::vector<double>& likelihood,
                  const FaultSet& set) {
    const std::vector<double> shown = levels_shown(network, node, set.causes, set.not_listed);
    double sum = 0;
    for (std::size_t k = 0; k < shown.size(); ++k) sum += shown[k] * likelihood[k];
    return std::log(sum);
}

double log_likely(const FaultNetwork& network, const Tied& tie, const FaultSet& set) {
    double sum = 0;
    for (const auto& term : tie.terms) {
        double log_term = 0;
        for (std::size_t n = 0; n < tie.findings.size(); ++n) {
            log_term += log_likely(network, tie.findings[n], term[n], set);
        }
        sum += std::exp(log_term);
    }
    return std::log(sum);
}

// What the findings say for the first set.
std::map<Index, double> by_finding(const DiagnosisCase& diagnosis, const FaultCase& given, const FaultSet& a,
                                   const FaultSet& b) {
    std::map<Index, double> sums;
    for (std::size_t f = 0; f < given.likelihood.size(); ++f) {
        if (given.likelihood[f].empty()) continue;
        const int node = static_cast<int>(f);
        sums[diagnosis.finding_of(node)] += log_likely(diagnosis.network(), node, given.likelihood[f], a) -
                                            log_likely(diagnosis.network(), node, given.likelihood[f], b);
    }
    for (const Tied& tie : given.tied) {
        sums[diagnosis.finding_of(tie.findings.front())] +=
            log_likely(diagnosis.network(), tie, a) - log_likely(diagnosis.network(), tie, b);
    }
    return sums;
}

// The odds of one fault, as the knowledge has them and as the rules that fired change them.
void add_odds(const DiagnosisCase& diagnosis, const FaultCase& given, const FaultCase& plain, Index cause,
              double sign, Contrast& contrast, std::map<Index, double>& by_rule) {
    const auto i = static_cast<std::size_t>(cause);
    const double before = log_odds(plain.prior[i]);
    const double change = log_odds(given.prior[i]) - before;
    contrast.rows.push_back({ContrastRow::Kind::odds, cause, sign * before * decibans_of_log});
    std::map<Index, double> said;
    for (const EvidenceItem& item : diagnosis.items()) {
        if (item.kind != Weight::Kind::rule) continue;
        for (const auto& [favoured, by] : item.rule.favours) {
            if (favoured == cause && by > 0) said[item.index] += std::log(by);
        }
    }
    // Where the favours reach the greatest odds there are, they share what is left of them.
    double sum = 0;
    for (const auto& [rule, log_by] : said) sum += log_by;
    for (const auto& [rule, log_by] : said) {
        if (sum != 0) by_rule[rule] += sign * change * log_by / sum;
    }
}

}  // namespace

Contrast contrast(const PreparedKnowledge& prepared, const Facts& facts, Index a, Index b) {
    const Knowledge& knowledge = prepared.knowledge();
    Contrast result;
    const std::size_t causes = knowledge.causes.size();
    const bool usable = (a == none || is_listed(a, causes)) && (b == none || is_listed(b, causes)) && a != b;
    if (!usable) return result;
    Situation situation(prepared, facts);
    const Fired fired = fire(knowledge, situation);
    const DiagnosisCase diagnosis(knowledge, facts, fired, situation);
    const FaultCase given = diagnosis.with_all();
    const Posterior all = posterior(diagnosis.network(), given);
    if (!all.possible) return result;
    const auto set_a = heaviest(diagnosis, given, a, b);
    const auto set_b = heaviest(diagnosis, given, b, a);
    if (!set_a || !set_b) return result;
    result.possible = true;
    result.with_a = as_fault_set(diagnosis, given, *set_a, all.log_evidence);
    result.with_b = as_fault_set(diagnosis, given, *set_b, all.log_evidence);

    const FaultCase plain = diagnosis.with_none();
    std::map<Index, double> by_rule;
    for (std::size_t i = 0; i < causes; ++i) {
        const auto cause = static_cast<Index>(i);
        const bool in_a = std::binary_search(set_a->causes.begin(), set_a->causes.end(), cause);
        const bool in_b = std::binary_search(set_b->causes.begin(), set_b->causes.end(), cause);
        if (in_a != in_b) add_odds(diagnosis, given, plain, cause, in_a ? 1 : -1, result, by_rule);
    }
    if (set_a->unlisted != set_b->unlisted) {
        const double odds = log_odds(given.unlisted_prior) * decibans_of_log;
        result.rows.push_back({ContrastRow::Kind::odds, none, set_a->unlisted ? odds : -odds});
    }
    for (const auto& [rule, log_said] : by_rule) {
        result.rows.push_back({ContrastRow::Kind::rule, rule, log_said * decibans_of_log});
    }
    for (const auto& [finding, log_said] : by_finding(diagnosis, given, result.with_a, result.with_b)) {
        result.rows.push_back({ContrastRow::Kind::finding, finding, log_said * decibans_of_log});
    }
    std::stable_sort(result.rows.begin(), result.rows.end(), [](const ContrastRow& x, const ContrastRow& y) {
        return std::abs(x.decibans) > std::abs(y.decibans);
    });
    for (const ContrastRow& row : result.rows) result.decibans += row.decibans;
    return result;
}

}  // namespace hardover
