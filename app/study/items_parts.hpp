// What the makers of the forms share. Inner part of app/study.
#pragma once

#include <algorithm>
#include <string>
#include <vector>

#include "app/study/chance.hpp"
#include "app/study/items.hpp"

namespace hardover::study {

inline constexpr std::size_t most_wrong = 3;  // choices beside the right one
inline constexpr std::size_t fewest_wrong = 2;

template <typename E>
const E& at(const std::vector<E>& entries, Index index) {
    return entries[static_cast<std::size_t>(index)];
}

inline bool holds(const std::vector<Index>& list, Index index) {
    return std::find(list.begin(), list.end(), index) != list.end();
}

// Adds unless the same text is there already.
void add_option(Item& item, Option option);

// Adds up to `most_wrong` of these, drawn from the first `drawn_from`, which are the most plausible.
inline constexpr std::size_t drawn_from = 8;
void add_some(Item& item, std::vector<Option> wrong, Chance& chance);

// "Feel of the wheel: Springy, it gives and comes back".
std::string reading_line(const Knowledge& knowledge, Index finding, int reading);

// The bad reading this cause gives most often, and how often.
struct LikelyReading {
    int reading = -1;
    double share = 0;
};
LikelyReading likeliest_reading(const std::vector<double>& shares, bool bad_only);

std::vector<std::string> caution_names(const Knowledge& knowledge, const std::vector<Index>& cautions);

// Causes that this remedy puts right.
std::vector<Index> causes_of_remedy(const Knowledge& knowledge, Index remedy);

// System parts a check looks at, and those a remedy puts right.
std::vector<Index> parts_of_check(const Knowledge& knowledge, Index check);
std::vector<Index> parts_of_remedy(const Knowledge& knowledge, Index remedy);

// The makers. Each fills in all but the topic; false: no fair item.
bool make_signs(const Portraits& portraits, Item& item);
bool make_speaks(const Portraits& portraits, Item& item, Chance& chance);
bool make_shows(const Portraits& portraits, Item& item);
bool make_apart(const Portraits& portraits, Item& item, Chance& chance);
bool make_proof(const Portraits& portraits, Item& item, Chance& chance);
bool make_remedy(const Portraits& portraits, Item& item, Chance& chance);
bool make_order(const Portraits& portraits, Item& item);
bool make_next(const Portraits& portraits, Item& item, Chance& chance);
bool make_caution(const Portraits& portraits, Item& item, Chance& chance);
bool make_place(const Portraits& portraits, Item& item);
bool make_figure(const Portraits& portraits, Item& item, Chance& chance);

}  // namespace hardover::study
