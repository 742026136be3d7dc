// The figures on the items, as the commands of quizzes and of practice boats print them.
#pragma once

#include <cstdint>
#include <iosfwd>
#include <nlohmann/json_fwd.hpp>

#include "app/study/quiz.hpp"

namespace hardover {

// Makes every item once, which takes seconds.
study::ItemCounts counted_items(const Knowledge& knowledge, std::uint64_t seed);

nlohmann::ordered_json json_of(const study::ItemCounts& counts);
void print_item_counts(std::ostream& out, const study::ItemCounts& counts);

}  // namespace hardover
