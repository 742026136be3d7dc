#include "app/jobs/walk_text.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "app/jobs/page_parts.hpp"
#include "app/jobs/wording.hpp"

namespace hardover {

using namespace jobs_detail;
using nlohmann::ordered_json;

namespace {

constexpr double likely_complaint = 0.05;

template <typename E>
const E& at(const std::vector<E>& entries, Index index) {
    return entries[static_cast<std::size_t>(index)];
}

std::string named(const Entry& entry) {
    return fmt::format("{} [{}]", entry.name, entry.id);
}

std::string plain_percent(double chance) {
    return fmt::format("{:.0f} %", 100 * chance);
}

std::string leading_line(const Knowledge& knowledge, const WalkStep& step) {
    std::string line;
    for (const LeadingCause& leading : step.leading) {
        line += fmt::format("{}{} {}{}", line.empty() ? "" : " · ", at(knowledge.causes, leading.cause).id,
                            percent_text(leading.probability), leading.proved ? " (proved)" : "");
    }
    return line + " · not listed " + percent_text(step.not_listed);
}

std::string id_of(const Knowledge& knowledge, const NextStep& step) {
    switch (step.kind) {
        case NextStep::Kind::ask:
            return at(knowledge.findings, step.index).id;
        case NextStep::Kind::check:
        case NextStep::Kind::prove:
            return at(knowledge.checks, step.index).id;
        case NextStep::Kind::remedy:
            return at(knowledge.remedies, step.index).id;
        default:
            return "";
    }
}

std::string reading_text(const Finding& finding, const GivenAnswer& given) {
    if (given.reading < 0) return "measured";
    const Reading& reading = finding.readings[static_cast<std::size_t>(given.reading)];
    return fmt::format("{} [{}]", reading.text, reading.id);
}

void add_new(const Knowledge& knowledge, const WalkStep& step, std::vector<std::string>& lines) {
    for (const Index rule : step.rules) {
        lines.push_back(
            fmt::format("      rule {}: {}", at(knowledge.rules, rule).id, at(knowledge.rules, rule).why));
    }
    for (const Index stop : step.stops) {
        lines.push_back(
            fmt::format("      STOP {}: {}", at(knowledge.stops, stop).name, at(knowledge.stops, stop).text));
    }
}

void add_step(const Knowledge& knowledge, const WalkStep& step, std::size_t number,
              std::vector<std::string>& lines) {
    std::string line = fmt::format("{:>3}  {} [{}], {} so far", number, step_line(knowledge, step.step),
                                   id_of(knowledge, step.step), minutes_text(step.minutes));
    if (step.step.asked_by != none)
        line += ", put first by rule " + at(knowledge.rules, step.step.asked_by).id;
    if (step.step.ahead_of != none) {
        line += ", before " + at(knowledge.causes, step.step.ahead_of).id + ", which comes from it";
    }
    if (step.step.again) line += ", looked at again after the work";
    if (step.step.narrows) line += ", one more look before the work";
    lines.push_back(std::move(line));
    std::string cautions;
    for (const Index caution : step.cautions) {
        cautions += (cautions.empty() ? "" : ", ") + at(knowledge.cautions, caution).id;
    }
    if (!cautions.empty()) lines.push_back("      cautions: " + cautions);
    for (const GivenAnswer& given : step.answers) {
        const Finding& finding = at(knowledge.findings, given.finding);
        lines.push_back(fmt::format("      {}: {}", named(finding), reading_text(finding, given)));
    }
    if (step.outcome) {
        lines.push_back(fmt::format("      {}{}", outcome_text(*step.outcome),
                                    step.was_present ? "" : "; this boat did not have that fault"));
    }
    lines.push_back("      -> " + leading_line(knowledge, step));
    add_new(knowledge, step, lines);
}

void add_setting(const Knowledge& knowledge, const Walk& walk, std::vector<std::string>& lines) {
    for (const Index fault : walk.faults) lines.push_back("Fault: " + named(at(knowledge.causes, fault)));
    std::string rig;
    for (const auto& [field, value] : walk.told.rig) {
        const RigField& entry = at(knowledge.rig_fields, field);
        rig += (rig.empty() ? "" : "; ") + entry.name + ": " + rig_value_text(entry, value);
    }
    lines.push_back("Rig: " + (rig.empty() ? "nothing told" : rig));
    lines.push_back("History: " + at(knowledge.histories, walk.told.history).name);
    const Index told = *walk.told.complaints.begin();
    lines.push_back(fmt::format("Complaint: {}, which such boats bring in {}",
                                named(at(knowledge.complaints, told)), plain_percent(walk.complaint_chance)));
    std::string others;
    for (const ComplaintChance& other : walk.complaints) {
        if (other.complaint == told || other.chance < likely_complaint) continue;
        others += fmt::format("{}{} {}", others.empty() ? "" : ", ",
                              at(knowledge.complaints, other.complaint).id, plain_percent(other.chance));
    }
    if (!others.empty()) lines.push_back("  They also bring: " + others);
}

bool right_at_hand_over(const Walk& walk) {
    const WalkStep* before = &walk.start;
    for (const WalkStep& step : walk.steps) {
        if (step.step.kind == NextStep::Kind::remedy) break;
        before = &step;
    }
    if (before->leading.empty()) return false;
    const Index first = before->leading.front().cause;
    return std::find(walk.faults.begin(), walk.faults.end(), first) != walk.faults.end();
}

std::string end_id(Walk::End end) {
    return end == Walk::End::cured ? "cured" : end == Walk::End::help_called ? "help_called" : "too_long";
}

std::string end_text(Walk::End end) {
    switch (end) {
        case Walk::End::cured:
            return "The boat is right";
        case Walk::End::help_called:
            return "Help is called: nothing on the list is worth trying";
        default:
            return "Given up: the questions do not come to an end";
    }
}

ordered_json leading_json(const Knowledge& knowledge, const WalkStep& step) {
    ordered_json list = ordered_json::array();
    for (const LeadingCause& leading : step.leading) {
        const Cause& entry = at(knowledge.causes, leading.cause);
        list.push_back({{"cause", entry.id},
                        {"name", entry.name},
                        {"probability", leading.probability},
                        {"proved", leading.proved}});
    }
    return list;
}

template <typename E>
ordered_json ids_json(const std::vector<E>& entries, const std::vector<Index>& chosen) {
    ordered_json list = ordered_json::array();
    for (const Index index : chosen) list.push_back(at(entries, index).id);
    return list;
}

ordered_json state_json(const Knowledge& knowledge, const WalkStep& step) {
    return {{"minutes", step.minutes},
            {"leading", leading_json(knowledge, step)},
            {"not_listed", step.not_listed},
            {"proved", !step.leading.empty() && step.leading.front().proved},
            {"rules", ids_json(knowledge.rules, step.rules)},
            {"stops", ids_json(knowledge.stops, step.stops)},
            {"cautions", ids_json(knowledge.cautions, step.cautions)}};
}

ordered_json step_json(const Knowledge& knowledge, const WalkStep& step) {
    static const char* const kinds[] = {"ask", "check", "prove", "remedy", "stop_asking", "done"};
    static const char* const outcomes[] = {"cured", "better", "not_cured"};
    ordered_json json{{"kind", kinds[static_cast<int>(step.step.kind)]},
                      {"id", id_of(knowledge, step.step)},
                      {"text", step_line(knowledge, step.step)}};
    if (step.step.asked_by != none) json["asked_by"] = at(knowledge.rules, step.step.asked_by).id;
    json["answers"] = ordered_json::array();
    for (const GivenAnswer& given : step.answers) {
        const Finding& finding = at(knowledge.findings, given.finding);
        ordered_json answer{
            {"finding", finding.id}, {"reading", nullptr}, {"text", reading_text(finding, given)}};
        if (given.reading >= 0)
            answer["reading"] = finding.readings[static_cast<std::size_t>(given.reading)].id;
        json["answers"].push_back(std::move(answer));
    }
    if (step.outcome) json["outcome"] = outcomes[static_cast<int>(*step.outcome)];
    json.update(state_json(knowledge, step));
    return json;
}

}  // namespace

std::vector<std::string> walk_lines(const Knowledge& knowledge, const Walk& walk) {
    std::vector<std::string> lines;
    add_setting(knowledge, walk, lines);
    lines.push_back("");
    lines.push_back("Before any question: " + leading_line(knowledge, walk.start));
    add_new(knowledge, walk.start, lines);
    std::size_t number = 0;
    for (const WalkStep& step : walk.steps) add_step(knowledge, step, ++number, lines);
    lines.push_back("");
    lines.push_back(fmt::format("{}, after {} and {} answers. Knowing the fault it takes {}.",
                                end_text(walk.end), minutes_text(walk.minutes), walk.questions,
                                minutes_text(walk.minutes_of_know_all)));
    lines.push_back(fmt::format(
        "True cause first before the first remedy: {}. Proved before its remedy: {}. "
        "Remedies for nothing: {}.",
        right_at_hand_over(walk) ? "yes" : "no", walk.proved_first ? "yes" : "no", walk.wrong_remedies));
    return lines;
}

std::string walk_summary_head() {
    return fmt::format("{:<32} {:<28} {:>6}  {:<5} {:<6} {:>5} {:>7} {:>7} {:>7}  {}", "cause", "complaint",
                       "brings", "first", "proved", "wrong", "answers", "minutes", "knowing", "end");
}

std::string walk_summary(const Knowledge& knowledge, const Walk& walk) {
    std::string faults;
    for (const Index fault : walk.faults)
        faults += (faults.empty() ? "" : " ") + at(knowledge.causes, fault).id;
    return fmt::format("{:<32} {:<28} {:>6}  {:<5} {:<6} {:>5} {:>7} {:>7.0f} {:>7.0f}  {}", faults,
                       at(knowledge.complaints, *walk.told.complaints.begin()).id,
                       plain_percent(walk.complaint_chance), right_at_hand_over(walk) ? "yes" : "NO",
                       walk.proved_first ? "yes" : "NO", walk.wrong_remedies, walk.questions, walk.minutes,
                       walk.minutes_of_know_all, end_id(walk.end));
}

ordered_json walk_json(const Knowledge& knowledge, const Walk& walk) {
    ordered_json rig = ordered_json::object();
    for (const auto& [field, value] : walk.told.rig) {
        const RigField& entry = at(knowledge.rig_fields, field);
        const auto* choice = std::get_if<std::string>(&value);
        rig[entry.id] = choice != nullptr ? *choice : rig_value_text(entry, value);
    }
    ordered_json others = ordered_json::array();
    for (const ComplaintChance& other : walk.complaints) {
        if (walk.told.complaints.contains(other.complaint) || other.chance < likely_complaint) continue;
        others.push_back(
            {{"complaint", at(knowledge.complaints, other.complaint).id}, {"chance", other.chance}});
    }
    ordered_json steps = ordered_json::array();
    for (const WalkStep& step : walk.steps) steps.push_back(step_json(knowledge, step));
    return {{"faults", ids_json(knowledge.causes, walk.faults)},
            {"rig", rig},
            {"history", at(knowledge.histories, walk.told.history).id},
            {"complaint", at(knowledge.complaints, *walk.told.complaints.begin()).id},
            {"complaint_chance", walk.complaint_chance},
            {"other_complaints", others},
            {"start", state_json(knowledge, walk.start)},
            {"steps", steps},
            {"end", end_id(walk.end)},
            {"first_at_hand_over", right_at_hand_over(walk)},
            {"proved_before_remedy", walk.proved_first},
            {"questions", walk.questions},
            {"wrong_remedies", walk.wrong_remedies},
            {"minutes", walk.minutes},
            {"minutes_of_know_all", walk.minutes_of_know_all}};
}

}  // namespace hardover
