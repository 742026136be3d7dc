// The place Knowledge: search and browse, and one entry in full with every other entry in it a button.
#pragma once

#include <optional>

#include "app/window/actions.hpp"
#include "app/window/kit.hpp"
#include "app/window/knowledge_state.hpp"

namespace hardover::window {

// Changes nothing of the state but what is being typed.
std::optional<Action> draw_knowledge(Kit& kit, KnowledgeState& known);

}  // namespace hardover::window
