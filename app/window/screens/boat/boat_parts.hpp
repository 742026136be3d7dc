// The parts the boat screen is put together from.
#pragma once

#include <array>

#include "app/window/screens/boat/boat.hpp"
#include "app/window/screens/boat/boat_layout.hpp"

namespace hardover::window {

struct BoatViewName {
    const char* id;
    const char* tab;
    const char* label;
    drawing::Drawing drawing::RigSketch::*drawing;
};
inline constexpr std::array boat_views{
    BoatViewName{"above", "Above", "From above", &drawing::RigSketch::above},
    BoatViewName{"behind", "Behind", "From behind", &drawing::RigSketch::behind},
    BoatViewName{"side", "Side", "From the side", &drawing::RigSketch::side}};

struct BoatScene {
    Kit& kit;
    const BoatDesk& desk;
    BoatView& view;
    BoatBoxes boxes;  // in pixels
    std::optional<Action> action;

    const BoatPage& page() const { return desk.page(); }
    void act(BoatAction done) { action = Action{std::move(done)}; }
};

// The part of a drawing's sheet that is left for the drawing, under its name where it has one.
Box drawing_room(const Kit& kit, const Box& sheet, bool named);

void draw_boat_drawings(BoatScene& scene);                  // boat_drawings.cpp
void draw_boat_controls(BoatScene& scene, const Box& box);  // boat_controls.cpp
void use_boat_keys(BoatScene& scene);                       // boat_controls.cpp
void draw_boat_gauges(BoatScene& scene);                    // boat_gauges.cpp
void draw_boat_faults(BoatScene& scene);                    // boat_lists.cpp
void draw_boat_place(BoatScene& scene);                     // boat_lists.cpp
void draw_boat_rig(BoatScene& scene);                       // boat_lists.cpp

}  // namespace hardover::window
