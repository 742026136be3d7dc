// The job sheet for the customer and the file: what stands on it, in words and in the order it is read,
// before anything is laid out. Pure: made from the knowledge, the job and its page. Knows no paper, no clock,
// no file.
#pragma once

#include <functional>
#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <vector>

#include "app/drawing/rig_sketch.hpp"
#include "app/jobs/page.hpp"

namespace hardover {

struct SheetNote {
    std::string name;
    std::string text;
};

struct SheetFinding {
    std::string name;
    std::string found;   // reading, or figure with its unit and spread
    std::string sound;   // the same on a sound boat; "" where nothing is sound or unsound
    std::string origin;  // "measured", "looked at", "told by the customer", "worked out"; what was not looked
                         // at again after a remedy: "measured, before the work"
    bool off = false;    // not as on a sound boat
};

struct SheetCause {
    std::string name;
    std::string certainty;  // "Seen and proved", "Assumed, not proved", "Likely (81 %), not proved yet"
    std::string proof;      // the check that proves it and what it gave; "" when it was not done
    std::vector<std::string> speaks_for;      // heaviest first, the proof left out
    std::vector<std::string> speaks_against;  // only what weighs more than a little
    std::vector<std::string> also_possible;   // while it is open: "Hose kinked at full lock, 12 %"
    std::string note;                         // the technician's, at hand-back
};

struct SheetWork {
    std::string day;
    std::string remedy;
    std::string outcome;             // "cured", "better, not cured", "not cured"
    std::vector<std::string> parts;  // what the remedy takes, as the knowledge has it
};

struct JobSheet {
    std::string shop;  // "" leaves a line to write it on
    std::string day;   // of the last thing that happened to the job, for people
    std::string at;    // the same in UTC, as in StoredEvent::at
    JobNumber number = 0;
    std::string boat;
    std::string opened;  // day
    std::string state;   // "Handed back", or the phase it is in
    std::vector<SheetNote> stops;
    std::string words;  // the customer's
    std::vector<std::string> complaints;
    std::string history;
    SheetCause cause;
    std::vector<SheetCause> further_causes;  // that were there as well, once the boat is handed back
    std::vector<SheetWork> work;
    std::vector<SheetFinding> findings;  // what decides first
    std::vector<std::string> figures;    // torque and fill, of the remedies that were tried
    std::string figure_sources;
    std::vector<std::string> after;  // checks, to be ticked off
    std::vector<SheetNote> cautions;
    std::vector<SheetNote> deferrals;  // name; what is not ours to decide and whose it is
    std::vector<SheetNote> rig;        // field and value; "9 in (assumed)"
    std::vector<std::string> assumptions;
    std::vector<std::string> notes;
    std::vector<std::string> photos;  // on file: names with captions
    std::optional<drawing::RigSketch> sketch;
    std::string sketch_note;  // what is true to scale, what was assumed, or why there is no sketch
};

struct SheetHead {
    std::string shop;
    // A moment of the records (UTC) as a day for people; on which day an hour falls is the caller's to say.
    std::function<std::string(const std::string& at)> day;
};

// `page` is the job's own page with the same knowledge.
JobSheet make_job_sheet(const Knowledge& knowledge, const Job& job, const JobPage& page,
                        const SheetHead& head);

// Every field by its name; the sketch in words.
nlohmann::ordered_json job_sheet_json(const JobSheet& sheet);

}  // namespace hardover
