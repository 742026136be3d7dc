#include "app/jobs/proved.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "app/jobs/wording.hpp"

namespace hardover {

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

}  // namespace hardover
