// The roots of words: endings are cut, words that carry nothing are passed over, and words that mean the same
// (the knowledge's entries same_words) have one root. Knows no texts to be found.
#pragma once

#include <cstddef>
#include <set>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "rules/model/knowledge.hpp"

namespace hardover {

class WordRoots {
  public:
    WordRoots() = default;
    // Where two entries have a word with the same root, the first has it.
    explicit WordRoots(const std::vector<SameWords>& same_words);

    // The roots of the words that tell something, in order: "Groans when hard over" -> "=noise", "=lock" by
    // the ids of same_words, "wheels" -> "wheel".
    std::vector<std::string> of(std::string_view text) const;

    // Those of its words that have the root of an entry, by their own roots: "Groans when hard over" ->
    // "groan".
    std::vector<std::string> said_in_place(std::string_view text) const;

    // What stands for an entry of same_words among the roots.
    static std::string root_of_entry(const SameWords& entry) { return "=" + entry.id; }

    struct Known {
        std::string word;  // its root by itself; of words together, with a space between
        std::string root;  // that of its entry
        std::size_t entry = 0;
    };
    // The words of all entries, in their order.
    const std::vector<Known>& known() const { return known_; }

  private:
    std::vector<Known> known_;
    std::unordered_map<std::string, std::string> root_of_;  // by word
    std::size_t longest_ = 1;                               // words together
};

// The root of a word or of each of a few words, by themselves: "topping up" -> "top up".
std::string plain_root(std::string_view words);

// The words that are in every sentence, such as "the".
const std::set<std::string>& words_that_tell_nothing();
bool tells_nothing(const std::string& word);

}  // namespace hardover
