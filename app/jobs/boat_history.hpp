// The jobs of one boat beside each other: what was complained of, found and cured, and whether the same came
// again. Already in words. Reads the records only.
#pragma once

#include <string>
#include <vector>

#include "app/records/store.hpp"
#include "rules/reasoning/prepared_knowledge.hpp"
#include "rules/result/result.hpp"

namespace hardover {

struct EarlierJob {
    JobNumber number = 0;
    std::string title;               // "Job 3, opened 2025-04-02, handed back 2025-04-03"
    std::string words;               // the customer's
    std::string complaints;          // "Wanders"
    std::vector<std::string> found;  // what was not as on a sound boat, and what was measured
    std::vector<std::string> work;   // "Bleed lock to lock: cured"
    std::string cause;  // "Air left in the oil, seen and proved", further ones after it; "" while in hand
    std::vector<std::string> photos;  // names with captions
};

struct BoatHistory {
    std::string title;                  // "Grey Heron: 3 jobs"
    std::vector<EarlierJob> jobs;       // the oldest first
    std::vector<std::string> compared;  // "The same cause came again: ..."
};

// Boats are the same when their names are, upper and lower case aside. Error not_found: no job of that boat.
Result<BoatHistory> boat_history(const Store& store, const PreparedKnowledge& prepared,
                                 const std::string& boat);

// The same as one text for the terminal.
std::string boat_history_text(const BoatHistory& history);

}  // namespace hardover
