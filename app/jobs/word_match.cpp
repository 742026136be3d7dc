#include "app/jobs/word_match.hpp"

#include <sstream>

#include "app/records/folded.hpp"

namespace hardover {

std::string in_small_letters(std::string_view text) {
    return folded(text);
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
