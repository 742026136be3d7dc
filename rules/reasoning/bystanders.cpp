#include "rules/reasoning/bystanders.hpp"

#include <algorithm>
#include <map>
#include <utility>

namespace hardover {

namespace {

using Faults = std::pair<std::vector<int>, bool>;  // causes, and whether something unlisted is there

std::size_t faults_in(const Hypothesis& hypothesis) {
    return hypothesis.causes.size() + (hypothesis.unlisted ? 1 : 0);
}

double odds(double prior) {
    return prior / (1 - prior);
}

// Every way to leave out one fault, with the odds of the fault left out.
std::vector<std::pair<Faults, double>> with_one_less(const Hypothesis& hypothesis,
                                                     const std::vector<double>& prior,
                                                     double prior_not_listed) {
    std::vector<std::pair<Faults, double>> rests;
    for (int cause : hypothesis.causes) {
        Faults rest{hypothesis.causes, hypothesis.unlisted};
        std::erase(rest.first, cause);
        rests.push_back({std::move(rest), odds(prior[static_cast<std::size_t>(cause)])});
    }
    if (hypothesis.unlisted) rests.push_back({{hypothesis.causes, false}, odds(prior_not_listed)});
    return rests;
}

}  // namespace

std::vector<Hypothesis> without_bystanders(std::vector<Hypothesis> hypotheses,
                                           const std::vector<double>& prior, double prior_not_listed) {
    std::map<Faults, std::size_t> place;
    for (std::size_t h = 0; h < hypotheses.size(); ++h) {
        place[{hypotheses[h].causes, hypotheses[h].unlisted}] = h;
    }
    // The largest first, so that what one hands on can be handed on again; ratios are of what was given.
    std::vector<double> given;
    std::vector<std::size_t> order;
    for (std::size_t h = 0; h < hypotheses.size(); ++h) {
        given.push_back(hypotheses[h].probability);
        order.push_back(h);
    }
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return faults_in(hypotheses[a]) > faults_in(hypotheses[b]);
    });
    for (std::size_t h : order) {
        if (faults_in(hypotheses[h]) < 2) break;
        double least = speaks_for_it;
        Hypothesis* heir = nullptr;
        for (const auto& [rest, usual_odds] : with_one_less(hypotheses[h], prior, prior_not_listed)) {
            const auto found = place.find(rest);
            if (found == place.end() || !(given[found->second] > 0) || !(usual_odds > 0)) continue;
            const double times_usual = given[h] / given[found->second] / usual_odds;
            if (times_usual >= least) continue;
            least = times_usual;
            heir = &hypotheses[found->second];
        }
        if (heir) heir->probability += std::exchange(hypotheses[h].probability, 0.0);
    }
    std::erase_if(hypotheses, [](const Hypothesis& hypothesis) { return !(hypothesis.probability > 0); });
    std::stable_sort(hypotheses.begin(), hypotheses.end(),
                     [](const Hypothesis& a, const Hypothesis& b) { return a.probability > b.probability; });
    return hypotheses;
}

}  // namespace hardover
