// A walk over JSON text that is known to be whole: the library has read it before.
#include "app/jobs/json_place.hpp"

#include <algorithm>
#include <charconv>
#include <nlohmann/json.hpp>
#include <set>
#include <vector>

#include "rules/reading/letters.hpp"

namespace hardover {

namespace {

class Walk {
  public:
    explicit Walk(std::string_view text) : text_(text) {
        if (text_.substr(0, 3) == "\xEF\xBB\xBF") at_ = 3;  // the library passes over this mark too
        skip_space();
    }

    std::size_t at() const { return at_; }
    bool ended() const { return at_ >= text_.size(); }
    char here() const { return ended() ? '\0' : text_[at_]; }

    void step() {
        ++at_;
        skip_space();
    }

    // The text in the quotes that open here, with its escapes read.
    std::string take_string() {
        const std::size_t start = at_;
        for (++at_; !ended() && text_[at_] != '"'; ++at_) {
            if (text_[at_] == '\\') ++at_;
        }
        const std::size_t length = at_ + 1 - start;
        step();
        const auto read = nlohmann::json::parse(text_.substr(start, length), nullptr, false);
        return read.is_string() ? read.get<std::string>() : "";
    }

    // To behind the value that begins here.
    void skip_value() {
        int open = 0;
        do {
            const char c = here();
            if (c == '"') {
                take_string();
            } else if (c == '{' || c == '[') {
                ++open;
                step();
            } else if (c == '}' || c == ']') {
                --open;
                step();
            } else {
                step();
            }
            const bool behind = here() == ',' || here() == '}' || here() == ']';
            if (open == 0 && behind) return;
        } while (!ended());
    }

    // To the value of this key of the object that begins here, or this one of the list. False: there is none.
    bool enter(std::string_view key) {
        const char kind = here();
        std::size_t wanted = 0;
        std::from_chars(key.data(), key.data() + key.size(), wanted);
        if (kind != '{' && kind != '[') return false;
        step();
        for (std::size_t index = 0; !ended() && here() != '}' && here() != ']'; ++index) {
            bool found = index == wanted;
            if (kind == '{') {
                found = take_string() == key;
                step();  // over the colon
            }
            if (found) return true;
            skip_value();
            if (here() == ',') step();
        }
        return false;
    }

  private:
    void skip_space() { at_ = std::min(text_.find_first_not_of(" \t\r\n", at_), text_.size()); }

    std::string_view text_;
    std::size_t at_ = 0;
};

}  // namespace

std::string line_and_column(std::string_view text, std::size_t byte) {
    const std::string_view before = text.substr(0, std::min(byte, text.size()));
    const auto line = 1 + std::count(before.begin(), before.end(), '\n');
    const std::size_t start = before.find_last_of('\n') + 1;  // npos + 1 is 0
    return std::to_string(line) + ":" +
           std::to_string(reading_detail::count_letters(before.substr(start)) + 1);
}

std::string json_place(std::string_view text, std::string_view way) {
    Walk walk(text);
    std::size_t place = walk.at();
    while (!way.empty()) {
        const std::size_t start = way.find_first_not_of(".[]");
        if (start == std::string_view::npos) break;
        const std::size_t end = std::min(way.find_first_of(".[]", start), way.size());
        if (!walk.enter(way.substr(start, end - start))) break;
        place = walk.at();
        way.remove_prefix(end);
    }
    return line_and_column(text, place);
}

std::optional<RepeatedKey> repeated_key(std::string_view text) {
    Walk walk(text);
    std::vector<std::set<std::string>> open;
    while (!walk.ended()) {
        const std::size_t byte = walk.at();
        const char c = walk.here();
        if (c != '"') {
            if (c == '{') open.emplace_back();
            if (c == '}' && !open.empty()) open.pop_back();
            walk.step();
            continue;
        }
        std::string key = walk.take_string();
        if (walk.here() != ':' || open.empty()) continue;
        if (!open.back().insert(key).second) return RepeatedKey{std::move(key), byte};
    }
    return std::nullopt;
}

}  // namespace hardover
