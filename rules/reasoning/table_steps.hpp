// What one cause does to the levels of one open finding in a table, forward and on the way back. Inner part
// of frontier; pure numbers.
#pragma once

#include <vector>

namespace hardover::frontier {

using Table = std::vector<double>;

// A finding of two levels, as most have, in one go over the table: the level at `to` keeps a share of its own
// and is given one of the level at `from`, which keeps a share then.
inline void pass_on(Table& table, std::size_t stride, std::size_t to, std::size_t from, double to_keeps,
                    double given, double from_keeps) {
    for (std::size_t base = 0; base < table.size(); base += 2 * stride) {
        double* __restrict taking = &table[base + to * stride];
        double* __restrict giving = &table[base + from * stride];
        for (std::size_t low = 0; low < stride; ++low) {
            taking[low] = taking[low] * to_keeps + given * giving[low];
            giving[low] *= from_keeps;
        }
    }
}

// Level `k` afterwards: it was k and the cause gives nothing worse, or it was better and the cause gives k.
inline void let_cause_act(Table& table, std::size_t stride, int levels, const double* how_often) {
    const double* no_worse = how_often + levels;
    if (levels == 2) return pass_on(table, stride, 0, 1, no_worse[0], how_often[0], no_worse[1]);
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
    if (levels == 2) return pass_on(table, stride, 1, 0, no_worse[1], how_often[0], no_worse[0]);
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
