#include "app/jobs/proved.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "app/jobs/page_parts.hpp"
#include "app/jobs/replay.hpp"
#include "app/jobs/wording.hpp"
#include "rules/reasoning/firing.hpp"
#include "rules/reasoning/situation.hpp"
#include "rules/reasoning/stages.hpp"

namespace hardover {

namespace {

bool rules_out(const Fired& fired, Index cause) {
    return std::any_of(fired.evidence.begin(), fired.evidence.end(), [cause](const auto& evidence) {
        return std::find(evidence.rules_out.begin(), evidence.rules_out.end(), cause) !=
               evidence.rules_out.end();
    });
}

}  // namespace

bool is_proved(const Job& job, Index cause) {
    return std::any_of(job.assessment.ranking.begin(), job.assessment.ranking.end(),
                       [cause](const RankedCause& ranked) { return ranked.cause == cause && ranked.proved; });
}

std::vector<Index> proved_and_left(const Job& job) {
    std::vector<Index> causes;
    for (const RankedCause& ranked : job.assessment.ranking) {
        if (ranked.proved && !ranked.put_right) causes.push_back(ranked.cause);
    }
    return causes;
}

std::vector<bool> ever_proved(const PreparedKnowledge& prepared, const Job& job) {
    const Knowledge& knowledge = prepared.knowledge();
    std::vector<bool> proved(knowledge.causes.size(), false);
    std::vector<Index> open;
    for (const RankedCause& ranked : job.assessment.ranking) {
        if (ranked.proved) proved[static_cast<std::size_t>(ranked.cause)] = true;
        const Cause& cause = knowledge.causes[static_cast<std::size_t>(ranked.cause)];
        if (!ranked.proved && !ranked.impossible_here && !cause.proved_when.empty()) {
            open.push_back(ranked.cause);
        }
    }
    for (int stage = 0; stage < present_stage(job.facts); ++stage) {
        const Facts then = facts_at(job.facts, stage);
        Situation situation(prepared, then);
        const Fired fired = fire(knowledge, situation);
        for (const Index cause : open) {
            const bool held = situation.holds(prepared.cause_proved_when(cause)) == Truth::yes;
            if (held && !rules_out(fired, cause)) proved[static_cast<std::size_t>(cause)] = true;
        }
    }
    return proved;
}

std::vector<Index> proved_and_put_right(const PreparedKnowledge& prepared, const Job& job) {
    const std::vector<bool> proved = ever_proved(prepared, job);
    std::vector<Index> causes;
    for (const RankedCause& ranked : job.assessment.ranking) {
        const bool helped =
            std::any_of(job.facts.tried.begin(), job.facts.tried.end(), [&](const auto& tried) {
                return tried.second != Outcome::not_cured &&
                       puts_right(prepared.knowledge(), tried.first, ranked.cause);
            });
        if (helped && proved[static_cast<std::size_t>(ranked.cause)]) causes.push_back(ranked.cause);
    }
    return causes;
}

std::vector<RecordedCause> suggested_causes(const PreparedKnowledge& prepared, const Job& job) {
    std::vector<RecordedCause> causes;
    for (const Index cause : proved_and_put_right(prepared, job)) {
        causes.push_back({prepared.knowledge().causes[static_cast<std::size_t>(cause)].id, true});
    }
    return causes;
}

HandedBack hand_back_with(const PreparedKnowledge& prepared, const Job& job,
                          const std::vector<RecordedCause>& told, const std::string& note) {
    const std::vector<bool> proved = ever_proved(prepared, job);
    std::vector<RecordedCause> causes = told;
    for (RecordedCause& one : causes) {
        const Index cause = find(prepared.knowledge().causes, one.cause);
        if (cause != none && proved[static_cast<std::size_t>(cause)]) one.confirmed = true;
    }
    HandedBack back{causes.front().cause, causes.front().confirmed, note};
    back.further.assign(causes.begin() + 1, causes.end());
    return back;
}

std::string left_text(const Knowledge& knowledge, const Job& job) {
    std::vector<std::string> names;
    for (const Index cause : proved_and_left(job)) {
        names.push_back(jobs_detail::lower_first(knowledge.causes[static_cast<std::size_t>(cause)].name));
    }
    return names.empty() ? "" : fmt::format("Proved and not put right: {}.", jobs_detail::listed(names));
}

const char* certainty_text(bool confirmed) {
    return confirmed ? "seen and proved" : "assumed, not proved";
}

std::string recorded_text(const Knowledge& knowledge, const std::vector<RecordedCause>& causes) {
    std::string text;
    for (const RecordedCause& one : causes) {
        const Index cause = find(knowledge.causes, one.cause);
        const bool known = cause != none || one.cause == "not_listed";
        const std::string name = known ? jobs_detail::lower_first(jobs_detail::cause_name(knowledge, cause))
                                       : jobs_detail::spoken_id(one.cause);
        text += fmt::format("{}{}, {}", text.empty() ? "" : "; ", name, certainty_text(one.confirmed));
    }
    return text;
}

}  // namespace hardover
