#include "app/jobs/word_index.hpp"

#include <algorithm>
#include <cmath>

namespace hardover {

namespace {

// Among entries that have a word of the same meaning, the one with the very word comes first: this much more.
constexpr double the_very_word = 0.25;

// The term of a word by itself that has the root of an entry of same_words.
std::string in_place_of(const std::string& word) {
    return "'" + word;
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

std::size_t WordIndex::term_of(const std::string& word) {
    const auto [at, added] = terms_.try_emplace(word, terms_.size());
    if (added) weights_.emplace_back();
    return at->second;
}

void WordIndex::add(std::size_t entry, std::string_view text, double weight, bool phrase) {
    entries_ = std::max(entries_, entry + 1);
    Phrase whole{entry, std::string(text), {}};
    for (const std::string& root : roots_.of(text)) {
        const std::size_t term = term_of(root);
        double& kept = weights_[term][entry];
        kept = std::max(kept, weight);
        whole.terms.push_back(term);
    }
    for (const std::string& word : roots_.said_in_place(text)) {
        double& kept = weights_[term_of(in_place_of(word))][entry];
        kept = std::max(kept, weight);
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
    const std::vector<std::string> roots = roots_.of(words);
    for (std::size_t i = 0; i < roots.size(); ++i) {
        const bool unfinished = typing && i + 1 == roots.size() && roots[i].size() >= 2;
        std::vector<Wanted> may = wanted_of(roots[i], unfinished);
        if (!may.empty()) all.push_back(std::move(may));
    }
    for (const std::string& word : roots_.said_in_place(words)) {
        const auto term = terms_.find(in_place_of(word));
        if (term != terms_.end()) all.push_back({{term->second, the_very_word}});
    }
    return all;
}

std::vector<WordIndex::Wanted> WordIndex::wanted_of(const std::string& root, bool unfinished) const {
    std::vector<Wanted> may;
    const auto at = terms_.find(root);
    const bool is_known = at != terms_.end();
    if (is_known) may.push_back({at->second, 1});
    if (is_known && !unfinished) return may;
    const auto near = [&](const std::string& word) {
        if (unfinished && word.starts_with(root)) return 0.7;
        return !is_known && root.size() >= 5 && one_slip(root, word) ? 0.6 : 0.0;
    };
    for (const auto& [term, number] : terms_) {
        if (term == root) continue;
        if (const double strength = near(term); strength > 0) may.push_back({number, strength});
    }
    std::map<std::size_t, double> meant;  // by the words of same_words, each entry once
    for (const WordRoots::Known& known : roots_.known()) {
        const auto term = terms_.find(known.root);
        if (term == terms_.end()) continue;
        if (const double strength = near(known.word); strength > 0)
            meant[term->second] = std::max(meant[term->second], strength);
    }
    for (const auto& [term, strength] : meant) may.push_back({term, strength});
    return may;
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
