// Entry pages as HTML: where each entry stands in the knowledge book, and its rows. Inner part of
// app/reports.
#pragma once

#include <string>

#include "app/jobs/entry_page.hpp"

namespace hardover::book {

// "causes.html#cause-air_in_oil"
std::string address(const EntryKey& key);
std::string link(const std::string& kind, const Entry& entry);
std::string rows_html(const std::vector<EntryRow>& rows);

// What the search box looks through beside name and id.
template <typename E>
std::string more_words(const E&) {
    return "";
}
std::string more_words(const Complaint& entry);
std::string more_words(const SameWords& entry);
std::string more_words(const Finding& entry);
std::string more_words(const Cause& entry);
std::string more_words(const Rule& entry);
std::string more_words(const Source& entry);

}  // namespace hardover::book
