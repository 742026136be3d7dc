// A job as plain text for the file and the customer: what was found, how it was proved, what was done.
// Pure: made from the page both front ends show.
#pragma once

#include <string>

#include "app/jobs/page.hpp"

namespace hardover {

// Lines wrapped at `width` letters. Holds stops and cautions before anything that was done, and ends with the
// deferrals: what is left to the maker, the local code and licensed practice.
std::string job_report(const JobPage& page, int width = 80);

// Breaks a text into lines of at most `width` letters (UTF-8 letters, not bytes); a longer word stands alone.
// Every line but the first starts with `hang` spaces.
std::string wrapped(const std::string& text, int width, int hang = 0);

}  // namespace hardover
