// The greatest of some numbers, while they change now and then. Pure storage.
#pragma once

#include <algorithm>
#include <cstddef>
#include <vector>

namespace hardover {

// In blocks that each know their greatest, so that a change and a look touch a block each. No number is below
// 0.
class Greatest {
  public:
    explicit Greatest(std::size_t count = 0)
        : values_((count + block - 1) / block * block, 0.0), greatest_(values_.size() / block, 0.0) {}

    double at(int index) const { return values_[static_cast<std::size_t>(index)]; }

    void set(int index, double value) {
        const auto at = static_cast<std::size_t>(index);
        const std::size_t b = at / block;
        const double before = values_[at];
        values_[at] = value;
        if (value >= greatest_[b]) {
            greatest_[b] = value;
        } else if (before == greatest_[b]) {
            greatest_[b] = greatest_in(b);
        }
    }

    // All anew: value(index) of every index below `count`.
    template <typename Value>
    void set_all(std::size_t count, Value value) {
        for (std::size_t n = 0; n < count; ++n) values_[n] = value(static_cast<int>(n));
        for (std::size_t b = 0; b < greatest_.size(); ++b) greatest_[b] = greatest_in(b);
    }

    // The first of those with the greatest number; -1: none is above 0.
    int first() const {
        std::size_t best = 0;
        double greatest = 0;
        for (std::size_t b = 0; b < greatest_.size(); ++b) {
            if (greatest_[b] <= greatest) continue;
            greatest = greatest_[b];
            best = b;
        }
        if (greatest <= 0) return -1;
        std::size_t at = best * block;
        while (values_[at] != greatest) ++at;
        return static_cast<int>(at);
    }

  private:
    static constexpr std::size_t block = 8;

    double greatest_in(std::size_t b) const {
        const double* v = &values_[b * block];
        const double low = std::max(std::max(v[0], v[1]), std::max(v[2], v[3]));
        const double high = std::max(std::max(v[4], v[5]), std::max(v[6], v[7]));
        return std::max(low, high);
    }

    std::vector<double> values_;    // as many as fill whole blocks
    std::vector<double> greatest_;  // by block
};

}  // namespace hardover
