// A walk through a job on a boat with known faults, in words for the author and as JSON. Pure.
#pragma once

#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "app/jobs/walk.hpp"

namespace hardover {

// Lines to be printed one under the other; leading blanks say how far one is set in.
std::vector<std::string> walk_lines(const Knowledge& knowledge, const Walk& walk);

// {faults, rig, history, complaint, complaint_chance, other_complaints, start, steps: [{kind, id, text,
// asked_by, answers: [{finding, reading, text}], outcome, minutes, leading: [{cause, name, probability}],
// not_listed, proved, rules, stops, cautions}], end, proved_before_remedy, first_at_hand_over, questions,
// wrong_remedies, minutes, minutes_of_know_all}. A reading is null for a plain measurement.
nlohmann::ordered_json walk_json(const Knowledge& knowledge, const Walk& walk);

// One line for a table of all causes, and the line over it.
std::string walk_summary_head();
std::string walk_summary(const Knowledge& knowledge, const Walk& walk);

}  // namespace hardover
