#include "rules/reading/letters.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>

namespace hardover::reading_detail {
namespace {

bool continues(unsigned char byte) {
    return (byte & 0xC0) == 0x80;
}

// Bytes of the well-formed sequence at `at`, 0 when there is none (RFC 3629, section 4).
std::size_t sequence_length(std::string_view text, std::size_t at) {
    const auto byte = [&](std::size_t i) {
        return at + i < text.size() ? static_cast<unsigned char>(text[at + i])
                                    : static_cast<unsigned char>(0);
    };
    const unsigned char lead = byte(0);
    if (lead < 0x80) {
        const bool control = (lead < 0x20 && lead != '\t' && lead != '\n' && lead != '\r') || lead == 0x7F;
        return control ? 0 : 1;
    }
    if (lead >= 0xC2 && lead <= 0xDF) return continues(byte(1)) ? 2 : 0;
    if (lead >= 0xE0 && lead <= 0xEF) {
        const bool overlong = lead == 0xE0 && byte(1) < 0xA0;
        const bool surrogate = lead == 0xED && byte(1) > 0x9F;
        return continues(byte(1)) && continues(byte(2)) && !overlong && !surrogate ? 3 : 0;
    }
    if (lead >= 0xF0 && lead <= 0xF4) {
        const bool overlong = lead == 0xF0 && byte(1) < 0x90;
        const bool beyond = lead == 0xF4 && byte(1) > 0x8F;
        const bool all = continues(byte(1)) && continues(byte(2)) && continues(byte(3));
        return all && !overlong && !beyond ? 4 : 0;
    }
    return 0;
}

}  // namespace

int count_letters(std::string_view utf8) {
    return static_cast<int>(std::count_if(utf8.begin(), utf8.end(),
                                          [](char c) { return !continues(static_cast<unsigned char>(c)); }));
}

std::optional<std::size_t> first_bad_byte(std::string_view text) {
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t length = sequence_length(text, at);
        if (length == 0) return at;
        at += length;
    }
    return std::nullopt;
}

bool is_id(std::string_view text) {
    if (text.empty() || text[0] < 'a' || text[0] > 'z') return false;
    return std::all_of(text.begin(), text.end(),
                       [](char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '_'; });
}

std::optional<double> plain_number(std::string_view text) {
    double number = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
    const bool whole = error == std::errc() && end == text.data() + text.size();
    if (!whole || !std::isfinite(number)) return std::nullopt;
    return number;
}

std::string short_number(double number) {
    std::string text = std::to_string(number);
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.') text.pop_back();
    return text;
}

}  // namespace hardover::reading_detail
