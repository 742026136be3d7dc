// The order in which causes are taken so that few findings are open at once (greedy, in two ways where it
// matters).
#include <algorithm>
#include <bit>
#include <cmath>
#include <utility>

#include "rules/reasoning/frontier.hpp"

namespace hardover::frontier {

namespace {

// Tables larger than this, in all, are worth looking for a second order, and for a third.
constexpr double worth_a_second_look = 1 << 14;
constexpr double worth_a_third_look = 1 << 16;

// Sets of states are bits in `words` words.
struct Search {
    const Problem& problem;
    std::size_t words;
    std::vector<std::uint64_t> states_of;  // per cause: its states
    std::vector<std::uint64_t> open;
    std::vector<int> first_cause;  // per state, and last the end: where its causes begin
    std::vector<int> causes;       // by state, ascending
    std::vector<int> left;         // per state: causes still to be taken
    std::vector<double> bits;      // per state
    std::vector<char> taken;       // per cause
    mutable std::vector<std::uint64_t> opened;
    double open_bits = 1;  // the two lanes
    Order order;

    explicit Search(const Problem& p) : problem(p), words((p.states.size() + 63) / 64) {
        open.assign(words, 0);
        opened.assign(words, 0);
        states_of.assign(p.causes.size() * words, 0);
        taken.assign(p.causes.size(), 0);
        left.assign(p.states.size(), 0);
        for (const State& state : p.states) bits.push_back(std::log2(state.levels));
        for (std::size_t i = 0; i < p.causes.size(); ++i) {
            for (int l = p.causes[i].first_link; l < p.causes[i].last_link; ++l) {
                set_bit(states_of.data() + i * words, p.links[l].state);
            }
            // A cause that names a finding twice still acts at one moment.
            for_each_state(i, [&](int state) { ++left[state]; });
        }
        first_cause.assign(1, 0);
        for (int count : left) first_cause.push_back(first_cause.back() + count);
        causes.resize(static_cast<std::size_t>(first_cause.back()));
        std::vector<int> next = first_cause;
        for (std::size_t i = 0; i < p.causes.size(); ++i) {
            for_each_state(i, [&](int state) { causes[next[state]++] = static_cast<int>(i); });
        }
        order.causes.reserve(p.causes.size());
    }

    static void set_bit(std::uint64_t* mask, int bit) { mask[bit / 64] |= std::uint64_t{1} << (bit % 64); }
    bool is_open(int state) const { return (open[state / 64] >> (state % 64) & 1) != 0; }

    template <typename Visit>
    void for_each(const std::uint64_t* mask, Visit visit) const {
        for (std::size_t word = 0; word < words; ++word) {
            for (std::uint64_t rest = mask[word]; rest != 0; rest &= rest - 1) {
                visit(static_cast<int>(word * 64) + std::countr_zero(rest));
            }
        }
    }
    template <typename Visit>
    void for_each_state(std::size_t cause, Visit visit) const {
        for_each(states_of.data() + cause * words, visit);
    }

    double bits_opened_by(int state) const {
        std::fill(opened.begin(), opened.end(), 0);
        for (int n = first_cause[state]; n < first_cause[state + 1]; ++n) {
            if (taken[causes[n]]) continue;
            const std::uint64_t* mask = states_of.data() + static_cast<std::size_t>(causes[n]) * words;
            for (std::size_t w = 0; w < words; ++w) opened[w] |= mask[w] & ~open[w];
        }
        double sum = 0;
        for_each(opened.data(), [&](int s) { sum += bits[s]; });
        return sum;
    }

    // The state that opens fewest bits; then the one with fewest causes left; then the first.
    int next_to_close() const {
        int best = -1;
        double best_opened = 0;
        for (std::size_t s = 0; s < left.size(); ++s) {
            if (left[s] == 0) continue;
            const double bits_opened = bits_opened_by(static_cast<int>(s));
            const bool better =
                best < 0 || bits_opened < best_opened || (bits_opened == best_opened && left[s] < left[best]);
            if (better) {
                best = static_cast<int>(s);
                best_opened = bits_opened;
            }
        }
        return best;
    }

    // The cause that opens fewest bits for those it closes, where one of n causes left closes an n-th and a
    // bit closed counts for `worth` opened; then the one that opens fewest; then the first. -1: none left.
    int next_cause(double worth) const {
        int best = -1;
        double best_growth = 0;
        double best_opened = 0;
        for (std::size_t i = 0; i < taken.size(); ++i) {
            if (taken[i]) continue;
            double bits_opened = 0;
            double closed = 0;
            for_each_state(i, [&](int s) {
                if (!is_open(s)) bits_opened += bits[s];
                closed += bits[s] / static_cast<double>(left[s]);
            });
            const double growth = bits_opened - worth * closed;
            if (best >= 0 &&
                (growth > best_growth || (growth == best_growth && bits_opened >= best_opened))) {
                continue;
            }
            best = static_cast<int>(i);
            best_growth = growth;
            best_opened = bits_opened;
        }
        return best;
    }

    void take(int cause) {
        const auto c = static_cast<std::size_t>(cause);
        taken[c] = 1;
        order.causes.push_back(cause);
        for_each_state(c, [&](int s) {
            if (is_open(s)) return;
            set_bit(open.data(), s);
            open_bits += bits[s];
        });
        order.table_entries += std::exp2(open_bits);
        if (open_bits > order.width_bits) {
            order.width_bits = open_bits;
            order.open_at_widest.clear();
            for_each(open.data(), [&](int s) { order.open_at_widest.push_back(s); });
        }
        for_each_state(c, [&](int s) {
            if (--left[s] > 0) return;
            open[s / 64] &= ~(std::uint64_t{1} << (s % 64));
            open_bits -= bits[s];
        });
    }
};

// State by state: all causes of the one that opens fewest bits.
Order by_state(const Problem& problem) {
    Search search(problem);
    for (int state = search.next_to_close(); state >= 0; state = search.next_to_close()) {
        for (int n = search.first_cause[state]; n < search.first_cause[state + 1]; ++n) {
            if (!search.taken[search.causes[n]]) search.take(search.causes[n]);
        }
    }
    for (std::size_t i = 0; i < problem.causes.size(); ++i) {
        if (problem.causes[i].first_link == problem.causes[i].last_link) search.take(static_cast<int>(i));
    }
    return search.order;
}

Order by_cause(const Problem& problem, double worth) {
    Search search(problem);
    for (int cause = search.next_cause(worth); cause >= 0; cause = search.next_cause(worth)) {
        search.take(cause);
    }
    return search.order;
}

}  // namespace

Order elimination_order(const Problem& problem) {
    // On the wide cases of simulated jobs three for one made tables a third smaller than one for one; neither
    // is the better everywhere.
    Order order = by_state(problem);
    for (const auto& [worth_a_look, worth] :
         {std::pair{worth_a_second_look, 1.0}, {worth_a_third_look, 3.0}}) {
        if (order.table_entries <= worth_a_look) return order;
        Order other = by_cause(problem, worth);
        if (other.table_entries < order.table_entries) order = std::move(other);
    }
    return order;
}

}  // namespace hardover::frontier
