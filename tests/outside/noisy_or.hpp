// Random networks of causes and findings (noisy-OR with a leak), written out for other programs and as the
// engine takes them, so that both can be asked the same. Judges nothing.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <string>
#include <utility>
#include <vector>

#include "reasoning/chance.hpp"
#include "rules/reasoning/fault_network.hpp"

namespace hardover_tests {

struct NoisyOr {
    enum class Seen { open, sound, bad };
    struct Finding {
        double leak = 0;  // bad with no cause
        Seen seen = Seen::open;
        std::vector<std::pair<int, double>> links;  // cause, how often it alone makes the finding bad
    };
    std::vector<double> prior;
    std::vector<Finding> findings;

    int observed() const {
        int count = 0;
        for (const Finding& finding : findings) count += finding.seen == Seen::open ? 0 : 1;
        return count;
    }
};

// Priors and leaks even in their logarithm, links even, 2 to `most_parents` causes a finding; the first
// `observed` findings are seen as a boat drawn from the network shows them.
inline NoisyOr random_noisy_or(unsigned seed, int causes, int findings, int most_parents, int observed) {
    Chance chance(seed);
    const auto even_in_log = [&](double low, double high) {
        return std::exp(chance.between(std::log(low), std::log(high)));
    };
    NoisyOr network;
    std::vector<bool> present;
    for (int i = 0; i < causes; ++i) {
        network.prior.push_back(even_in_log(0.01, 0.2));
        present.push_back(chance.between(0, 1) < network.prior.back());
    }
    present[static_cast<std::size_t>(chance.upto(causes - 1))] = true;
    for (int f = 0; f < findings; ++f) {
        NoisyOr::Finding finding;
        finding.leak = even_in_log(0.002, 0.05);
        std::vector<bool> taken(present.size(), false);
        double sound = 1 - finding.leak;
        for (int left = 2 + chance.upto(most_parents - 2); left > 0;) {
            const auto cause = static_cast<std::size_t>(chance.upto(causes - 1));
            if (taken[cause]) continue;
            taken[cause] = true;
            --left;
            finding.links.push_back({static_cast<int>(cause), chance.between(0.2, 0.95)});
            if (present[cause]) sound *= 1 - finding.links.back().second;
        }
        // toulbar2 1.1.1 reads tables wrongly whose causes are not in ascending order.
        std::sort(finding.links.begin(), finding.links.end());
        const bool bad = chance.between(0, 1) >= sound;
        if (f < observed) finding.seen = bad ? NoisyOr::Seen::bad : NoisyOr::Seen::sound;
        network.findings.push_back(std::move(finding));
    }
    return network;
}

inline std::string in_full(double number) {
    char text[40];
    std::snprintf(text, sizeof text, "%.17g", number);
    return text;
}

// Numbers apart by blanks: causes, findings, the priors; then per finding leak, what was seen (0 open, 1
// sound, 2 bad), number of links, and each link's cause and strength.
inline std::string as_text(const NoisyOr& network) {
    std::string text =
        std::to_string(network.prior.size()) + " " + std::to_string(network.findings.size()) + "\n";
    for (double prior : network.prior) text += in_full(prior) + " ";
    text += "\n";
    for (const NoisyOr::Finding& finding : network.findings) {
        text += in_full(finding.leak) + " " + std::to_string(static_cast<int>(finding.seen)) + " " +
                std::to_string(finding.links.size());
        for (const auto& [cause, link] : finding.links) {
            text += " " + std::to_string(cause) + " " + in_full(link);
        }
        text += "\n";
    }
    return text;
}

// The UAI format for graphical models: a table per cause, and per seen finding one over its causes with what
// was seen put in. `given` >= 0 also puts in that this cause is present, so that the sum is P(cause,
// answers).
inline std::string as_uai(const NoisyOr& network, int given = -1) {
    std::string scopes;
    std::string tables;
    for (std::size_t i = 0; i < network.prior.size(); ++i) {
        const double absent = static_cast<int>(i) == given ? 0 : 1 - network.prior[i];
        scopes += "1 " + std::to_string(i) + "\n";
        tables += "2\n" + in_full(absent) + " " + in_full(network.prior[i]) + "\n";
    }
    for (const NoisyOr::Finding& finding : network.findings) {
        if (finding.seen == NoisyOr::Seen::open) continue;
        const std::size_t count = finding.links.size();
        scopes += std::to_string(count);
        for (const auto& [cause, link] : finding.links) scopes += " " + std::to_string(cause);
        scopes += "\n";
        tables += std::to_string(1u << count) + "\n";
        for (unsigned row = 0; row < 1u << count; ++row) {  // the last cause changes fastest
            double sound = 1 - finding.leak;
            for (std::size_t n = 0; n < count; ++n) {
                if (row >> (count - 1 - n) & 1u) sound *= 1 - finding.links[n].second;
            }
            tables += in_full(finding.seen == NoisyOr::Seen::sound ? sound : 1 - sound) + " ";
        }
        tables += "\n";
    }
    std::string text = "MARKOV\n" + std::to_string(network.prior.size()) + "\n";
    for (std::size_t i = 0; i < network.prior.size(); ++i) text += "2 ";
    return text + "\n" + std::to_string(network.prior.size() + static_cast<std::size_t>(network.observed())) +
           "\n" + scopes + tables;
}

// As the engine takes it. Level 0 is bad, 1 sound; nothing is outside the list.
inline hardover::FaultNetwork as_fault_network(const NoisyOr& network) {
    hardover::FaultNetwork result;
    result.causes.resize(network.prior.size());
    for (std::size_t f = 0; f < network.findings.size(); ++f) {
        const NoisyOr::Finding& finding = network.findings[f];
        result.findings.push_back({{finding.leak, 1 - finding.leak}, {0, 1}});
        for (const auto& [cause, link] : finding.links) {
            result.causes[static_cast<std::size_t>(cause)].push_back({static_cast<int>(f), {link, 1 - link}});
        }
    }
    return result;
}

inline hardover::FaultCase as_fault_case(const NoisyOr& network) {
    hardover::FaultCase given;
    given.prior = network.prior;
    for (const NoisyOr::Finding& finding : network.findings) {
        std::vector<double> likelihood;
        if (finding.seen == NoisyOr::Seen::bad) likelihood = {1, 0};
        if (finding.seen == NoisyOr::Seen::sound) likelihood = {0, 1};
        given.likelihood.push_back(likelihood);
    }
    return given;
}

}  // namespace hardover_tests
