#include "rules/reasoning/fault_sets.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <set>

#include "rules/reasoning/tied.hpp"

namespace hardover {

namespace {

// A set that cannot give an answer at all still has supersets that can: its likelihood is kept at this
// number instead of 0.
constexpr double impossible = 1e-250;

// What acts on a finding with evidence, per level: P(no worse than this level) of the faults taken so far.
struct Evidence {
    int finding = 0;
    std::vector<double> likelihood;
    std::size_t at = 0;  // of its levels within one row of numbers
};

// One possible fault (a cause, or the unlisted as the last) on the findings with evidence.
struct Fault {
    double odds = 0;
    struct Touch {
        int evidence = 0;
        std::vector<double> no_worse;
    };
    std::vector<Touch> touches;
};

struct Candidate {
    std::vector<int> faults;     // ascending
    std::vector<double> share;   // per evidence and level: P(no worse)
    std::vector<double> likely;  // per evidence: likelihood of the answer
    double log_weight = 0;
};

class Growth {
  public:
    Growth(const FaultNetwork& network, const FaultCase& given) : given_(given) {
        std::vector<int> evidence_of(network.findings.size(), -1);
        std::size_t width = 0;
        for (std::size_t f = 0; f < network.findings.size(); ++f) {
            if (given.likelihood[f].empty()) continue;
            evidence_of[f] = static_cast<int>(evidence_.size());
            evidence_.push_back({static_cast<int>(f), given.likelihood[f], width});
            width += given.likelihood[f].size();
        }
        write_faults(network, evidence_of);
        write_empty(network);
    }

    const Candidate& empty() const { return empty_; }
    int faults() const { return static_cast<int>(faults_.size()); }
    int unlisted() const { return faults() - 1; }
    bool can_be(int fault) const { return faults_[fault].odds > 0; }

    Candidate with(const Candidate& base, int fault) const {
        Candidate grown = base;
        grown.faults.insert(std::lower_bound(grown.faults.begin(), grown.faults.end(), fault), fault);
        grown.log_weight = with_weight(base, fault);
        for (const Fault::Touch& touch : faults_[fault].touches) {
            const Evidence& e = evidence_[touch.evidence];
            for (std::size_t k = 0; k < e.likelihood.size(); ++k) grown.share[e.at + k] *= touch.no_worse[k];
            grown.likely[touch.evidence] = likelihood(e, &grown.share[e.at], nullptr);
        }
        return grown;
    }

    // ln weight of base and one more fault, without building the set.
    double with_weight(const Candidate& base, int fault) const {
        double log_weight = base.log_weight;
        double ratio = faults_[fault].odds;
        for (const Fault::Touch& touch : faults_[fault].touches) {
            const Evidence& e = evidence_[touch.evidence];
            ratio *= likelihood(e, &base.share[e.at], &touch.no_worse) / base.likely[touch.evidence];
            if (ratio > 1e50 || ratio < 1e-50) {
                log_weight += std::log(ratio);
                ratio = 1;
            }
        }
        return log_weight + std::log(ratio);
    }

    bool meets_requirements(const Candidate& set) const {
        return requirements_met(set, none_more) == given_.requirements.size();
    }

    // By the set, with one fault more.
    static constexpr int none_more = -1;
    std::size_t requirements_met(const Candidate& set, int more) const {
        std::size_t met = 0;
        for (const Requirement& requirement : given_.requirements) {
            const auto meets = [&](int fault) {
                if (fault == none_more) return false;
                return fault == unlisted()
                           ? requirement.unlisted
                           : static_cast<bool>(requirement.causes[static_cast<std::size_t>(fault)]);
            };
            if (meets(more) || std::any_of(set.faults.begin(), set.faults.end(), meets)) ++met;
        }
        return met;
    }

  private:
    static double likelihood(const Evidence& e, const double* share, const std::vector<double>* more) {
        double sum = 0;
        double better = 0;
        for (std::size_t k = e.likelihood.size(); k-- > 0;) {
            const double no_worse = more ? share[k] * (*more)[k] : share[k];
            sum += e.likelihood[k] * (no_worse - better);
            better = no_worse;
        }
        return std::max(sum, impossible);
    }

    void write_faults(const FaultNetwork& network, const std::vector<int>& evidence_of) {
        for (std::size_t i = 0; i < network.causes.size(); ++i) {
            Fault fault;
            fault.odds = given_.prior[i] / (1 - given_.prior[i]);
            for (const FaultLink& link : network.causes[i]) {
                const int e = evidence_of[link.finding];
                if (e >= 0) fault.touches.push_back({e, no_worse_than(link.how_often)});
            }
            faults_.push_back(std::move(fault));
        }
        Fault unlisted;
        unlisted.odds = given_.unlisted_prior / (1 - given_.unlisted_prior);
        for (std::size_t e = 0; e < evidence_.size(); ++e) {
            unlisted.touches.push_back(
                {static_cast<int>(e), no_worse_than(network.findings[evidence_[e].finding].unlisted)});
        }
        faults_.push_back(std::move(unlisted));
    }

    void write_empty(const FaultNetwork& network) {
        for (double prior : given_.prior) empty_.log_weight += std::log1p(-prior);
        empty_.log_weight += std::log1p(-given_.unlisted_prior);
        for (const Evidence& e : evidence_) {
            const std::vector<double> no_worse = no_worse_than(network.findings[e.finding].stray);
            empty_.share.insert(empty_.share.end(), no_worse.begin(), no_worse.end());
            empty_.likely.push_back(likelihood(e, no_worse.data(), nullptr));
            empty_.log_weight += std::log(empty_.likely.back());
        }
    }

