// The parts of the reasoning put together.
#include <algorithm>

#include "rules/reasoning/assessment.hpp"
#include "rules/reasoning/branches.hpp"
#include "rules/reasoning/diagnosis_case.hpp"
#include "rules/reasoning/effort.hpp"
#include "rules/reasoning/firing.hpp"
#include "rules/reasoning/next_step.hpp"
#include "rules/reasoning/ranking.hpp"
#include "rules/reasoning/situation.hpp"

namespace hardover {

namespace {

std::string joined(const std::vector<std::string>& parts) {
    std::string text;
    for (const std::string& part : parts) text += (text.empty() ? "" : "; ") + part;
    return text;
}

std::string told_by(const Knowledge& knowledge, const EvidenceItem& item) {
    if (item.kind == Weight::Kind::remedy) return "what became of the remedies";
    if (item.kind == Weight::Kind::rule) {
        return "rule " + knowledge.rules[static_cast<std::size_t>(item.index)].id;
    }
    const Finding& finding = knowledge.findings[static_cast<std::size_t>(item.index)];
    if (item.reading < 0) return finding.name;
    return finding.name + ": " + finding.readings[static_cast<std::size_t>(item.reading)].text;
}

std::string conflict_of(const Knowledge& knowledge, const DiagnosisCase& diagnosis, const Ranking& ranking) {
    if (!ranking.possible) {
        std::vector<std::string> parts;
        for (const EvidenceItem& item : smallest_conflict(diagnosis))
            parts.push_back(told_by(knowledge, item));
        return "These cannot all be so: " + joined(parts) + ".";
    }
    std::vector<std::string> rules;
    for (const RankedCause& cause : ranking.causes) {
        if (cause.impossible_here) continue;
        if (cause.ruled_out_by == none) return {};
        const std::string& id = knowledge.rules[static_cast<std::size_t>(cause.ruled_out_by)].id;
        if (std::find(rules.begin(), rules.end(), id) == rules.end()) rules.push_back(id);
    }
    if (rules.empty()) return {};
    return "The rules leave no cause on the list possible: " + joined(rules) + ".";
}

void add_worksheets(const Knowledge& knowledge, const Fired& fired, Situation& situation,
                    Assessment& assessment) {
    for (std::size_t w = 0; w < knowledge.worksheets.size(); ++w) {
        assessment.worksheets.push_back(situation.worked(static_cast<Index>(w)));
    }
    for (Index run : fired.runs) assessment.worksheets[static_cast<std::size_t>(run)].called_for = true;
}

}  // namespace

Assessment assess(const PreparedKnowledge& prepared, const Facts& facts, const Detail& detail) {
    const Knowledge& knowledge = prepared.knowledge();
    Assessment assessment;
    Situation situation(prepared, facts);
    const Fired fired = fire(knowledge, situation);
    const DiagnosisCase diagnosis(knowledge, facts, fired, situation);
    Ranking ranking = rank(diagnosis);
    if (detail.weights) add_weights(diagnosis, ranking);
    const Effort effort(knowledge, facts, fired, situation, diagnosis);
    for (RankedCause& cause : ranking.causes) {
        cause.proved = cause.ruled_out_by == none && !cause.impossible_here && effort.proved(cause.cause);
    }
    Advice advice = advise(prepared, facts, effort, fired, diagnosis, ranking);
    if (detail.branches) add_branches(knowledge, diagnosis, advice);

    if (detail.worksheets) add_worksheets(knowledge, fired, situation, assessment);
    for (const EvidenceItem& item : diagnosis.items()) {
        if (item.kind == Weight::Kind::finding && !item.earlier) {
            assessment.evidence[item.index] = item.likelihood;
        }
    }
    assessment.set_aside = diagnosis.set_aside();
    assessment.conflict = conflict_of(knowledge, diagnosis, ranking);
    assessment.not_listed = ranking.not_listed;
    assessment.several = ranking.several;
    assessment.bound = ranking.bound;
    assessment.log_evidence = ranking.log_evidence;
    for (std::size_t h = 0; h < std::min<std::size_t>(8, ranking.hypotheses.size()); ++h) {
        const Hypothesis& hypothesis = ranking.hypotheses[h];
        assessment.sets.push_back({hypothesis.causes, hypothesis.unlisted, hypothesis.probability});
    }
    assessment.ranking = std::move(ranking.causes);
    assessment.fired = fired.rules;
    assessment.derived = fired.derived;
    assessment.cautions = fired.cautions;
    assessment.deferrals = fired.deferrals;
    assessment.stops = fired.stops;
    assessment.barred = fired.barred;
    assessment.assumed.assign(situation.assumed().begin(), situation.assumed().end());
    assessment.next = std::move(advice.next);
    assessment.also = std::move(advice.also);
    assessment.minutes_left = advice.minutes_left;
    assessment.sets_missing = advice.sets_missing;
    return assessment;
}

}  // namespace hardover
