// Random numbers that are the same on every machine, for the property tests.
#pragma once

#include <cstddef>
#include <random>
#include <vector>

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

// Shares of the readings of a finding, worst first: all but the sound one add to `bad`.
inline std::vector<double> shares(Chance& chance, std::size_t levels, double bad) {
    std::vector<double> d(levels);
    double sum = 0;
    for (std::size_t k = 0; k + 1 < levels; ++k) sum += d[k] = chance.between(0.2, 1);
    for (std::size_t k = 0; k + 1 < levels; ++k) d[k] *= bad / sum;
    d[levels - 1] = 1 - bad;
    return d;
}

}  // namespace hardover_tests
