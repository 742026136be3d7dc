// What one cause does to the levels of one open finding in a table, forward and on the way back. Inner part
// of frontier; pure numbers.
#pragma once

#include <vector>

namespace hardover::frontier {

using Table = std::vector<double>;

// let_cause_act() on a finding of two levels, as most have, in one go over the table.
inline void let_cause_act_on_two(Table& table, std::size_t stride, const double* how_often) {
    const double gives_worse = how_often[0];
    const double keeps_worse = how_often[2];
    const double keeps_better = how_often[3];
    for (std::size_t base = 0; base < table.size(); base += 2 * stride) {
        double* __restrict worse = &table[base];
        double* __restrict better = &table[base + stride];
        for (std::size_t low = 0; low < stride; ++low) {
            worse[low] = worse[low] * keeps_worse + gives_worse * better[low];
            better[low] *= keeps_better;
        }
    }
}

// Level `k` afterwards: it was k and the cause gives nothing worse, or it was better and the cause gives k.
inline void let_cause_act(Table& table, std::size_t stride, int levels, const double* how_often) {
    if (levels == 2) return let_cause_act_on_two(table, stride, how_often);
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

inline void look_back_through_cause_on_two(Table& table, std::size_t stride, const double* how_often) {
    const double gives_worse = how_often[0];
    const double keeps_worse = how_often[2];
    const double keeps_better = how_often[3];
    for (std::size_t base = 0; base < table.size(); base += 2 * stride) {
        double* __restrict worse = &table[base];
        double* __restrict better = &table[base + stride];
        for (std::size_t low = 0; low < stride; ++low) {
            better[low] = better[low] * keeps_better + gives_worse * worse[low];
            worse[low] *= keeps_worse;
        }
    }
}

// The transpose of let_cause_act.
inline void look_back_through_cause(Table& table, std::size_t stride, int levels, const double* how_often) {
    if (levels == 2) return look_back_through_cause_on_two(table, stride, how_often);
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

// Per lane: the table without the cause times its share, and with it.
inline void mix(Table& table, const Table& acted, const double* absent, const double* present) {
    const double out[2] = {absent[0], absent[1]};
    const double in[2] = {present[0], present[1]};
    double* __restrict to = table.data();
    const double* __restrict with = acted.data();
    for (std::size_t at = 0; at < table.size(); at += 2) {
        for (std::size_t lane = 0; lane < 2; ++lane) {
            to[at + lane] = out[lane] * to[at + lane] + in[lane] * with[at + lane];
        }
    }
}

}  // namespace hardover::frontier
