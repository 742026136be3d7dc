#include "app/jobs/complaint_order.hpp"

#include <algorithm>
#include <cctype>
#include <map>
#include <numeric>
#include <set>

namespace hardover::jobs_detail {

namespace {

constexpr std::size_t least_letters = 4;

void add_words(const std::string& text, std::set<std::string>& words) {
    std::string word;
    for (const char letter : text + " ") {
        const auto byte = static_cast<unsigned char>(letter);
        if (std::isalpha(byte) != 0 || byte >= 0x80) {
            word += static_cast<char>(std::tolower(byte));
            continue;
        }
        if (word.size() >= least_letters) words.insert(word);
        word.clear();
    }
}

}  // namespace

std::vector<Index> complaints_nearest_first(const std::vector<Complaint>& complaints,
                                            const std::string& said) {
    std::vector<std::set<std::string>> words(complaints.size());
    std::map<std::string, int> used_by;
    for (std::size_t i = 0; i < complaints.size(); ++i) {
        add_words(complaints[i].name, words[i]);
        for (const std::string& phrase : complaints[i].words) add_words(phrase, words[i]);
        for (const std::string& word : words[i]) ++used_by[word];
    }
    std::set<std::string> told;
    add_words(said, told);
    std::vector<double> nearness(complaints.size(), 0.0);
    for (std::size_t i = 0; i < complaints.size(); ++i) {
        for (const std::string& word : told) {
            if (words[i].contains(word)) nearness[i] += 1.0 / used_by[word];
        }
    }
    std::vector<Index> order(complaints.size());
    std::iota(order.begin(), order.end(), 0);
    std::stable_sort(order.begin(), order.end(), [&](Index a, Index b) {
        return nearness[static_cast<std::size_t>(a)] > nearness[static_cast<std::size_t>(b)];
    });
    return order;
}

}  // namespace hardover::jobs_detail
