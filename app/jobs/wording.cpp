#include "app/jobs/wording.hpp"

#include <fmt/format.h>

#include <cctype>
#include <cmath>

namespace hardover::jobs_detail {

std::string percent_text(double probability, bool certain) {
    if (certain && probability == 0) return "0 %";
    if (certain && probability == 1) return "100 %";
    if (probability < 0.01) return "under 1 %";
    if (probability > 0.99) return "over 99 %";
    return fmt::format("{} %", std::lround(probability * 100));
}

std::string minutes_text(double minutes) {
    const double step = minutes < 20 ? 1 : 5;
    const long whole = std::max(1L, std::lround(minutes / step) * static_cast<long>(step));
    if (whole < 60) return fmt::format("{} min", whole);
    if (whole % 60 == 0) return fmt::format("{} h", whole / 60);
    return fmt::format("{} h {} min", whole / 60, whole % 60);
}

std::string strength_text(double decibans) {
    const double size = std::abs(decibans);
    const char* how = size >= 10 ? "strongly" : size >= 5 ? "clearly" : size >= 2 ? "a little" : "barely";
    return fmt::format("{} {}", how, decibans >= 0 ? "for" : "against");
}

std::string lower_first(std::string text) {
    const bool is_word = text.size() > 1 &&
                         (std::islower(static_cast<unsigned char>(text[1])) || text.compare(0, 2, "A ") == 0);
    if (is_word) text[0] = static_cast<char>(std::tolower(static_cast<unsigned char>(text[0])));
    return text;
}

std::string upper_first(std::string text) {
    if (!text.empty()) text[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(text[0])));
    return text;
}

std::string sentence(std::string text) {
    const bool open = !text.empty() && std::string(".?!").find(text.back()) == std::string::npos;
    if (open) text += ".";
    return text;
}

std::string quoted(const std::string& text) {
    return fmt::format("“{}”", text);
}

std::string listed(const std::vector<std::string>& items, const std::string& last) {
    std::string line;
    for (std::size_t i = 0; i < items.size(); ++i) {
        if (i > 0) line += i + 1 == items.size() ? fmt::format(" {} ", last) : ", ";
        line += items[i];
    }
    return line;
}

void add_sentence(std::string& text, const std::string& more) {
    if (!text.empty() && !more.empty()) text += " ";
    text += more;
}

}  // namespace hardover::jobs_detail
