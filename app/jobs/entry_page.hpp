// An entry of the knowledge as a page: its rows in words, every other entry in them a link, and what refers
// to it. The window and the knowledge book show the same rows. Pure.
#pragma once

#include <map>
#include <string>
#include <utility>
#include <vector>

#include "app/jobs/entry_key.hpp"
#include "app/jobs/job.hpp"
#include "rules/model/knowledge.hpp"

namespace hardover {

// A run of text; with `to` a link to an entry.
struct EntryPiece {
    std::string text;
    EntryKey to = {};
    bool code = false;     // of the rule language, or an id
    bool warning = false;  // names a caution
};

struct EntryText {
    std::vector<EntryPiece> pieces;

    EntryText() = default;
    EntryText(std::string text) { *this += EntryText(EntryPiece{std::move(text)}); }
    EntryText(const char* text) : EntryText(std::string(text)) {}
    explicit EntryText(EntryPiece piece) {
        if (!piece.text.empty()) pieces.push_back(std::move(piece));
    }
    EntryText& operator+=(const EntryText& more) {
        pieces.insert(pieces.end(), more.pieces.begin(), more.pieces.end());
        return *this;
    }
    friend EntryText operator+(EntryText a, const EntryText& b) { return a += b; }
    bool empty() const { return pieces.empty(); }
    std::string plain() const;
};

struct EntryRow {
    std::string label;
    std::vector<EntryText> items;
    bool list = false;      // each item on a line of its own
    bool numbered = false;  // steps
};

// Who refers to an entry, in the order of the knowledge.
class EntryLinks {
  public:
    explicit EntryLinks(const Knowledge& knowledge);
    // As ("finding", "shown by", 3).
    const std::vector<EntryText>& to(const std::string& kind, const std::string& relation, Index index) const;

  private:
    void add(const std::string& kind, const std::string& relation, Index index, const EntryText& from);
    void add_causes(const Knowledge& knowledge);
    void add_words(const Knowledge& knowledge);
    void add_work(const Knowledge& knowledge);
    void add_rules(const Knowledge& knowledge);
    void add_sources(const Knowledge& knowledge);

    std::map<std::string, std::map<Index, std::vector<EntryText>>> links_;
};

// A link to an entry by its name.
EntryText link_to(const std::string& kind, const Entry& entry);
// A condition or formula with every name in it that is an entry's linked to it.
EntryText condition_text(const Knowledge& knowledge, const Expression& expression);

// The rows of an entry, its source last. Empty rows are left out. `index` is its place among its kind.
std::vector<EntryRow> entry_rows(const Knowledge& knowledge, const EntryLinks& links, const std::string& kind,
                                 Index index, UnitSystem units = UnitSystem::us);

struct EntryPage {
    EntryKey key;
    std::string kind;  // "Cause"
    std::string name;
    std::vector<EntryRow> in_job;  // what the job in hand says about it
    std::vector<EntryRow> rows;
};

// An entry that is not there gives a page without rows that says so in its name.
EntryPage make_entry_page(const Knowledge& knowledge, const EntryLinks& links, const EntryKey& key,
                          const Job* job, const PreparedKnowledge& prepared,
                          UnitSystem units = UnitSystem::us);

// What the rules said in the job in hand: each fired rule as a link, with its reason.
std::vector<EntryText> fired_in_job(const Knowledge& knowledge, const Job& job);

struct KindCount {
    std::string kind;  // "cause"
    std::string name;  // "Causes"
    std::size_t count = 0;
};
// The kinds one can browse, in order.
std::vector<KindCount> browsable_kinds(const Knowledge& knowledge);
struct EntryName {
    EntryKey key;
    std::string name;
    std::string under;
};
std::vector<EntryName> entries_of(const Knowledge& knowledge, const std::string& kind);

}  // namespace hardover
