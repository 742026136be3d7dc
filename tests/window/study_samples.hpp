// The place Study in every state, made from the shipped knowledge by doing what a learner does.
#pragma once

#include <string>
#include <vector>

#include "app/window/study_desk.hpp"
#include "app/window/study_view.hpp"

namespace hardover_tests {

struct StudyState {
    std::string name;
    hardover::window::StudyPage page;
    hardover::window::StudyView view;
};

// Made once.
const std::vector<StudyState>& study_states();

// The cautions are all named, what they belong to is done.
void do_carefully(hardover::window::StudyDesk& desk, const hardover::study::practice::PracticeEvent& event);

}  // namespace hardover_tests
