#include "app/jobs/word_index.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <set>
#include <sstream>

#include "app/jobs/word_match.hpp"

namespace hardover {

namespace {

// Words that are in every sentence.
const std::set<std::string>& small_words() {
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

// Words that mean the same at the counter of a boat yard (common practice, no source). The first of a line
// stands for all of them.
const std::map<std::string, std::string>& same_words() {
    static const std::map<std::string, std::string> same = [] {
        static constexpr std::array<const char*, 27> lines{
            "port left",
            "starboard right stbd",
            "hard heavy stiff tight tough difficult strong fight fighting",
            "noise noisy groan moan howl whine squeal screech whistle hum hiss grind growl scream buzz",
            "knock clunk bang clack thump rattle clatter",
            "leak weep drip seep dribble ooze wet puddle",
            "spring spongy springy sponge squishy mushy bouncy soft rubbery elastic",
            "loose slop sloppy play floppy flop wobble wobbly slack",
            "wander wandering meander weave snake stray",
            "drive outdrive sterndrive outboard engine motor leg",
            "helm helmsman station",
            "ram cylinder",
            "oil fluid",
            "foam froth bubble frothy bubbly milky milk",
            "reservoir tank filler",
            "hose line pipe tube",
            "cold winter frost freezing chilly",
            "jerk jerky jump notchy notch stutter judder lumpy",
            "creep drift wanderoff",
            "solid lock locked frozen seize seized jam jammed stuck",
            "backward reverse opposite wrong",
            "pilot autopilot",
            "low less lose losing lost loss disappear vanish topup",
            "end stop fulllock hardover",
            "kick snatch yank tug",
            "tilt trim",
            "water sea"};
        std::map<std::string, std::string> all;
        for (const char* line : lines) {
            std::istringstream words(line);
            std::string first, word;
            words >> first;
            while (words >> word) all[word] = first;
        }
        return all;
    }();
    return same;
}

bool ends_with(const std::string& word, std::string_view end) {
    return word.size() > end.size() + 2 && std::string_view(word).substr(word.size() - end.size()) == end;
}

// The word without its ending: "groaning", "groans" and "groaned" are one.
std::string root_of(std::string word) {
    const auto& same = same_words();
    const auto meaning = [&](const std::string& root) {
        const auto at = same.find(root);
        return at == same.end() ? std::string() : at->second;
    };
    if (const std::string at_once = meaning(word); !at_once.empty()) return at_once;
    for (const std::string_view end : {"ings", "ing", "edly", "ed", "ies", "es", "s", "ly"}) {
        if (!ends_with(word, end)) continue;
        std::string cut = word.substr(0, word.size() - end.size());
        if (cut.size() > 3 && cut[cut.size() - 1] == cut[cut.size() - 2] && cut.back() != 's' &&
            cut.back() != 'l')
            cut.pop_back();
        if (const std::string known = meaning(cut); !known.empty()) return known;
        if (const std::string known = meaning(cut + "e"); !known.empty()) return known;
        word = cut;
        break;
    }
    if (word.size() > 4 && word.back() == 'e') word.pop_back();
    return word;
}

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

// Whether two words differ by one letter put in, left out, changed or swapped with the next.
bool one_slip(const std::string& a, const std::string& b) {
    if (a.size() > b.size()) return one_slip(b, a);
    if (b.size() - a.size() > 1) return false;
    std::size_t i = 0;
    while (i < a.size() && a[i] == b[i]) ++i;
    if (a.size() < b.size()) return a.substr(i) == b.substr(i + 1);
    if (i == a.size()) return true;
    if (a.substr(i + 1) == b.substr(i + 1)) return true;
    return i + 1 < a.size() && a[i] == b[i + 1] && a[i + 1] == b[i] && a.substr(i + 2) == b.substr(i + 2);
}

}  // namespace

std::vector<std::string> telling_roots(std::string_view text) {
    std::vector<std::string> roots;
    for (const std::string& word : words_of(text)) {
        if (small_words().contains(word)) continue;
        roots.push_back(root_of(word));
    }
    return roots;
}

std::size_t WordIndex::term_of(const std::string& word) {
    const auto [at, added] = terms_.try_emplace(word, terms_.size());
    if (added) weights_.emplace_back();
    return at->second;
}

void WordIndex::add(std::size_t entry, std::string_view text, double weight, bool phrase) {
    entries_ = std::max(entries_, entry + 1);
    Phrase whole{entry, std::string(text), {}};
    for (const std::string& root : telling_roots(text)) {
        const std::size_t term = term_of(root);
        double& kept = weights_[term][entry];
        kept = std::max(kept, weight);
        whole.terms.push_back(term);
    }
    if (!phrase || whole.terms.empty()) return;
    std::sort(whole.terms.begin(), whole.terms.end());
    whole.terms.erase(std::unique(whole.terms.begin(), whole.terms.end()), whole.terms.end());
    phrases_.push_back(std::move(whole));
}

double WordIndex::telling(std::size_t term) const {
    return std::log(1 + static_cast<double>(entries_) / static_cast<double>(weights_[term].size()));
}

// For each word asked, the terms it may stand for.
std::vector<std::vector<WordIndex::Wanted>> WordIndex::wanted(std::string_view words, bool typing) const {
    std::vector<std::vector<Wanted>> all;
    const std::vector<std::string> roots = telling_roots(words);
    for (std::size_t i = 0; i < roots.size(); ++i) {
        const std::string& root = roots[i];
        std::vector<Wanted> may;
        const auto at = terms_.find(root);
        const bool unfinished = typing && i + 1 == roots.size() && root.size() >= 2;
        if (at != terms_.end()) may.push_back({at->second, 1});
        if (at == terms_.end() || unfinished) {
            for (const auto& [term, number] : terms_) {
                if (term == root) continue;
                if (unfinished && term.rfind(root, 0) == 0) {
                    may.push_back({number, 0.7});
                } else if (at == terms_.end() && root.size() >= 5 && one_slip(root, term)) {
                    may.push_back({number, 0.6});
                }
            }
        }
        if (may.empty() && root.size() >= 5) {
            for (const auto& [word, meaning] : same_words()) {
                const auto term = terms_.find(meaning);
                if (term != terms_.end() && one_slip(root, word)) may.push_back({term->second, 0.6});
            }
        }
        if (!may.empty()) all.push_back(std::move(may));
    }
    return all;
}

std::vector<WordIndex::Match> WordIndex::find(std::string_view words, bool typing) const {
    std::vector<Match> matches(entries_);
    const auto asked = wanted(words, typing);
    double whole = 0;
    std::map<std::size_t, double> of_term;  // how strongly a term is asked for
    for (const auto& may : asked) {
        std::map<std::size_t, double> best;  // by entry
        double most = 0;
        for (const Wanted& each : may) {
            const double worth = telling(each.term) * each.strength;
            most = std::max(most, worth);
            of_term[each.term] = std::max(of_term[each.term], each.strength);
            for (const auto& [entry, weight] : weights_[each.term]) {
                best[entry] = std::max(best[entry], worth * weight);
            }
        }
        whole += most;
        for (const auto& [entry, worth] : best) matches[entry].score += worth;
    }
    if (whole <= 0) return matches;
    for (Match& match : matches) match.score /= whole;
    // A phrase counts by what it has in common with the words, against what either has alone.
    std::vector<double> nearest(entries_, 0);
    for (const Phrase& phrase : phrases_) {
        double common = 0, alone = 0;
        for (const std::size_t term : phrase.terms) {
            const auto at = of_term.find(term);
            if (at == of_term.end()) {
                alone += telling(term);
            } else {
                common += telling(term) * at->second;
            }
        }
        if (common <= 0) continue;
        const double near = 2 * common / (common + alone + whole);
        if (near > nearest[phrase.entry]) {
            nearest[phrase.entry] = near;
            matches[phrase.entry].phrase = phrase.text;
        }
    }
    for (std::size_t entry = 0; entry < entries_; ++entry) matches[entry].score += 2 * nearest[entry];
    return matches;
}

}  // namespace hardover
