// What is known of this boat so far, and where each piece comes from.
#include <fmt/format.h>

#include <algorithm>

#include "app/jobs/page_parts.hpp"
#include "app/jobs/rig_applies.hpp"
#include "app/jobs/rig_matters.hpp"

namespace hardover::jobs_detail {

namespace {

// "" for what was told after the last remedy.
std::string before_work_text(const Facts& facts, int stage) {
    if (stage >= present_stage(facts)) return "";
    return stage == 0 ? "before the work" : stage_text(stage);
}

}  // namespace

std::optional<KnownAnswer> known_answer(View& view, Index finding) {
    const auto answer = view.situation.answer_to(finding);
    if (!answer) return std::nullopt;
    const bool is_number = std::holds_alternative<Quantity>(answer->given);
    if (view.job.facts.answers.count(finding)) {
        return KnownAnswer{*answer, is_number ? "measured" : "answered"};
    }
    if (is_number) return KnownAnswer{*answer, "worked out"};
    return KnownAnswer{*answer, "told by the customer", true};
}

std::optional<KnownAnswer> answer_of_stage(View& view, Index finding, int stage) {
    const std::vector<TimedAnswer> told = view.stages.about(finding);
    const auto then =
        std::find_if(told.begin(), told.end(), [&](const TimedAnswer& t) { return t.stage == stage; });
    if (then == told.end() || then + 1 == told.end()) return known_answer(view, finding);
    if (std::holds_alternative<Quantity>(then->answer.given)) return KnownAnswer{then->answer, "measured"};
    const auto& earlier = view.job.facts.earlier;
    const bool answered = std::any_of(earlier.begin(), earlier.end(), [&](const EarlierAnswer& e) {
        return e.finding == finding && e.stage == stage;
    });
    if (answered) return KnownAnswer{then->answer, "answered"};
    return KnownAnswer{then->answer, "told by the customer", true};
}

std::string stage_text(int stage) {
    if (stage == 0) return "before any remedy";
    return stage == 1 ? "after the first remedy" : fmt::format("after {} remedies", stage);
}

std::vector<AnswerLine> answer_lines(View& view) {
    std::vector<AnswerLine> lines;
    for (std::size_t i = 0; i < view.knowledge.findings.size(); ++i) {
        const auto index = static_cast<Index>(i);
        const auto known = known_answer(view, index);
        if (!known) continue;
        const Finding& finding = view.knowledge.findings[i];
        std::string origin = known->origin;
        int stage = 0;  // of the last that was told
        for (const TimedAnswer& told : view.stages.about(index)) {
            stage = told.stage;
            if (told.answer == known->answer) continue;
            origin += fmt::format("; {}: {}", stage_text(told.stage),
                                  answer_text(view.knowledge, index, told.answer, view.units()));
        }
        for (const EarlierAnswer& aside : view.job.assessment.set_aside) {
            if (aside.finding == index) origin += ", which does not fit any more and is set aside";
        }
        lines.push_back({finding.id, finding.name,
                         answer_text(view.knowledge, index, known->answer, view.units()), origin,
                         known->origin != "worked out", before_work_text(view.job.facts, stage)});
    }
    return lines;
}

std::vector<RigLine> rig_lines(const View& view) {
    std::vector<RigLine> lines;
    const std::set<Index> matter = rig_fields_that_matter(view.knowledge, view.job.facts.complaints);
    for (std::size_t i = 0; i < view.knowledge.rig_fields.size(); ++i) {
        const RigField& field = view.knowledge.rig_fields[i];
        RigLine line;
        line.id = field.id;
        line.name = field.name;
        line.ask = field.ask;
        line.matters = matter.contains(static_cast<Index>(i));
        const auto given = view.job.facts.rig.find(static_cast<Index>(i));
        if (given != view.job.facts.rig.end()) {
            line.value = rig_value_text(field, given->second, view.units());
        } else if (const Quantity* quantity = std::get_if<Quantity>(&field.assumed)) {
            line.value = rig_value_text(field, *quantity, view.units());
            line.assumed = true;
        } else if (const std::string* choice = std::get_if<std::string>(&field.assumed)) {
            line.value = rig_value_text(field, *choice);
            line.assumed = true;
        }
        for (const Word& choice : field.choices) {
            const bool chosen = given != view.job.facts.rig.end() &&
                                given->second == RigValue(std::in_place_type<std::string>, choice.id);
            line.choices.push_back({choice.id, choice.text, chosen});
        }
        if (field.unit) line.field = rig_measure(view.knowledge, view.job, static_cast<Index>(i));
        lines.push_back(std::move(line));
    }
    return lines;
}

std::vector<std::string> assumption_lines(const View& view) {
    std::vector<std::string> lines;
    for (const Index index : view.job.assessment.assumed) {
        if (!applies_here(view.knowledge, view.job, index)) continue;
        const RigField& field = view.knowledge.rig_fields[index];
        if (const Quantity* quantity = std::get_if<Quantity>(&field.assumed)) {
            lines.push_back(fmt::format("{} taken as {} (not measured on this boat)", field.name,
                                        rig_value_text(field, *quantity, view.units())));
        } else if (const std::string* choice = std::get_if<std::string>(&field.assumed)) {
            lines.push_back(fmt::format("{} taken to be “{}” (not looked at on this boat)", field.name,
                                        rig_value_text(field, *choice)));
        }
    }
    return lines;
}

}  // namespace hardover::jobs_detail
