// Finds the nearest right spelling, for "did you mean". Knows only words.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace hardover {

// Number of single-letter insertions, deletions, swaps of neighbours and changes between two words
// (optimal string alignment distance).
int spelling_distance(std::string_view a, std::string_view b);

// The candidate nearest to `word`, or "" when none is within a third of the word's length (at least 2
// letters). Ties go to the first candidate.
std::string nearest_spelling(std::string_view word, const std::vector<std::string>& candidates);

// "did you mean 'x'?", or "" when nothing is near.
std::string did_you_mean(std::string_view word, const std::vector<std::string>& candidates);

}  // namespace hardover
