// The card of what to do now: one function a kind of step.
#include <fmt/format.h>

#include <algorithm>

#include "app/jobs/page_parts.hpp"
#include "app/jobs/proved.hpp"
#include "app/jobs/wording.hpp"
#include "rules/reasoning/check_cautions.hpp"

namespace hardover {

using namespace jobs_detail;

namespace {

std::string eyebrow(const std::string& kind, double minutes, const std::vector<std::string>& tools) {
    std::string line = kind;
    if (minutes > 0) line += fmt::format(" · about {}", minutes_text(minutes));
    std::vector<std::string> names;
    for (const std::string& tool : tools) names.push_back(lower_first(tool));
    if (!names.empty()) line += fmt::format(" · {}", fmt::join(names, ", "));
    return line;
}

// Cautions of the work itself, then those the rules raised for this boat.
std::vector<CautionText> cautions_for(const View& view, std::vector<Index> cautions) {
    const auto& raised = view.job.assessment.cautions;
    cautions.insert(cautions.end(), raised.begin(), raised.end());
    return caution_texts(view.knowledge, cautions);
}

void add_minutes(StepCard& card, const NextStep& step) {
    card.minutes = step.minutes;
    card.minutes_after = step.minutes_after;
}

// Steps, tools, cautions and sources of a check.
void add_check(const View& view, StepCard& card, Index index) {
    const Check& check = view.knowledge.checks[index];
    card.cautions = cautions_for(view, cautions_of_check(view.situation.prepared(), view.job.facts, index));
    card.steps = check.steps;
    card.tools = check.tools;
    card.sources = source_text(view.knowledge, check.sources);
}

// A finding that is simply asked, or looked at.
void add_look(const View& view, StepCard& card, const Finding& finding) {
    card.steps = finding.look;
    if (!finding.look.empty()) card.cautions = cautions_for(view, {});
    card.sources = source_text(view.knowledge, finding.sources);
}

double minutes_of(const Knowledge& knowledge, Index finding) {
    const Finding& entry = knowledge.findings[finding];
    return entry.minutes + (entry.check == none ? 0 : knowledge.checks[entry.check].minutes);
}

StepCard intake_card(const View& view) {
    StepCard card;
    card.kind = StepCard::Kind::intake;
    card.eyebrow = "Intake";
    card.heading = "What does the customer say?";
    card.why = "The complaint, the history and the rig decide what is worth asking first.";
    card.steps.push_back("Mark the complaint nearest to the customer's words; more than one may fit.");
    if (view.job.facts.history == none) {
        card.steps.push_back("Say what was done to the steering before the trouble came.");
    }
    card.steps.push_back("Fill in what you know of the rig. What you leave open is asked or assumed later.");
    return card;
}

StepCard ask_card(View& view, const NextStep& step) {
    const Finding& finding = view.knowledge.findings[step.index];
    StepCard card;
    card.kind = StepCard::Kind::question;
    card.id = finding.id;
    card.eyebrow = eyebrow("Question", step.minutes, {});
    card.heading = finding.name;
    card.why = asking_rule_text(view.knowledge, step);
    add_sentence(card.why, origin_text(view.knowledge, step));
    add_sentence(card.why, again_text(view, step));
    add_sentence(card.why, narrowing_text(view, step));
    add_sentence(card.why, separation_text(view, step));
    add_sentence(card.why, blocked_text(view, step));
    card.branches = branch_lines(view, step);
    card.questions = question_texts(view, {step.index}, none);
    add_look(view, card, finding);
    add_minutes(card, step);
    return card;
}

// What a step was chosen for, then the rest of what it gets.
std::vector<Index> weighed_first(const NextStep& step) {
    std::vector<Index> findings;
    for (const NextStep::Branch& branch : step.branches) {
        if (findings.empty() || findings.back() != branch.finding) findings.push_back(branch.finding);
    }
    findings.insert(findings.end(), step.findings.begin(), step.findings.end());
    return findings;
}

StepCard check_card(View& view, const NextStep& step) {
    const Check& check = view.knowledge.checks[step.index];
    StepCard card;
    card.kind = StepCard::Kind::check;
    card.id = check.id;
    card.eyebrow = eyebrow("Check", step.minutes, check.tools);
    card.heading = check.name;
    card.why = asking_rule_text(view.knowledge, step);
    add_sentence(card.why, origin_text(view.knowledge, step));
    add_sentence(card.why, again_text(view, step));
    add_sentence(card.why, narrowing_text(view, step));
    add_sentence(card.why, sentence(check.why));
    add_sentence(card.why, separation_text(view, step));
    add_sentence(card.why, blocked_text(view, step));
    card.branches = branch_lines(view, step);
    card.questions = question_texts(view, weighed_first(step), step.index);
    add_check(view, card, step.index);
    add_minutes(card, step);
    return card;
}

// The findings that a cause's proof speaks of and that nobody has looked at yet, then the rest of the step.
std::vector<Index> proving_first(View& view, const NextStep& step) {
    std::vector<Index> findings;
    for (const std::string& name : view.knowledge.causes[step.cause].proved_when.names()) {
        const Index finding = find(view.knowledge.findings, name);
        if (finding == none) continue;
        const auto known = known_answer(view, finding);
        if (!known || known->only_told) findings.push_back(finding);
    }
    findings.insert(findings.end(), step.findings.begin(), step.findings.end());
    return findings;
}

StepCard prove_card(View& view, const NextStep& step) {
    const Knowledge& knowledge = view.knowledge;
    const Check& check = knowledge.checks[step.index];
    StepCard card;
    card.kind = StepCard::Kind::prove;
    card.id = check.id;
    card.eyebrow = eyebrow("Prove it", step.minutes, check.tools);
    card.heading = check.name;
    if (step.cause != none) {
        const Cause& cause = knowledge.causes[step.cause];
        card.cause = cause.id;
        const std::string percent = percent_text(probability_of(view.job, step.cause));
        card.why = step.again ? fmt::format("{} was proved before the work and stands at {} now.", cause.name,
                                            percent)
                              : fmt::format("{} stands at {}. Prove it before anything is taken apart.",
                                            cause.name, percent);
        add_sentence(card.why, again_text(view, step));
        add_sentence(card.why, origin_text(knowledge, step));
        if (!cause.proved_when.empty()) {
            add_sentence(card.why, sentence(fmt::format("It is proved when {}",
                                                        spoken_condition(knowledge, cause.proved_when))));
        }
        card.questions = question_texts(view, proving_first(view, step), step.index);
    } else {
        card.questions = question_texts(view, step.findings, step.index);
    }
    add_sentence(card.why, blocked_text(view, step));
    card.branches = branch_lines(view, step);
    add_check(view, card, step.index);
    add_minutes(card, step);
    return card;
}

std::vector<std::string> part_lines(const Remedy& remedy) {
    std::vector<std::string> lines;
    for (const PricedPart& part : remedy.parts) {
        lines.push_back(part.price > 0 ? fmt::format("{} (about {:g})", part.part, part.price) : part.part);
    }
    return lines;
}

// Of a cause that is to be put right without being proved: what was seen where its proof looks.
std::string seen_otherwise(View& view, Index cause) {
    std::vector<std::string> seen;
    for (const std::string& name : view.knowledge.causes[cause].proved_when.names()) {
        const Index finding = find(view.knowledge.findings, name);
        if (finding == none) continue;
        const auto known = known_answer(view, finding);
        if (!known || known->only_told || std::holds_alternative<CannotTell>(known->answer.given)) continue;
        seen.push_back(
            fmt::format("{}: {}", view.knowledge.findings[finding].name,
                        lower_first(answer_text(view.knowledge, finding, known->answer, view.units()))));
    }
    if (seen.empty()) return "";
    return fmt::format("Where it would be proved, this was seen: {}. Look once more before the work.",
                       listed(seen));
}

StepCard remedy_card(View& view, const NextStep& step) {
    const Knowledge& knowledge = view.knowledge;
    const Remedy& remedy = knowledge.remedies[step.index];
    StepCard card;
    card.kind = StepCard::Kind::remedy;
    card.id = remedy.id;
    card.eyebrow = eyebrow("Put it right", step.minutes, remedy.tools);
    card.heading = remedy.name;
    if (step.cause != none) {
        card.cause = knowledge.causes[step.cause].id;
        const std::string name = cause_name(knowledge, step.cause);
        const bool proved = is_proved(view.job, step.cause);
        card.why = proved ? fmt::format("{} is proved.", name)
                          : fmt::format(
                                "{} stands at {} and is not proved. This remedy costs less than "
                                "looking further.",
                                name, percent_text(probability_of(view.job, step.cause)));
        if (!proved) add_sentence(card.why, seen_otherwise(view, step.cause));
    }
    add_sentence(card.why, origin_text(knowledge, step));
    add_sentence(card.why, blocked_text(view, step));
    card.cautions = cautions_for(view, remedy.cautions);
    card.steps = remedy.steps;
    card.tools = remedy.tools;
    card.parts = part_lines(remedy);
    card.figures = remedy.figures;
    card.after = remedy.after;
    card.sources = source_text(knowledge, remedy.sources);
    add_minutes(card, step);
    return card;
}

std::vector<Index> cured_by(const Job& job) {
    std::vector<Index> remedies;
    for (const auto& [remedy, outcome] : job.facts.tried) {
        if (outcome == Outcome::cured) remedies.push_back(remedy);
    }
    return remedies;
}

StepCard after_card(const View& view) {
    StepCard card;
    card.kind = StepCard::Kind::after;
    card.eyebrow = "Checks after";
    card.heading = "Check the boat before it is handed back";
    std::vector<std::string> names;
    std::vector<Index> cautions;
    std::vector<Index> sources;
    for (const Index index : cured_by(view.job)) {
        const Remedy& remedy = view.knowledge.remedies[index];
        names.push_back(remedy.name);
        if (card.id.empty()) card.id = remedy.id;
        cautions.insert(cautions.end(), remedy.cautions.begin(), remedy.cautions.end());
        sources.insert(sources.end(), remedy.sources.begin(), remedy.sources.end());
        card.steps.insert(card.steps.end(), remedy.after.begin(), remedy.after.end());
    }
    if (!names.empty()) card.why = fmt::format("Cured by: {}.", listed(names));
    for (const Index cause : proved_and_left(view.job)) {
        card.steps.push_back(fmt::format(
            "{} was proved and is not put right. Look again: put it right, or write down that the "
            "boat goes with it and who was told.",
            cause_name(view.knowledge, cause)));
    }
    for (const Index deferral : view.job.assessment.deferrals) {
        card.steps.push_back(
            fmt::format("Not ours to decide. {}", deferral_text(view.knowledge.deferrals[deferral])));
    }
    card.steps.push_back(
        "Hand the boat back. Record the true cause, or each of several, and whether it was seen and proved.");
    card.cautions = cautions_for(view, cautions);
    card.sources = source_text(view.knowledge, sources);
    return card;
}

StepCard help_card(const View& view, const NextStep& step) {
    StepCard card;
    card.kind = StepCard::Kind::call_for_help;
    card.eyebrow = "Call for help";
    card.heading = "Nothing on the list is worth trying next";
    card.why =
        fmt::format("Something not on this list stands at {}.", percent_text(view.job.assessment.not_listed));
    add_sentence(card.why, blocked_text(view, step));
    card.steps.push_back("Go through the answers once more: a wrong one leads away from the cause.");
    if (!view.job.facts.unavailable.empty()) {
        std::vector<std::string> needs;
        for (const Index need : view.job.facts.unavailable) {
            needs.push_back(lower_first(view.knowledge.needs[need].name));
        }
        card.steps.push_back(
            fmt::format("Some checks wait for: {}. Mark it available once it is.", listed(needs)));
    }
    card.steps.push_back("Ask the maker of the steering, with the measurements at hand.");
    card.steps.push_back("Leave the boat tied up until somebody has found it.");
    card.cautions = cautions_for(view, {});
    add_minutes(card, step);
    return card;
}

StepCard handed_back_card(const View& view) {
    const HandedBack& handed = *view.job.handed_back;
    StepCard card;
    card.kind = StepCard::Kind::handed_back;
    card.eyebrow = "Handed back";
    card.heading = "This job is done";
    card.why = fmt::format("{} recorded: {}.", handed.further.empty() ? "Cause" : "Causes",
                           upper_first(recorded_text(view.knowledge, causes_of(handed))));
    add_sentence(card.why, sentence(handed.note));
    add_sentence(card.why, left_text(view.knowledge, view.job));
    return card;
}

bool nothing_told(const Facts& facts) {
    return facts.complaints.empty() && facts.answers.empty();
}

}  // namespace

namespace jobs_detail {

StepCard next_card(View& view) {
    const Job& job = view.job;
    const NextStep& step = job.assessment.next;
    if (job.handed_back) return handed_back_card(view);
    if (!cured_by(job).empty()) return after_card(view);
    if (nothing_told(job.facts)) return intake_card(view);
    switch (step.kind) {
        case NextStep::Kind::ask:
            return ask_card(view, step);
        case NextStep::Kind::check:
            return check_card(view, step);
        case NextStep::Kind::prove:
            return prove_card(view, step);
        case NextStep::Kind::remedy:
            return remedy_card(view, step);
        case NextStep::Kind::stop_asking:
            return help_card(view, step);
        case NextStep::Kind::done:
            return after_card(view);
    }
    return intake_card(view);
}

StepCard asking_card(View& view, Index finding) {
    NextStep step;
    for (const NextStep& known : view.job.assessment.also) {
        const bool asks = known.kind == NextStep::Kind::ask && known.index == finding;
        if (asks) step = known;
    }
    step.index = finding;
    step.minutes = minutes_of(view.knowledge, finding);
    const Index check = view.knowledge.findings[finding].check;
    if (check == none) return ask_card(view, step);
    step.kind = NextStep::Kind::check;
    step.index = check;
    step.findings = {finding};
    return check_card(view, step);
}

}  // namespace jobs_detail

StepCard question_card(const PreparedKnowledge& prepared, const Job& job, Index finding) {
    View view(prepared, job);
    return asking_card(view, finding);
}

}  // namespace hardover
