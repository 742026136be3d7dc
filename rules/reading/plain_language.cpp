#include "rules/reading/plain_language.hpp"

#include <algorithm>
#include <cmath>

#include "rules/reading/letters.hpp"

namespace hardover::reading_detail {
namespace {

// A plain grade for general readers; from memory, as guides to plain language ask for grade 6 to 8.
constexpr double plain_grade = 8;
constexpr double letters_scatter = 2.5;
constexpr int ordinary_letters = 5;  // of a word in running English, from memory
constexpr double letters_weight = 4.71;
constexpr double sentence_weight = 0.5;
constexpr double grade_at_nothing = -21.43;

bool is_letter(char c) {
    const bool beyond_ascii = (static_cast<unsigned char>(c) & 0x80) != 0;
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || beyond_ascii;
}

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

std::string lower(std::string word) {
    std::transform(word.begin(), word.end(), word.begin(),
                   [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
    return word;
}

// Without the endings of plurals and verbs.
std::string stem(const std::string& word) {
    constexpr std::size_t shortest = 4;
    for (const char* ending : {"ings", "ing", "ed", "es", "er", "s", "e"}) {
        const std::string end = ending;
        if (word.size() < end.size() + shortest) continue;
        if (word.compare(word.size() - end.size(), end.size(), end) == 0)
            return word.substr(0, word.size() - end.size());
    }
    return word;
}

struct Count {
    int words = 0;
    int letters = 0;
    int sentences = 0;
};

// Walks over texts word by word.
class Counter {
  public:
    explicit Counter(const TradeWords& trade) : trade_(trade) {}

    void take(const std::string& text) {
        for (std::size_t i = 0; i < text.size(); ++i) {
            const char c = text[i];
            const bool between_digits = !word_.empty() && is_digit(word_.back()) &&
                                        (c == '.' || c == ',' || c == '/') && i + 1 < text.size() &&
                                        is_digit(text[i + 1]);
            if (is_letter(c) || is_digit(c) || between_digits) {
                word_ += c;
            } else if (c != '\'') {
                end_word();
                if (c == '.' || c == '!' || c == '?' || c == ':' || c == ';') end_sentence();
            }
        }
        end_word();
        end_sentence();
    }

    Count count() const { return count_; }

  private:
    void end_word() {
        if (word_.empty()) return;
        ++count_.words;
        in_sentence_ = true;
        const bool is_number = std::any_of(word_.begin(), word_.end(), is_digit);
        const int letters = count_letters(word_);
        count_.letters += is_number ? 1 : trade_.has(word_) ? std::min(letters, ordinary_letters) : letters;
        word_.clear();
    }

    void end_sentence() {
        if (in_sentence_) ++count_.sentences;
        in_sentence_ = false;
    }

    const TradeWords& trade_;
    std::string word_;
    bool in_sentence_ = false;
    Count count_;
};

}  // namespace

void TradeWords::add(const std::string& text) {
    std::string word;
    for (const char c : text + " ") {
        if (is_letter(c)) {
            word += c;
        } else if (!word.empty()) {
            stems_.insert(stem(lower(word)));
            word.clear();
        }
    }
}

bool TradeWords::has(const std::string& word) const {
    return stems_.count(stem(lower(word))) > 0;
}

ReadingGrade reading_grade(const std::vector<std::string>& texts, const TradeWords& trade) {
    Counter counter(trade);
    for (const std::string& text : texts) counter.take(text);
    const Count count = counter.count();
    if (count.words == 0) return {};
    return {count.words, letters_weight * count.letters / count.words +
                             sentence_weight * count.words / count.sentences + grade_at_nothing};
}

double highest_grade(int words) {
    return plain_grade + letters_weight * letters_scatter / std::sqrt(std::max(words, 1));
}

}  // namespace hardover::reading_detail
