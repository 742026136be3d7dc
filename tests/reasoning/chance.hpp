// Random numbers that are the same on every machine, for the property tests.
#pragma once

#include <random>

namespace hardover_tests {

struct Chance {
    std::mt19937 engine;
    explicit Chance(unsigned seed) : engine(seed) {}
    double between(double low, double high) {
        return low + (high - low) * static_cast<double>(engine()) / 4294967296.0;
    }
    int upto(int most) { return static_cast<int>(engine() % static_cast<unsigned>(most + 1)); }
    bool one_in(int n) { return upto(n - 1) == 0; }
};

}  // namespace hardover_tests
