// The border between the rig as knowledge describes it and the numeric boat: fields by name, each way.
// Knows the names of the shipped rig fields; one that a knowledge base lacks is passed over.
#pragma once

#include "app/rig/boat.hpp"
#include "app/rig/faults.hpp"
#include "app/rig/survey.hpp"
#include "rules/model/facts.hpp"
#include "rules/model/knowledge.hpp"

namespace hardover {

// The rig fields that a boat's sizes tell. Nothing else is in the facts.
Facts facts_of_boat(const Knowledge& knowledge, const rig::Boat& boat);

// A boat of these rig fields; what they leave open is as in `otherwise`. A linkage that fits is found by the
// boat itself.
rig::Boat boat_of_rig(const Knowledge& knowledge, const Facts& facts, const rig::Boat& otherwise);

// Names of the fields a drawing of the rig rests on that the facts leave open.
std::vector<std::string> rig_fields_taken_as_usual(const Knowledge& knowledge, const Facts& facts);

// A cause's fault in the numeric boat: each size by its value and, times the spread's standard deviation, a
// number drawn for it. Error: as set_parameter.
Result<rig::Faults> faults_of_cause(const Cause& cause, const std::vector<double>& drawn);
// The same put in beside the faults that are there already.
Result<void> add_faults_of_cause(const Cause& cause, const std::vector<double>& drawn, rig::Faults& faults);

// The reading of a finding that is felt, by its gauges. Empty where none of them is on this boat.
std::optional<Answer> felt_reading(const Finding& finding, const rig::Readings& readings);

// What the gauges say of each finding, where they can: a reading, or a quantity for one that is only measured
// or feeds a worksheet. `drawn` gives one standard normal number for each finding: the noise of measuring.
std::map<Index, Answer> answers_of_gauges(const Knowledge& knowledge, const rig::Readings& readings,
                                          const std::vector<double>& drawn);

// The reading that an answer is, the most probable one of a measurement; -1 when it is none.
int reading_told(const Finding& finding, const Answer& answer);

}  // namespace hardover
