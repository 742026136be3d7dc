// Which items a quiz asks, in which order: first what is due, then what is new and worth answering. Pure.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "app/jobs/watched.hpp"
#include "app/study/items.hpp"
#include "app/study/learner.hpp"

namespace hardover::study {

// Something a quiz may be about: a complaint, a part of the system or a form, by id.
struct Topic {
    std::string id;
    std::string name;
};
std::vector<Topic> topics(const Knowledge& knowledge);

// Whether the stem belongs to the topic; every stem belongs to "".
bool belongs(const Knowledge& knowledge, const Stem& stem, const std::string& topic);

struct QuizWish {
    std::string topic;  // id; "": all
    std::size_t count = 10;
    std::uint64_t seed = 0;
    int day = 0;
    UnitSystem units = UnitSystem::us;  // in which figures are asked
};

inline constexpr std::size_t most_due = 15;  // of one quiz

// At most `count` items, each statement at most once. The same knowledge, learner, wish: the same items.
// Error not_found: no such topic (with the nearest), or nothing can be asked about it.
// Told to stop, it gives the items made so far.
Result<std::vector<Item>> choose_items(const Portraits& portraits, const LearnerState& learner,
                                       const QuizWish& wish, const Watched& watched = {});

// How many items of each form and topic the knowledge gives.
struct ItemFigure {
    std::string id;
    std::string name;
    int listed = 0;  // stems
    int made = 0;    // fair items
};
struct ItemCounts {
    std::vector<ItemFigure> by_form;
    std::vector<ItemFigure> by_complaint;
    std::vector<ItemFigure> by_part;
    int listed = 0;
    int made = 0;
    int statements = 0;  // of those made
};
// `askable`: as of askable_stems().
ItemCounts count_items(const Portraits& portraits, const std::vector<Stem>& askable);

}  // namespace hardover::study
