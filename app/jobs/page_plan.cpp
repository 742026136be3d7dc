// The way ahead as it looks now: the next step, then proofs and remedies of the leading causes.
#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "app/jobs/page_parts.hpp"
#include "app/jobs/wording.hpp"

namespace hardover::jobs_detail {

namespace {

constexpr int most_causes = 3;
constexpr double least_probability = 0.05;

std::string prove_line(const Check& check, const std::string& cause) {
    return fmt::format("Prove: {} ({})", check.name, cause);
}

// Collects lines, naming each check and each remedy once.
class Plan {
  public:
    explicit Plan(const View& view) : view_(view) {}

    void begin(const NextStep& step) {
        add(step_line(view_.knowledge, step), step.minutes);
        if (step.kind == NextStep::Kind::check || step.kind == NextStep::Kind::prove) {
            checks_.insert(step.index);
        }
        if (step.kind == NextStep::Kind::remedy) remedies_.insert(step.index);
    }

    void add_cause(const RankedCause& ranked) {
        const Cause& cause = view_.knowledge.causes[ranked.cause];
        // Work that is on the plan already does this too: nothing is done twice.
        if (std::any_of(remedies_.begin(), remedies_.end(), [&](Index remedy) {
                return remedy != cause.remedy && puts_right(view_.knowledge, remedy, ranked.cause);
            }))
            return;
        if (!ranked.proved && cause.proof != none && checks_.insert(cause.proof).second) {
            const Check& check = view_.knowledge.checks[cause.proof];
            add(prove_line(check, cause.name), proof_minutes(cause, check));
        }
        if (cause.remedy != none && remedies_.insert(cause.remedy).second) {
            const Remedy& remedy = view_.knowledge.remedies[cause.remedy];
            add(fmt::format("Then: {}", remedy.name), remedy.minutes);
        }
    }

    void add(std::string text, double minutes) { lines_.push_back({std::move(text), minutes}); }
    std::vector<PlanLine> lines() && { return std::move(lines_); }

  private:
    double proof_minutes(const Cause& cause, const Check& check) const {
        double minutes = check.minutes;
        for (const std::string& name : cause.proved_when.names()) {
            const Index finding = find(view_.knowledge.findings, name);
            if (finding != none) minutes += view_.knowledge.findings[finding].minutes;
        }
        return minutes;
    }

    const View& view_;
    std::vector<PlanLine> lines_;
    std::set<Index> checks_;
    std::set<Index> remedies_;
};

bool worth_planning(const RankedCause& ranked) {
    const bool out = ranked.impossible_here || ranked.ruled_out_by != none;
    return !out && !ranked.put_right && (ranked.proved || ranked.probability >= least_probability);
}

}  // namespace

std::string step_line(const Knowledge& knowledge, const NextStep& step) {
    switch (step.kind) {
        case NextStep::Kind::ask:
            return fmt::format("Ask: {}", knowledge.findings[step.index].name);
        case NextStep::Kind::check:
            return fmt::format("Check: {}", knowledge.checks[step.index].name);
        case NextStep::Kind::prove:
            return prove_line(knowledge.checks[step.index], cause_name(knowledge, step.cause));
        case NextStep::Kind::remedy:
            return fmt::format("Put right: {}", knowledge.remedies[step.index].name);
        case NextStep::Kind::stop_asking:
            return "Call for help";
        case NextStep::Kind::done:
            return "Checks after, then hand back";
    }
    return "";
}

std::vector<PlanLine> plan_lines(const View& view) {
    const NextStep& step = view.job.assessment.next;
    if (view.job.handed_back) return {};
    Plan plan(view);
    plan.begin(step);
    if (step.kind == NextStep::Kind::done) return std::move(plan).lines();
    int causes = 0;
    for (const RankedCause& ranked : view.job.assessment.ranking) {
        if (causes == most_causes) break;
        if (!worth_planning(ranked)) continue;
        plan.add_cause(ranked);
        ++causes;
    }
    if (step.kind != NextStep::Kind::stop_asking) {
        plan.add("If none of this cures it: call for help", view.knowledge.settings.call_for_help);
    }
    return std::move(plan).lines();
}

}  // namespace hardover::jobs_detail
