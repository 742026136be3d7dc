#include "fuzz/target.hpp"

#include <algorithm>
#include <charconv>
#include <cstdlib>
#include <fstream>
#include <iostream>
#include <sstream>

namespace hardover_fuzz {

namespace {

// Bytes that begin a letter of UTF-8 text.
int letters_in(std::string_view text) {
    return static_cast<int>(
        std::count_if(text.begin(), text.end(), [](char c) { return (c & '\xC0') != '\x80'; }));
}

std::string_view line_of(std::string_view text, int wanted) {
    for (int line = 1; line < wanted; ++line) {
        const std::size_t end = text.find('\n');
        text = end == std::string_view::npos ? std::string_view() : text.substr(end + 1);
    }
    return text.substr(0, text.find('\n'));
}

// Reads ":12" off the front of `rest`; 0 when there is none.
int take_number(std::string_view& rest) {
    int number = 0;
    if (rest.empty() || rest.front() != ':') return 0;
    const auto [end, failed] = std::from_chars(rest.data() + 1, rest.data() + rest.size(), number);
    if (failed != std::errc()) return 0;
    rest.remove_prefix(static_cast<std::size_t>(end - rest.data()));
    return number;
}

}  // namespace

std::string text_of(const std::uint8_t* data, std::size_t size) {
    return {data, data + size};
}

void demand(bool holds, const std::string& why) {
    if (holds) return;
    std::cerr << "fuzz target: " << why << std::endl;
    std::abort();
}

std::string source_file(const std::string& path_from_top) {
    std::ifstream file(std::string(HARDOVER_SOURCE_DIR "/") + path_from_top);
    std::ostringstream text;
    text << file.rdbuf();
    demand(!text.str().empty(), "cannot read " + path_from_top);
    return text.str();
}

void demand_inside(int line, int column, std::string_view text, const std::string& shown) {
    const int lines = 1 + static_cast<int>(std::count(text.begin(), text.end(), '\n'));
    demand(line >= 1 && column >= 1, "a refusal without a line and a column: " + shown);
    demand(line <= lines, "a refusal at a line that is not there: " + shown);
    demand(column <= letters_in(line_of(text, line)) + 1,
           "a refusal at a column that is not there: " + shown);
}

void demand_located(const hardover::Error& error, const std::string& file, std::string_view text) {
    demand_worded(error);
    std::string_view rest = error.where;
    demand(rest.substr(0, file.size()) == file, "a refusal that does not name the file: " + error.text());
    rest.remove_prefix(file.size());
    const int line = take_number(rest);
    const int column = take_number(rest);
    demand(rest.empty() || rest.substr(0, 5) == ", at ", "a place with more behind it: " + error.text());
    demand_inside(line, column, text, error.text());
}

void demand_worded(const hardover::Error& error) {
    demand(error.what.size() >= 8, "a refusal that says nothing: " + error.text());
}

}  // namespace hardover_fuzz
