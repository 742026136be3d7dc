// The pieces of the place Class. Each draws into the pane it is called in and notes what was pressed.
#pragma once

#include "app/window/class_desk.hpp"
#include "app/window/screens/class/class.hpp"

namespace hardover::window {

struct ClassScene {
    Kit& kit;
    AppState& state;
    std::optional<Action> action;

    const ClassPage& page() const { return state.classes->page(); }
    ClassView& view() { return state.classes->view; }
    void ask(ClassAction what) { action = Action{std::move(what)}; }
};

void draw_together(ClassScene& scene);
void draw_roster(ClassScene& scene);
void draw_sets(ClassScene& scene);
void draw_collect(ClassScene& scene);
void draw_class_figures(ClassScene& scene);
void draw_my_sets(ClassScene& scene);

// What the instructor's parts need first: a class, or its passphrase. False: it is not there yet, and the way
// to it is drawn instead.
bool draw_class_first(ClassScene& scene);
bool draw_keys_first(ClassScene& scene);

// Over the whole width of the flow.
void draw_figure_table(Kit& kit, const classroom::FigureTable& table);

struct TextLook {
    std::string id;
    std::string name;
    std::string hint = {};  // under it
    std::string placeholder = {};
    bool hidden = false;
};
// A field with its name over it. True when Enter was pressed in it.
bool draw_text(ClassScene& scene, std::string& text, const TextLook& look);
bool draw_primary(ClassScene& scene, const std::string& id, const std::string& label, bool enabled = true);

// The long work that is being done.
void draw_class_work(ClassScene& scene);
// What came of the last thing that was pressed here, or why it was refused, or how far it has come.
void draw_told_at(ClassScene& scene, const std::string& at);

}  // namespace hardover::window
