// The explanations in words.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "app/jobs/explain.hpp"
#include "app/jobs/page_parts.hpp"
#include "app/jobs/wording.hpp"

namespace hardover {

using namespace jobs_detail;

namespace {

constexpr std::size_t most_lines = 4;
constexpr double least_move = 0.01;  // of a probability, worth a line

std::string remedies_text(int stage) {
    if (stage == 0) return "";
    return stage == 1 ? " after the first remedy" : fmt::format(" after {} remedies", stage);
}

std::string as_if_text(const Knowledge& knowledge, const AsIf& answer) {
    const Finding& finding = knowledge.findings[answer.finding];
    if (answer.reading < 0) return lower_first(finding.name) + remedies_text(answer.stage);
    return fmt::format("{} were {}{}", lower_first(finding.name),
                       quoted(finding.readings[answer.reading].text), remedies_text(answer.stage));
}

std::string would_be_first(const Knowledge& knowledge, const Turn& turn) {
    return fmt::format("{} would come first ({})", cause_name(knowledge, turn.first),
                       percent_text(turn.first_probability));
}

std::string open_condition(const Knowledge& knowledge, const Turn& turn) {
    std::vector<std::string> readings;
    for (const AsIf& answer : turn.answers) {
        const Finding& finding = knowledge.findings[answer.finding];
        readings.push_back(fmt::format("{} is {}", lower_first(finding.name),
                                       quoted(finding.readings[answer.reading].text)));
    }
    return fmt::format("If {}", listed(readings));
}

std::string wrong_condition(const Knowledge& knowledge, const Turn& turn) {
    std::vector<std::string> gone;
    std::vector<std::string> other;
    for (const AsIf& answer : turn.answers) {
        (answer.reading < 0 ? gone : other).push_back(as_if_text(knowledge, answer));
    }
    std::string condition;
    if (!gone.empty()) condition = "without the answer about " + listed(gone);
    if (!other.empty()) condition += (condition.empty() ? "if " : " and if ") + listed(other);
    return upper_first(condition);
}

std::string set_text(const Knowledge& knowledge, const FaultSet& set) {
    std::vector<std::string> names;
    for (const Index cause : set.causes) names.push_back(lower_first(cause_name(knowledge, cause)));
    if (set.not_listed) names.push_back(cause_name(knowledge, none));
    return listed(names);
}

std::string without_text(const Knowledge& knowledge, Index first, const Without& without) {
    const std::string then =
        fmt::format("{} would stand at {}", cause_name(knowledge, first), percent_text(without.probability));
    if (without.first == first) return then + ".";
    if (without.first == none) return then + ", and nothing on the list would be possible.";
    return fmt::format("{}, and {} would come first ({}).", then,
                       lower_first(cause_name(knowledge, without.first)),
                       percent_text(without.first_probability));
}

bool moves(const Trace& trace, const Without& without) {
    return without.first != trace.first || std::abs(without.probability - trace.probability) >= least_move;
}

}  // namespace

std::string turn_condition(const Knowledge& knowledge, const Turn& turn, bool of_given) {
    return of_given ? wrong_condition(knowledge, turn) : open_condition(knowledge, turn);
}

std::vector<std::string> turning_texts(const Knowledge& knowledge, const Turning& turning) {
    if (turning.first == none) return {"No cause on the list is possible, so there is none to change."};
    const std::string first =
        fmt::format("{} ({})", cause_name(knowledge, turning.first), percent_text(turning.probability));
    std::vector<std::string> lines{fmt::format("First now: {}.", first)};
    for (const Turn& turn : turning.by_answering) {
        if (lines.size() > most_lines) break;
        lines.push_back(fmt::format("{} (chance {}), {}.", open_condition(knowledge, turn),
                                    percent_text(turn.chance), would_be_first(knowledge, turn)));
    }
    if (turning.by_answering.empty()) {
        lines.push_back(no_open_turn);
    }
    const std::size_t before = lines.size();
    for (const Turn& turn : turning.if_wrong) {
        if (lines.size() == before + most_lines) break;
        lines.push_back(
            fmt::format("{}, {}.", wrong_condition(knowledge, turn), would_be_first(knowledge, turn)));
    }
    if (turning.if_wrong.empty()) {
        lines.push_back(no_wrong_turn);
    }
    return lines;
}

std::vector<std::string> contrast_texts(const Knowledge& knowledge, Index a, Index b,
                                        const Contrast& contrast) {
    const std::string name_a = lower_first(cause_name(knowledge, a));
    const std::string name_b = lower_first(cause_name(knowledge, b));
    if (!contrast.possible)
        return {fmt::format("{} and {}: one of them cannot be.", upper_first(name_a), name_b)};
    std::vector<std::string> lines{
        fmt::format("Most probable with {}: {} ({}). With {}: {} ({}).", name_a,
                    set_text(knowledge, contrast.with_a), percent_text(contrast.with_a.probability), name_b,
                    set_text(knowledge, contrast.with_b), percent_text(contrast.with_b.probability))};
    for (const ContrastRow& row : contrast.rows) {
        if (std::abs(row.decibans) < 0.05) continue;
        lines.push_back(fmt::format("{:+.1f} dB  {}", row.decibans, contrast_row_text(knowledge, row)));
    }
    lines.push_back(fmt::format("{:+.1f} dB  together, for {}. 10 dB is ten to one.", contrast.decibans,
                                contrast.decibans >= 0 ? name_a : name_b));
    return lines;
}

std::vector<std::string> trace_texts(const Knowledge& knowledge, const Trace& trace) {
    if (trace.first == none) return {"No cause on the list is possible."};
    std::vector<std::string> lines;
    for (const TracedAnswer& answer : trace.answers) {
        if (!moves(trace, answer.without)) continue;
        lines.push_back(fmt::format(
            "Without the answer about {}{}, {}", lower_first(knowledge.findings[answer.finding].name),
            remedies_text(answer.stage), without_text(knowledge, trace.first, answer.without)));
    }
    for (const TracedRule& rule : trace.rules) {
        if (!moves(trace, rule.without)) continue;
        lines.push_back(fmt::format("Without the rule {}, {}", quoted(knowledge.rules[rule.rule].why),
                                    without_text(knowledge, trace.first, rule.without)));
    }
    for (const TracedAssumption& assumption : trace.assumptions) {
        if (!moves(trace, assumption.without)) continue;
        lines.push_back(fmt::format("If {} were not taken as assumed, {}",
                                    lower_first(knowledge.rig_fields[assumption.rig_field].name),
                                    without_text(knowledge, trace.first, assumption.without)));
    }
    if (lines.empty()) {
        lines.push_back("No single answer, rule or assumption moves the first cause by a percent.");
    }
    return lines;
}

namespace jobs_detail {

std::string contrast_row_text(const Knowledge& knowledge, const ContrastRow& row) {
    switch (row.kind) {
        case ContrastRow::Kind::odds:
            return "How common: " + lower_first(cause_name(knowledge, row.index));
        case ContrastRow::Kind::rule:
            return "Rule: " + knowledge.rules[row.index].why;
        case ContrastRow::Kind::finding:
            return knowledge.findings[row.index].name;
    }
    return "";
}

}  // namespace jobs_detail

}  // namespace hardover
