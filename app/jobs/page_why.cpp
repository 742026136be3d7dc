// Why this step now: what its outcomes would do to the order of the causes, and which rule asks for it.
#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "app/jobs/page_parts.hpp"
#include "app/jobs/wording.hpp"
#include "rules/reasoning/narrowing.hpp"

namespace hardover::jobs_detail {

namespace {

// An outcome rarer than this is not worth a word.
constexpr double least_chance = 0.01;
// A change of probability smaller than this is no reason to ask.
constexpr double least_change = 0.05;

bool readable(const Knowledge& knowledge, const NextStep::Branch& branch) {
    if (branch.finding == none || branch.reading < 0) return false;
    const auto readings = knowledge.findings[branch.finding].readings.size();
    return static_cast<std::size_t>(branch.reading) < readings;
}

std::string with_percent(const View& view, Index cause) {
    return fmt::format("{} ({})", cause_name(view.knowledge, cause),
                       percent_text(probability_of(view.job, cause)));
}

// The causes that some outcome would put first, the most probable now first.
std::vector<Index> possible_firsts(const View& view, const NextStep& step) {
    std::vector<Index> firsts;
    for (const NextStep::Branch& branch : step.branches) {
        if (branch.chance < least_chance) continue;
        if (std::find(firsts.begin(), firsts.end(), branch.first) == firsts.end()) {
            firsts.push_back(branch.first);
        }
    }
    std::stable_sort(firsts.begin(), firsts.end(), [&view](Index a, Index b) {
        return probability_of(view.job, a) > probability_of(view.job, b);
    });
    return firsts;
}

// One cause stays first whatever comes out: what the outcomes do to it.
std::string effect_on_first(const View& view, const NextStep& step, Index first) {
    const double now = probability_of(view.job, first);
    double highest = now;
    double lowest = now;
    for (const NextStep::Branch& branch : step.branches) {
        if (branch.chance < least_chance) continue;
        highest = std::max(highest, branch.first_probability);
        lowest = std::min(lowest, branch.first_probability);
    }
    const std::string name = cause_name(view.knowledge, first);
    if (highest - now >= least_change && highest - now >= now - lowest) {
        return fmt::format("May raise {} from {} to {}.", name, percent_text(now), percent_text(highest));
    }
    if (now - lowest >= least_change) {
        return fmt::format("May lower {} from {} to {}.", name, percent_text(now), percent_text(lowest));
    }
    return fmt::format("{} stays first whatever it shows; it sorts the rest.", upper_first(name));
}

}  // namespace

std::vector<std::string> branch_lines(const View& view, const NextStep& step) {
    std::vector<std::string> lines;
    std::map<Index, int> findings;
    for (const NextStep::Branch& branch : step.branches) ++findings[branch.finding];
    for (const NextStep::Branch& branch : step.branches) {
        if (!readable(view.knowledge, branch)) continue;
        const Finding& finding = view.knowledge.findings[branch.finding];
        std::string reading = finding.readings[branch.reading].text;
        if (findings.size() > 1) reading = fmt::format("{}: {}", finding.name, reading);
        lines.push_back(fmt::format("If {} ({}): {} {}", quoted(reading), percent_text(branch.chance),
                                    cause_name(view.knowledge, branch.first),
                                    percent_text(branch.first_probability)));
    }
    return lines;
}

std::string separation_text(const View& view, const NextStep& step) {
    const auto firsts = possible_firsts(view, step);
    if (firsts.empty()) return "";
    if (firsts.size() == 1) return effect_on_first(view, step, firsts.front());
    return fmt::format("Separates {} from {}.", with_percent(view, firsts[0]), with_percent(view, firsts[1]));
}

std::string asking_rule_text(const Knowledge& knowledge, const NextStep& step) {
    return step.asked_by == none ? "" : sentence(knowledge.rules[step.asked_by].why);
}

std::string again_text(const View& view, const NextStep& step) {
    if (!step.again) return "";
    const std::string name = lower_first(view.knowledge.findings[step.findings.front()].name);
    return fmt::format("Looked at again: the work has helped, and {} may have gone with it.", name);
}

std::string narrowing_text(const View& view, const NextStep& step) {
    if (!step.narrows) return "";
    std::vector<std::string> names;
    for (const RankedCause& ranked : view.job.assessment.ranking) {
        if (names.size() < kept_in_mind)
            names.push_back(lower_first(cause_name(view.knowledge, ranked.cause)));
    }
    return fmt::format("One more look before the work: is it something other than {}?", listed(names, "or"));
}

std::string origin_text(const Knowledge& knowledge, const NextStep& step) {
    if (step.ahead_of == none) return "";
    return fmt::format("This first: left in place, {} brings {} back.",
                       lower_first(cause_name(knowledge, step.cause)),
                       lower_first(cause_name(knowledge, step.ahead_of)));
}

std::string blocked_text(const View& view, const NextStep& step) {
    std::vector<std::string> marked;
    std::vector<std::string> barred;
    for (const Index need : step.blocked_by) {
        const bool by_mark = view.job.facts.unavailable.count(need) > 0;
        (by_mark ? marked : barred).push_back(lower_first(view.knowledge.needs[need].name));
    }
    std::string text;
    if (!marked.empty()) {
        add_sentence(text, fmt::format("Needs what is marked as not available now: {}.", listed(marked)));
    }
    if (!barred.empty()) {
        add_sentence(text, fmt::format("Not to be had as the boat stands now: {}.", listed(barred)));
    }
    return text;
}

}  // namespace hardover::jobs_detail
