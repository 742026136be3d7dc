// How numbers and lists are put in words on a page. Inner part of app/jobs; knows no knowledge and no job.
#pragma once

#include <string>
#include <vector>

namespace hardover::jobs_detail {

// "81 %", "under 1 %", "over 99 %". Only a `certain` probability of exactly 0 or 1 is shown as 0 % or 100 %.
std::string percent_text(double probability, bool certain = false);

// "1 min", "35 min", "1 h 35 min": to the minute below 20, to five minutes above.
std::string minutes_text(double minutes);

// Weight of evidence in words: from 10 decibans (ten to one) "strongly", from 5 "clearly", from 2 "a little",
// below "barely"; then "for" or "against".
std::string strength_text(double decibans);

// "Wheel" as "wheel" inside a sentence; leaves "O-ring" and "AC" alone.
std::string lower_first(std::string text);
std::string upper_first(std::string text);

// Adds a full stop where none of . ? ! stands at the end.
std::string sentence(std::string text);

std::string quoted(const std::string& text);  // “text”

// "a", "a and b", "a, b and c" with the given last word.
std::string listed(const std::vector<std::string>& items, const std::string& last = "and");

// Appends with a space between, when both have letters.
void add_sentence(std::string& text, const std::string& more);

}  // namespace hardover::jobs_detail
