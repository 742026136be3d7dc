// A boat projected to a class in every state, made from the shipped knowledge by doing what an instructor
// does.
#pragma once

#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "app/window/project_desk.hpp"
#include "app/window/project_view.hpp"
#include "scratch_folder.hpp"

namespace hardover_tests {

struct ProjectSample {
    std::string name;
    hardover::window::ProjectDesk* desk = nullptr;
    hardover::window::ProjectView view;
};

// Hands each state to `look` as it comes by: the desk goes on after it.
void each_project_state(const std::function<void(const ProjectSample&)>& look);

}  // namespace hardover_tests
