// The job screen: the step in hand in the middle, what is known before it, what it may be and the plan ahead.
// It shows a JobPage and gives back what was pressed; it decides nothing about the job.
#pragma once

#include <optional>
#include <vector>

#include "app/jobs/outlook.hpp"
#include "app/jobs/page.hpp"
#include "app/window/kit.hpp"
#include "app/window/layout.hpp"
#include "app/window/pages.hpp"
#include "app/window/views.hpp"

namespace hardover::window {

struct JobScreen {
    const JobPage& page;
    const StepCard* looked_at = nullptr;  // the finding's card when showing one
    const std::vector<LookUpRow>& look_up;
    const QuestionOutlook* outlook = nullptr;  // of the question in hand
    const TurningSketch* turning = nullptr;    // once asked for
    bool turning_in_work = false;              // it is asked for and being worked out
};

std::optional<Action> draw_job(Kit& kit, const JobScreen& screen, JobView& view);

}  // namespace hardover::window
