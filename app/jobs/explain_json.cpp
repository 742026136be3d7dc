// The explanations as JSON.
#include "app/jobs/explain.hpp"
#include "app/jobs/page_parts.hpp"

namespace hardover {

using nlohmann::ordered_json;
using namespace jobs_detail;

namespace {

// The id, or null.
template <typename E>
ordered_json id_of(const std::vector<E>& entries, Index index) {
    if (index == none) return nullptr;
    return entries[index].id;
}

template <typename E>
ordered_json ids_of(const std::vector<E>& entries, const std::vector<Index>& indices) {
    ordered_json ids = ordered_json::array();
    for (const Index index : indices) ids.push_back(entries[index].id);
    return ids;
}

ordered_json reading_id(const Finding& finding, int reading) {
    if (reading < 0) return nullptr;
    return finding.readings[reading].id;
}

ordered_json turn_json(const Knowledge& knowledge, const Turn& turn, bool given) {
    ordered_json answers = ordered_json::array();
    for (const AsIf& answer : turn.answers) {
        const Finding& finding = knowledge.findings[answer.finding];
        const std::string text = answer.reading < 0
                                     ? finding.name + ": not answered"
                                     : finding.name + ": " + finding.readings[answer.reading].text;
        ordered_json entry = {
            {"finding", finding.id}, {"reading", reading_id(finding, answer.reading)}, {"text", text}};
        if (given) entry["after"] = answer.stage;
        answers.push_back(std::move(entry));
    }
    ordered_json json = {{"answers", answers}};
    if (!given) json["chance"] = turn.chance;
    json["first"] = id_of(knowledge.causes, turn.first);
    json["probability"] = turn.first_probability;
    return json;
}

ordered_json set_json(const Knowledge& knowledge, const FaultSet& set) {
    return {{"causes", ids_of(knowledge.causes, set.causes)},
            {"not_listed", set.not_listed},
            {"probability", set.probability}};
}

ordered_json row_json(const Knowledge& knowledge, const ContrastRow& row) {
    ordered_json json;
    switch (row.kind) {
        case ContrastRow::Kind::odds:
            json = {
                {"kind", "odds"},
                {"id", row.index == none ? ordered_json("not_listed") : id_of(knowledge.causes, row.index)}};
            break;
        case ContrastRow::Kind::rule:
            json = {{"kind", "rule"}, {"id", id_of(knowledge.rules, row.index)}};
            break;
        case ContrastRow::Kind::finding:
            json = {{"kind", "finding"}, {"id", id_of(knowledge.findings, row.index)}};
            break;
    }
    json["text"] = contrast_row_text(knowledge, row);
    json["decibans"] = row.decibans;
    return json;
}

ordered_json without_json(const Knowledge& knowledge, const Without& without) {
    return {{"probability", without.probability},
            {"first", id_of(knowledge.causes, without.first)},
            {"first_probability", without.first_probability}};
}

}  // namespace

ordered_json turning_json(const Knowledge& knowledge, const Turning& turning) {
    ordered_json by_answering = ordered_json::array();
    for (const Turn& turn : turning.by_answering) by_answering.push_back(turn_json(knowledge, turn, false));
    ordered_json if_wrong = ordered_json::array();
    for (const Turn& turn : turning.if_wrong) if_wrong.push_back(turn_json(knowledge, turn, true));
    return {{"first", id_of(knowledge.causes, turning.first)},
            {"probability", turning.probability},
            {"by_answering", by_answering},
            {"if_wrong", if_wrong}};
}

ordered_json contrast_json(const Knowledge& knowledge, const Contrast& contrast) {
    if (!contrast.possible) return {{"possible", false}};
    ordered_json rows = ordered_json::array();
    for (const ContrastRow& row : contrast.rows) rows.push_back(row_json(knowledge, row));
    return {{"possible", true},
            {"a", set_json(knowledge, contrast.with_a)},
            {"b", set_json(knowledge, contrast.with_b)},
            {"rows", rows},
            {"decibans", contrast.decibans}};
}

ordered_json trace_json(const Knowledge& knowledge, const Trace& trace) {
    ordered_json rules = ordered_json::array();
    for (const TracedRule& rule : trace.rules) {
        rules.push_back({{"rule", id_of(knowledge.rules, rule.rule)},
                         {"findings", ids_of(knowledge.findings, rule.findings)},
                         {"assumptions", ids_of(knowledge.rig_fields, rule.assumptions)},
                         {"rules", ids_of(knowledge.rules, rule.rules)},
                         {"without", without_json(knowledge, rule.without)}});
    }
    ordered_json assumptions = ordered_json::array();
    for (const TracedAssumption& assumption : trace.assumptions) {
        assumptions.push_back({{"field", id_of(knowledge.rig_fields, assumption.rig_field)},
                               {"rules", ids_of(knowledge.rules, assumption.rules)},
                               {"without", without_json(knowledge, assumption.without)}});
    }
    ordered_json answers = ordered_json::array();
    for (const TracedAnswer& answer : trace.answers) {
        const Finding& finding = knowledge.findings[answer.finding];
        answers.push_back({{"finding", finding.id},
                           {"reading", reading_id(finding, answer.reading)},
                           {"after", answer.stage},
                           {"without", without_json(knowledge, answer.without)}});
    }
    return {{"first", id_of(knowledge.causes, trace.first)},
            {"probability", trace.probability},
            {"rules", rules},
            {"assumptions", assumptions},
            {"answers", answers}};
}

}  // namespace hardover
