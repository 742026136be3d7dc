// Knowledge and facts turned into numbers: the network of causes and findings, and the pieces of evidence in
// knowledge order, any of which can be left out.
#pragma once

#include <optional>
#include <vector>

#include "rules/reasoning/assessment.hpp"
#include "rules/reasoning/fault_network.hpp"
#include "rules/reasoning/firing.hpp"
#include "rules/reasoning/situation.hpp"

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
};

class DiagnosisCase {
  public:
    DiagnosisCase(const Knowledge& knowledge, const Facts& facts, const Fired& fired, Situation& situation);

    const FaultNetwork& network() const { return network_; }
    const std::vector<EvidenceItem>& items() const { return items_; }

    // The case with these items only (as long as items()), given that something is wrong.
    FaultCase with(const std::vector<bool>& in_use) const;
    FaultCase with_all() const { return with(std::vector<bool>(items_.size(), true)); }
    FaultCase with_none() const { return with(std::vector<bool>(items_.size(), false)); }

    // Causes put right by a remedy that was tried (whatever came of it).
    const std::vector<bool>& put_right() const { return put_right_; }
    bool cured() const { return cured_; }
    bool impossible_here(Index cause) const { return impossible_here_[static_cast<std::size_t>(cause)]; }
    Index ruled_out_by(Index cause) const { return ruled_out_by_[static_cast<std::size_t>(cause)]; }
    // possible_when is not no: the finding makes sense on this rig.
    bool makes_sense(Index finding) const { return makes_sense_[static_cast<std::size_t>(finding)]; }

  private:
    void build_network(const Knowledge& knowledge);
    void build_priors(const Knowledge& knowledge, const Facts& facts, Situation& situation);
    void take_rules(const Knowledge& knowledge, const Fired& fired);
    void take_findings(const Knowledge& knowledge, Situation& situation);
    void take_remedies(const Knowledge& knowledge, const Facts& facts);
    void set_priors(FaultCase& given, const std::vector<bool>& in_use) const;
    void set_requirements(FaultCase& given, bool with_remedies) const;

    FaultNetwork network_;
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
