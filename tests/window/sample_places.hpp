// States of places that are made from the shipped knowledge, for sweeps and pictures.
#pragma once

#include <string>

#include "app/window/knowledge_state.hpp"
#include "app/window/sheets_state.hpp"

namespace hardover_tests {

// The list ("") or one worksheet with its examples entered and everything unfolded.
hardover::window::SheetsState sample_sheets(const std::string& id);

// The list of a kind ("" as id) or one entry.
hardover::window::KnowledgeState sample_knowledge(const std::string& kind, const std::string& id);

}  // namespace hardover_tests
