// Seeded chance for sampled boats and measurement noise: the same seed gives the same numbers on every
// machine. Knows no boat.
#pragma once

#include <cmath>
#include <cstdint>
#include <numbers>
#include <random>

namespace hardover::rig {

class Chance {
  public:
    explicit Chance(std::uint64_t seed) : numbers_(seed) {}

    // From 0 up to, not including, 1.
    double share() { return static_cast<double>(numbers_() >> 11) * 0x1p-53; }
    double between(double least, double most) { return least + (most - least) * share(); }
    bool happens(double chance) { return share() < chance; }
    // Standard normal (Box and Muller 1958). The library's own distribution differs between compilers.
    double normal() {
        const double radius = std::sqrt(-2 * std::log(1 - share()));
        return radius * std::cos(2 * std::numbers::pi * share());
    }

  private:
    std::mt19937_64 numbers_;
};

}  // namespace hardover::rig
