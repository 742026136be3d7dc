// The parts an entry page is put together from. Inner part of app/jobs.
#pragma once

#include <string>
#include <vector>

#include "app/jobs/entry_page.hpp"

namespace hardover::jobs_detail {

using Rows = std::vector<EntryRow>;
using Items = std::vector<EntryText>;

// What every entry is made from.
struct Book {
    const Knowledge& knowledge;
    const EntryLinks& backward;
    UnitSystem units = UnitSystem::us;
};

inline Rows operator+(Rows a, const Rows& b) {
    a.insert(a.end(), b.begin(), b.end());
    return a;
}

template <typename E>
const E& at(const std::vector<E>& entries, Index index) {
    return entries[static_cast<std::size_t>(index)];
}

inline EntryText code(const std::string& text) {
    return EntryText(EntryPiece{text, {}, true});
}

// Nothing where there is nothing to tell.
inline Rows row(const std::string& label, const EntryText& text) {
    return text.empty() ? Rows{} : Rows{{label, {text}, false, false}};
}
inline Rows list_row(const std::string& label, const Items& items, bool numbered = false) {
    return items.empty() ? Rows{} : Rows{{label, items, true, numbered}};
}

inline Rows back_row(const Book& book, const std::string& label, const std::string& kind,
                     const std::string& relation, Index index) {
    return list_row(label, book.backward.to(kind, relation, index));
}

inline Items texts(const std::vector<std::string>& plain) {
    return Items(plain.begin(), plain.end());
}

template <typename E>
Items links(const std::string& kind, const std::vector<E>& entries, const std::vector<Index>& chosen) {
    Items made;
    for (const Index index : chosen) made.push_back(link_to(kind, at(entries, index)));
    return made;
}

template <typename E>
EntryText link_or_nothing(const std::string& kind, const std::vector<E>& entries, Index index) {
    return index == none ? EntryText() : link_to(kind, at(entries, index));
}

// The rows of one entry.
Rows rows_of(const Book& book, const Complaint& entry, Index index);
Rows rows_of(const Book& book, const SameWords& entry, Index index);
Rows rows_of(const Book& book, const Finding& entry, Index index);
Rows rows_of(const Book& book, const Check& entry, Index index);
Rows rows_of(const Book& book, const Cause& entry, Index index);
Rows rows_of(const Book& book, const SameCure& entry, Index index);
Rows rows_of(const Book& book, const Remedy& entry, Index index);
Rows rows_of(const Book& book, const Rule& entry, Index index);
Rows rows_of(const Book& book, const Worksheet& entry, Index index);
Rows rows_of(const Book& book, const Caution& entry, Index index);
Rows rows_of(const Book& book, const Deferral& entry, Index index);
Rows rows_of(const Book& book, const Stop& entry, Index index);
Rows rows_of(const Book& book, const RigField& entry, Index index);
Rows rows_of(const Book& book, const History& entry, Index index);
Rows rows_of(const Book& book, const Need& entry, Index index);
Rows rows_of(const Book& book, const Part& entry, Index index);
Rows rows_of(const Book& book, const Setting& entry, Index index);
Rows rows_of(const Book& book, const Source& entry, Index index);
Rows source_row(const Book& book, const Entry& entry);

}  // namespace hardover::jobs_detail
