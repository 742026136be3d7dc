// What is ticked where a boat is handed back, and what is still to be said there. Draws nothing.
#pragma once

#include <string>
#include <vector>

#include "app/jobs/page.hpp"
#include "app/window/views.hpp"

namespace hardover::window {

// The causes ticked, the main one first: as somebody ticked them, or what was proved and put right.
std::vector<std::string> causes_ticked(const JobView& view, const JobPage& page);

// Those and what was said of each, as the job takes them.
std::vector<RecordedCause> causes_told(const JobView& view, const JobPage& page);

// Its line on the page; nothing for "not on this list".
const CauseLine* cause_shown(const JobPage& page, const std::string& cause);

// What has to be said before the boat can be handed back; "" when nothing has.
std::string why_not_handed_back(const JobView& view, const JobPage& page);

}  // namespace hardover::window
