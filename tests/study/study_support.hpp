// The shipped knowledge and every item it gives, made once for all tests.
#pragma once

#include <utility>
#include <vector>

#include "app/study/items.hpp"
#include "app/study/marking.hpp"
#include "shipped.hpp"
#include "support.hpp"

namespace hardover_tests {

inline const hardover::study::Portraits& portraits() {
    static const hardover::study::Portraits all(shipped());
    return all;
}

// What a quiz can ask of the shipped knowledge.
inline const std::vector<hardover::study::Stem>& askable() {
    static const std::vector<hardover::study::Stem> all = *hardover::study::askable_stems(portraits(), 1);
    return all;
}

// Items of one form, at most `most` of them, taken evenly over the whole list so that a larger knowledge base
// takes no more work.
inline std::vector<hardover::study::Item> items_of(hardover::study::Form form, std::size_t most) {
    std::vector<hardover::study::Stem> stems;
    for (auto& stem : hardover::study::list_stems(portraits())) {
        if (stem.form == form) stems.push_back(std::move(stem));
    }
    std::vector<hardover::study::Item> items;
    const std::size_t step = stems.size() / most + 1;
    for (std::size_t i = 0; i < stems.size(); i += step) {
        if (auto item = hardover::study::make_item(portraits(), stems[i], 1)) items.push_back(*item);
    }
    return items;
}

}  // namespace hardover_tests
