// The two passes over the tables: forward gives the probability of the answers, backward every cause's share.
#include "rules/reasoning/frontier.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace hardover::frontier {

namespace {

using Table = std::vector<double>;

// An open state as a digit of the table index.
struct Digit {
    int state = 0;
    std::size_t stride = 1;
};

// Level `k` afterwards: it was k and the cause gives nothing worse, or it was better and the cause gives k.
void let_cause_act(Table& table, std::size_t stride, int levels, const double* how_often) {
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
void look_back_through_cause(Table& table, std::size_t stride, int levels, const double* how_often) {
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

// What happened to the table around one cause, for the way back.
struct Step {
    int cause = 0;
    std::vector<int> opened;    // states, in order; each became the highest digit
    std::vector<Digit> closed;  // in order, with the stride it had then
    std::vector<Digit> digits;  // while the cause acts
    Table before;               // the table the cause acts on
};

class Passes {
  public:
    Passes(const Problem& problem, const Order& order) : problem_(problem), order_(order) {
        left_.assign(problem.states.size(), 0);
        for (const Cause& cause : problem.causes) {
            for (int l = cause.first_link; l < cause.last_link; ++l) ++left_[problem.links[l].state];
        }
    }

    void forward() {
        table_.assign(problem_.lane_weight, problem_.lane_weight + lanes);
        log_ = problem_.log_constant;
        for (std::size_t s = 0; s < problem_.states.size(); ++s) {
            if (left_[s] == 0) settle_without_causes(problem_.states[s]);
        }
        for (int cause : order_.causes) take(cause);
    }

    void backward(Posterior& result) {
        Table back(lanes, 1.0);
        for (std::size_t i = steps_.size(); i-- > 0;) {
            undo(steps_[i], back, result);
            steps_[i].before = Table();
        }
    }

    double log_total() const { return log_ + std::log(table_[0] + table_[1]); }
    const Table& lanes_left() const { return table_; }

  private:
    // A finding with evidence that no possible cause shows: stray or the unlisted gave it.
    void settle_without_causes(const State& state) {
        for (int lane = 0; lane < lanes; ++lane) {
            double sum = 0;
            for (int k = 0; k < state.levels; ++k) sum += state.start[k * lanes + lane] * state.likelihood[k];
            table_[lane] *= sum;
        }
    }

    void open(int state) {
        const State& s = problem_.states[state];
        const std::size_t size = table_.size();
        table_.resize(size * s.levels);
        for (int k = s.levels - 1; k >= 0; --k) {
            for (std::size_t at = 0; at < size; ++at) {
                table_[k * size + at] = table_[at] * s.start[k * lanes + at % lanes];
            }
        }
        digits_.push_back({state, size});
    }

    void close(std::size_t which, Step& step) {
        const Digit digit = digits_[which];
        const State& s = problem_.states[digit.state];
        const std::size_t high = table_.size() / (digit.stride * s.levels);
        for (std::size_t h = 0; h < high; ++h) {
            double* to = &table_[h * digit.stride];
            const double* from = &table_[h * digit.stride * s.levels];
            for (std::size_t low = 0; low < digit.stride; ++low) {
                double sum = 0;
                for (int k = 0; k < s.levels; ++k) sum += s.likelihood[k] * from[k * digit.stride + low];
                to[low] = sum;
            }
        }
        table_.resize(high * digit.stride);
        for (Digit& other : digits_) {
            if (other.stride > digit.stride) other.stride /= s.levels;
        }
        digits_.erase(digits_.begin() + static_cast<std::ptrdiff_t>(which));
        step.closed.push_back(digit);
    }

    std::size_t stride_of(const std::vector<Digit>& digits, int state) const {
        return std::find_if(digits.begin(), digits.end(), [&](const Digit& d) { return d.state == state; })
            ->stride;
    }

    void take(int which) {
        const Cause& cause = problem_.causes[which];
        Step step;
        step.cause = which;
        for (int l = cause.first_link; l < cause.last_link; ++l) {
            const int state = problem_.links[l].state;
            const bool is_open =
                std::any_of(digits_.begin(), digits_.end(), [&](const Digit& d) { return d.state == state; });
            if (is_open) continue;
            open(state);
            step.opened.push_back(state);
        }
        step.digits = digits_;
        step.before = table_;
        acted_ = table_;
        for (int l = cause.first_link; l < cause.last_link; ++l) {
            const Link& link = problem_.links[l];
            let_cause_act(acted_, stride_of(digits_, link.state), problem_.states[link.state].levels,
                          &problem_.numbers[link.at]);
        }
        for (std::size_t at = 0; at < table_.size(); ++at) {
            table_[at] = cause.absent[at % lanes] * table_[at] + cause.present[at % lanes] * acted_[at];
        }
        for (int l = cause.first_link; l < cause.last_link; ++l) {
            const int state = problem_.links[l].state;
            if (--left_[state] > 0) continue;
            const auto found = std::find_if(digits_.begin(), digits_.end(),
                                            [&](const Digit& d) { return d.state == state; });
            close(static_cast<std::size_t>(found - digits_.begin()), step);
        }
        log_ += rescale(table_);
        steps_.push_back(std::move(step));
    }

    // Keeps a table within the range of a double by a power of two, which is exact. Returns ln of what was
    // taken out.
    static double rescale(Table& table) {
        const double greatest = *std::max_element(table.begin(), table.end());
        if (greatest > 1e-100 || greatest <= 0) return 0;
        int exponent = 0;
        std::frexp(greatest, &exponent);
        for (double& value : table) value = std::ldexp(value, -exponent);
        return exponent * std::log(2.0);
    }

    void undo(const Step& step, Table& back, Posterior& result) {
        for (std::size_t c = step.closed.size(); c-- > 0;) reopen(step.closed[c], back);
        const Cause& cause = problem_.causes[step.cause];
        acted_ = back;
        for (int l = cause.first_link; l < cause.last_link; ++l) {
            const Link& link = problem_.links[l];
            look_back_through_cause(acted_, stride_of(step.digits, link.state),
                                    problem_.states[link.state].levels, &problem_.numbers[link.at]);
        }
        double present = 0;
        double absent = 0;
        for (std::size_t at = 0; at < back.size(); ++at) {
            present += cause.present[at % lanes] * step.before[at] * acted_[at];
            absent += cause.absent[at % lanes] * step.before[at] * back[at];
        }
        result.marginal[cause.index] = present / (present + absent);
        result.log_odds[cause.index] = std::log(present) - std::log(absent);
        for (std::size_t at = 0; at < back.size(); ++at) {
            back[at] = cause.absent[at % lanes] * back[at] + cause.present[at % lanes] * acted_[at];
        }
        for (std::size_t o = step.opened.size(); o-- > 0;) unopen(step.opened[o], back);
        rescale(back);
    }

    void reopen(const Digit& digit, Table& back) const {
        const State& s = problem_.states[digit.state];
        const std::size_t high = back.size() / digit.stride;
        Table wide(back.size() * s.levels);
        for (std::size_t h = 0; h < high; ++h) {
            for (int k = 0; k < s.levels; ++k) {
                double* to = &wide[(h * s.levels + k) * digit.stride];
                const double* from = &back[h * digit.stride];
                for (std::size_t low = 0; low < digit.stride; ++low) to[low] = s.likelihood[k] * from[low];
            }
        }
        back.swap(wide);
    }

    void unopen(int state, Table& back) const {
        const State& s = problem_.states[state];
        const std::size_t size = back.size() / s.levels;
        for (std::size_t at = 0; at < size; ++at) {
            double sum = 0;
            for (int k = 0; k < s.levels; ++k) sum += s.start[k * lanes + at % lanes] * back[k * size + at];
            back[at] = sum;
        }
        back.resize(size);
    }

    const Problem& problem_;
    const Order& order_;
    Table table_;
    Table acted_;
    std::vector<Digit> digits_;
    std::vector<int> left_;  // links still to come, per state
    std::vector<Step> steps_;
    double log_ = 0;
};

}  // namespace

void eliminate(const Problem& problem, const Order& order, Posterior& result) {
    result.log_odds.resize(result.marginal.size(), -std::numeric_limits<double>::infinity());
    result.width_bits = order.width_bits;
    Passes passes(problem, order);
    passes.forward();
    const std::vector<double>& left = passes.lanes_left();
    result.log_evidence = passes.log_total();
    if (!std::isfinite(result.log_evidence)) {
        result.possible = false;
        return;
    }
    result.unlisted = left[1] / (left[0] + left[1]);
    result.unlisted_log_odds = std::log(left[1]) - std::log(left[0]);
    passes.backward(result);
}

}  // namespace hardover::frontier
