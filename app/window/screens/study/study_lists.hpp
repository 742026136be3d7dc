// What can be done on a practice boat, as lists to choose from.
#pragma once

#include "app/window/screens/study/study_parts.hpp"

namespace hardover::window {

void draw_findings(StudyScene& scene);         // ask, look, feel, measure
void draw_causes(StudyScene& scene);           // say what is suspected, and prove it
void draw_remedies(StudyScene& scene);         // put it right
void draw_practice_sheets(StudyScene& scene);  // worksheets that can be worked out
void draw_help(StudyScene& scene);             // help in three levels, and calling for help

}  // namespace hardover::window
