// The part of the case that turns what was told about each finding, once or again after a remedy, into
// findings of the network and their likelihoods.
#include <algorithm>
#include <cmath>
#include <numeric>

#include "rules/reasoning/answer_chain.hpp"
#include "rules/reasoning/diagnosis_case.hpp"
#include "rules/reasoning/evidence.hpp"

namespace hardover {

namespace {

int reading_of(const std::vector<double>& likelihood) {
    const auto positive = std::count_if(likelihood.begin(), likelihood.end(), [](double l) { return l > 0; });
    if (positive != 1) return -1;
    return static_cast<int>(std::max_element(likelihood.begin(), likelihood.end()) - likelihood.begin());
}

// A finding that only shows by the causes linked to it.
FaultNetwork::Finding sound_without_causes(std::size_t levels) {
    std::vector<double> sound(levels, 0.0);
    sound.back() = 1;
    return {sound, sound};
}

// How many of the answers were given while the cause was still there.
std::size_t answers_seeing(const std::vector<EvidenceItem>& told, int put_right_at) {
    return static_cast<std::size_t>(std::count_if(
        told.begin(), told.end(), [&](const EvidenceItem& item) { return item.stage < put_right_at; }));
}

// Whether some cause that can be here shows the finding and was put right between two stages.
bool touched_between(const Knowledge& knowledge, const Stages& stages, const std::vector<double>& prior,
                     Index finding, int from, int to) {
    for (std::size_t i = 0; i < knowledge.causes.size(); ++i) {
        const int put_right_at = stages.put_right_at(static_cast<Index>(i));
        if (prior[i] <= 0 || put_right_at <= from || put_right_at > to) continue;
        for (const Shows& shows : knowledge.causes[i].shows) {
            if (shows.finding == finding) return true;
        }
    }
    return false;
}

std::vector<double> most_likely_only(std::vector<double> likelihood) {
    const auto greatest = std::max_element(likelihood.begin(), likelihood.end());
    for (auto l = likelihood.begin(); l != likelihood.end(); ++l) {
        if (l != greatest) *l = 0;
    }
    return likelihood;
}

}  // namespace

DiagnosisCase::AllTold DiagnosisCase::what_was_told(const Knowledge& knowledge, Stages& stages) {
    AllTold all(knowledge.findings.size());
    for (std::size_t f = 0; f < all.size(); ++f) {
        if (!makes_sense_[f]) continue;
        const auto index = static_cast<Index>(f);
        std::vector<EvidenceItem>& told = all[f];
        std::vector<TimedAnswer> answers = stages.about(index);
        const int latest = answers.empty() ? 0 : answers.back().stage;
        // From the latest back, so that an answer is held against the next one that counts.
        for (auto timed = answers.rbegin(); timed != answers.rend(); ++timed) {
            auto likelihood =
                likelihood_of(knowledge.findings[f], timed->answer, knowledge.settings.misreading);
            if (!likelihood) continue;
            if (!told.empty() && !both_may_be_right(*likelihood, told.back().likelihood,
                                                    touched_between(knowledge, stages, prior_, index,
                                                                    timed->stage, told.back().stage),
                                                    knowledge.settings.misreading)) {
                set_aside_.push_back({index, timed->stage, timed->answer});
                continue;
            }
            EvidenceItem item;
            item.index = index;
            item.reading = std::holds_alternative<int>(timed->answer.given) ? reading_of(*likelihood) : -1;
            item.likelihood = std::move(*likelihood);
            item.stage = timed->stage;
            item.earlier = timed->stage < latest;
            told.push_back(std::move(item));
        }
        std::reverse(told.begin(), told.end());
    }
    return all;
}

// The network's findings for each group of causes between the answers about one finding.
void DiagnosisCase::build_nodes(FaultNetwork& network, const AllTold& told) {
    for (std::size_t f = 0; f < told.size(); ++f) {
        const std::size_t answers = told[f].size();
        for (std::size_t a = 0; a < answers; ++a) {
            std::vector<int>& from_a = told_[f].nodes.emplace_back();
            for (std::size_t b = a; b < answers; ++b) {
                if (a + 1 == answers) {
                    from_a.push_back(static_cast<int>(f));
                    continue;
                }
                from_a.push_back(static_cast<int>(network.findings.size()));
                network.findings.push_back(b + 1 == answers
                                               ? network.findings[f]
                                               : sound_without_causes(network.findings[f].stray.size()));
                finding_of_.push_back(static_cast<Index>(f));
            }
        }
    }
}

void DiagnosisCase::build_network(const Knowledge& knowledge,
                                  const std::shared_ptr<const FaultNetwork>& untouched, const Stages& stages,
                                  const AllTold& told) {
    finding_of_.resize(knowledge.findings.size());
    std::iota(finding_of_.begin(), finding_of_.end(), 0);
    told_.resize(told.size());
    bool as_prepared =
        std::all_of(told.begin(), told.end(), [](const auto& answers) { return answers.size() < 2; });
    for (std::size_t i = 0; i < knowledge.causes.size(); ++i) {
        as_prepared = as_prepared && stages.put_right_at(static_cast<Index>(i)) == Stages::never;
    }
    if (as_prepared) {
        network_ = untouched;
        for (std::size_t f = 0; f < told.size(); ++f) {
            if (!told[f].empty()) told_[f].nodes = {{static_cast<int>(f)}};
        }
    } else {
        auto network = std::make_shared<FaultNetwork>();
        network->findings = untouched->findings;
        network->causes.reserve(knowledge.causes.size());
        build_nodes(*network, told);
        for (std::size_t i = 0; i < knowledge.causes.size(); ++i) {
            std::vector<FaultLink>& links = network->causes.emplace_back();
            links.reserve(untouched->causes[i].size());
            for (const FaultLink& link : untouched->causes[i]) {
                add_links(link, stages.put_right_at(static_cast<Index>(i)),
                          told[static_cast<std::size_t>(link.finding)], links);
            }
        }
        find_what_can_show(*network);
        network_ = std::move(network);
    }
}

// Of any use only where a finding was told more than once.
void DiagnosisCase::find_what_can_show(const FaultNetwork& network) {
    can_show_.assign(network.findings.size(), false);
    for (std::size_t i = 0; i < network.causes.size(); ++i) {
        if (prior_[i] <= 0) continue;
        for (const FaultLink& link : network.causes[i])
            can_show_[static_cast<std::size_t>(link.finding)] = true;
    }
}

// A cause shows in all answers given before it was put right; a finding nobody answered shows what is there
// now.
void DiagnosisCase::add_links(const FaultLink& link, int put_right_at, const std::vector<EvidenceItem>& told,
                              std::vector<FaultLink>& links) const {
    if (told.empty()) {
        if (put_right_at == Stages::never) links.push_back(link);
        return;
    }
    const std::size_t seen = answers_seeing(told, put_right_at);
    const auto& nodes = told_[static_cast<std::size_t>(link.finding)].nodes;
    for (std::size_t a = 0; a < seen; ++a) {
        for (std::size_t b = seen - 1; b < told.size(); ++b)
            links.push_back({nodes[a][b - a], link.how_often});
    }
}

void DiagnosisCase::take_findings(const AllTold& told) {
    for (std::size_t f = 0; f < told.size(); ++f) {
        for (const EvidenceItem& item : told[f]) {
            told_[f].items.push_back(items_.size());
            items_.push_back(item);
        }
    }
}

void DiagnosisCase::set_findings(FaultCase& given, const std::vector<bool>& in_use) const {
    for (const ToldFinding& told : told_) set_finding(given, told, in_use, false);
    const auto terms = [&] {
        std::size_t product = 1;
        for (const Tied& tie : given.tied) product *= tie.terms.size();
        return product;
    };
    while (terms() > most_terms) {
        const auto largest =
            std::max_element(given.tied.begin(), given.tied.end(),
                             [](const Tied& a, const Tied& b) { return a.terms.size() < b.terms.size(); });
        const auto finding = static_cast<std::size_t>(finding_of(largest->findings.front()));
        given.tied.erase(largest);
        set_finding(given, told_[finding], in_use, true);
    }
}

// The answers in use of one finding: a likelihood for each group of causes between them.
void DiagnosisCase::set_finding(FaultCase& given, const ToldFinding& told, const std::vector<bool>& in_use,
                                bool later_most_likely) const {
    std::vector<std::size_t> used;
    for (std::size_t n = 0; n < told.items.size(); ++n) {
        if (in_use[told.items[n]]) used.push_back(n);
    }
    if (used.empty()) return;
    if (told.items.size() == 1) {
        given.likelihood[static_cast<std::size_t>(told.nodes[0][0])] = items_[told.items[0]].likelihood;
        return;
    }
    std::vector<int> nodes;
    std::vector<std::vector<double>> likelihood;
    std::vector<double> pending;  // of answers after which nothing was touched that shows here
    for (std::size_t u = 0; u < used.size(); ++u) {
        const bool last = u + 1 == used.size();
        std::vector<double> here = items_[told.items[used[u]]].likelihood;
        for (std::size_t k = 0; k < pending.size(); ++k) here[k] *= pending[k];
        pending.clear();
        const std::size_t end = last ? told.items.size() - 1 : used[u + 1] - 1;
        const int node = told.nodes[used[u]][end - used[u]];
        if (!last && !can_show_[static_cast<std::size_t>(node)]) {
            pending = here;
            continue;
        }
        nodes.push_back(node);
        likelihood.push_back(later_most_likely && !likelihood.empty() ? most_likely_only(here) : here);
    }
    auto terms = chain_terms(likelihood);
    if (terms.empty()) {  // cannot be: no level is possible
        given.likelihood[static_cast<std::size_t>(nodes.back())].assign(likelihood.back().size(), 0.0);
        return;
    }
    if (terms.size() > 1) {
        given.tied.push_back({nodes, std::move(terms)});
        return;
    }
    for (std::size_t n = 0; n < nodes.size(); ++n) {
        given.likelihood[static_cast<std::size_t>(nodes[n])] = terms.front()[n];
    }
}

}  // namespace hardover
