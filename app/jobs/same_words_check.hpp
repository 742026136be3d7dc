// Sense checks of the entries same_words: what the search would never use. The reader refuses what is not
// written as an entry; here the roots of words are looked at, as the search compares them.
#pragma once

#include <vector>

#include "rules/model/knowledge.hpp"
#include "rules/reading/reading.hpp"

namespace hardover {

// Warnings: a word whose root stands for another entry already or is there twice, a word that is in every
// sentence and passed over, an entry of which no text of the knowledge has a word. In the order of the
// entries.
std::vector<Fault> check_same_words(const Knowledge& knowledge);

}  // namespace hardover
