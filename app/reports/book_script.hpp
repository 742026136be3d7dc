// The script of the book's search box. Works from disk, needs nothing but the page it stands in.
#pragma once

namespace hardover::book {

// Expects two constants before it: `entries`, each [kind, address, id, name, more words], and `words` with
// `alike`, a list of lists of words that mean the same, and `small`, words that are passed over.
// It reads what to find from ?find= or #find= of the page's address.
extern const char* const search_script;

}  // namespace hardover::book
