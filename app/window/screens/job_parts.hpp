// The pieces of the job screen. Each draws into the pane it is called in and notes what was pressed.
#pragma once

#include "app/window/screens/job.hpp"

namespace hardover::window {

struct JobScene {
    Kit& kit;
    const JobPage& page;
    const StepCard& card;  // of the step, or of the finding looked at
    const std::vector<LookUpRow>& look_up;
    const QuestionOutlook* outlook;
    const TurningSketch* turning;
    JobView& view;
    bool low = false;
    bool dock_inside = false;  // no room for a dock: the answers follow the step
    std::optional<Action> action;
    bool turning_in_work = false;
};

void draw_stops(JobScene& scene, const Box& box);
float stops_height(Kit& kit, const JobPage& page, float width_px);
void draw_track(JobScene& scene, const Box& box);

void draw_card(JobScene& scene);       // eyebrow, heading, cautions, steps, figures
void draw_card_end(JobScene& scene);   // its sources and entries; where the answers follow it, after them
void draw_questions(JobScene& scene);  // numbers to write down, other findings of the same check
void draw_sheets(JobScene& scene);
void draw_time_line(JobScene& scene);
// What each answer would do to the first causes, drawn.
void draw_outlook(JobScene& scene);
// What would turn the first cause, drawn; asks for it to be worked out when it is unfolded.
void draw_turning(JobScene& scene);
void use_why_keys(JobScene& scene);
// The job sheet that was written, or why it could not be.
void draw_sheet_written(JobScene& scene);
void draw_intake(JobScene& scene);
void draw_look_up(JobScene& scene);
void draw_hand_back(JobScene& scene);
void draw_known(JobScene& scene);
void draw_ways(JobScene& scene);  // to any other finding, to the boat, to handing back
void draw_ahead(JobScene& scene);
// A cause that is out of the running, with the reason in its state.
bool is_out(const CauseLine& cause);
void draw_cause(JobScene& scene, const CauseLine& cause, bool open_at_first);

// The answers to the step, in the same place every time.
void draw_dock(JobScene& scene);
float dock_height(JobScene& scene, float width_px);
std::vector<std::pair<std::string, std::string>> dock_keys(const JobScene& scene);

// One number with its name, unit, and the refusal under it.
void draw_number(JobScene& scene, const MeasureField& field);

// Leads to an entry of the knowledge.
void draw_known_link(JobScene& scene, const std::string& id, const std::string& words, const EntryKey& to);

// A caution: hatched edge, what can hurt, and how not to be hurt.
void draw_caution(JobScene& scene, const CautionText& caution);
// A name in small capitals over a part.
void draw_caption(Kit& kit, const std::string& text);

}  // namespace hardover::window
