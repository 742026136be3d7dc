// Closed jobs as plain counts, and the shipped knowledge with its odds moved towards them. Pure; knows no
// records, no files and no single job.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "rules/model/knowledge.hpp"

namespace hardover {

// Stands for a history that nobody told. No id, because of its brackets.
inline constexpr const char* history_not_known = "(not known)";
// Stands for a cause that is not on the list.
inline constexpr const char* not_listed_cause = "not_listed";

// Jobs handed back with a confirmed cause. Everything by id, so that counts of another shop, or of an older
// knowledge, can be added.
struct ClosedJobs {
    std::map<std::string, std::map<std::string, std::int64_t>> causes;  // history, cause: jobs
    // Cause, finding, reading: jobs with this cause in which the finding was asked and gave the reading.
    std::map<std::string, std::map<std::string, std::map<std::string, std::int64_t>>> readings;

    std::int64_t of_history(const std::string& history) const;
    std::int64_t with_cause(const std::string& history, const std::string& cause) const;
    std::int64_t with_cause(const std::string& cause) const;  // of every history
    std::int64_t in_all() const;

    friend bool operator==(const ClosedJobs&, const ClosedJobs&) = default;
};

// Adds count by count: the order and grouping of additions do not matter.
void add(ClosedJobs& sum, const ClosedJobs& more);

// How many jobs the shipped figures weigh as much as. Common vocabulary, from memory: a guess 4, an
// experienced mechanic's figure 10, a measured one 20 to 50; more than 200 would never follow what changes.
inline constexpr int least_strength = 1;
inline constexpr int shipped_strength = 20;
inline constexpr int greatest_strength = 200;

struct LearningWay {
    int strength = shipped_strength;
    bool how_often = false;  // learn how often causes show their findings, beside the odds
};

struct LearnedShare {
    double mean = 0;
    double deviation = 0;  // standard deviation of the share
};

// A share given as `shipped` and worth `strength` jobs, after `with` of `of` jobs had it: mean and deviation
// of the Beta distribution with parameters strength * shipped + with and strength * (1 - shipped) + of - with
// (textbook). Without jobs the mean is `shipped` to the last digit.
LearnedShare share_after(double shipped, double strength, std::int64_t with, std::int64_t of);

// The knowledge with the odds of every cause in every history, and of "not on this list", as share_after
// gives them; a history without jobs keeps its odds. Jobs of causes that this knowledge lacks count as jobs
// without its causes. Jobs of a history not known move only the odds of "not on this list".
Knowledge with_learned(const Knowledge& shipped, const ClosedJobs& jobs, const LearningWay& way);

// Natural log of the probability of drawing exactly these counts in some given order, for shares from a
// Dirichlet distribution with these parameters (all above 0): the form of Heckerman, Geiger and Chickering
// 1995, from memory. Compares two sets of shipped odds on the same jobs.
double log_probability_of_counts(const std::vector<double>& parameters,
                                 const std::vector<std::int64_t>& counts);

// The strength among 4, 10, 20, 50, 100 and 200 with which the shipped odds would have foretold the jobs
// best; nothing with fewer than 20 jobs.
std::optional<int> strength_that_foretells_best(const Knowledge& shipped, const ClosedJobs& jobs);

// A cause that is present gives a finding each reading (worst first) with the share `cause`, everything else
// with the share `others`, and the worse of the two shows. How probable each reading of the cause's own is
// once `reading` was found. All 0 when that reading cannot be.
std::vector<double> own_reading_given(const std::vector<double>& cause, const std::vector<double>& others,
                                      std::size_t reading);

}  // namespace hardover
