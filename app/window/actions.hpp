// What a person can ask for on a screen: a screen gives one of these back and changes nothing itself.
#pragma once

#include <string>
#include <variant>

#include "app/jobs/shop.hpp"
#include "app/records/store.hpp"
#include "app/window/boat_desk.hpp"
#include "app/window/class_actions.hpp"
#include "app/window/knowledge_actions.hpp"
#include "app/window/places.hpp"
#include "app/window/project_actions.hpp"
#include "app/window/records_actions.hpp"
#include "app/window/sheet_actions.hpp"
#include "app/window/study_actions.hpp"
#include "app/window/theme.hpp"

namespace hardover::window {

// What the middle of the job screen shows.
enum class Showing { step, intake, look_up, finding, hand_back, time_line };

struct GoTo {
    Place place = Place::bench;
};
struct GoBack {};         // to the place before
struct ListPlaces {};     // a small window has no room for the rail
struct SwitchKeyList {};  // every key of the screen, and back
struct OpenJob {
    JobNumber number = 0;
};
struct StartJob {
    std::string boat;
    std::string words;
    std::string complaint = {};  // id; "": to be chosen in the job
};
struct SearchBench {
    std::string words;
};
// Works out how far a job on the bench has come, for its row.
struct ReadJobState {
    JobNumber number = 0;
};
struct GiveAnswer {
    std::string finding;
    std::string answer;  // reading id, or "cannot_tell"
};
struct GiveNumber {
    std::string id;  // a finding, or a rig field
    std::string text;
    bool of_rig = false;
};
struct TakeBack {
    std::string finding;
};
struct SetRig {
    std::string field;
    std::string value;
};
struct SetHistory {
    std::string history;
};
struct SwitchComplaint {
    std::string complaint;
};
struct SwitchNeed {
    std::string need;
};
struct Try {
    std::string remedy;
    std::string outcome;  // "cured", "better" or "not_cured"
};
struct HandBack {};
struct Reopen {};
struct AddNote {
    std::string text;
};
struct UndoLast {};
struct Show {
    Showing showing = Showing::step;
    std::string finding;
};
// Everything as it was just after this event of the job.
struct ReturnTo {
    int sequence = 0;
};
struct WorkOutTurning {};  // what would change the first cause
struct WriteSheet {};      // the job sheet, as a file beside the records
struct OpenOutside {       // a file or a folder, with the system's own program for it
    std::string path;
};
struct SwitchLook {};
struct ChangeTextSize {
    int by = 0;  // percent; 0: back to 100 %
};
struct ChooseTextSize {
    int percent = 100;
};

// Opens the practice boat that is done at the place where faults are seen at work.
struct OpenOnBoat {};

// Reads the knowledge files anew, or only when they have changed.
struct ReloadKnowledge {
    bool only_if_changed = false;
};

// What is done to the job in hand.
using JobAction = std::variant<GiveAnswer, GiveNumber, TakeBack, SetRig, SetHistory, SwitchComplaint,
                               SwitchNeed, Try, HandBack, Reopen, AddNote, UndoLast, Show, ReturnTo,
                               WorkOutTurning, WriteSheet, OpenOutside>;

struct SetShop {
    ShopSettings shop;  // all of it, as it is to be
};
struct SetRate {
    std::string text;
};
struct ChooseLook {
    Look look = Look::light;
};
struct KeepStill {
    bool still = false;  // nothing moves by itself
};
struct OpenFolder {  // of the records
    std::string path;
};
using SettingsAction = std::variant<SetShop, SetRate, ChooseLook, ChooseTextSize, KeepStill, OpenFolder>;

// Every place has a variant of its own here, so that its actions are applied in a file of their own.
using Action = std::variant<GoTo, GoBack, ListPlaces, SwitchKeyList, OpenJob, StartJob, SearchBench,
                            ReadJobState, SwitchLook, ChangeTextSize, ReloadKnowledge, JobAction, BoatAction,
                            SheetAction, KnowledgeAction, StudyAction, OpenOnBoat, ProjectAction, ClassAction,
                            RecordsAction, SettingsAction>;

}  // namespace hardover::window
