// The same work on many things by several threads. Knows nothing of the work.
#pragma once

#include <algorithm>
#include <atomic>
#include <cstddef>
#include <thread>
#include <vector>

namespace hardover::classroom {

// Calls work(0) ... work(count - 1), each once and in no order. `threads` 0: as many as the machine has.
template <typename Work>
void in_parallel(std::size_t count, int threads, Work work) {
    std::atomic<std::size_t> next{0};
    const auto run = [&] {
        for (std::size_t i = next++; i < count; i = next++) work(i);
    };
    const std::size_t machine = std::max(1U, std::thread::hardware_concurrency());
    const std::size_t wanted = threads > 0 ? static_cast<std::size_t>(threads) : machine;
    std::vector<std::thread> others;
    for (std::size_t t = 1; t < std::min(wanted, count); ++t) others.emplace_back(run);
    run();
    for (std::thread& other : others) other.join();
}

}  // namespace hardover::classroom
