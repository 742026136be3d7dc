// The way a job goes on a boat that has given faults, when the technician does what the program says: what an
// author wants to see of the knowledge. Pure; prints nothing.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "app/jobs/simulated_boat.hpp"
#include "rules/result/result.hpp"

namespace hardover {

// What is to be walked through. Empty fields are chosen so that the faults fit.
struct WalkWish {
    std::vector<std::string> causes;  // ids, at least one
    std::string history;              // id; "": where the faults turn up most
    std::vector<std::string> rig;     // "field=value"
    std::string complaint;            // id; "": the one such boats most often bring
    std::optional<unsigned> seed;     // draws the readings; empty: each shows what is most likely
};

// A complaint and how often a boat with these faults brings it.
struct ComplaintChance {
    Index complaint = none;
    double chance = 0;
};

struct LeadingCause {
    Index cause = none;
    double probability = 0;
    bool proved = false;
};

struct WalkStep {
    NextStep step;
    std::vector<GivenAnswer> answers;
    std::optional<Outcome> outcome;     // of a remedy
    bool was_present = false;           // of a remedy: one of the faults was there to be cured
    double minutes = 0;                 // since the start, with this step
    std::vector<LeadingCause> leading;  // the first causes after it
    double not_listed = 0;
    std::vector<Index> rules;     // fired since the step before
    std::vector<Index> stops;     // ordered since the step before
    std::vector<Index> cautions;  // of the step itself
};

struct Walk {
    enum class End { cured, help_called, too_long };
    Facts told;
    std::vector<Index> faults;
    std::vector<ComplaintChance> complaints;  // the likely ones, most likely first
    double complaint_chance = 0;              // of the one that was told
    WalkStep start;                           // what holds before the first question; `step` is empty
    std::vector<WalkStep> steps;
    End end = End::too_long;
    int questions = 0;
    int wrong_remedies = 0;
    bool proved_first = false;  // every remedy that was needed came after its proof
    double minutes = 0;
    double minutes_of_know_all = 0;
};

// Errors: unknown ids (with the nearest), faults that no rig has together, a complaint that makes no sense on
// the rig.
Result<Walk> walk_job(const Knowledge& knowledge, const WalkWish& wish);

}  // namespace hardover
