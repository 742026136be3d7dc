#include "app/jobs/word_roots.hpp"

#include <algorithm>
#include <cctype>

#include "app/jobs/word_match.hpp"

namespace hardover {

namespace {

std::vector<std::string> words_of(std::string_view text) {
    std::vector<std::string> words;
    std::string word;
    for (const char letter : in_small_letters(text) + " ") {
        const auto byte = static_cast<unsigned char>(letter);
        if (letter == '\'') continue;
        if (std::isalnum(byte) != 0 || byte >= 0x80) {
            word += letter;
        } else if (!word.empty()) {
            words.push_back(word);
            word.clear();
        }
    }
    return words;
}

bool has_vowel(std::string_view letters) {
    return letters.find_first_of("aeiouy") != std::string_view::npos;
}

// What is left of a word without this ending; nothing when it is no ending here: "spring" does not end in
// "ing", nor "speed" in "ed".
std::string_view without(std::string_view word, std::string_view ending) {
    if (word.size() <= ending.size() + 2 || !word.ends_with(ending)) return {};
    const std::string_view left = word.substr(0, word.size() - ending.size());
    if (!has_vowel(left)) return {};
    if (ending == "ed" && left.back() == 'e') return {};
    if (ending == "s" && (left.back() == 's' || left.back() == 'u')) return {};
    if (ending == "es" && !(left.ends_with("s") || left.ends_with("x") || left.ends_with("z") ||
                            left.ends_with("ch") || left.ends_with("sh")))
        return {};
    return left;
}

// "groaning", "groans" and "groaned" are one, and so are "hose" and "hoses", "dripping" and "drip".
std::string root_of(std::string word) {
    for (const std::string_view ending : {"ings", "ing", "edly", "ed", "ies", "es", "s", "ly"}) {
        const std::string_view left = without(word, ending);
        if (left.empty()) continue;
        std::string cut(left);
        if (ending == "ies") cut += 'y';
        // "dripping" has doubled its last letter, "pulling" and "stiffly" have not.
        const bool doubled = ending != "ly" && cut.size() > 3 && cut[cut.size() - 1] == cut[cut.size() - 2];
        if (doubled && std::string_view("flsz").find(cut.back()) == std::string_view::npos) cut.pop_back();
        word = std::move(cut);
        break;
    }
    if (word.size() > 3 && word.back() == 'e' && has_vowel(std::string_view(word).substr(0, word.size() - 1)))
        word.pop_back();
    return word;
}

}  // namespace

const std::set<std::string>& words_that_tell_nothing() {
    static const std::set<std::string> words{
        "a",     "an",     "and",   "the",  "is",     "it",        "its",   "in",       "of",    "to",
        "on",    "at",     "my",    "me",   "i",      "she",       "her",   "he",       "we",    "you",
        "that",  "this",   "there", "with", "when",   "if",        "as",    "so",       "but",   "or",
        "be",    "been",   "was",   "are",  "have",   "has",       "had",   "do",       "does",  "get",
        "gets",  "got",    "just",  "very", "really", "some",      "from",  "for",      "by",    "then",
        "than",  "since",  "now",   "like", "feels",  "feel",      "boat",  "steering", "steer", "ive",
        "im",    "until",  "after", "what", "which",  "too",       "bit",   "little",   "lot",   "keep",
        "keeps", "always", "again", "even", "still",  "something", "think", "seem",     "seems", "goes",
        "go",    "going",  "hers",  "him"};
    return words;
}

bool tells_nothing(const std::string& word) {
    return words_that_tell_nothing().contains(word);
}

std::string plain_root(std::string_view words) {
    std::string roots;
    for (const std::string& word : words_of(words)) roots += (roots.empty() ? "" : " ") + root_of(word);
    return roots;
}

WordRoots::WordRoots(const std::vector<SameWords>& same_words) {
    for (std::size_t i = 0; i < same_words.size(); ++i) {
        for (const std::string& word : same_words[i].words) {
            const std::string plain = plain_root(word);
            const std::string root = root_of_entry(same_words[i]);
            root_of_.try_emplace(plain, root);
            const auto together = static_cast<std::size_t>(std::count(plain.begin(), plain.end(), ' ')) + 1;
            longest_ = std::max(longest_, together);
            known_.push_back({plain, root, i});
        }
    }
}

std::vector<std::string> WordRoots::said_in_place(std::string_view text) const {
    std::vector<std::string> said;
    for (const std::string& word : words_of(text)) {
        const std::string root = root_of(word);
        if (!tells_nothing(word) && root_of_.contains(root)) said.push_back(root);
    }
    return said;
}

std::vector<std::string> WordRoots::of(std::string_view text) const {
    const std::vector<std::string> words = words_of(text);
    std::vector<std::string> roots;
    for (std::size_t at = 0; at < words.size();) {
        // The most words that belong together go first: "hard over" is not "hard".
        std::vector<std::string> together;
        std::string joined;
        for (std::size_t n = at; n < std::min(words.size(), at + longest_); ++n) {
            joined += (joined.empty() ? "" : " ") + root_of(words[n]);
            together.push_back(joined);
        }
        std::size_t taken = together.size();
        while (taken > 0 && !root_of_.contains(together[taken - 1])) --taken;
        if (taken == 1 && tells_nothing(words[at])) taken = 0;
        if (taken > 0) {
            roots.push_back(root_of_.at(together[taken - 1]));
            at += taken;
            continue;
        }
        if (!tells_nothing(words[at])) roots.push_back(together.front());
        ++at;
    }
    return roots;
}

}  // namespace hardover
