// Knowledge and facts turned into numbers: the network of causes and findings, and the pieces of evidence in
// knowledge order, any of which can be left out.
#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "rules/reasoning/assessment.hpp"
#include "rules/reasoning/fault_network.hpp"
#include "rules/reasoning/firing.hpp"
#include "rules/reasoning/situation.hpp"
#include "rules/reasoning/stages.hpp"

namespace hardover {

// Limits that keep one odd answer from leaving nothing possible. From memory, as usual for such tables
// ("Cromwell's rule").
inline constexpr double least_prior = 1e-5;
inline constexpr double greatest_prior = 0.3;
inline constexpr double greatest_favoured = 0.9;  // after rules have favoured a cause
inline constexpr double least_stray = 0.001;      // of every bad reading
inline constexpr double least_sound = 0.01;       // share of a cause's boats that do not show a finding

// Faults on a boat that comes back, on average, when the odds in the knowledge add up to less. From memory.
inline constexpr double fewest_faults = 1.05;

// One piece of evidence that can be taken away on its own.
struct EvidenceItem {
    Weight::Kind kind = Weight::Kind::finding;
    Index index = none;  // finding, rule; none for what became of the remedies (all together)
    int reading = -1;
    std::vector<double> likelihood;  // finding
    RuleEvidence rule;               // rule
    int stage = 0;                   // finding: how many remedies had been tried
    bool earlier = false;            // finding: it was answered again since
};

// Above this many combinations of terms (answer_chain.hpp), measurements taken again after a remedy are taken
// at their most likely reading.
inline constexpr std::size_t most_terms = 64;

class DiagnosisCase {
  public:
    DiagnosisCase(const Knowledge& knowledge, const Facts& facts, const Fired& fired, Situation& situation);

    // Findings of the knowledge under their own index (as they show now), then what several answers about one
    // finding need beside it.
    const FaultNetwork& network() const { return *network_; }
    // The finding of the knowledge that one of the network's belongs to.
    Index finding_of(int node) const { return finding_of_[static_cast<std::size_t>(node)]; }
    const std::vector<EvidenceItem>& items() const { return items_; }

    // The case with these items only (as long as items()), given that something is wrong.
    FaultCase with(const std::vector<bool>& in_use) const;
    FaultCase with_all() const { return with(std::vector<bool>(items_.size(), true)); }
    FaultCase with_none() const { return with(std::vector<bool>(items_.size(), false)); }

    // Earlier answers that are no evidence: the later one contradicts them.
    const std::vector<EarlierAnswer>& set_aside() const { return set_aside_; }

    // Causes put right by a remedy that was tried (whatever came of it).
    const std::vector<bool>& put_right() const { return put_right_; }
    bool cured() const { return cured_; }
    bool impossible_here(Index cause) const { return impossible_here_[static_cast<std::size_t>(cause)]; }
    Index ruled_out_by(Index cause) const { return ruled_out_by_[static_cast<std::size_t>(cause)]; }
    // possible_when is not no: the finding makes sense on this rig.
    bool makes_sense(Index finding) const { return makes_sense_[static_cast<std::size_t>(finding)]; }

    // Usual shares for this history and rig before any answer, favours left aside; 0 where impossible.
    const std::vector<double>& usual_prior() const { return prior_; }
    double usual_prior_not_listed() const { return unlisted_prior_; }

  private:
    // A finding that was told once or more, and the network's findings for its groups of causes: from the
    // group of answer a to that of answer b, counted from 0, at [a][b - a].
    struct ToldFinding {
        std::vector<std::size_t> items;
        std::vector<std::vector<int>> nodes;
    };
    using AllTold = std::vector<std::vector<EvidenceItem>>;  // per finding, the earliest first

    void build_priors(const Knowledge& knowledge, const Facts& facts, Situation& situation);
    AllTold what_was_told(const Knowledge& knowledge, Stages& stages);
    void build_nodes(FaultNetwork& network, const AllTold& told);
    // `untouched`: the network of this boat before anything was done to it.
    void build_network(const Knowledge& knowledge, const std::shared_ptr<const FaultNetwork>& untouched,
                       const Stages& stages, const AllTold& told);
    void find_what_can_show(const FaultNetwork& network);
    void add_links(const FaultLink& link, int put_right_at, const std::vector<EvidenceItem>& told,
                   std::vector<FaultLink>& links) const;
    void take_rules(const Knowledge& knowledge, const Fired& fired, Stages& stages);
    void add_rule(RuleEvidence evidence);
    void take_findings(const AllTold& told);
    void set_findings(FaultCase& given, const std::vector<bool>& in_use) const;
    void set_finding(FaultCase& given, const ToldFinding& told, const std::vector<bool>& in_use,
                     bool later_most_likely) const;
    void take_remedies(const Knowledge& knowledge, const Facts& facts);
    void set_priors(FaultCase& given, const std::vector<bool>& in_use) const;
    void set_requirements(FaultCase& given, bool with_remedies) const;

    std::shared_ptr<const FaultNetwork> network_;  // of the knowledge, while nothing was done to the boat
    std::vector<Index> finding_of_;
    // Per finding of the network: some cause that is possible here gives it. Empty while all is as prepared.
    std::vector<bool> can_show_;
    std::vector<ToldFinding> told_;
    std::vector<EarlierAnswer> set_aside_;
    std::vector<double> prior_;
    double unlisted_prior_ = 0;
    std::vector<EvidenceItem> items_;
    std::vector<bool> put_right_;
    std::vector<std::vector<bool>> better_;  // per remedy that helped: its causes
    std::vector<bool> not_cured_;            // causes of remedies that left something wrong
    bool any_not_cured_ = false;
    bool cured_ = false;
    std::vector<bool> impossible_here_;
    std::vector<Index> ruled_out_by_;
    std::vector<bool> makes_sense_;
};

}  // namespace hardover
