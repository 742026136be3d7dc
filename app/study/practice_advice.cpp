// The help an apprentice can take: the program's next step in words, and the nudges that lead up to it.
#include <fmt/format.h>

#include <algorithm>

#include "app/jobs/wording.hpp"
#include "app/study/practice_marks.hpp"
#include "app/study/practice_page.hpp"
#include "app/study/practice_practise.hpp"

namespace hardover::study::practice {

using namespace jobs_detail;

namespace {

template <typename E>
const E& at(const std::vector<E>& entries, Index index) {
    return entries[static_cast<std::size_t>(index)];
}

Job job_of(const PreparedKnowledge& prepared, const Facts& facts) {
    Job job;
    job.facts = facts;
    job.knowledge = prepared.knowledge().fingerprint;
    job.assessment = assess(prepared, facts);
    return job;
}

// Where such a step leads to look: the part of its finding or of its cause.
std::string part_of(const Knowledge& knowledge, const NextStep& step) {
    Index finding = none;
    if (step.kind == NextStep::Kind::ask) finding = step.index;
    if (!step.findings.empty()) finding = step.findings.front();
    const Index part = finding == none ? none : at(knowledge.findings, finding).part;
    return part == none ? "" : lower_first(at(knowledge.parts, part).name);
}

std::string nudge(const Knowledge& knowledge, const NextStep& step) {
    const std::string part = part_of(knowledge, step);
    switch (step.kind) {
        case NextStep::Kind::ask:
        case NextStep::Kind::check:
            return part.empty()
                       ? "You are still finding the cause. Look for what tells the likely ones apart."
                       : fmt::format("You are still finding the cause. Look here next: {}.", part);
        case NextStep::Kind::prove:
            return part.empty() ? "One cause leads. What would prove it before anything is taken apart?"
                                : fmt::format(
                                      "One cause leads. What would prove it before anything is taken "
                                      "apart? Look here: {}.",
                                      part);
        case NextStep::Kind::remedy:
            return "You know enough. It is time to put something right.";
        case NextStep::Kind::stop_asking:
            return "Nothing on the list fits well any more. Calling for help costs less than trying on.";
        case NextStep::Kind::done:
            return "The boat is right. Do the checks that belong to the remedy, then hand it over.";
    }
    return "";
}

// The two causes that stand first, and two things to do of which one is the better.
std::vector<std::string> comparison(const Knowledge& knowledge, const Assessment& now) {
    std::vector<std::string> leading;
    for (const RankedCause& cause : now.ranking) {
        if (cause.probability <= 0 || cause.put_right || leading.size() == 2) continue;
        leading.push_back(quoted(at(knowledge.causes, cause.cause).name));
    }
    std::vector<std::string> lines;
    if (leading.size() == 2) {
        lines.push_back(fmt::format("Compare {} with {}: what would one of them show and the other not?",
                                    leading[0], leading[1]));
    }
    std::vector<std::string> steps{quoted(step_text(knowledge, now.next))};
    if (!now.also.empty()) steps.push_back(quoted(step_text(knowledge, now.also.front())));
    std::sort(steps.begin(), steps.end());  // the order does not give it away
    lines.push_back(steps.size() == 2 ? fmt::format("Two things are worth doing: {} or {}. Which, and why?",
                                                    steps[0], steps[1])
                                      : fmt::format("One thing is worth doing: {}. Why?", steps[0]));
    return lines;
}

}  // namespace

Advice next_step_advice(const PreparedKnowledge& prepared, const Facts& facts) {
    const Job job = job_of(prepared, facts);
    const StepCard card = make_job_page(prepared, job).card;
    Advice advice;
    advice.heading = card.heading;
    advice.eyebrow = card.eyebrow;
    advice.why = card.why;
    for (const std::string& branch : card.branches) add_sentence(advice.what_then, sentence(branch));
    advice.event = event_of_step(prepared.knowledge(), job.assessment.next);
    if (const auto* asked = std::get_if<Asked>(&advice.event)) {
        const std::string& name =
            at(prepared.knowledge().findings, find(prepared.knowledge().findings, asked->finding)).name;
        if (name != advice.heading) advice.heading += ": " + lower_first(name);
    }
    return advice;
}

std::string hint_name(int level) {
    return level == 1 ? "a nudge" : level == 2 ? "what to compare" : "the step and its reason";
}

std::string hint_title(int level) {
    return upper_first(hint_name(level));
}

std::vector<std::string> hint_text(const Session& session, int level) {
    const Assessment now = assess(session.prepared(), session.facts(), Detail{false, false});
    if (session.boat_is_right() || level <= 1) return {nudge(session.knowledge(), now.next)};
    if (level == 2) return comparison(session.knowledge(), now);
    const Advice advice = next_step_advice(session.prepared(), session.facts());
    std::vector<std::string> lines{fmt::format("{} ({})", advice.heading, advice.eyebrow)};
    if (!advice.why.empty()) lines.push_back(advice.why);
    if (!advice.what_then.empty()) lines.push_back(advice.what_then);
    return lines;
}

}  // namespace hardover::study::practice
