// Chance that is the same on every machine: numbers and orders drawn from a seed.
#pragma once

#include <cstdint>
#include <string_view>
#include <vector>

namespace hardover::study {

class Chance {
  public:
    explicit Chance(std::uint64_t seed) : state_(seed) {}
    // The same seed gives different numbers for different names.
    Chance(std::uint64_t seed, std::string_view name) : state_(seed) {
        for (const char letter : name) {  // FNV-1a
            state_ = (state_ ^ static_cast<unsigned char>(letter)) * 0x100000001b3ULL;
        }
        next();
    }

    std::uint64_t next() {  // SplitMix64 (S. Vigna, public domain)
        std::uint64_t z = (state_ += 0x9e3779b97f4a7c15ULL);
        z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9ULL;
        z = (z ^ (z >> 27)) * 0x94d049bb133111ebULL;
        return z ^ (z >> 31);
    }
    // From 0 up to, not with, 1.
    double share() { return static_cast<double>(next() >> 11) * 0x1.0p-53; }
    std::size_t below(std::size_t n) { return static_cast<std::size_t>(next() % n); }

    template <typename T>
    void shuffle(std::vector<T>& list) {
        for (std::size_t i = list.size(); i > 1; --i) std::swap(list[i - 1], list[below(i)]);
    }

  private:
    std::uint64_t state_;
};

}  // namespace hardover::study
