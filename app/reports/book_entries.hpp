// One entry of each kind as HTML, with its links. Inner part of app/reports.
#pragma once

#include <string>

#include "app/reports/book_links.hpp"

namespace hardover::book {

// What every entry is made from.
struct Book {
    explicit Book(const Knowledge& the_knowledge) : knowledge(the_knowledge), backward(the_knowledge) {}
    const Knowledge& knowledge;
    Backward backward;
};

// The rows of an entry's description list. `index` is its place among its kind.
std::string rows_of(const Book& book, const Complaint& entry, Index index);
std::string rows_of(const Book& book, const Finding& entry, Index index);
std::string rows_of(const Book& book, const Check& entry, Index index);
std::string rows_of(const Book& book, const Cause& entry, Index index);
std::string rows_of(const Book& book, const SameCure& entry, Index index);
std::string rows_of(const Book& book, const Remedy& entry, Index index);
std::string rows_of(const Book& book, const Rule& entry, Index index);
std::string rows_of(const Book& book, const Worksheet& entry, Index index);
std::string rows_of(const Book& book, const Caution& entry, Index index);
std::string rows_of(const Book& book, const Deferral& entry, Index index);
std::string rows_of(const Book& book, const Stop& entry, Index index);
std::string rows_of(const Book& book, const RigField& entry, Index index);
std::string rows_of(const Book& book, const History& entry, Index index);
std::string rows_of(const Book& book, const Need& entry, Index index);
std::string rows_of(const Book& book, const Part& entry, Index index);
std::string rows_of(const Book& book, const Setting& entry, Index index);
std::string rows_of(const Book& book, const Source& entry, Index index);

// "Source", linked; "" when the entry names none.
std::string source_row(const Book& book, const Entry& entry);

// What the search box looks through beside name and id.
template <typename E>
std::string more_words(const E&) {
    return "";
}
std::string more_words(const Complaint& entry);
std::string more_words(const Finding& entry);
std::string more_words(const Cause& entry);
std::string more_words(const Rule& entry);
std::string more_words(const Source& entry);

}  // namespace hardover::book
