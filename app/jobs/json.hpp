// The assessment and the worksheets as JSON, in the form the README documents. Pure.
#pragma once

#include <nlohmann/json.hpp>
#include <string>

#include "rules/model/facts.hpp"
#include "rules/model/knowledge.hpp"
#include "rules/reasoning/assessment.hpp"

namespace hardover {

// JSON as it is printed and written: a field a line. Letters that are no UTF-8, as a name typed elsewhere may
// have, are replaced and never refused.
std::string json_text(const nlohmann::ordered_json& json);

// {ranking: [{cause, name, probability, for, against, state}], not_listed, several, next: {kind, id, text,
// minutes, minutes_after, ahead_of, again, narrows}, cautions, deferrals, worksheets, stops, barred: [need],
// assumptions, rules, bound, conflict}
nlohmann::ordered_json assessment_json(const Knowledge& knowledge, const Assessment& assessment);

nlohmann::ordered_json sheet_json(const Knowledge& knowledge, const WorkedSheet& sheet);

// Counts of the knowledge by kind: {complaints, findings, causes, ...}.
nlohmann::ordered_json figures_json(const Knowledge& knowledge);

}  // namespace hardover
