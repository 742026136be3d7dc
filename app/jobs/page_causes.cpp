// The causes with what speaks for and against each.
#include <fmt/format.h>

#include <algorithm>

#include "app/jobs/page_parts.hpp"
#include "app/jobs/proved.hpp"
#include "app/jobs/wording.hpp"

namespace hardover::jobs_detail {

namespace {

constexpr std::size_t most_likely_causes = 8;

std::string weight_text(View& view, const Weight& weight) {
    if (weight.kind == Weight::Kind::remedy) return "What became of the remedies that were tried";
    if (weight.kind == Weight::Kind::rule) return view.knowledge.rules[weight.index].why;
    const Finding& finding = view.knowledge.findings[weight.index];
    const auto known = answer_of_stage(view, weight.index, weight.stage);
    if (!known) return finding.name;
    const std::string told = known->only_told ? ", told by the customer" : "";
    const std::string when = weight.earlier ? fmt::format(" ({})", stage_text(weight.stage)) : "";
    return fmt::format("{}: {}{}{}", finding.name,
                       answer_text(view.knowledge, weight.index, known->answer, view.units()), told, when);
}

std::string state_text(const View& view, const RankedCause& ranked) {
    if (ranked.ruled_out_by != none) {
        return fmt::format("ruled out: {}", lower_first(view.knowledge.rules[ranked.ruled_out_by].why));
    }
    const std::string proved = ranked.proved ? "proved" : "";
    if (!ranked.put_right) return proved;
    const auto became_of = [&](Outcome outcome) {
        const auto& tried = view.job.facts.tried;
        return std::any_of(tried.begin(), tried.end(), [&](const auto& remedy) {
            return remedy.second == outcome && puts_right(view.knowledge, remedy.first, ranked.cause);
        });
    };
    const char* became = became_of(Outcome::cured)    ? "put right"
                         : became_of(Outcome::better) ? "its remedy helped"
                                                      : "its remedy did not cure";
    return proved.empty() ? became : fmt::format("{}, {}", proved, became);
}

bool out_of_the_running(const RankedCause& ranked) {
    return ranked.impossible_here || ranked.ruled_out_by != none;
}

CauseLine cause_line(View& view, const RankedCause& ranked, const std::vector<bool>& proved) {
    const Cause& cause = view.knowledge.causes[ranked.cause];
    CauseLine line;
    line.id = cause.id;
    line.name = cause.name;
    line.probability = ranked.probability;
    line.percent = percent_text(ranked.probability, out_of_the_running(ranked) || ranked.proved);
    line.state = state_text(view, ranked);
    line.proved = proved[static_cast<std::size_t>(ranked.cause)];
    for (const Weight& weight : ranked.weights) {
        if (weight.decibans == 0) continue;
        auto& side = weight.decibans > 0 ? line.weights_for : line.weights_against;
        side.push_back({weight_text(view, weight), weight_id(view.knowledge, weight), weight.decibans,
                        strength_text(weight.decibans)});
    }
    return line;
}

}  // namespace

std::string weight_id(const Knowledge& knowledge, const Weight& weight) {
    switch (weight.kind) {
        case Weight::Kind::finding:
            return knowledge.findings[weight.index].id;
        case Weight::Kind::rule:
            return knowledge.rules[weight.index].id;
        case Weight::Kind::remedy:
            return "";
    }
    return "";
}

std::vector<CauseLine> cause_lines(View& view) {
    const std::vector<bool> proved = ever_proved(view.situation.prepared(), view.job);
    std::vector<CauseLine> lines;
    for (const RankedCause& ranked : view.job.assessment.ranking) {
        if (lines.size() == most_likely_causes) break;
        if (!out_of_the_running(ranked)) lines.push_back(cause_line(view, ranked, proved));
    }
    // What cannot be on this rig at all is not worth a line: half the trade is not on any one boat.
    for (const RankedCause& ranked : view.job.assessment.ranking) {
        if (out_of_the_running(ranked) && !ranked.impossible_here) {
            lines.push_back(cause_line(view, ranked, proved));
        }
    }
    return lines;
}

std::vector<CauseLine> put_right_lines(View& view) {
    const std::vector<Index> causes = proved_and_put_right(view.situation.prepared(), view.job);
    const std::vector<bool> proved(view.knowledge.causes.size(), true);  // all of these are
    std::vector<CauseLine> lines;
    for (const RankedCause& ranked : view.job.assessment.ranking) {
        if (std::find(causes.begin(), causes.end(), ranked.cause) == causes.end()) continue;
        lines.push_back(cause_line(view, ranked, proved));
    }
    return lines;
}

}  // namespace hardover::jobs_detail
