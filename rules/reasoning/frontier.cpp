// The two passes over the tables: forward gives the probability of the answers, backward every cause's share.
#include "rules/reasoning/frontier.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <span>
#include <utility>

#include "rules/reasoning/table_steps.hpp"

namespace hardover::frontier {

namespace {

// An open state as a digit of the table index.
struct Digit {
    int state = 0;
    std::size_t stride = 1;
};

// So many numbers at most are worked on at a time, while they are in the nearest memory.
constexpr std::size_t at_hand = 2048;

// A stretch of a list that all steps share.
struct Stretch {
    std::size_t from = 0;
    std::size_t to = 0;
};

// What happened to the table around one cause, for the way back.
struct Step {
    int cause = 0;
    Stretch opened;       // states, in order; each became the highest digit
    Stretch closed;       // digits, in order, with the stride they had then
    Stretch digits;       // while the cause acts
    Stretch before;       // the table the cause acts on
    bool narrow = false;  // see Passes::narrow()
};

class Passes {
  public:
    Passes(const Problem& problem, const Order& order) : problem_(problem), order_(order) {
        left_.assign(problem.states.size(), 0);
        for (const Cause& cause : problem.causes) {
            for (int l = cause.first_link; l < cause.last_link; ++l) ++left_[problem.links[l].state];
        }
        steps_.reserve(order.causes.size());
        kept_.swap(spare());
        kept_.clear();
        kept_.reserve(static_cast<std::size_t>(order.table_entries));
    }
    ~Passes() {
        if (kept_.capacity() <= most_spared) kept_.swap(spare());
    }
    Passes(const Passes&) = delete;
    Passes& operator=(const Passes&) = delete;

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
            const auto [present, absent] = undo(steps_[i], back);
            const int cause = problem_.causes[steps_[i].cause].index;
            result.marginal[cause] = present / (present + absent);
            result.log_odds[cause] = std::log(present) - std::log(absent);
            rescale(back);
        }
    }

    double log_total() const { return log_ + std::log(table_[0] + table_[1]); }
    const Table& lanes_left() const { return table_; }

  private:
    // Room for the tables kept, from one run to the next of a thread: having megabytes mapped and cleared
    // anew takes as long as filling them.
    static Table& spare() {
        static thread_local Table room;
        return room;
    }
    static constexpr std::size_t most_spared = 1 << 21;

    // A finding with evidence that no possible cause shows: stray or the unlisted gave it.
    void settle_without_causes(const State& state) {
        const double* start = problem_.start_of(state);
        const double* likelihood = problem_.likelihood_of(state);
        for (int lane = 0; lane < lanes; ++lane) {
            double sum = 0;
            for (int k = 0; k < state.levels; ++k) sum += start[k * lanes + lane] * likelihood[k];
            table_[lane] *= sum;
        }
    }

    void open(int state) {
        const State& s = problem_.states[state];
        const double* start = problem_.start_of(s);
        const std::size_t size = table_.size();
        table_.resize(size * s.levels);
        for (int k = s.levels - 1; k >= 0; --k) {
            multiply(table_.data(), size, start + k * lanes, table_.data() + k * size);
        }
        digits_.push_back({state, size});
    }

    void close(std::size_t which) {
        const Digit digit = digits_[which];
        const State& s = problem_.states[digit.state];
        const double* likelihood = problem_.likelihood_of(s);
        const std::size_t high = table_.size() / (digit.stride * s.levels);
        for (std::size_t h = 0; h < high; ++h) {
            double* to = table_.data() + h * digit.stride;
            const double* from = table_.data() + h * digit.stride * s.levels;
            for (std::size_t low = 0; low < digit.stride; ++low) {
                double sum = 0;
                for (int k = 0; k < s.levels; ++k) sum += likelihood[k] * from[k * digit.stride + low];
                to[low] = sum;
            }
        }
        table_.resize(high * digit.stride);
        for (Digit& other : digits_) {
            if (other.stride > digit.stride) other.stride /= s.levels;
        }
        digits_.erase(digits_.begin() + static_cast<std::ptrdiff_t>(which));
        closed_.push_back(digit);
    }

    std::size_t open_digit(int state) const {
        std::size_t d = 0;
        while (d < digits_.size() && digits_[d].state != state) ++d;
        return d;
    }

