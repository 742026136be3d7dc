#include "app/jobs/complaint_order.hpp"

#include <algorithm>
#include <numeric>

#include "app/jobs/word_index.hpp"

namespace hardover::jobs_detail {

std::vector<Index> complaints_nearest_first(const Knowledge& knowledge, const std::string& said) {
    const std::vector<Complaint>& complaints = knowledge.complaints;
    WordIndex index{WordRoots(knowledge.same_words)};
    for (std::size_t i = 0; i < complaints.size(); ++i) {
        index.add(i, complaints[i].name, 1.3, true);
        for (const std::string& phrase : complaints[i].words) index.add(i, phrase, 1, true);
    }
    const std::vector<WordIndex::Match> matches = index.find(said);
    std::vector<Index> order(complaints.size());
    std::iota(order.begin(), order.end(), 0);
    if (matches.size() < complaints.size()) return order;
    std::stable_sort(order.begin(), order.end(), [&](Index a, Index b) {
        return matches[static_cast<std::size_t>(a)].score > matches[static_cast<std::size_t>(b)].score;
    });
    return order;
}

}  // namespace hardover::jobs_detail
