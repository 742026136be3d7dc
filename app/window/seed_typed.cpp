#include "app/window/seed_typed.hpp"

#include <algorithm>
#include <cctype>

namespace hardover::window {

std::uint64_t seed_of(const std::string& utc) {
    constexpr std::uint64_t most = 999983;
    std::uint64_t seed = 0;
    for (const char letter : utc) {
        if (std::isdigit(static_cast<unsigned char>(letter)) == 0) continue;
        seed = (seed * 10 + static_cast<std::uint64_t>(letter - '0')) % most;
    }
    return seed;
}

Result<std::uint64_t> seed_typed(const std::string& typed, const std::string& utc) {
    if (typed.empty()) return seed_of(utc);
    const bool digits = std::all_of(typed.begin(), typed.end(),
                                    [](unsigned char letter) { return std::isdigit(letter) != 0; });
    if (!digits || typed.size() > 18) {
        return Error{Error::Kind::bad_input, "'" + typed + "' is not the number of a boat", "",
                     "a whole number such as 7; leave it empty for any boat"};
    }
    return static_cast<std::uint64_t>(std::stoull(typed));
}

}  // namespace hardover::window
