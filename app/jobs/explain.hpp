// What would turn the first cause, why one cause rather than another, and what each thing matters: in words
// for both front ends and as JSON in the form the README documents. Pure.
#pragma once

#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "rules/model/knowledge.hpp"
#include "rules/reasoning/contrast.hpp"
#include "rules/reasoning/trace.hpp"
#include "rules/reasoning/turning.hpp"

namespace hardover {

// A few sentences each, the most telling first; never empty.
std::vector<std::string> turning_texts(const Knowledge& knowledge, const Turning& turning);
// What has to be so for a turn: "If wheel creep is “None”"; of given answers "Without the answer about ...".
std::string turn_condition(const Knowledge& knowledge, const Turn& turn, bool of_given);
inline constexpr const char* no_open_turn =
    "No single open finding would change that, nor any two of the most promising.";
inline constexpr const char* no_wrong_turn =
    "No one or two of the answers given, if wrong, would change that.";
std::vector<std::string> contrast_texts(const Knowledge& knowledge, Index a, Index b,
                                        const Contrast& contrast);
std::vector<std::string> trace_texts(const Knowledge& knowledge, const Trace& trace);

// {first, probability, by_answering: [{answers: [{finding, reading, text}], chance, first, probability}],
// if_wrong: [{answers: [{finding, reading, text, after}], first, probability}]}. A reading is null for "as if
// it had not been answered"; `after` is how many remedies had been tried.
nlohmann::ordered_json turning_json(const Knowledge& knowledge, const Turning& turning);

// {possible, a: {causes, not_listed, probability}, b, rows: [{kind, id, text, decibans}], decibans}
nlohmann::ordered_json contrast_json(const Knowledge& knowledge, const Contrast& contrast);

// {first, probability, rules: [{rule, findings, assumptions, rules, without}], assumptions: [{field, rules,
// without}], answers: [{finding, reading, after, without}]}; without: {probability, first, first_probability}
nlohmann::ordered_json trace_json(const Knowledge& knowledge, const Trace& trace);

}  // namespace hardover