    // The findings that the cause acts on, and how much of a table with these digits is worked on at a time.
    void find_acted_on(const Cause& cause, std::span<const Digit> digits) {
        acted_on_.clear();
        for (int l = cause.first_link; l < cause.last_link; ++l) {
            const Link& link = problem_.links[l];
            const auto digit = std::find_if(digits.begin(), digits.end(),
                                            [&](const Digit& d) { return d.state == link.state; });
            acted_on_.push_back(
                {digit->stride, problem_.states[link.state].levels, problem_.numbers.data() + link.at});
        }
        at_a_time_ = lanes;
        for (const Digit& digit : digits) {
            const std::size_t block = digit.stride * problem_.states[digit.state].levels;
            if (block <= at_hand) at_a_time_ = std::max(at_a_time_, block);
        }
    }

    // Lets the cause act on a copy of the table by `one` finding after the other, and calls
    // then(from, part, scale) for the parts of the copy, which are to be multiplied with `scale`. What lies
    // within a part is done part by part.
    template <typename One, typename Then>
    void act(const Table& table, One one, Then then) {
        const auto is_near = [&](const ActedOn& on) { return on.block() <= at_a_time_; };
        const bool all_near = std::all_of(acted_on_.begin(), acted_on_.end(), is_near);
        double scale = 1;
        if (all_near) {
            acted_.resize(at_a_time_);
        } else {
            acted_ = table;
            for (const ActedOn& on : acted_on_) {
                if (!is_near(on)) scale *= one(acted_, on);
            }
        }
        for (std::size_t from = 0; from < table.size(); from += at_a_time_) {
            if (all_near) std::copy_n(table.begin() + from, at_a_time_, acted_.begin());
            const Part part(acted_.data() + (all_near ? 0 : from), at_a_time_);
            double scale_of_part = scale;
            for (const ActedOn& on : acted_on_) {
                if (is_near(on)) scale_of_part *= one(part, on);
            }
            then(from, part, scale_of_part);
        }
    }

    // A cause on the only open state, of two levels, that stays open: most causes have to do with nothing but
    // that something is wrong.
    bool narrow(const Cause& cause) const {
        if (cause.last_link - cause.first_link != 1 || digits_.size() != 1) return false;
        const int state = problem_.links[cause.first_link].state;
        return digits_[0].state == state && problem_.states[state].levels == 2 && left_[state] > 1;
    }

    // What take() does to such a cause.
    void take_narrow(int which) {
        const Cause& cause = problem_.causes[which];
        const Link& link = problem_.links[cause.first_link];
        const double* how_often = problem_.numbers.data() + link.at;
        const double* no_worse = how_often + 2;
        Step step;
        step.cause = which;
        step.narrow = true;
        step.before.from = kept_.size();
        kept_.insert(kept_.end(), table_.begin(), table_.end());
        for (int lane = 0; lane < lanes; ++lane) {
            double& worse = table_[lane];
            double& better = table_[lanes + lane];
            const double acted_worse = worse * no_worse[0] + how_often[0] * better;
            const double acted_better = better * no_worse[1];
            worse = cause.absent[lane] * worse + cause.present[lane] * acted_worse;
            better = cause.absent[lane] * better + cause.present[lane] * acted_better;
        }
        --left_[link.state];
        log_ += rescale(table_);
        steps_.push_back(step);
    }

    // What undo() does to such a cause.
    std::pair<double, double> undo_narrow(const Step& step, Table& back) const {
        const Cause& cause = problem_.causes[step.cause];
        const double* how_often = problem_.numbers.data() + problem_.links[cause.first_link].at;
        const double* no_worse = how_often + 2;
        const double* before = kept_.data() + step.before.from;
        double present = 0;
        double absent = 0;
        double acted[2 * lanes];
        for (int level = 0; level < 2; ++level) {
            for (int lane = 0; lane < lanes; ++lane) {
                const int at = level * lanes + lane;
                acted[at] = back[at] * no_worse[level] + (level == 1 ? how_often[0] * back[lane] : 0);
            }
        }
        for (int at = 0; at < 2 * lanes; ++at) {
            const double with = cause.present[at % lanes] * acted[at];
            const double without = cause.absent[at % lanes] * back[at];
            present += before[at] * with;
            absent += before[at] * without;
            back[at] = without + with;
        }
        return {present, absent};
    }

