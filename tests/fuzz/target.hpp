// What the fuzz targets share: how a target fails, and what a refusal must be like. Knows no format.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

#include "rules/result/result.hpp"

// One input; libFuzzer and driver.cpp call it. Gives 0.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

namespace hardover_fuzz {

// The bytes of an input as text.
std::string text_of(const std::uint8_t* data, std::size_t size);

// Ends the program with `why` when `holds` is false, so that the input is kept as a crasher.
void demand(bool holds, const std::string& why);

// A text file kept with the source, as tests/reading/garden_pump/setup.yaml.
std::string source_file(const std::string& path_from_top);

// `line` and `column` (from 1, in letters) must lie in `text`: at a letter, or just behind the last of a
// line.
void demand_inside(int line, int column, std::string_view text, const std::string& shown);

// A refusal of a file: where is "FILE:LINE:COLUMN", perhaps with ", at ..." behind it, and lies in the text;
// it says what is wrong.
void demand_located(const hardover::Error& error, const std::string& file, std::string_view text);

// A refusal of what is no file: it says what is wrong.
void demand_worded(const hardover::Error& error);

}  // namespace hardover_fuzz
