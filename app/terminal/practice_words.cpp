#include "app/terminal/practice_words.hpp"

#include <algorithm>
#include <cctype>
#include <sstream>

#include "app/terminal/words.hpp"

namespace hardover {

using namespace study::practice;

namespace {

bool all_digits(const std::string& text) {
    return std::all_of(text.begin(), text.end(), [](unsigned char c) { return std::isdigit(c) != 0; });
}

}  // namespace

std::string lower(std::string text) {
    for (char& letter : text) letter = static_cast<char>(std::tolower(static_cast<unsigned char>(letter)));
    return text;
}

// Every word is somewhere in the text.
bool has_words(const std::string& text, const std::string& words) {
    const std::string in = lower(text);
    std::istringstream each(lower(words));
    for (std::string word; each >> word;) {
        if (in.find(word) == std::string::npos) return false;
    }
    return true;
}

// "kinked hose 70" -> "kinked hose", 0.7. A last number from 0 to 100 is sureness.
std::pair<std::string, std::optional<double>> split_sureness(const std::string& rest) {
    const std::size_t space = rest.find_last_of(" @");
    const std::string last = space == std::string::npos ? rest : rest.substr(space + 1);
    const bool number = !last.empty() && all_digits(last);
    if (!number || last.size() > 3 || std::stoi(last) > 100) return {trimmed(rest), std::nullopt};
    std::string words = space == std::string::npos ? "" : rest.substr(0, space);
    while (!words.empty() && (words.back() == '@' || words.back() == ' ')) words.pop_back();
    return {trimmed(words), std::stoi(last) / 100.0};
}

std::string odd_sureness(const std::string& rest) {
    const std::string text = trimmed(rest);
    const std::string last = text.substr(text.find_last_of(" @") + 1);
    const bool number = last.find_first_of("0123456789") != std::string::npos &&
                        last.find_first_not_of("0123456789+-.,%") == std::string::npos;
    return number && !split_sureness(last).second ? last : "";
}

std::size_t list_number(std::string typed) {
    if (!typed.empty() && typed.back() == ',') typed.pop_back();
    if (typed.empty() || typed.size() > 3 || !all_digits(typed)) return 0;
    return static_cast<std::size_t>(std::stoi(typed));
}

std::vector<NamedItem> matching(const std::vector<NamedItem>& items, const std::string& words) {
    std::vector<NamedItem> found;
    for (const NamedItem& item : items) {
        if (item.id == words) return {item};
        if (has_words(item.name + " " + item.id + " " + item.part, words)) found.push_back(item);
    }
    return found;
}

}  // namespace hardover
