// Search over the knowledge and the jobs in the words people use. Pure; the knowledge is read once.
#pragma once

#include <string>
#include <vector>

#include "app/jobs/entry_key.hpp"
#include "app/jobs/word_index.hpp"
#include "app/records/store.hpp"
#include "rules/model/knowledge.hpp"

namespace hardover {

struct SearchHit {
    EntryKey to;       // of kind "job": its number
    std::string kind;  // "Complaint"
    std::string title;
    std::string under;  // why it was found, or what it is about
    double score = 0;
};

// What a knowledge can be found by. Keeps what it shows, not the knowledge.
class SearchIndex {
  public:
    SearchIndex() = default;
    explicit SearchIndex(const Knowledge& knowledge);

    // The nearest first, at most `most`; only of these kinds, or of all when there are none. Empty words find
    // nothing. `typing`: the last word may not be finished.
    std::vector<SearchHit> find(const std::string& words, const std::vector<std::string>& kinds,
                                std::size_t most, bool typing = true) const;

    // Whether any text has a word of this entry.
    bool has(const SameWords& same) const { return index_.has(WordRoots::root_of_entry(same)); }

    const std::string& fingerprint() const { return fingerprint_; }

  private:
    template <typename E>
    void add(const std::string& kind, const E& entry, const std::string& under, double weight = 1);

    WordIndex index_;
    std::vector<SearchHit> entries_;
    std::string fingerprint_;
};

// What the bench finds: complaints, causes, checks, worksheets, and jobs by boat, number or complaint.
std::vector<SearchHit> search(const SearchIndex& index, const Knowledge& knowledge,
                              const std::vector<JobRow>& jobs, const std::string& words, std::size_t most);

// Names of complaints from their ids as the records keep them: "a, b".
std::string complaint_names(const Knowledge& knowledge, const std::string& ids);

}  // namespace hardover
