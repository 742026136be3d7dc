#include "app/jobs/word_match.hpp"

#include <algorithm>
#include <sstream>

namespace hardover {

std::string in_small_letters(std::string_view text) {
    std::string small(text);
    std::transform(small.begin(), small.end(), small.begin(),
                   [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
    return small;
}

bool has_all_words(std::string_view text, std::string_view wanted) {
    const std::string all = in_small_letters(text);
    std::istringstream words(in_small_letters(wanted));
    std::string word;
    while (words >> word) {
        if (all.find(word) == std::string::npos) return false;
    }
    return true;
}

}  // namespace hardover
