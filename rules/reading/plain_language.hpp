// How hard a text is to read, by letters, words and sentences. Knows no knowledge.
#pragma once

#include <string>
#include <unordered_set>
#include <vector>

namespace hardover::reading_detail {

// Words of the trade, which a reader of these texts must know anyhow: they count as words of ordinary length.
class TradeWords {
  public:
    // Every word of a text, in each of its common endings ("hose" also stands for "hoses").
    void add(const std::string& text);
    bool has(const std::string& word) const;

  private:
    std::unordered_set<std::string> stems_;
};

struct ReadingGrade {
    int words = 0;
    double grade = 0;  // US school grade; 0 words: 0
};

// Automated readability index, 4.71 letters/word + 0.5 words/sentence - 21.43, made for technical manuals (E.
// A. Smith and R. J. Senter, AMRL-TR-66-220, Wright-Patterson Air Force Base, 1967). A number with its sign
// counts as a word of one letter; the parts of "lock-to-lock" are words of their own; each text of the list
// ends a sentence.
ReadingGrade reading_grade(const std::vector<std::string>& texts, const TradeWords& trade);

// The highest grade a text of so many words may have: grade 8, and as much more as the few words of a short
// text scatter by chance (4.71 times the standard deviation of the letters of an English word, about 2.5,
// over the root of the number of words).
double highest_grade(int words);

}  // namespace hardover::reading_detail
