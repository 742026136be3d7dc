#include "app/classroom/canonical.hpp"

#include <charconv>
#include <cmath>
#include <cstdlib>
#include <nlohmann/json.hpp>

namespace hardover::classroom {

namespace {

using nlohmann::json;

// The shortest digits that read back as the same number, and where the point stands in them, laid out as
// ECMAScript does (RFC 8785, section 3.2.2.3).
std::string shortest(double number) {
    if (!std::isfinite(number)) return "null";
    if (number == 0) return "0";
    char told[40];
    const auto end = std::to_chars(told, told + sizeof told, std::abs(number), std::chars_format::scientific);
    const std::string scientific(told, end.ptr);
    const std::size_t mark = scientific.find('e');
    std::string digits = scientific.substr(0, 1);
    if (mark > 2) digits += scientific.substr(2, mark - 2);
    const int count = static_cast<int>(digits.size());
    const int point = std::atoi(scientific.c_str() + mark + 1) + 1;  // digits before the point
    std::string text;
    if (point > 21 || point <= -6) {
        text = digits.substr(0, 1) + (count > 1 ? "." + digits.substr(1) : "");
        text += (point > 0 ? "e+" : "e-") + std::to_string(std::abs(point - 1));
    } else if (point <= 0) {
        text = "0." + std::string(static_cast<std::size_t>(-point), '0') + digits;
    } else if (point >= count) {
        text = digits + std::string(static_cast<std::size_t>(point - count), '0');
    } else {
        text = digits.substr(0, static_cast<std::size_t>(point)) + "." +
               digits.substr(static_cast<std::size_t>(point));
    }
    return (number < 0 ? "-" : "") + text;
}

void write(const json& value, std::string& out) {
    if (value.is_number_float()) {
        out += shortest(value.get<double>());
    } else if (value.is_object()) {
        out += '{';
        for (auto entry = value.begin(); entry != value.end(); ++entry) {  // sorted: json is a std::map
            if (entry != value.begin()) out += ',';
            write(entry.key(), out);
            out += ':';
            write(entry.value(), out);
        }
        out += '}';
    } else if (value.is_array()) {
        out += '[';
        for (auto entry = value.begin(); entry != value.end(); ++entry) {
            if (entry != value.begin()) out += ',';
            write(*entry, out);
        }
        out += ']';
    } else {
        out += value.dump(-1, ' ', false, json::error_handler_t::replace);
    }
}

}  // namespace

std::string canonical(const json& value) {
    std::string out;
    write(value, out);
    return out;
}

}  // namespace hardover::classroom
