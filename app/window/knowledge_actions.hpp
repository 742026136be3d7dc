// What a person can ask for at the place Knowledge. ShowKnowledge leads there from any other place.
#pragma once

#include <string>
#include <variant>

#include "app/jobs/entry_key.hpp"

namespace hardover::window {

struct ShowKnowledge {
    EntryKey entry;  // of no kind: the list of all
};
struct SearchKnowledge {
    std::string words;
};
struct BrowseKind {
    std::string kind;
};
struct ShowMore {};
struct StepInHistory {
    int by = -1;  // -1: back, and from the first entry to where one came from; 1: forward
};
struct ShowOnBoat {
    EntryKey entry;  // a cause or a finding: the place Boat, with its part looked at
};

using KnowledgeAction =
    std::variant<ShowKnowledge, SearchKnowledge, BrowseKind, ShowMore, StepInHistory, ShowOnBoat>;

}  // namespace hardover::window