    void take(int which) {
        const Cause& cause = problem_.causes[which];
        if (narrow(cause)) return take_narrow(which);
        Step step;
        step.cause = which;
        step.opened.from = opened_.size();
        for (int l = cause.first_link; l < cause.last_link; ++l) {
            const int state = problem_.links[l].state;
            if (open_digit(state) < digits_.size()) continue;
            open(state);
            opened_.push_back(state);
        }
        step.opened.to = opened_.size();
        step.digits.from = digits_then_.size();
        digits_then_.insert(digits_then_.end(), digits_.begin(), digits_.end());
        step.digits.to = digits_then_.size();
        step.before.from = kept_.size();
        kept_.insert(kept_.end(), table_.begin(), table_.end());
        step.before.to = kept_.size();
        find_acted_on(cause, digits_);
        act(table_, let_cause_act, [&](std::size_t from, Part part, double scale) {
            const double present[lanes] = {cause.present[0] * scale, cause.present[1] * scale};
            mix({table_.data() + from, part.size()}, part, cause.absent, present);
        });
        step.closed.from = closed_.size();
        for (int l = cause.first_link; l < cause.last_link; ++l) {
            const int state = problem_.links[l].state;
            if (--left_[state] == 0) close(open_digit(state));
        }
        step.closed.to = closed_.size();
        log_ += rescale(table_);
        steps_.push_back(step);
    }

    // Keeps a table within the range of a double by a power of two, which is exact. Returns ln of what was
    // taken out.
    static double rescale(Table& table) {
        const auto is_large = [](double value) { return value > 1e-100; };  // mostly the first few are
        if (std::any_of(table.begin(), table.end(), is_large)) return 0;
        const double greatest = *std::max_element(table.begin(), table.end());
        if (greatest <= 0) return 0;
        int exponent = 0;
        std::frexp(greatest, &exponent);
        for (double& value : table) value = std::ldexp(value, -exponent);
        return exponent * std::log(2.0);
    }

    // What the cause comes to, present and absent.
    std::pair<double, double> undo(const Step& step, Table& back) {
        if (step.narrow) return undo_narrow(step, back);
        for (std::size_t c = step.closed.to; c-- > step.closed.from;) reopen(closed_[c], back);
        const Cause& cause = problem_.causes[step.cause];
        find_acted_on(cause, {digits_then_.data() + step.digits.from, step.digits.to - step.digits.from});
        Shares shares;
        act(back, look_back_through_cause, [&](std::size_t from, Part part, double scale) {
            const double present[lanes] = {cause.present[0] * scale, cause.present[1] * scale};
            mix_back({back.data() + from, part.size()}, part, kept_.data() + step.before.from + from,
                     cause.absent, present, shares);
        });
        for (std::size_t o = step.opened.to; o-- > step.opened.from;) unopen(opened_[o], back);
        return {shares.present[0] + shares.present[1], shares.absent[0] + shares.absent[1]};
    }

    void reopen(const Digit& digit, Table& back) {
        const State& s = problem_.states[digit.state];
        const double* likelihood = problem_.likelihood_of(s);
        const std::size_t high = back.size() / digit.stride;
        wide_.resize(back.size() * s.levels);
        for (std::size_t h = 0; h < high; ++h) {
            for (int k = 0; k < s.levels; ++k) {
                double* to = wide_.data() + (h * s.levels + k) * digit.stride;
                const double* from = back.data() + h * digit.stride;
                for (std::size_t low = 0; low < digit.stride; ++low) to[low] = likelihood[k] * from[low];
            }
        }
        back.swap(wide_);
    }

    void unopen(int state, Table& back) const {
        const State& s = problem_.states[state];
        const double* start = problem_.start_of(s);
        const std::size_t size = back.size() / s.levels;
        multiply(back.data(), size, start, back.data());
        for (int k = 1; k < s.levels; ++k) {
            add_multiple(back.data() + k * size, size, start + k * lanes, back.data());
        }
        back.resize(size);
    }

    const Problem& problem_;
    const Order& order_;
    Table table_;
    Table acted_;
    Table wide_;
    std::vector<ActedOn> acted_on_;  // by the cause at hand
    std::size_t at_a_time_ = lanes;
    std::vector<Digit> digits_;
    std::vector<int> left_;  // links still to come, per state
    double log_ = 0;

    // By the stretches of the steps.
    std::vector<Step> steps_;
    std::vector<int> opened_;
    std::vector<Digit> closed_;
    std::vector<Digit> digits_then_;
    Table kept_;
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

double log_evidence(const Problem& problem, const Order& order) {
    Passes passes(problem, order);
    passes.forward();
    return passes.log_total();
}

}  // namespace hardover::frontier
