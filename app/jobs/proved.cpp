#include "app/jobs/proved.hpp"

#include <algorithm>

namespace hardover {

bool is_proved(const Job& job, Index cause) {
    return std::any_of(job.assessment.ranking.begin(), job.assessment.ranking.end(),
                       [cause](const RankedCause& ranked) { return ranked.cause == cause && ranked.proved; });
}

const char* certainty_text(bool confirmed) {
    return confirmed ? "seen and proved" : "assumed, not proved";
}

}  // namespace hardover
