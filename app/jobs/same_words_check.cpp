#include "app/jobs/same_words_check.hpp"

#include <map>

#include "app/jobs/search.hpp"

namespace hardover {

namespace {

class WordsCheck {
  public:
    explicit WordsCheck(const Knowledge& knowledge) : index_(knowledge) {}

    std::vector<Fault> of(const std::vector<SameWords>& entries) {
        for (const SameWords& same : entries) {
            for (const std::string& word : same.words) check_word(same, word);
            if (!index_.has(same)) {
                warn(same, "no text of the knowledge has a word of '" + same.id + "', so it finds nothing",
                     "add a word that complaints or causes use");
            }
        }
        return std::move(faults_);
    }

  private:
    void check_word(const SameWords& same, const std::string& word) {
        const std::string root = plain_root(word);
        if (tells_nothing(root) || root.empty()) {
            warn(same, "'" + word + "' of '" + same.id + "' is in every sentence, the search passes over it");
            return;
        }
        const auto [first, is_new] = first_.try_emplace(root, Given{same.id, word});
        if (is_new) return;
        warn(same,
             "'" + word + "' of '" + same.id + "' is found by '" + first->second.word + "' already" +
                 (first->second.id == same.id ? "" : ", which stands in '" + first->second.id + "'"),
             "endings are cut, so one form of a word is enough");
    }

    void warn(const SameWords& same, std::string what, std::string cure = "") {
        faults_.push_back({same.place, std::move(what), std::move(cure), true});
    }

    struct Given {
        std::string id;
        std::string word;
    };
    SearchIndex index_;
    std::map<std::string, Given> first_;  // by root
    std::vector<Fault> faults_;
};

}  // namespace

std::vector<Fault> check_same_words(const Knowledge& knowledge) {
    return WordsCheck(knowledge).of(knowledge.same_words);
}

}  // namespace hardover
