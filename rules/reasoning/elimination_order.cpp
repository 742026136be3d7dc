// The order in which causes are taken so that few findings are open at once (greedy, in two ways where it
// matters).
#include <algorithm>
#include <bit>
#include <cmath>

#include "rules/reasoning/frontier.hpp"

namespace hardover::frontier {

namespace {

using Mask = std::vector<std::uint64_t>;

// Tables larger than this, in all, are worth looking for a second order.
constexpr double worth_a_second_look = 1 << 14;

void set_bit(Mask& mask, int bit) {
    mask[bit / 64] |= std::uint64_t{1} << (bit % 64);
}

template <typename Visit>
void for_each_bit(const Mask& mask, Visit visit) {
    for (std::size_t word = 0; word < mask.size(); ++word) {
        for (std::uint64_t left = mask[word]; left != 0; left &= left - 1) {
            visit(static_cast<int>(word * 64) + std::countr_zero(left));
        }
    }
}

struct Search {
    const Problem& problem;
    std::vector<Mask> states_of;              // per cause
    std::vector<std::vector<int>> causes_of;  // per state, still to be taken
    std::vector<double> bits;                 // per state
    std::vector<char> taken;                  // per cause
    Mask open;
    double open_bits = 1;  // the two lanes
    Order order;

    explicit Search(const Problem& p) : problem(p) {
        const std::size_t words = (p.states.size() + 63) / 64;
        open.assign(words, 0);
        states_of.assign(p.causes.size(), Mask(words, 0));
        causes_of.resize(p.states.size());
        taken.assign(p.causes.size(), 0);
        for (const State& state : p.states) bits.push_back(std::log2(state.levels));
        for (std::size_t i = 0; i < p.causes.size(); ++i) {
            for (int l = p.causes[i].first_link; l < p.causes[i].last_link; ++l) {
                set_bit(states_of[i], p.links[l].state);
                // A cause that names a finding twice still acts at one moment.
                std::vector<int>& causes = causes_of[p.links[l].state];
                if (causes.empty() || causes.back() != static_cast<int>(i)) {
                    causes.push_back(static_cast<int>(i));
                }
            }
        }
    }

    double bits_opened_by(int state) const {
        double opened = 0;
        Mask all(open.size(), 0);
        for (int cause : causes_of[state]) {
            for (std::size_t w = 0; w < all.size(); ++w) all[w] |= states_of[cause][w] & ~open[w];
        }
        for_each_bit(all, [&](int s) { opened += bits[s]; });
        return opened;
    }

    // The state that opens fewest bits; then the one with fewest causes left; then the first.
    int next_to_close() const {
        int best = -1;
        double best_opened = 0;
        for (std::size_t s = 0; s < causes_of.size(); ++s) {
            if (causes_of[s].empty()) continue;
            const double opened = bits_opened_by(static_cast<int>(s));
            const bool better = best < 0 || opened < best_opened ||
                                (opened == best_opened && causes_of[s].size() < causes_of[best].size());
            if (better) {
                best = static_cast<int>(s);
                best_opened = opened;
            }
        }
        return best;
    }

    // The cause that opens fewest bits for those it closes, where one of n causes left closes an n-th; then
    // the one that opens fewest; then the first. -1: none left.
    int next_cause() const {
        int best = -1;
        double best_growth = 0;
        double best_opened = 0;
        for (std::size_t i = 0; i < states_of.size(); ++i) {
            if (taken[i]) continue;
            double opened = 0;
            double closed = 0;
            for_each_bit(states_of[i], [&](int s) {
                if ((open[s / 64] >> (s % 64) & 1) == 0) opened += bits[s];
                closed += bits[s] / static_cast<double>(causes_of[s].size());
            });
            const double growth = opened - closed;
            if (best >= 0 && (growth > best_growth || (growth == best_growth && opened >= best_opened))) {
                continue;
            }
            best = static_cast<int>(i);
            best_growth = growth;
            best_opened = opened;
        }
        return best;
    }

    void take(int cause) {
        taken[static_cast<std::size_t>(cause)] = 1;
        order.causes.push_back(cause);
        for_each_bit(states_of[cause], [&](int s) {
            if ((open[s / 64] >> (s % 64) & 1) == 0) {
                set_bit(open, s);
                open_bits += bits[s];
            }
        });
        order.table_entries += std::exp2(open_bits);
        if (open_bits > order.width_bits) {
            order.width_bits = open_bits;
            order.open_at_widest.clear();
            for_each_bit(open, [&](int s) { order.open_at_widest.push_back(s); });
        }
        for_each_bit(states_of[cause], [&](int s) {
            std::erase(causes_of[s], cause);
            if (causes_of[s].empty()) {
                open[s / 64] &= ~(std::uint64_t{1} << (s % 64));
                open_bits -= bits[s];
            }
        });
    }
};

// State by state: all causes of the one that opens fewest bits.
Order by_state(const Problem& problem) {
    Search search(problem);
    for (int state = search.next_to_close(); state >= 0; state = search.next_to_close()) {
        const std::vector<int> causes = search.causes_of[state];
        for (int cause : causes) search.take(cause);
    }
    for (std::size_t i = 0; i < problem.causes.size(); ++i) {
        if (problem.causes[i].first_link == problem.causes[i].last_link) search.take(static_cast<int>(i));
    }
    return search.order;
}

Order by_cause(const Problem& problem) {
    Search search(problem);
    for (int cause = search.next_cause(); cause >= 0; cause = search.next_cause()) search.take(cause);
    return search.order;
}

}  // namespace

Order elimination_order(const Problem& problem) {
    Order order = by_state(problem);
    if (order.table_entries <= worth_a_second_look) return order;
    Order other = by_cause(problem);
    return other.table_entries < order.table_entries ? other : order;
}

}  // namespace hardover::frontier
