// How long work tells how far it has come, and hears whether it is still wanted. Knows no thread and no
// screen.
#pragma once

#include <cstddef>
#include <functional>

namespace hardover {

// Called with what is done of all there is to do. False: stop, the result is no longer wanted.
using Watched = std::function<bool(std::size_t done, std::size_t of)>;

inline bool goes_on(const Watched& watched, std::size_t done, std::size_t of) {
    return !watched || watched(done, of);
}

// One of several parts, each as long as the others, told as a piece of the whole.
inline Watched part_of(const Watched& watched, std::size_t part, std::size_t parts) {
    if (!watched) return {};
    return [watched, part, parts](std::size_t done, std::size_t of) {
        return watched(part * of + done, parts * of);
    };
}

}  // namespace hardover
