// Three things to practise after a boat, the dearest first. Inner part of the debrief.
#pragma once

#include <string>
#include <vector>

#include "app/study/practice_marks.hpp"

namespace hardover::study::practice {

// The best step before a piece of work, by name: "Sponge test at the wheel: wheel sponge".
std::string step_text(const Knowledge& knowledge, const NextStep& step);

// Always three.
std::vector<std::string> things_to_practise(const Session& session, const Marks& marks);

}  // namespace hardover::study::practice
