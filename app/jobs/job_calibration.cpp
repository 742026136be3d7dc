// Replays closed jobs and scores what would have been said about them.
#include "app/jobs/job_calibration.hpp"

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

CalibratedOdds scored(const std::vector<JobForecast>& jobs) {
    std::vector<Forecast> forecasts;
    for (const JobForecast& job : jobs) {
        for (std::size_t i = 0; i < job.probabilities.size(); ++i) {
            if (job.probabilities[i] > least_scored) {
                forecasts.push_back({job.probabilities[i], i == job.confirmed});
            }
        }
    }
    CalibratedOdds odds;
    odds.jobs = score_jobs(jobs);
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
    std::vector<JobForecast> by_shipped;
    std::vector<JobForecast> by_learned;
    ClosedJobs known = sum_of(counted.value().others);
    for (const ClosedJob& job : jobs.value()) {
        if (!is_counted(job, settings.value())) {
            ++(job.confirmed ? calibration.before : calibration.not_confirmed);
            continue;
        }
        const Index cause = find(shipped.causes, job.cause);
        if (cause == none && job.cause != not_listed_cause) {
            ++calibration.without_cause;
        } else {
            const auto confirmed = cause == none ? shipped.causes.size() : static_cast<std::size_t>(cause);
            const Facts facts = replay_facts(shipped, job.number, job.before_cure).facts;
            by_shipped.push_back({probabilities(shipped, facts), confirmed});
            by_learned.push_back({probabilities(with_learned(shipped, known, way), facts), confirmed});
        }
        count_job(shipped, job, way.how_often, known);
    }
    calibration.shipped = scored(by_shipped);
    calibration.learned = scored(by_learned);
    return calibration;
}

}  // namespace hardover
