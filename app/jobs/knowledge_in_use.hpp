// The knowledge a front end works with, which can be read anew while a job is in hand. Knows no screen;
// whoever holds facts made with the old knowledge replays the job afterwards.
#pragma once

#include <string>

#include "app/records/store.hpp"
#include "rules/model/knowledge.hpp"
#include "rules/reasoning/prepared_knowledge.hpp"
#include "rules/result/result.hpp"

namespace hardover {

class KnowledgeInUse {
  public:
    // Knowledge as read from its folder (Knowledge::folder; empty: it is never read anew).
    explicit KnowledgeInUse(Knowledge knowledge);
    KnowledgeInUse(const KnowledgeInUse&) = delete;
    KnowledgeInUse& operator=(const KnowledgeInUse&) = delete;

    // Stays at the same address; its content changes with reload().
    const Knowledge& get() const { return knowledge_; }

    // Made ready for reasoning. Handles copied from it are of no use after reload().
    const PreparedKnowledge& prepared() const { return prepared_; }

    // Whether the files differ from those read last, in name or content, also when they could not be used.
    bool changed_on_disk() const;

    // Reads the files anew, with the odds learned from the closed jobs. Error bad_knowledge: the old
    // knowledge stays; the text names each fault at file:line:column, at most `most_faults` of them.
    Result<void> reload(const Store& store);

    static constexpr int most_faults = 5;

    // What a person is told after reload().
    std::string told(const Result<void>& reloaded) const;

  private:
    Knowledge knowledge_;
    PreparedKnowledge prepared_;  // of knowledge_
    std::string seen_;            // fingerprint of the files read last
};

}  // namespace hardover
