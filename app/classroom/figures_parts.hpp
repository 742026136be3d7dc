// What the makers of the class's figures share. Inner part of app/classroom.
#pragma once

#include <string>
#include <vector>

#include "app/classroom/figures.hpp"

namespace hardover::classroom {

inline constexpr double counts_as_right = 0.8;  // a mark

using ItemResults = std::vector<const ItemResult*>;

// The results that count, by seat, then in the order they were given.
ItemResults in_order(const ClassResults& results);

// The first answer of every learner to every item: a table with -1 where there is none.
struct FirstAnswers {
    std::vector<std::string> seats;                     // rows, by code
    std::vector<std::string> items;                     // columns, by id
    study::AnswerTable table;                           // 1 right, 0 wrong, -1 none
    std::vector<std::vector<const ItemResult*>> given;  // the same places; nullptr: none
};
FirstAnswers first_answers(const ItemResults& ordered);

std::vector<ItemFigures> figures_of_items(const FirstAnswers& first, const study::RaschFit& fit,
                                          const Knowledge& knowledge);
ReliabilityFigures reliability_of(const FirstAnswers& first, const std::string& set);
// KR-20 of the table without gaps when one item is left out; into the items that are in it.
void add_reliability_without(const FirstAnswers& first, std::vector<ItemFigures>& items);

std::vector<Confusion> confusions_of(const ClassResults& results, const Knowledge& knowledge);
CauseTable table_of(const ClassResults& results, const std::vector<Confusion>& confusions,
                    const Knowledge& knowledge);

std::string cause_name(const Knowledge& knowledge, const std::string& id);

}  // namespace hardover::classroom
