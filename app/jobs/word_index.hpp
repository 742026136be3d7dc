// Finds texts by the words somebody uses for a thing: by their roots (see WordRoots), with a slip of one
// letter forgiven, and rare words telling more than common ones. Knows texts and numbers only.
#pragma once

#include <cstddef>
#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "app/jobs/word_roots.hpp"

namespace hardover {

class WordIndex {
  public:
    WordIndex() = default;
    explicit WordIndex(WordRoots roots) : roots_(std::move(roots)) {}

    // Adds a text to entry `entry` (0, 1, 2 ...), a word of it counting `weight`. A phrase is also compared
    // as a whole: the entry that has it nearly as asked comes first.
    void add(std::size_t entry, std::string_view text, double weight, bool phrase = false);

    struct Match {
        double score = 0;    // 0: nothing in common
        std::string phrase;  // the nearest phrase of the entry, if any
    };
    // By entry. `typing`: the last word may not be finished yet.
    std::vector<Match> find(std::string_view words, bool typing = false) const;

    std::size_t entries() const { return entries_; }
    bool has(const std::string& root) const { return terms_.contains(root); }

  private:
    struct Phrase {
        std::size_t entry = 0;
        std::string text;
        std::vector<std::size_t> terms;
    };
    struct Wanted {
        std::size_t term = 0;
        double strength = 1;  // less for a word that is only nearly the same
    };
    std::size_t term_of(const std::string& word);
    double telling(std::size_t term) const;
    std::vector<std::vector<Wanted>> wanted(std::string_view words, bool typing) const;
    std::vector<Wanted> wanted_of(const std::string& root, bool unfinished) const;

    WordRoots roots_;
    std::size_t entries_ = 0;
    std::map<std::string, std::size_t> terms_;            // by root
    std::vector<std::map<std::size_t, double>> weights_;  // by term: entry -> weight
    std::vector<Phrase> phrases_;
};

}  // namespace hardover
