// Scores of probabilities against what was found.
#include "rules/reasoning/calibration.hpp"

#include <algorithm>
#include <cmath>

namespace hardover {

namespace {

constexpr std::size_t most_rows = 10;
constexpr double outside = 0.025;  // of the distribution on each side of a 95 % interval

double squared(double x) {
    return x * x;
}

double clipped(double probability) {
    return std::clamp(probability, log_loss_clip, 1 - log_loss_clip);
}

// Probability that a share of Beta(came + 1, of - came + 1) is at most x: that of at least came + 1 successes
// in of + 1 trials with chance x (textbook).
double share_at_most(double x, std::size_t came, std::size_t of) {
    if (x <= 0) return 0;
    if (x >= 1) return 1;
    const auto trials = static_cast<double>(of + 1);
    double sum = 0;
    for (std::size_t successes = came + 1; successes <= of + 1; ++successes) {
        const auto s = static_cast<double>(successes);
        sum += std::exp(std::lgamma(trials + 1) - std::lgamma(s + 1) - std::lgamma(trials - s + 1) +
                        s * std::log(x) + (trials - s) * std::log1p(-x));
    }
    return sum;
}

// The share below which the part `below` of the distribution lies.
double share_quantile(double below, std::size_t came, std::size_t of) {
    double low = 0;
    double high = 1;
    for (int step = 0; step < 60; ++step) {
        const double middle = (low + high) / 2;
        (share_at_most(middle, came, of) < below ? low : high) = middle;
    }
    return high;
}

ReliabilityRow row_of(const std::vector<Forecast>& sorted, std::size_t from, std::size_t to) {
    ReliabilityRow row;
    row.least = sorted[from].probability;
    row.most = sorted[to - 1].probability;
    row.forecasts = to - from;
    for (std::size_t i = from; i < to; ++i) {
        row.said += sorted[i].probability / static_cast<double>(row.forecasts);
        if (sorted[i].came) ++row.came;
    }
    row.low = share_quantile(outside, row.came, row.forecasts);
    row.high = share_quantile(1 - outside, row.came, row.forecasts);
    return row;
}

}  // namespace

std::vector<ReliabilityRow> reliability_table(std::vector<Forecast> forecasts, std::size_t fewest) {
    std::stable_sort(forecasts.begin(), forecasts.end(),
                     [](const Forecast& a, const Forecast& b) { return a.probability < b.probability; });
    const std::size_t count = forecasts.size();
    const std::size_t in_row = std::max({fewest, (count + most_rows - 1) / most_rows, std::size_t{1}});
    std::vector<ReliabilityRow> table;
    for (std::size_t from = 0; from < count;) {
        std::size_t to = std::min(count, from + in_row);
        while (to < count && forecasts[to].probability == forecasts[to - 1].probability) ++to;
        if (count - to < fewest) to = count;
        table.push_back(row_of(forecasts, from, to));
        from = to;
    }
    return table;
}

BrierSplit brier_split(const std::vector<Forecast>& forecasts, const std::vector<ReliabilityRow>& table) {
    BrierSplit split;
    if (forecasts.empty()) return split;
    const auto all = static_cast<double>(forecasts.size());
    double came = 0;
    for (const Forecast& forecast : forecasts) {
        if (forecast.came) ++came;
        split.brier += squared(forecast.probability - (forecast.came ? 1 : 0)) / all;
    }
    const double base = came / all;
    split.uncertainty = base * (1 - base);
    for (const ReliabilityRow& row : table) {
        const double weight = static_cast<double>(row.forecasts) / all;
        split.reliability += weight * squared(row.said - row.share());
        split.resolution += weight * squared(row.share() - base);
        for (const Forecast& forecast : forecasts) {
            if (forecast.probability < row.least || forecast.probability > row.most) continue;
            const double off = forecast.probability - row.said;
            split.within += (squared(off) - 2 * off * ((forecast.came ? 1 : 0) - row.share())) / all;
        }
    }
    return split;
}

CalibrationError calibration_error(const std::vector<ReliabilityRow>& table) {
    CalibrationError error;
    double all = 0;
    for (const ReliabilityRow& row : table) all += static_cast<double>(row.forecasts);
    for (const ReliabilityRow& row : table) {
        const double distance = std::abs(row.said - row.share());
        error.mean += distance * static_cast<double>(row.forecasts) / all;
        error.greatest = std::max(error.greatest, distance);
    }
    return error;
}

double log_loss(const std::vector<Forecast>& forecasts) {
    double sum = 0;
    for (const Forecast& forecast : forecasts) {
        const double probability = clipped(forecast.probability);
        sum -= std::log(forecast.came ? probability : 1 - probability);
    }
    return forecasts.empty() ? 0 : sum / static_cast<double>(forecasts.size());
}

JobScores score_jobs(const std::vector<JobForecast>& jobs) {
    JobScores scores;
    scores.jobs = jobs.size();
    if (jobs.empty()) return scores;
    std::size_t first = 0;
    std::size_t first_three = 0;
    for (const JobForecast& job : jobs) {
        const double confirmed = job.probabilities[job.confirmed];
        std::size_t place = 0;  // the confirmed cause itself is among those not less probable
        for (std::size_t i = 0; i < job.probabilities.size(); ++i) {
            if (job.probabilities[i] >= confirmed) ++place;
            scores.brier += squared(job.probabilities[i] - (i == job.confirmed ? 1 : 0));
        }
        if (place == 1) ++first;
        if (place <= 3) ++first_three;
        scores.reciprocal_rank += 1 / static_cast<double>(place);
        scores.log_loss -= std::log(clipped(confirmed));
    }
    const auto count = static_cast<double>(jobs.size());
    scores.first = static_cast<double>(first) / count;
    scores.first_three = static_cast<double>(first_three) / count;
    scores.reciprocal_rank /= count;
    scores.brier /= count;
    scores.log_loss /= count;
    return scores;
}

}  // namespace hardover
