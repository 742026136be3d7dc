#include "rules/reasoning/set_growth.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <utility>

#include "rules/reasoning/log_sum.hpp"

namespace hardover::frontier {

namespace {

// What cannot give an answer at all still has supersets that can: a likelihood is kept at this number instead
// of 0 and counted as missing.
constexpr double impossible = 1e-250;

constexpr double rounding = 1e-9;  // of a bound in ln

// Products are taken over into a logarithm beyond this.
constexpr double large = 1e50;

// A set's key is that of its lane, mixed with that of every cause in it.
std::uint64_t key_of_lane(int lane) {
    return mixed(static_cast<std::uint64_t>(lane) + 1);
}

std::uint64_t key_of_cause(int cause) {
    return mixed(static_cast<std::uint64_t>(cause) + lanes + 1);
}

}  // namespace

SetGrowth::SetGrowth(const Problem& problem) : problem_(problem) {
    for (const State& state : problem.states) {
        const double* likelihood = problem.likelihood_of(state);
        targets_.push_back(
            {state.levels, width_, likelihood, *std::max_element(likelihood, likelihood + state.levels)});
        width_ += state.levels;
    }
    touches_.reserve(problem.links.size());
    for (const Link& link : problem.links) {
        touches_.push_back(
            {link.state, problem.numbers.data() + link.at + problem.states[link.state].levels});
    }
    for (auto* numbers : {&odds_, &log_odds_}) numbers->reserve(problem.causes.size() * lanes);
    surely_.reserve(problem.causes.size() * lanes);
    for (auto& causes : by_gain_) causes.reserve(problem.causes.size());
    for (std::size_t i = 0; i < problem.causes.size(); ++i) {
        const Cause& cause = problem.causes[i];
        for (int lane = 0; lane < lanes; ++lane) {
            const bool surely = cause.absent[lane] <= impossible;
            odds_.push_back(cause.present[lane] / std::max(cause.absent[lane], impossible));
            log_odds_.push_back(std::log(odds_.back()));
            surely_.push_back(surely);
            if (cause.present[lane] > 0) by_gain_[lane].push_back(static_cast<int>(i));
            if (odds_.back() > 1) log_favoured_[lane] += log_odds_.back();
        }
    }
    bound_gains();
    std::vector<std::pair<double, int>> greatest_first;  // minus the gain, and the cause
    for (int lane = 0; lane < lanes; ++lane) {
        greatest_first.clear();
        for (int cause : by_gain_[lane]) greatest_first.push_back({-log_gain_[cause * lanes + lane], cause});
        std::sort(greatest_first.begin(), greatest_first.end());
        for (std::size_t n = 0; n < greatest_first.size(); ++n) by_gain_[lane][n] = greatest_first[n].second;
    }
}

// A likelihood that never rises from a level to a better one is L0 - D with D >= 0, and D shrinks with every
// cause. One more cause leaves of D no less than its chance m to give nothing but the best level, so that it
// multiplies the likelihood by (L0 - m D) / (L0 - D) at most, which is the greater the larger D is: most with
// no cause at all. Any other state is loose, and so is one that no cause at all cannot account for.
void SetGrowth::bound_gains() {
    log_gain_ = log_odds_;
    std::vector<double> without(problem_.states.size() * lanes);  // likelihood with no cause at all
    std::vector<char> loose(problem_.states.size(), 0);
    for (std::size_t s = 0; s < problem_.states.size(); ++s) {
        const Target& target = targets_[s];
        const double* start = problem_.start_of(problem_.states[s]);
        loose[s] = !std::is_sorted(target.likelihood, target.likelihood + target.levels, std::greater<>());
        for (int lane = 0; lane < lanes; ++lane) {
            double& sum = without[s * lanes + static_cast<std::size_t>(lane)];
            for (int k = 0; k < target.levels; ++k) sum += target.likelihood[k] * start[k * lanes + lane];
            loose[s] = loose[s] || (problem_.lane_weight[lane] > 0 && sum <= impossible);
        }
        if (loose[s]) loose_.push_back(static_cast<int>(s));
    }
    for (std::size_t i = 0; i < problem_.causes.size(); ++i) {
        const Cause& cause = problem_.causes[i];
        for (int l = cause.first_link; l < cause.last_link; ++l) {
            const Touch& touch = touches_[l];
            if (loose[touch.state]) continue;
            const Target& target = targets_[touch.state];
            const double best_only = touch.no_worse[target.levels - 1];
            for (int lane = 0; lane < lanes; ++lane) {
                if (problem_.lane_weight[lane] <= 0) continue;
                const double sum = without[static_cast<std::size_t>(touch.state * lanes + lane)];
                const double lost = target.likelihood[0] - sum;
                log_gain_[i * lanes + lane] += std::log((target.likelihood[0] - best_only * lost) / sum);
            }
        }
    }
}

// ln of how much heavier the loose states can make the set when causes are added.
double SetGrowth::log_looseness(const SetLevel& level, std::size_t set) const {
    const double* per_likely = level.per_likely.data() + set * targets_.size();
    double log_looseness = 0;
    for (int state : loose_) log_looseness += std::log(targets_[state].greatest * per_likely[state]);
    return log_looseness;
}

double SetGrowth::likelihood(const Target& target, const double* no_worse, const double* more) const {
    double sum = 0;
    double better = 0;
    for (int k = target.levels; k-- > 0;) {
        const double share = no_worse[k] * more[k];
        sum += target.likelihood[k] * (share - better);
        better = share;
    }
    return std::max(sum, impossible);
}

double SetGrowth::room_of(int lane, const double* per_likely) const {
    double log_room = log_favoured_[lane];
    double room = 1;
    for (std::size_t s = 0; s < targets_.size(); ++s) {
        room *= targets_[s].greatest * per_likely[s];
        if (room < large) continue;
        log_room += std::log(room);
        room = 1;
    }
    return log_room + std::log(room);
}

// The lane without any cause.
void SetGrowth::add_lane(int lane, SetLevel& level) const {
    if (problem_.lane_weight[lane] <= 0) return;
    GrownSet set;
    set.lane = lane;
    set.key = key_of_lane(lane);
    set.log_weight = problem_.log_constant + std::log(problem_.lane_weight[lane]);
    for (std::size_t i = 0; i < problem_.causes.size(); ++i) {
        set.log_weight += std::log(std::max(problem_.causes[i].absent[lane], impossible));
        set.missing += surely_[i * lanes + lane];
    }
    for (std::size_t s = 0; s < targets_.size(); ++s) {
        const Target& target = targets_[s];
        const double* start = problem_.start_of(problem_.states[s]);
        const std::size_t at = level.no_worse.size();
        level.no_worse.resize(at + static_cast<std::size_t>(target.levels));
        double left = 0;
        for (int k = target.levels; k-- > 0;) level.no_worse[at + k] = left += start[k * lanes + lane];
        level.no_worse[at] = 1;
        const std::vector<double> nothing(static_cast<std::size_t>(target.levels), 1.0);
        const double likely = likelihood(target, level.no_worse.data() + at, nothing.data());
        level.per_likely.push_back(1 / likely);
        set.log_weight += std::log(likely);
        set.missing += likely <= impossible;
    }
    set.room = room_of(lane, level.per_likely.data() + level.per_likely.size() - targets_.size());
    level.causes.resize(level.causes.size() + static_cast<std::size_t>(level.size), -1);
    level.sets.push_back(set);
}

SetLevel SetGrowth::nothing() const {
    SetLevel level;
    add_lane(0, level);
    return level;
}

bool SetGrowth::holds(const SetLevel& level, std::size_t set, int cause) const {
    const int* first = level.causes.data() + set * static_cast<std::size_t>(level.size);
    return std::find(first, first + level.size, cause) != first + level.size;
}

// False when it would be lighter than `log_bar`.
bool SetGrowth::sprout(const SetLevel& level, std::size_t base, int cause, double log_bar,
                       Sprout& grown) const {
    const GrownSet& set = level.sets[base];
    const int in_lane = cause * lanes + set.lane;
    grown = {base, cause, set.missing - surely_[in_lane], set.log_weight + log_odds_[in_lane]};
    double ratio = 1;
    const double* row = level.no_worse.data() + base * static_cast<std::size_t>(width_);
    const double* per_likely = level.per_likely.data() + base * targets_.size();
    const Cause& c = problem_.causes[cause];
    for (int l = c.first_link; l < c.last_link; ++l) {
        const Touch& touch = touches_[l];
        const Target& target = targets_[touch.state];
        const double likely = likelihood(target, row + target.at, touch.no_worse);
        const double per = per_likely[touch.state];
        grown.missing += (likely <= impossible) - (per >= 1 / impossible);
        ratio *= likely * per;
        if (ratio < large && ratio > 1 / large) continue;
        grown.log_weight += std::log(ratio);
        ratio = 1;
    }
    // ln x is never above x - 1: most of those too light need no logarithm.
    if (grown.log_weight + ratio - 1 < log_bar) return false;
    grown.log_weight += std::log(ratio);
    return grown.log_weight >= log_bar;
}

// Those of one set that reach `log_bar` and are wanted, as long as `take` wants more. False when it wanted no
// more.
template <typename Wanted, typename Take>
bool SetGrowth::each_sprout(const SetLevel& level, std::size_t set, double log_least, double log_bar,
                            Wanted wanted, Take take) const {
    const GrownSet& base = level.sets[set];
    const double log_most = base.log_weight + log_looseness(level, set) + rounding;
    Sprout grown;
    for (int cause : by_gain_[base.lane]) {
        const int in_lane = cause * lanes + base.lane;
        if (log_most + log_gain_[in_lane] < log_bar) break;  // the others gain less
        if (base.log_weight + base.room + log_odds_[in_lane] < log_least) continue;
        if (holds(level, set, cause) || !wanted(set, cause)) continue;
        if (!sprout(level, set, cause, log_bar, grown)) continue;
        if (!take(grown)) return false;
    }
    return true;
}

// Whether the set grown by the cause is one that an earlier set of the level grows too, by another of its
// faults.
bool SetGrowth::grown_before(const SetLevel& level, const Keyed<std::size_t>& place, std::size_t set,
                             int cause) const {
    const std::uint64_t grown = level.sets[set].key ^ key_of_cause(cause);
    const int* causes = level.causes.data() + set * static_cast<std::size_t>(level.size);
    for (int n = 0; n < level.size - level.sets[set].lane; ++n) {
        const std::size_t* other = place.find(grown ^ key_of_cause(causes[n]));
        if (other && *other < set) return true;
    }
    return false;
}

// The heaviest `enough` different ones.
std::vector<SetGrowth::Sprout> SetGrowth::sprouts(const SetLevel& level, std::size_t enough,
                                                  double log_least) const {
    const auto heavier = [](const Sprout& a, const Sprout& b) {
        if (a.missing != b.missing) return a.missing < b.missing;
        if (a.log_weight != b.log_weight) return a.log_weight > b.log_weight;
        return a.base != b.base ? a.base < b.base : a.cause < b.cause;
    };
    std::vector<Sprout> sprouts;
    double log_bar = never;  // no lighter one is among the first `enough`
    const auto cut = [&] {
        if (sprouts.size() <= enough) return;
        const auto last = sprouts.begin() + static_cast<std::ptrdiff_t>(enough - 1);
        std::nth_element(sprouts.begin(), last, sprouts.end(), heavier);
        if (last->missing == 0) log_bar = last->log_weight;
        sprouts.resize(enough);
    };
    Keyed<std::size_t> place;
    for (std::size_t n = 0; n < level.sets.size(); ++n) place.put(level.sets[n].key, n);
    const auto is_new = [&](std::size_t set, int cause) { return !grown_before(level, place, set, cause); };
    for (std::size_t n = 0; n < level.sets.size(); ++n) {
        each_sprout(level, n, log_least, log_bar, is_new, [&](const Sprout& grown) {
            sprouts.push_back(grown);
            return true;
        });
        if (sprouts.size() > (log_bar == never ? enough : enough + enough / 2)) cut();
    }
    cut();
    std::sort(sprouts.begin(), sprouts.end(), heavier);
    return sprouts;
}

// Whether sprouts() would find one that reaches `log_worth`: those that do not are mostly passed over.
bool SetGrowth::any_worth(const SetLevel& level, double log_least, double log_worth) const {
    for (std::size_t n = 0; n < level.sets.size(); ++n) {
        const auto any = [](std::size_t, int) { return true; };
        if (!each_sprout(level, n, log_least, log_worth, any, [](const Sprout&) { return false; }))
            return true;
    }
    return false;
}

void SetGrowth::build(const SetLevel& level, const Sprout& from, SetLevel& grown) const {
    const GrownSet& base = level.sets[from.base];
    GrownSet set{base.lane, from.missing, from.log_weight, 0, base.key ^ key_of_cause(from.cause)};
    const auto old_causes = level.causes.begin() + static_cast<std::ptrdiff_t>(from.base) * level.size;
    const std::size_t first = grown.causes.size();
    grown.causes.insert(grown.causes.end(), old_causes, old_causes + (level.size - base.lane));
    grown.causes.push_back(from.cause);
    std::sort(grown.causes.begin() + static_cast<std::ptrdiff_t>(first), grown.causes.end());
    if (base.lane == 1) grown.causes.push_back(-1);
    const auto row = level.no_worse.begin() + static_cast<std::ptrdiff_t>(from.base) * width_;
    grown.no_worse.insert(grown.no_worse.end(), row, row + width_);
    const auto states = static_cast<std::ptrdiff_t>(targets_.size());
    const auto per = level.per_likely.begin() + static_cast<std::ptrdiff_t>(from.base) * states;
    grown.per_likely.insert(grown.per_likely.end(), per, per + states);
    double* new_row = grown.no_worse.data() + grown.no_worse.size() - width_;
    double* new_per = grown.per_likely.data() + grown.per_likely.size() - states;
    const Cause& cause = problem_.causes[from.cause];
    for (int l = cause.first_link; l < cause.last_link; ++l) {
        const Touch& touch = touches_[l];
        const Target& target = targets_[touch.state];
        new_per[touch.state] = 1 / likelihood(target, new_row + target.at, touch.no_worse);
        for (int k = 0; k < target.levels; ++k) new_row[target.at + k] *= touch.no_worse[k];
    }
    set.room = room_of(base.lane, new_per);
    grown.sets.push_back(set);
}

void SetGrowth::reserve(SetLevel& level, std::size_t sets) const {
    level.sets.reserve(sets);
    level.causes.reserve(sets * static_cast<std::size_t>(level.size));
    level.no_worse.reserve(sets * static_cast<std::size_t>(width_));
    level.per_likely.reserve(sets * targets_.size());
}

SetLevel SetGrowth::one_more(const SetLevel& level, std::size_t most, double log_least,
                             double log_worth) const {
    SetLevel grown;
    grown.size = level.size + 1;
    if (level.size == 0) add_lane(1, grown);
    if (log_worth > never && !any_worth(level, log_least, log_worth)) return {};
    double heaviest = grown.sets.empty() ? never : grown.sets.front().log_weight;
    const std::vector<Sprout> grown_from = sprouts(level, most, log_least);
    reserve(grown, std::min(most, grown.sets.size() + grown_from.size()));
    for (const Sprout& from : grown_from) {
        if (grown.sets.size() >= most) break;
        build(level, from, grown);
        heaviest = std::max(heaviest, from.log_weight);
    }
    if (heaviest < log_worth) return {};
    return grown;
}

SetLevel SetGrowth::only_unlisted() const {
    SetLevel level;
    level.size = 1;
    add_lane(1, level);
    return level;
}

std::vector<int> SetGrowth::not_counted(const std::vector<bool>& counted) const {
    std::vector<int> causes;
    for (std::size_t i = 0; i < problem_.causes.size(); ++i) {
        if (!counts(static_cast<int>(i), counted)) causes.push_back(static_cast<int>(i));
    }
    return causes;
}

void SetGrowth::for_each_with(SetLevel level, const std::vector<int>& more, const Visit& visit) const {
    std::vector<std::size_t> next(level.sets.size(), 0);  // per set: the first of `more` still to be added
    while (!level.sets.empty()) {
        SetLevel grown;
        grown.size = level.size + 1;
        std::vector<std::size_t> next_grown;
        Sprout with;
        for (std::size_t n = 0; n < level.sets.size(); ++n) {
            visit(level, n);
            for (std::size_t m = next[n]; m < more.size(); ++m) {
                sprout(level, n, more[m], never, with);
                build(level, with, grown);
                next_grown.push_back(m + 1);
            }
        }
        level = std::move(grown);
        next = std::move(next_grown);
    }
}

void SetGrowth::weigh_alone(const std::vector<bool>& counted, std::vector<double>& log_weights) const {
    const std::vector<int> aside = not_counted(counted);
    Sprout one;
    for_each_with(nothing(), aside, [&](const SetLevel& level, std::size_t set) {
        for (int cause : by_gain_[0]) {
            if (!counts(cause, counted)) continue;
            sprout(level, set, cause, never, one);
            if (one.missing > 0) continue;
            double& weight = log_weights[static_cast<std::size_t>(problem_.causes[cause].index)];
            weight = log_add(weight, one.log_weight);
        }
    });
    for_each_with(only_unlisted(), aside, [&](const SetLevel& level, std::size_t set) {
        if (level.sets[set].missing > 0) return;
        log_weights.back() = log_add(log_weights.back(), level.sets[set].log_weight);
    });
}

double SetGrowth::log_weight(const std::vector<int>& causes, bool unlisted,
                             const std::vector<bool>& counted) const {
    SetLevel level = unlisted ? only_unlisted() : nothing();
    Sprout with;
    for (int index : causes) {
        const auto cause = std::find_if(problem_.causes.begin(), problem_.causes.end(),
                                        [&](const Cause& c) { return c.index == index; });
        if (cause == problem_.causes.end() || level.sets.empty()) return never;
        SetLevel grown;
        grown.size = level.size + 1;
        sprout(level, 0, static_cast<int>(cause - problem_.causes.begin()), never, with);
        build(level, with, grown);
        level = std::move(grown);
    }
    double sum = never;
    for_each_with(std::move(level), not_counted(counted), [&](const SetLevel& grown, std::size_t set) {
        if (grown.sets[set].missing == 0) sum = log_add(sum, grown.sets[set].log_weight);
    });
    return sum;
}

std::vector<int> SetGrowth::causes_of(const SetLevel& level, std::size_t set) const {
    const auto first = level.causes.begin() + static_cast<std::ptrdiff_t>(set) * level.size;
    std::vector<int> causes;
    causes.reserve(static_cast<std::size_t>(level.size - level.sets[set].lane));
    for (auto cause = first; cause != first + (level.size - level.sets[set].lane); ++cause) {
        causes.push_back(problem_.causes[*cause].index);
    }
    return causes;
}

}  // namespace hardover::frontier
