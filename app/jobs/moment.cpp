#include "app/jobs/moment.hpp"

#include <cctype>
#include <string_view>

namespace hardover {

std::string moment_text(std::time_t moment) {
    std::tm utc{};
    gmtime_r(&moment, &utc);
    char text[] = "2000-01-01T00:00:00Z";
    std::strftime(text, sizeof text, "%Y-%m-%dT%H:%M:%SZ", &utc);
    return text;
}

bool is_moment(const std::string& text) {
    constexpr std::string_view form = "0000-00-00T00:00:00Z";
    if (text.size() != form.size()) return false;
    for (std::size_t at = 0; at < form.size(); ++at) {
        const bool right =
            form[at] == '0' ? std::isdigit(static_cast<unsigned char>(text[at])) != 0 : text[at] == form[at];
        if (!right) return false;
    }
    return true;
}

std::string local_moment(const std::string& moment) {
    std::tm utc{};
    if (!is_moment(moment) || strptime(moment.c_str(), "%Y-%m-%dT%H:%M:%SZ", &utc) == nullptr) return moment;
    const std::time_t then = timegm(&utc);
    std::tm here{};
    localtime_r(&then, &here);
    char text[] = "2000-01-01 00:00";
    std::strftime(text, sizeof text, "%Y-%m-%d %H:%M", &here);
    return text;
}

}  // namespace hardover
