#include "app/terminal/words.hpp"

#include <algorithm>
#include <cctype>

#include "app/reports/job_report.hpp"

namespace hardover {

std::string trimmed(const std::string& text) {
    const std::string blanks = " \t\r";
    const std::size_t first = text.find_first_not_of(blanks);
    if (first == std::string::npos) return "";
    return text.substr(first, text.find_last_not_of(blanks) - first + 1);
}

std::pair<std::string, std::string> first_word(const std::string& text) {
    const std::string clean = trimmed(text);
    const std::size_t end = clean.find(' ');
    if (end == std::string::npos) return {clean, ""};
    return {clean.substr(0, end), trimmed(clean.substr(end))};
}

std::optional<std::string> chosen_id(const std::string& typed, const std::vector<ChoiceText>& choices) {
    const std::string clean = trimmed(typed);
    for (std::size_t i = 0; i < choices.size(); ++i) {
        const bool named =
            clean == std::to_string(i + 1) || clean == choices[i].id || clean == choices[i].text;
        if (named) return choices[i].id;
    }
    return std::nullopt;
}

bool means_cannot_tell(const std::string& typed) {
    static const std::vector<std::string> words = {"?", "can't tell", "cannot tell", "cannot_tell", "c"};
    return std::find(words.begin(), words.end(), trimmed(typed)) != words.end();
}

std::string shell_word(const std::string& text) {
    const auto plain = [](unsigned char c) {
        return std::isalnum(c) != 0 || c == '_' || c == '-' || c == '.' || c == '/';
    };
    if (!text.empty() && text.front() != '-' && std::all_of(text.begin(), text.end(), plain)) return text;
    std::string word = "'";
    for (const char c : text) word += c == '\'' ? "'\\''" : std::string(1, c);
    return word + "'";
}

std::string joined(const std::vector<std::string>& texts, const std::string& between) {
    std::string result;
    for (const std::string& text : texts) result += (result.empty() ? "" : between) + text;
    return result;
}

std::string wrapped_keeping_indent(const std::string& text, int width, int hang) {
    const std::size_t indent = std::min(text.find_first_not_of(' '), text.size());
    return std::string(indent, ' ') + wrapped(text.substr(indent), width - static_cast<int>(indent), hang);
}

void say_wrapped(std::ostream& out, const std::string& text, int hang) {
    out << wrapped_keeping_indent(text, 80, hang) << "\n";
}

}  // namespace hardover
