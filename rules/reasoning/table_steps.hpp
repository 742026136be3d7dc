// What one cause does to the levels of one open finding in a table, forward and on the way back. Inner part
// of frontier; pure numbers.
#pragma once

#include <span>
#include <vector>

namespace hardover::frontier {

using Table = std::vector<double>;

// A table, or a part of it that is whole blocks of the finding's levels.
using Part = std::span<double>;

// An open finding that a cause acts on.
struct ActedOn {
    std::size_t stride = 1;
    int levels = 0;
    const double* how_often = nullptr;  // `levels` numbers, then as many of no_worse

    std::size_t block() const { return stride * static_cast<std::size_t>(levels); }
};

// A finding of two levels, as most have, in one go: the level at `to` keeps a share of its own and is given
// one of the level at `from`, which keeps a share then.
struct PassOn {
    std::size_t to;
    std::size_t from;
    double to_keeps;
    double given;
    double from_keeps;

    // All but for a factor, which is returned: where the level that gives keeps enough to divide by it, it
    // is left as it is and not written.
    double all(Part part, std::size_t stride) const {
        constexpr double enough = 1e-3;
        if (from_keeps < enough) {
            in_blocks<true>(part, stride);
            return 1;
        }
        PassOn{to, from, to_keeps / from_keeps, given / from_keeps, 1}.in_blocks<false>(part, stride);
        return from_keeps;
    }

  private:
    // The lowest findings have so few numbers side by side that a loop over them costs more than they do.
    template <bool writes_both>
    void in_blocks(Part part, std::size_t stride) const {
        if (stride == 2) return in_blocks<writes_both, 2>(part);
        if (stride == 4) return in_blocks<writes_both, 4>(part);
        if (stride == 8) return in_blocks<writes_both, 8>(part);
        for (std::size_t base = 0; base < part.size(); base += 2 * stride) {
            block<writes_both>(&part[base], stride);
        }
    }
    template <bool writes_both, std::size_t stride>
    void in_blocks(Part part) const {
        const PassOn same = *this;  // so that no number written can be one of these
        for (std::size_t base = 0; base < part.size(); base += 2 * stride) {
            same.block<writes_both>(&part[base], stride);
        }
    }
    template <bool writes_both>
    void block(double* base, std::size_t stride) const {
        double* __restrict taking = base + to * stride;
        double* __restrict giving = base + from * stride;
        for (std::size_t low = 0; low < stride; ++low) {
            taking[low] = taking[low] * to_keeps + given * giving[low];
            if constexpr (writes_both) giving[low] *= from_keeps;
        }
    }
};

// Level `k` afterwards: it was k and the cause gives nothing worse, or it was better and the cause gives k.
// But for a factor, which is returned.
inline double let_cause_act(Part part, const ActedOn& on) {
    const std::size_t stride = on.stride;
    const double* how_often = on.how_often;
    const double* no_worse = how_often + on.levels;
    if (on.levels == 2) return PassOn{0, 1, no_worse[0], how_often[0], no_worse[1]}.all(part, stride);
    for (std::size_t base = 0; base < part.size(); base += on.block()) {
        for (int k = 0; k < on.levels; ++k) {
            double* at_k = &part[base + k * stride];
            for (std::size_t low = 0; low < stride; ++low) at_k[low] *= no_worse[k];
            for (int better = k + 1; better < on.levels; ++better) {
                const double* from = &part[base + better * stride];
                for (std::size_t low = 0; low < stride; ++low) at_k[low] += how_often[k] * from[low];
            }
        }
    }
    return 1;
}

// The transpose of let_cause_act.
inline double look_back_through_cause(Part part, const ActedOn& on) {
    const std::size_t stride = on.stride;
    const double* how_often = on.how_often;
    const double* no_worse = how_often + on.levels;
    if (on.levels == 2) return PassOn{1, 0, no_worse[1], how_often[0], no_worse[0]}.all(part, stride);
    for (std::size_t base = 0; base < part.size(); base += on.block()) {
        for (int k = on.levels - 1; k >= 0; --k) {
            double* at_k = &part[base + k * stride];
            for (std::size_t low = 0; low < stride; ++low) at_k[low] *= no_worse[k];
            for (int worse = 0; worse < k; ++worse) {
                const double* from = &part[base + worse * stride];
                for (std::size_t low = 0; low < stride; ++low) at_k[low] += how_often[worse] * from[low];
            }
        }
    }
    return 1;
}

// Per lane: the table without the cause times its share, and with it.
inline void mix(Part table, std::span<const double> acted, const double* absent, const double* present) {
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

// What the tables of a cause come to with it and without, by lane.
struct Shares {
    double present[2] = {0, 0};
    double absent[2] = {0, 0};
};

// The way back of mix(): `before` is the table the cause acted on.
inline void mix_back(Part table, std::span<const double> acted, const double* before, const double* absent,
                     const double* present, Shares& shares) {
    const double out[2] = {absent[0], absent[1]};
    const double in[2] = {present[0], present[1]};
    double* __restrict now = table.data();
    const double* __restrict looked_back = acted.data();
    Shares sum = shares;
    for (std::size_t at = 0; at < table.size(); at += 2) {
        for (std::size_t lane = 0; lane < 2; ++lane) {
            const double with = in[lane] * looked_back[at + lane];
            const double without = out[lane] * now[at + lane];
            sum.present[lane] += before[at + lane] * with;
            sum.absent[lane] += before[at + lane] * without;
            now[at + lane] = without + with;
        }
    }
    shares = sum;
}

// `size` numbers, each times that of its lane. `to` may be `from`.
inline void multiply(const double* from, std::size_t size, const double* by_lane, double* to) {
    const double by[2] = {by_lane[0], by_lane[1]};
    for (std::size_t at = 0; at < size; at += 2) {
        for (std::size_t lane = 0; lane < 2; ++lane) to[at + lane] = by[lane] * from[at + lane];
    }
}
inline void add_multiple(const double* from, std::size_t size, const double* by_lane, double* to) {
    const double by[2] = {by_lane[0], by_lane[1]};
    for (std::size_t at = 0; at < size; at += 2) {
        for (std::size_t lane = 0; lane < 2; ++lane) to[at + lane] += by[lane] * from[at + lane];
    }
}

}  // namespace hardover::frontier
