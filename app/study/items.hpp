// All items the knowledge gives: listed cheaply, made one at a time. The same knowledge, stem and seed make
// the same item. Pure; may not know learners.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "app/jobs/watched.hpp"
#include "app/study/item.hpp"
#include "app/study/portrait.hpp"

namespace hardover::study {

// By form, then in knowledge order. Not every stem makes an item.
std::vector<Stem> list_stems(const Portraits& portraits);

// Empty when the knowledge gives no fair item: no sure right choice, too few wrong ones that are surely
// wrong, or figures that a slip would not change enough. The seed orders the choices and draws the numbers.
// `units`: in which its figures are drawn and shown.
std::optional<Item> make_item(const Portraits& portraits, const Stem& stem, std::uint64_t seed,
                              UnitSystem units = UnitSystem::us);

// The stems that make an item with this seed: what a quiz can ask. Takes seconds, since many are found out
// only by ranking. Nothing when it was told to stop.
std::optional<std::vector<Stem>> askable_stems(const Portraits& portraits, std::uint64_t seed,
                                               const Watched& watched = {});

// A wrong cause may be at most this share as probable as the right one, given the signs shown.
inline constexpr double clearly_below = 0.25;
// The right cause must be at least this probable.
inline constexpr double sure_enough = 0.5;
// A wrong step costs at least this much more than the best: minutes, and share of the minutes left.
inline constexpr double clearly_dearer_minutes = 2;
inline constexpr double clearly_dearer_share = 0.02;

}  // namespace hardover::study
