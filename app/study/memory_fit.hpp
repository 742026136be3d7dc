// Review times by a learner's own history: how long something stays after its first answer, fitted to how
// often it was still known later. Only these first stabilities are fitted, the rest of the model stays as
// published. Pure: knows no learner and no records.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "app/study/fsrs.hpp"
#include "rules/result/result.hpp"

namespace hardover::study {

struct Review;

// Reviews that tell something: those on a later day than the one before of the same statement. From memory:
// fewer than this cannot move three figures by more than chance does.
inline constexpr int enough_scored = 200;
// The last reviews are held out: the fit to the others has to foretell them no worse than the usual weights.
inline constexpr double held_out_share = 0.2;

// Days until 90 in 100, after a first answer that was wrong, half right or unsure, and right: w0, w1, w2.
using FirstDays = std::array<double, 3>;
FirstDays first_days_of(const MemoryModel& model);
MemoryModel with_first_days(const FirstDays& days);

struct MemoryFit {
    int scored = 0;        // reviews it rests on
    bool adopted = false;  // enough of them, and no worse than the usual weights on those held out
    FirstDays days = first_days_of(MemoryModel());
    double held_out = 0;  // log loss a review on those held out, natural logarithm
    double held_out_usual = 0;
};

// In the order in which they were made. Minimises the log loss, plus half the squared distance from the usual
// weights on a logarithmic scale (a normal prior of standard deviation 1, from memory: learners differ by a
// factor of about three).
MemoryFit fit_memory(const std::vector<Review>& reviews);

// Mean log loss over the scored reviews from this share of them on; 0 when there are none.
double log_loss(const MemoryModel& model, const std::vector<Review>& reviews, double from_share = 0);

// The study events that tell of it: fitted, and back to the usual weights.
inline constexpr const char* fitted_kind = "memory_fitted";
inline constexpr const char* usual_kind = "memory_usual";
std::string fit_body(const MemoryFit& fit);
// Error bad_input: not a fit.
Result<MemoryFit> read_fit(const std::string& body);

// What came of it, in sentences.
std::vector<std::string> fit_sentences(const MemoryFit& fit);

}  // namespace hardover::study
