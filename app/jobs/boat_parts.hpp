// The parts a boat page is put together from. Inner part of app/jobs.
#pragma once

#include "app/jobs/boat_view.hpp"

namespace hardover::jobs_detail {

// Gauges of both boats at this moment and of the survey (boat_gauges.cpp). Error: a circuit that does not
// settle.
Result<std::vector<GaugeGroup>> gauge_groups(const Knowledge& knowledge, const SurveyedBoat& boat,
                                             const BoatSetting& setting);

// Pull and pressures of the boat that is shown.
Result<rig::Pull> shown_pull(const SurveyedBoat& boat, const BoatSetting& setting);

}  // namespace hardover::jobs_detail
