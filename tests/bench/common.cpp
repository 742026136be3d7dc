#include "bench/common.hpp"

#include <time.h>

#include <algorithm>
#include <atomic>
#include <chrono>
#include <cmath>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <iostream>
#include <numeric>
#include <random>
#include <thread>

#include "app/rig/functions.hpp"
#include "rules/reading/reading.hpp"

namespace hardover_bench {

hardover::Knowledge shipped_knowledge() {
    const char* elsewhere = std::getenv("HARDOVER_KNOWLEDGE");
    const std::string folder = elsewhere ? elsewhere : HARDOVER_SOURCE_DIR "/knowledge";
    hardover::KnowledgeRead read = hardover::read_knowledge_folder(folder, hardover::rig::rig_functions());
    if (!read.knowledge) {
        for (const hardover::Fault& fault : read.faults) std::cerr << fault.text() << '\n';
        std::exit(1);
    }
    return std::move(*read.knowledge);
}

double thread_milliseconds() {
    timespec now{};
    clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
    return static_cast<double>(now.tv_sec) * 1e3 + static_cast<double>(now.tv_nsec) * 1e-6;
}

double wall_milliseconds() {
    const auto now = std::chrono::steady_clock::now().time_since_epoch();
    return std::chrono::duration<double, std::milli>(now).count();
}

double yardstick_milliseconds() {
    std::mt19937_64 random(1);
    std::vector<std::uint64_t> numbers(1'000'000);
    for (std::uint64_t& number : numbers) number = random();
    const double before = thread_milliseconds();
    std::sort(numbers.begin(), numbers.end());
    return thread_milliseconds() - before;
}

double mean(const std::vector<double>& values) {
    if (values.empty()) return 0;
    return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

double percentile(std::vector<double> values, double share) {
    if (values.empty()) return 0;
    std::sort(values.begin(), values.end());
    const double rank = std::ceil(share * static_cast<double>(values.size()));
    const auto at = static_cast<std::size_t>(std::max(1.0, rank)) - 1;
    return values[std::min(at, values.size() - 1)];
}

std::string fixed(double value, int decimals) {
    char text[64];
    std::snprintf(text, sizeof text, "%.*f", decimals, value);
    return text;
}

std::string percent(double share, int decimals) {
    return fixed(100 * share, decimals) + " %";
}

void print_table(const std::vector<std::vector<std::string>>& rows) {
    std::vector<std::size_t> width;
    for (const auto& row : rows) {
        width.resize(std::max(width.size(), row.size()));
        for (std::size_t c = 0; c < row.size(); ++c) width[c] = std::max(width[c], row[c].size());
    }
    for (std::size_t r = 0; r < rows.size(); ++r) {
        std::string line = "|";
        std::string rule = "|";
        for (std::size_t c = 0; c < width.size(); ++c) {
            const std::string cell = c < rows[r].size() ? rows[r][c] : "";
            line += " " + cell + std::string(width[c] - cell.size(), ' ') + " |";
            rule += std::string(width[c] + 2, '-') + "|";
        }
        std::cout << line << '\n';
        if (r == 0) std::cout << rule << '\n';
    }
    std::cout << std::endl;
}

void in_parallel(int count, int threads, const std::function<void(int)>& work) {
    std::atomic<int> next{0};
    const auto run = [&] {
        for (int n = next++; n < count; n = next++) work(n);
    };
    std::vector<std::thread> others;
    for (int t = 1; t < threads; ++t) others.emplace_back(run);
    run();
    for (std::thread& other : others) other.join();
}

int argument(int argc, char** argv, int n, int otherwise) {
    if (n >= argc) return otherwise;
    char* end = nullptr;
    const long given = std::strtol(argv[n], &end, 10);
    return end != argv[n] && given >= 0 ? static_cast<int>(given) : otherwise;
}

}  // namespace hardover_bench
