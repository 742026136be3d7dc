#include "app/classroom/archive.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>

namespace hardover::classroom {

namespace {

constexpr std::size_t day_letters = 10;  // 2026-11-25

// The same day of the month so many months before. It may be a day no calendar has: days are compared as
// texts.
std::string months_before(const std::string& day, int months) {
    const int all =
        std::atoi(day.substr(0, 4).c_str()) * 12 + std::atoi(day.substr(5, 2).c_str()) - 1 - months;
    return fmt::format("{:04}-{:02}{}", all / 12, all % 12 + 1, day.substr(7, 3));
}

}  // namespace

Result<std::vector<OldSet>> old_sets(const ClassStore& store, const StoredClass& of, const std::string& today,
                                     int months) {
    const auto sets = store.sets(of.number);
    if (!sets) return sets.error();
    const auto hand_ins = store.hand_ins(of.number);
    if (!hand_ins) return hand_ins.error();
    const std::string limit = months_before(today, months);
    std::vector<OldSet> old;
    for (const StoredSet& set : sets.value()) {
        OldSet seen{set, 0, set.made_at.substr(0, day_letters)};
        for (const StoredHandIn& hand_in : hand_ins.value()) {
            if (hand_in.sitting != set.sitting) continue;
            ++seen.hand_ins;
            seen.last_used = std::max(seen.last_used, hand_in.collected_at.substr(0, day_letters));
        }
        if (seen.last_used < limit) old.push_back(std::move(seen));
    }
    std::stable_sort(old.begin(), old.end(),
                     [](const OldSet& a, const OldSet& b) { return a.last_used < b.last_used; });
    return old;
}

}  // namespace hardover::classroom
