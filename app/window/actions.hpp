// What a person can ask for on a screen: a screen gives one of these back and changes nothing itself.
#pragma once

#include <string>
#include <variant>

#include "app/records/store.hpp"

namespace hardover::window {

// What the middle of the job screen shows.
enum class Showing { step, intake, look_up, finding, hand_back };

struct GoToBench {};
struct OpenJob {
    JobNumber number = 0;
};
struct StartJob {
    std::string boat;
    std::string words;
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
struct SwitchLook {};
struct ChangeTextSize {
    int by = 0;  // percent; 0: back to 100 %
};

// Reads the knowledge files anew, or only when they have changed.
struct ReloadKnowledge {
    bool only_if_changed = false;
};

using Action = std::variant<GoToBench, OpenJob, StartJob, GiveAnswer, GiveNumber, TakeBack, SetRig,
                            SetHistory, SwitchComplaint, SwitchNeed, Try, HandBack, Reopen, AddNote, UndoLast,
                            Show, SwitchLook, ChangeTextSize, ReloadKnowledge>;

}  // namespace hardover::window
