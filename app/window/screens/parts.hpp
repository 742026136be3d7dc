// Parts that several places share: a number to be typed, a line of a worksheet, a message in the flow.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "app/jobs/page.hpp"
#include "app/jobs/search.hpp"
#include "app/study/practice_debrief.hpp"
#include "app/window/beside_records.hpp"
#include "app/window/kit.hpp"
#include "app/window/views.hpp"

namespace hardover::window {

struct NumberLook {
    std::string id;  // of the control; a side named by its last word gets its letter
    std::string name;
    std::string unit;
    std::string hint;  // under it, while nothing is wrong
};

// Name, field, and under it the refusal or the hint. The draft keeps what is typed.
FieldEvent draw_number_field(Kit& kit, const NumberLook& look, Draft& draft);

// Name at the left, value at the right, and a line more where the value is only assumed.
void draw_sheet_line(Kit& kit, const SheetLine& line, Type type);

// Something to be told before everything else: done by itself, or refused.
void draw_notice(Kit& kit, const std::string& text);
void draw_trouble(Kit& kit, const std::string& text);

// Long work, how far it has come, and a button that stops it. True when that was pressed.
struct WorkLook {
    std::string what;      // "Making the questions"
    std::string progress;  // "3 of 12"; "": not known yet
    double share = 0;      // that is done
    bool can_stop = true;
};
bool draw_work(Kit& kit, const WorkLook& look);
// The same of work on the records, which Esc stops too.
bool draw_shown_work(Kit& kit, const WorkShown& work);

// A field that narrows a list down. True when its text changed.
bool draw_search_field(Kit& kit, const std::string& id, std::string& text, const std::string& name,
                       const std::string& placeholder);

// One thing found: its kind, its name, and why it was found. True when pressed.
bool draw_hit_row(Kit& kit, const std::string& id, const SearchHit& hit);

// A line that leads to an entry of the knowledge, as high as a finger needs. True when pressed.
bool draw_entry_link(Kit& kit, const std::string& id, const std::string& words);

// A button as wide as its label, at the left.
bool draw_small_button(Kit& kit, const std::string& id, const ButtonLook& look);

struct RowButton {
    std::string id;
    ButtonLook look;
};
// Buttons side by side, each as wide as its label, on further lines where there is no room. Gives the place
// of the one pressed, or -1.
int draw_button_row(Kit& kit, const std::vector<RowButton>& buttons);

// Two columns side by side, `left_share` of the width for the first; gives them the height of the longer one.
void draw_columns(Kit& kit, float left_share, const std::function<void()>& left,
                  const std::function<void()>& right);

// Runs `each` for 0 to count - 1 in columns of at least `least_dp`, row by row.
void draw_in_columns(Kit& kit, std::size_t count, float least_dp, std::size_t most,
                     const std::function<void(std::size_t)>& each);

// Steps of work, numbered from 1.
void draw_numbered(Kit& kit, const std::vector<std::string>& lines);

// Cautions left out on a practice boat, work by work; nothing where none was.
void draw_skipped_cautions(Kit& kit, const std::vector<study::practice::SkippedCautions>& works);

}  // namespace hardover::window
