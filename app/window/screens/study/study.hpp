// The place Study: who learns, the quiz, the practice boat and its debrief, and how the learner is doing.
#pragma once

#include <optional>

#include "app/window/actions.hpp"
#include "app/window/kit.hpp"
#include "app/window/study_desk.hpp"
#include "app/window/study_view.hpp"

namespace hardover::window {

std::optional<Action> draw_study(Kit& kit, const StudyPage& page, StudyView& view);

}  // namespace hardover::window
