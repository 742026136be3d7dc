// Replays closed jobs and scores what would have been said about them.
#include "app/jobs/job_calibration.hpp"

#include <algorithm>
#include <utility>

#include "app/jobs/closed_job.hpp"
#include "app/jobs/learning.hpp"
#include "app/jobs/replay.hpp"
#include "rules/reasoning/diagnosis_case.hpp"
#include "rules/reasoning/firing.hpp"
#include "rules/reasoning/ranking.hpp"
#include "rules/reasoning/situation.hpp"

namespace hardover {

using namespace jobs_detail;

namespace {

// The ranking alone, without the next step, which takes most of the time of assess(). Probabilities in
// knowledge order, "not on this list" last.
std::vector<double> probabilities(const Knowledge& knowledge, const Facts& facts) {
    Situation situation(knowledge, facts);
    const Fired fired = fire(knowledge, situation);
    const Ranking ranking = rank(DiagnosisCase(knowledge, facts, fired, situation));
    std::vector<double> all(knowledge.causes.size() + 1, 0);
    for (const RankedCause& ranked : ranking.causes) {
        all[static_cast<std::size_t>(ranked.cause)] = ranked.probability;
    }
    all.back() = ranking.not_listed;
    return all;
}

// Places of causes in what probabilities() gives, "not on this list" last.
struct Found {
    std::vector<std::size_t> confirmed;
    std::vector<std::size_t> assumed;
};

Found found_in(const Knowledge& knowledge, const ClosedJob& job) {
    Found found;
    for (const RecordedCause& one : job.causes) {
        const Index cause = find(knowledge.causes, one.cause);
        if (cause == none && one.cause != not_listed_cause) continue;
        (one.confirmed ? found.confirmed : found.assumed)
            .push_back(cause == none ? knowledge.causes.size() : static_cast<std::size_t>(cause));
    }
    return found;
}

// What was known before the first of the confirmed causes was put right.
std::vector<StoredEvent> before_any_work(const Knowledge& knowledge, const ClosedJob& job) {
    std::vector<StoredEvent> shortest = job.before_cure;
    for (const std::string& cause : job.confirmed()) {
        std::vector<StoredEvent> before = before_work_on(knowledge, job, cause);
        if (before.size() < shortest.size()) shortest = std::move(before);
    }
    return shortest;
}

// What was said about one job, and what was found. What was only assumed is left out, at 0.
struct Replayed {
    std::vector<double> probabilities;
    std::vector<std::size_t> confirmed;  // one at least
    Replayed(std::vector<double> said, const Found& found)
        : probabilities(std::move(said)), confirmed(found.confirmed) {
        for (const std::size_t cause : found.assumed) probabilities[cause] = 0;
    }
};

CalibratedOdds scored(const std::vector<Replayed>& replayed) {
    std::vector<Forecast> forecasts;
    std::vector<JobForecast> jobs;
    double brier_of_others = 0;
    for (const Replayed& job : replayed) {
        const auto& confirmed = job.confirmed;
        for (std::size_t i = 0; i < job.probabilities.size(); ++i) {
            if (job.probabilities[i] <= least_scored) continue;
            const bool came = std::find(confirmed.begin(), confirmed.end(), i) != confirmed.end();
            forecasts.push_back({job.probabilities[i], came});
        }
        jobs.push_back({job.probabilities, confirmed.front()});
        for (std::size_t other = 1; other < confirmed.size(); ++other) {
            double& said = jobs.back().probabilities[confirmed[other]];
            brier_of_others += (1 - said) * (1 - said);
            said = 0;
        }
    }
    CalibratedOdds odds;
    odds.jobs = score_jobs(jobs);
    if (!jobs.empty()) odds.jobs.brier += brier_of_others / static_cast<double>(jobs.size());
    odds.forecasts = forecasts.size();
    odds.table = reliability_table(forecasts, fewest_in_row);
    odds.brier = brier_split(forecasts, odds.table);
    odds.log_loss = log_loss(forecasts);
    odds.error = calibration_error(odds.table);
    return odds;
}

}  // namespace

Result<JobCalibration> calibrate(const Knowledge& shipped, const Store& store) {
    const auto settings = learning_settings(store);
    if (!settings.ok()) return settings.error();
    const auto counted = count_jobs(shipped, store, settings.value(), false);
    if (!counted.ok()) return counted.error();
    const auto jobs = closed_jobs(store, {});
    if (!jobs.ok()) return jobs.error();

    const LearningWay& way = settings.value().way;
    JobCalibration calibration;
    std::vector<Replayed> by_shipped;
    std::vector<Replayed> by_learned;
    ClosedJobs known = sum_of(counted.value().others);
    for (const ClosedJob& job : jobs.value()) {
        if (!is_counted(job, settings.value())) {
            ++(job.confirmed().empty() ? calibration.not_confirmed : calibration.before);
            continue;
        }
        const Found found = found_in(shipped, job);
        if (found.confirmed.empty()) {
            ++calibration.without_cause;
        } else {
            const Facts facts = replay_facts(shipped, job.number, before_any_work(shipped, job)).facts;
            by_shipped.emplace_back(probabilities(shipped, facts), found);
            by_learned.emplace_back(probabilities(with_learned(shipped, known, way), facts), found);
        }
        count_job(shipped, job, way.how_often, known);
    }
    calibration.shipped = scored(by_shipped);
    calibration.learned = scored(by_learned);
    return calibration;
}

}  // namespace hardover
