// The parts of check_sense, one for each sort of question.
#pragma once

#include <vector>

#include "rules/reading/reading.hpp"

namespace hardover::reading_detail {

void check_use(const Knowledge& knowledge, std::vector<Fault>& faults);         // sense_use.cpp
void check_causes(const Knowledge& knowledge, std::vector<Fault>& faults);      // sense_causes.cpp
void check_told_apart(const Knowledge& knowledge, std::vector<Fault>& faults);  // sense_apart.cpp
void check_texts(const Knowledge& knowledge, std::vector<Fault>& faults);       // sense_texts.cpp

}  // namespace hardover::reading_detail
