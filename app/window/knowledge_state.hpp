// What the place Knowledge shows and remembers.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/drawing/drawing.hpp"
#include "app/jobs/entry_page.hpp"
#include "app/jobs/search.hpp"
#include "app/window/places.hpp"

namespace hardover::window {

// Where on the boat in hand an entry is.
struct EntryPlace {
    drawing::Drawing drawing;
    std::vector<std::string> parts;  // of it
    std::string words;               // what they are
};

struct KnowledgeState {
    std::string filter;
    std::string kind = "cause";  // the one browsed
    std::size_t most = 40;       // rows of it that are shown
    std::vector<EntryKey> history;
    std::size_t at = 0;  // the entry in hand is history[at - 1]; 0: the list
    Place came_from = Place::bench;

    // Made from the above, whenever it changes.
    std::optional<EntryLinks> links;
    std::string links_of;  // fingerprint of the knowledge they belong to
    std::vector<KindCount> kinds;
    std::vector<EntryName> entries;  // of the kind browsed, the first `most`
    std::size_t all_entries = 0;
    std::vector<SearchHit> hits;
    std::vector<EntryText> fired;  // in the job in hand
    std::string fired_in;          // "Job 12"
    EntryPage page;
    std::optional<EntryPlace> where;  // none: it is no place, or this boat has none of its parts
};

}  // namespace hardover::window
