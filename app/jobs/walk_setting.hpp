// Which rig, history and complaint go with given faults. Inner part of app/jobs; asks nothing and walks
// nothing.
#pragma once

#include "app/jobs/walk.hpp"

namespace hardover::jobs_detail {

// The causes by id, ascending, each once. Error for unknown ids.
Result<std::vector<Index>> faults_named(const Knowledge& knowledge, const std::vector<std::string>& ids);

// Rig and history as wished for, the rest so that all faults are possible and most of what they show makes
// sense. Error when there is no such rig.
Result<Facts> setting_for(const Knowledge& knowledge, const WalkWish& wish, const std::vector<Index>& faults);

// How often each reading of a finding shows, with the faults that are left.
std::vector<double> chances_of(const FaultNetwork& network, const std::vector<Index>& faults,
                               const std::vector<bool>& gone, Index finding);

// Every complaint that makes sense on this rig, the one such boats bring most often first.
std::vector<ComplaintChance> complaints_of(const Knowledge& knowledge, const FaultNetwork& network,
                                           const std::vector<Index>& faults,
                                           const std::vector<bool>& makes_sense);

}  // namespace hardover::jobs_detail
