// How long work tells how far it has come, and hears whether it is still wanted. Knows no thread and no
// screen.
#pragma once

#include <cstddef>
#include <functional>

namespace hardover::study {

// Called with what is done of all there is to do. False: stop, the result is no longer wanted.
using Watched = std::function<bool(std::size_t done, std::size_t of)>;

inline bool goes_on(const Watched& watched, std::size_t done, std::size_t of) {
    return !watched || watched(done, of);
}

}  // namespace hardover::study