    const FaultCase& given_;
    std::vector<Evidence> evidence_;
    std::vector<Fault> faults_;
    Candidate empty_;
};

// A set one larger than its base, before it is built.
struct Sprout {
    std::size_t base = 0;
    int fault = 0;
    std::size_t met = 0;  // requirements
    double log_weight = 0;
};

// Sets that meet more requirements come first: the others only count as a way to them.
bool heavier(const Sprout& a, const Sprout& b) {
    if (a.met != b.met) return a.met > b.met;
    if (a.log_weight != b.log_weight) return a.log_weight > b.log_weight;
    return a.base != b.base ? a.base < b.base : a.fault < b.fault;
}

// Small cases are listed completely; in large ones only the heaviest sets of a size are grown further.
std::size_t bases_grown(const Growth& growth, std::size_t most) {
    return growth.faults() <= 9 ? most : 64;
}

std::vector<Sprout> sprouts_of(const Growth& growth, const std::vector<Candidate>& level, std::size_t most) {
    std::vector<Sprout> sprouts;
    const std::size_t bases = std::min(level.size(), bases_grown(growth, most));
    for (std::size_t b = 0; b < bases; ++b) {
        for (int fault = 0; fault < growth.faults(); ++fault) {
            const std::vector<int>& in = level[b].faults;
            if (!growth.can_be(fault) || std::binary_search(in.begin(), in.end(), fault)) continue;
            const double log_weight = growth.with_weight(level[b], fault);
            if (!std::isfinite(log_weight)) continue;
            sprouts.push_back({b, fault, growth.requirements_met(level[b], fault), log_weight});
        }
    }
    return sprouts;
}

// The heaviest `most` different sets with one fault more than those of `level`, heaviest first.
std::vector<Candidate> grow(const Growth& growth, const std::vector<Candidate>& level, std::size_t most) {
    std::vector<Sprout> sprouts = sprouts_of(growth, level, most);
    // A set comes up once for every fault in it, so this many hold the `most` heaviest different ones.
    const std::size_t enough = most * (level.front().faults.size() + 1);
    if (sprouts.size() > enough) {
        std::nth_element(sprouts.begin(), sprouts.begin() + static_cast<std::ptrdiff_t>(enough),
                         sprouts.end(), heavier);
        sprouts.resize(enough);
    }
    std::sort(sprouts.begin(), sprouts.end(), heavier);
    std::vector<Candidate> grown;
    std::set<std::vector<int>> seen;
    for (const Sprout& sprout : sprouts) {
        std::vector<int> faults = level[sprout.base].faults;
        faults.insert(std::lower_bound(faults.begin(), faults.end(), sprout.fault), sprout.fault);
        if (!seen.insert(std::move(faults)).second) continue;
        grown.push_back(growth.with(level[sprout.base], sprout.fault));
        if (grown.size() == most) break;
    }
    return grown;
}

}  // namespace

namespace {

bool gives_nothing(const Candidate& set) {
    return std::any_of(set.likely.begin(), set.likely.end(), [](double l) { return l <= impossible; });
}

bool before(const WeighedSet& a, const WeighedSet& b) {
    if (a.log_weight != b.log_weight) return a.log_weight > b.log_weight;
    if (a.causes != b.causes) return a.causes < b.causes;
    return a.unlisted < b.unlisted;
}

}  // namespace

std::vector<WeighedSet> heaviest_sets(const FaultNetwork& network, const FaultCase& given, std::size_t most) {
    if (!given.tied.empty()) return heaviest_sets_of_tied(network, given, most);
    const Growth growth(network, given);
    std::vector<WeighedSet> sets;
    const auto collect = [&](const Candidate& candidate) {
        if (!growth.meets_requirements(candidate)) return;
        if (gives_nothing(candidate)) return;
        WeighedSet set{candidate.faults, false, candidate.log_weight};
        if (!set.causes.empty() && set.causes.back() == growth.unlisted()) {
            set.unlisted = true;
            set.causes.pop_back();
        }
        sets.push_back(std::move(set));
    };
    std::vector<Candidate> level{growth.empty()};
    for (std::size_t size = 0; !level.empty(); ++size) {
        for (const Candidate& candidate : level) collect(candidate);
        level = grow(growth, level, most);
        if (size < 2 || level.empty() || sets.size() < most) continue;
        std::nth_element(sets.begin(), sets.begin() + static_cast<std::ptrdiff_t>(most - 1), sets.end(),
                         before);
        const auto heaviest = std::max_element(
            level.begin(), level.end(),
            [](const Candidate& a, const Candidate& b) { return a.log_weight < b.log_weight; });
        if (heaviest->log_weight < sets[most - 1].log_weight) break;
    }
    std::sort(sets.begin(), sets.end(), before);
    if (sets.size() > most) sets.resize(most);
    return sets;
}

std::vector<double> log_weights_of_singles(const FaultNetwork& network, const FaultCase& given) {
    if (!given.tied.empty()) return log_weights_of_singles_of_tied(network, given);
    const Growth growth(network, given);
    std::vector<double> weights(static_cast<std::size_t>(growth.faults()),
                                -std::numeric_limits<double>::infinity());
    for (int fault = 0; fault < growth.faults(); ++fault) {
        if (!growth.can_be(fault)) continue;
        const Candidate single = growth.with(growth.empty(), fault);
        if (growth.meets_requirements(single) && !gives_nothing(single)) {
            weights[static_cast<std::size_t>(fault)] = single.log_weight;
        }
    }
    return weights;
}

}  // namespace hardover
