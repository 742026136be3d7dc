// How well what was said came true: scores of probabilities against what was found, and the reliability
// table. Pure; knows no jobs and no knowledge.
#pragma once

#include <cstddef>
#include <vector>

namespace hardover {

// Something was given a probability, and came or did not come.
struct Forecast {
    double probability = 0;
    bool came = false;
};

// Forecasts of about the same probability, beside the share of them that came.
struct ReliabilityRow {
    double least = 0;  // of the probabilities
    double most = 0;
    double said = 0;  // their mean
    std::size_t forecasts = 0;
    std::size_t came = 0;
    double low = 0;  // the true share lies between low and high with 95 % probability
    double high = 0;
    double share() const { return static_cast<double>(came) / static_cast<double>(forecasts); }
};

// Rows of about equal numbers of forecasts, at most about ten, each with at least `fewest` (if there are so
// many), ascending. Equal probabilities are never parted. Fewer than 20 in a row say little.
std::vector<ReliabilityRow> reliability_table(std::vector<Forecast> forecasts, std::size_t fewest);

// The Brier score (mean squared error of probabilities; Brier 1950) and its parts (Murphy 1973):
// brier = reliability - resolution + uncertainty + within. `within` is what the rows blur (Stephenson, Coelho
// and Jolliffe 2008, from memory); 0 when all forecasts of a row are equal.
struct BrierSplit {
    double brier = 0;
    double reliability = 0;  // 0 is best
    double resolution = 0;   // more is better
    double uncertainty = 0;  // of what comes; the score of always saying the base rate
    double within = 0;
};
BrierSplit brier_split(const std::vector<Forecast>& forecasts, const std::vector<ReliabilityRow>& table);

// Mean and greatest distance between what a row said and what came, the mean weighed by forecasts (Naeini et
// al. 2015). Too large by chance when the rows are short.
struct CalibrationError {
    double mean = 0;
    double greatest = 0;
};
CalibrationError calibration_error(const std::vector<ReliabilityRow>& table);

// A probability further than this from 0 and 1 counts as this near, so that one miss does not decide a log
// loss.
inline constexpr double log_loss_clip = 1e-4;

// Mean of -ln of the probability given to what happened, in nats. 0 without forecasts.
double log_loss(const std::vector<Forecast>& forecasts);

// What was said about one job: a probability for each cause, and which was confirmed.
struct JobForecast {
    std::vector<double> probabilities;
    std::size_t confirmed = 0;
};

struct JobScores {
    std::size_t jobs = 0;
    double first = 0;  // share of jobs whose confirmed cause had the highest probability
    double first_three = 0;
    double reciprocal_rank = 0;  // mean of 1 over its place
    double brier = 0;            // mean over jobs of the squared errors of all causes
    double log_loss = 0;         // mean of -ln of its probability, nats
};

// A cause with the same probability as the confirmed one counts as before it. All 0 without jobs.
JobScores score_jobs(const std::vector<JobForecast>& jobs);

}  // namespace hardover
