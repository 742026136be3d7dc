// Boats drawn from the knowledge itself, and the job a technician does on one who does what the program says.
// Judges nothing: what came of a job is handed back as plain numbers.
#pragma once

#include <optional>
#include <vector>

#include "app/jobs/simulated_boat.hpp"
#include "reasoning/chance.hpp"
#include "rules/reasoning/assessment.hpp"
#include "rules/reasoning/prepared_knowledge.hpp"

namespace hardover_bench {

// A boat drawn by chance.
struct Boat : hardover::DrawnBoat {
    // The complaint is shown by one of the faults, not by stray chance alone.
    bool complaint_from_a_fault = false;
};

// Draws a boat: history by its share, the rig's choices evenly (quantities in the middle of what is allowed),
// faults by their prior for that history and rig with the rules that fire on those alone, at least one; every
// fault shows what the knowledge says it shows. A complaint is picked, and the faults are drawn anew until
// the boat shows it, so that what is wrong is distributed as the knowledge says it is given the complaint.
// With `must_have`, that cause is among the faults. Empty when no such boat turns up in many tries.
std::optional<Boat> draw_boat(const hardover::PreparedKnowledge& prepared, hardover_tests::Chance& chance,
                              hardover::Index must_have = hardover::none);

// What came of one job.
struct JobDone {
    // At hand-over: the first time that a remedy or calling for help is next.
    hardover::NextStep::Kind handed_over = hardover::NextStep::Kind::ask;
    bool proved = false;                       // the first cause was proved
    bool first_right = false;                  // the first cause is one of the faults
    bool in_first_three = false;               // one of the first three causes is
    double first_probability = 0;              // of the first cause
    std::vector<hardover::Index> first_three;  // as the knowledge with all causes counts them
    bool not_listed_on_top = false;  // "not on this list" is more probable than any cause, or help is called
    int questions = 0;               // findings answered
    // At the end of the job.
    bool cured = false;
    bool help_called = false;
    int wrong_remedies = 0;  // applied to a boat that did not have that fault
    // "Not on this list" was on top when a remedy or calling for help was next, after so many wrong remedies.
    bool not_listed_said = false;
    int wrong_before_said = 0;
    double minutes = 0;
    double minutes_of_know_all = 0;  // straight to the proof and remedy of every fault
};

// A technician answers what is asked, applies the remedies that come next, and stops when the boat is right
// or help is called. `reasoner` may lack causes that `prepared` (with which the boat was drawn) has;
// findings and remedies must be the same. Each finding takes its minutes and each check its setting up once.
JobDone do_job(const hardover::PreparedKnowledge& prepared, const hardover::PreparedKnowledge& reasoner,
               const Boat& boat);

// What is known at every moment of such a job, from the complaint alone to its end.
std::vector<hardover::Facts> moments_of_job(const hardover::PreparedKnowledge& prepared, const Boat& boat);

// The knowledge without one cause and what rules say about it.
hardover::Knowledge without_cause(hardover::Knowledge knowledge, hardover::Index cause);

// The knowledge without what rules say about causes.
hardover::Knowledge without_favours(hardover::Knowledge knowledge);

}  // namespace hardover_bench
