// The pieces of the place Study. Each draws into the pane it is called in and notes what was pressed.
#pragma once

#include <string>
#include <vector>

#include "app/window/screens/study/study.hpp"

namespace hardover::window {

struct StudyScene {
    Kit& kit;
    const StudyPage& page;
    StudyView& view;
    std::optional<Action> action;

    void ask(StudyAction what) { action = std::move(what); }
};

void draw_study_start(StudyScene& scene);
// The practice boat one can go on with; "": there is none.
std::string unfinished_boat(const StudyPage& page);
void draw_quiz(StudyScene& scene);
Icon verdict_icon(const study::QuizPage& quiz);  // once answered
void draw_quiz_dock(StudyScene& scene);
float quiz_dock_height(StudyScene& scene, float width_px);
void draw_practice(StudyScene& scene);    // what can be done now
void draw_boat_known(StudyScene& scene);  // what is known of the boat
void draw_debrief(StudyScene& scene);
void draw_progress(StudyScene& scene);
void draw_working(StudyScene& scene);  // long work, in the place of what it will come to

// A line of a list that can be pressed.
struct RowLook {
    std::string title;
    std::string note;   // under it
    std::string side;   // at the right end
    std::string found;  // with a tick, last
    std::string cap;    // the key
    bool selected = false;
};
bool draw_study_row(Kit& kit, const std::string& id, const RowLook& look);

// The five steps of sureness, one of them chosen or none.
void draw_sure_steps(Kit& kit, const std::string& prefix, std::optional<double>& sure);
// S steps through them.
void use_sure_key(Kit& kit, std::optional<double>& sure);

// "TOOLS  Tape, light", when there is anything to name.
void draw_list_of(Kit& kit, const std::string& name, const std::vector<std::string>& items);

// A letter key, small or large.
bool take_command(Kit& kit, char letter);

}  // namespace hardover::window
