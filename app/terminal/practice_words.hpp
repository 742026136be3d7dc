// Readers of what an apprentice typed on a practice boat. Knows no session.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "app/study/practice_page.hpp"

namespace hardover {

std::string lower(std::string text);

// Every word is somewhere in the text, in upper or lower case.
bool has_words(const std::string& text, const std::string& words);

// "kinked hose 70" -> "kinked hose", 0.7; "70" -> "", 0.7. A last number from 0 to 100 is sureness.
std::pair<std::string, std::optional<double>> split_sureness(const std::string& rest);

// The last word where it is a number that cannot be sureness: "air -5" -> "-5"; "" else.
std::string odd_sureness(const std::string& rest);

// "3" or "3," as 3, up to 999; 0 for anything else.
std::size_t list_number(std::string typed);

// Those with the id, else those whose name, id or part holds all the words.
std::vector<study::practice::NamedItem> matching(const std::vector<study::practice::NamedItem>& items,
                                                 const std::string& words);

}  // namespace hardover
