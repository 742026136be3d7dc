// The pieces of the projected screen. Each draws into the pane it is called in and notes what was asked for.
#pragma once

#include "app/window/screens/project/project.hpp"

namespace hardover::window {

struct ProjectScene {
    Kit& kit;
    const ProjectDesk& desk;
    ProjectView& view;
    bool still = false;
    bool low = false;  // little height: everything closer together
    std::optional<Action> action;

    const ProjectPage& page() const { return desk.page(); }
    void ask(ProjectAction what) { action = Action{std::move(what)}; }
};

// The way on from what is shown: what it is called, and what it does.
struct WayOn {
    std::string label;  // "Take B"
    std::optional<ProjectAction> action;
};
WayOn way_on(const ProjectScene& scene);

void draw_vote(ProjectScene& scene);
void draw_ideas(ProjectScene& scene);
// The other things that can be shown or asked, as buttons in a row.
void draw_other_ways(ProjectScene& scene, bool with_ranking);
// The count, hands more or less for the choice pointed at, and the way on. In one row.
void draw_vote_dock(ProjectScene& scene);
void draw_agreed(ProjectScene& scene);
void draw_outcome(ProjectScene& scene, bool with_ranking);
void draw_ranking(ProjectScene& scene);
void draw_customer(ProjectScene& scene);
void draw_class_debrief(ProjectScene& scene);
// The boat by itself, or beside the one with the fault, with what can be done to it.
void draw_projected_boat(ProjectScene& scene, const Box& box);
// A small drawing of the sound boat.
void draw_small_boat(ProjectScene& scene, const Box& box);
// Steers with the arrows; false: not steered.
void use_boat_project_keys(ProjectScene& scene);

}  // namespace hardover::window
