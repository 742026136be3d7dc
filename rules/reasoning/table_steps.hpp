// What one cause does to the levels of one open finding in a table, forward and on the way back. Inner part
// of frontier; pure numbers.
#pragma once

#include <vector>

namespace hardover::frontier {

using Table = std::vector<double>;

// Level `k` afterwards: it was k and the cause gives nothing worse, or it was better and the cause gives k.
inline void let_cause_act(Table& table, std::size_t stride, int levels, const double* how_often) {
    const double* no_worse = how_often + levels;
    const std::size_t block = stride * levels;
    for (std::size_t base = 0; base < table.size(); base += block) {
        for (int k = 0; k < levels; ++k) {
            double* at_k = &table[base + k * stride];
            for (std::size_t low = 0; low < stride; ++low) at_k[low] *= no_worse[k];
            for (int better = k + 1; better < levels; ++better) {
                const double* from = &table[base + better * stride];
                for (std::size_t low = 0; low < stride; ++low) at_k[low] += how_often[k] * from[low];
            }
        }
    }
}

// The transpose of let_cause_act.
inline void look_back_through_cause(Table& table, std::size_t stride, int levels, const double* how_often) {
    const double* no_worse = how_often + levels;
    const std::size_t block = stride * levels;
    for (std::size_t base = 0; base < table.size(); base += block) {
        for (int k = levels - 1; k >= 0; --k) {
            double* at_k = &table[base + k * stride];
            for (std::size_t low = 0; low < stride; ++low) at_k[low] *= no_worse[k];
            for (int worse = 0; worse < k; ++worse) {
                const double* from = &table[base + worse * stride];
                for (std::size_t low = 0; low < stride; ++low) at_k[low] += how_often[worse] * from[low];
            }
        }
    }
}

}  // namespace hardover::frontier
