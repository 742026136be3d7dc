// A boat projected to the class, in letters that are read across a room: the question with its choices and
// the hands for them, the ranking as it moves, what came of a step, the boat, and the debrief of the class's
// way.
#pragma once

#include <optional>

#include "app/window/actions.hpp"
#include "app/window/kit.hpp"
#include "app/window/project_desk.hpp"
#include "app/window/project_view.hpp"

namespace hardover::window {

// `still`: nothing moves by itself.
std::optional<Action> draw_project(Kit& kit, const ProjectDesk& desk, ProjectView& view, bool still);

}  // namespace hardover::window
