// Sets of faults grown one fault at a time from a case written out for elimination, with their exact weights.
// Inner part of fault_sets; pure numbers.
#pragma once

#include <cstdint>
#include <functional>
#include <vector>

#include "rules/reasoning/frontier.hpp"
#include "rules/reasoning/keyed.hpp"

namespace hardover::frontier {

struct GrownSet {
    int lane = 0;           // 1: with "not on this list"
    int missing = 0;        // answers and requirements that the set cannot account for
    double log_weight = 0;  // ln P(exactly these faults, answers); without what is missing
    double room = 0;        // ln of how much heavier a larger set can be at most
    std::uint64_t key = 0;  // names the set
};

// Sets of one size and what they give to the states.
struct SetLevel {
    int size = 0;
    std::vector<GrownSet> sets;
    std::vector<int> causes;         // per set `size` places, ascending, the unlisted not among them
    std::vector<double> no_worse;    // per set: per state and level
    std::vector<double> per_likely;  // per set: per state, 1 / likelihood
};

class SetGrowth {
  public:
    // Must outlive the object.
    explicit SetGrowth(const Problem& problem);

    // No fault at all.
    SetLevel nothing() const;

    // The heaviest `most` sets with one fault more than one of `level`, those that miss less before those
    // that miss more. Sets of which neither they nor anything grown from them reaches `log_least` are left
    // out, and all of them when none reaches `log_worth`.
    SetLevel one_more(const SetLevel& level, std::size_t most, double log_least, double log_worth) const;

    // ln P(this one, none of the others that count, answers) of every cause that counts, by the index of the
    // FaultCase, whatever there is of those that do not count; and last the same of the unlisted. Those that
    // cannot account for all answers and requirements are left as they are. Goes through every set of the
    // causes that do not count.
    void weigh_alone(const std::vector<bool>& counted, std::vector<double>& log_weights) const;

    // ln P(exactly these of the causes that count, answers), whatever there is of the others.
    double log_weight(const std::vector<int>& causes, bool unlisted, const std::vector<bool>& counted) const;

    // How many causes that can be do not count.
    std::size_t aside(const std::vector<bool>& counted) const { return not_counted(counted).size(); }

    // As indices of the FaultCase, ascending.
    std::vector<int> causes_of(const SetLevel& level, std::size_t set) const;

  private:
    // A cause on one state.
    struct Touch {
        int state = 0;
        const double* no_worse = nullptr;
    };
    // A state as the growth needs it.
    struct Target {
        int levels = 0;
        int at = 0;  // of its levels in a row of no_worse
        const double* likelihood = nullptr;
        double greatest = 0;
    };
    // One set larger than its base, before it is built.
    struct Sprout {
        std::size_t base = 0;
        int cause = -1;
        int missing = 0;
        double log_weight = 0;
    };

    double likelihood(const Target& target, const double* no_worse, const double* more) const;
    void add_lane(int lane, SetLevel& level) const;
    bool holds(const SetLevel& level, std::size_t set, int cause) const;
    void bound_gains();
    double log_looseness(const SetLevel& level, std::size_t set) const;
    bool sprout(const SetLevel& level, std::size_t base, int cause, double log_bar, Sprout& grown) const;
    std::vector<Sprout> sprouts(const SetLevel& level, std::size_t enough, double log_least) const;
    bool grown_before(const SetLevel& level, const Keyed<std::size_t>& place, std::size_t set,
                      int cause) const;
    template <typename Wanted, typename Take>
    bool each_sprout(const SetLevel& level, std::size_t set, double log_least, double log_bar, Wanted wanted,
                     Take take) const;
    bool any_worth(const SetLevel& level, double log_least, double log_worth) const;
    void build(const SetLevel& level, const Sprout& from, SetLevel& grown) const;
    void reserve(SetLevel& level, std::size_t sets) const;
    double room_of(int lane, const double* per_likely) const;
    bool counts(int cause, const std::vector<bool>& counted) const {
        return counted[static_cast<std::size_t>(problem_.causes[cause].index)];
    }
    std::vector<int> not_counted(const std::vector<bool>& counted) const;
    SetLevel only_unlisted() const;
    // Calls `visit(level, set)` for the sets of `level` and all grown from them by causes of `more`,
    // ascending.
    using Visit = std::function<void(const SetLevel&, std::size_t)>;
    void for_each_with(SetLevel level, const std::vector<int>& more, const Visit& visit) const;

    const Problem& problem_;
    std::vector<Target> targets_;
    std::vector<Touch> touches_;  // by the links of the causes
    std::vector<double> odds_;    // per cause and lane
    std::vector<double> log_odds_;
    std::vector<char> surely_;  // per cause and lane: an answer cannot be without it
    // Per cause and lane: ln of how much heavier it can make a set, but for what the loose states do.
    std::vector<double> log_gain_;
    std::vector<int> loose_;           // states whose likelihood a cause may raise further in a larger set
    std::vector<int> by_gain_[lanes];  // causes that can be, the greatest gain first
    double log_favoured_[lanes] = {0, 0};  // ln of the product of all odds above 1
    int width_ = 0;                        // of a row of no_worse
};

}  // namespace hardover::frontier
