// What can still be found out, and the minutes of questions, checks, proofs and remedies, as things stand.
#pragma once

#include <optional>
#include <vector>

#include "rules/reasoning/diagnosis_case.hpp"
#include "rules/reasoning/firing.hpp"
#include "rules/reasoning/situation.hpp"

namespace hardover {

// No step is taken to cost less: even a glance takes half a minute.
inline constexpr double least_minutes = 0.5;

// Minutes of applying a remedy, its parts at the shop's rate (price of an hour; 0: as in the knowledge), and
// trying the boat.
double minutes_of_remedy(const Knowledge& knowledge, Index remedy, double shop_rate);

// What getting one finding takes, its own check's setting up not counted.
struct FindingEffort {
    double minutes = 0;
    std::vector<Index> measured;  // from a worksheet: the plain measurements still to be taken
    bool blocked = false;         // only because a need is not available
};

// What proving a cause takes.
struct ProofEffort {
    Index check = none;
    std::vector<Index> findings;  // still open
    double minutes = 0;           // with setting up
};

class Effort {
  public:
    // All must outlive the object.
    Effort(const Knowledge& knowledge, const Facts& facts, const Fired& fired, Situation& situation,
           const DiagnosisCase& diagnosis);

    // Empty when the finding is answered (also with "can't tell"), makes no sense here, or cannot be got.
    const std::optional<FindingEffort>& of(Index finding) const {
        return findings_[static_cast<std::size_t>(finding)];
    }

    // Minutes to set a check up; 0 when something it gets has been answered.
    double setting_up(Index check) const {
        const bool exists = check >= 0 && static_cast<std::size_t>(check) < setting_up_.size();
        return exists ? setting_up_[static_cast<std::size_t>(check)] : 0;
    }

    // Needs of a check, or of a finding with its check, that are marked not available, or barred by a stop or
    // by the rig.
    std::vector<Index> missing_for_check(Index check) const;
    std::vector<Index> missing_for(Index finding) const;

    // Applying a remedy, its parts at the shop's rate, and trying the boat.
    double of_remedy(Index remedy) const;

    // Empty when there is no proof, it is answered, or it cannot be had.
    std::optional<ProofEffort> of_proof(Index cause) const;

    // proved_when is there and holds.
    bool proved(Index cause) const;

    // Everything a check gets that is still open and can be had; plain measurements instead of what a
    // worksheet makes of them.
    std::vector<Index> open_findings(Index check) const;

  private:
    std::optional<FindingEffort> work_out(Index finding);
    bool answered(Index finding) const;
    bool missing(Index need) const;
    bool add_inputs(const Finding& finding, FindingEffort& effort) const;

    const Knowledge& knowledge_;
    const Facts& facts_;
    const Fired& fired_;
    Situation& situation_;
    const DiagnosisCase& diagnosis_;
    std::vector<double> setting_up_;  // by check
    std::vector<std::optional<FindingEffort>> findings_;
};

}  // namespace hardover
