// Reads the entries same_words: words that customers and the trade use for one thing.
#include <algorithm>

#include "rules/reading/draft.hpp"

namespace hardover::reading_detail {
namespace {

constexpr int most_together = 4;

// One word, or a few with a space between them, in small letters as the search compares them.
bool is_written_as_searched(const std::string& words) {
    if (words.empty() || words.front() == ' ' || words.back() == ' ') return false;
    if (words.find("  ") != std::string::npos) return false;
    if (std::count(words.begin(), words.end(), ' ') >= most_together) return false;
    return std::all_of(words.begin(), words.end(), [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == ' ' || c == '\'' || c == '-' ||
               static_cast<unsigned char>(c) >= 0x80;
    });
}

// What stands for one thing cannot stand for another too. `owners`: the entry of each word so far.
void check_words(Draft& draft, const YamlNode& words, const std::string& id,
                 std::unordered_map<std::string, std::string>& owners) {
    if (words.items.size() == 1) {
        add_fault(draft.faults, words, "'words' of same_words '" + id + "' has only one word",
                  "at least two, or the entry does nothing");
    }
    for (const YamlNode& word : words.items) {
        if (!word.is(YamlNode::Kind::text)) continue;
        if (!is_written_as_searched(word.text)) {
            add_fault(
                draft.faults, word, "'" + word.text + "' is not written as the search compares words",
                "small letters, at most " + std::to_string(most_together) + " words, no commas or dots");
            continue;
        }
        const auto [first, is_new] = owners.emplace(word.text, id);
        if (is_new) continue;
        const bool same = first->second == id;
        add_fault(draft.faults, word,
                  "'" + word.text + "' stands in '" + first->second + "'" +
                      (same ? " twice" : " and in '" + id + "'"),
                  same ? "" : "leave it where customers mean it more often");
    }
}

}  // namespace

void read_same_words(Draft& draft) {
    std::unordered_map<std::string, std::string> owners;
    each_entry(draft, EntryKind::same_words, draft.knowledge.same_words,
               [&](MapReader& map, SameWords& same) {
                   same.name = map.text("name");
                   same.words = map.texts("words", 1);
                   read_sources(draft, map, same, SourceRule::required);
                   const YamlNode* words = value_in(map.node(), "words");
                   if (words != nullptr && words->is(YamlNode::Kind::list))
                       check_words(draft, *words, same.id, owners);
               });
}

}  // namespace hardover::reading_detail
