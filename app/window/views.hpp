// What a screen remembers while a person works on it: texts being typed, what is unfolded, which tab is open.
// Nothing here is part of the job.
#pragma once

#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "app/window/actions.hpp"

namespace hardover::window {

// A text being typed. It stays as typed until it has been accepted.
struct Draft {
    std::string text;
    std::string error;  // why it was refused and what would be right; empty: not refused
    bool changed = false;
};

class Drafts {
  public:
    // The draft of a field; follows `accepted`, the text the page shows, until something is typed.
    Draft& of(const std::string& id, const std::string& accepted) {
        Draft& draft = drafts_[id];
        if (!draft.changed) draft.text = accepted;
        return draft;
    }
    void refuse(const std::string& id, const std::string& typed, const std::string& error) {
        drafts_[id] = {typed, error, true};
    }
    void drop(const std::string& id) { drafts_.erase(id); }
    void clear() { drafts_.clear(); }

  private:
    std::map<std::string, Draft> drafts_;
};

enum class JobTab { now, ahead, known };

// The job sheet last written, or why it could not be.
struct SheetWritten {
    std::string path;
    std::string remark;
    std::string trouble;
};

struct JobView {
    Showing showing = Showing::step;
    std::string finding;  // when showing one
    JobTab tab = JobTab::now;
    Drafts drafts;
    std::string filter;          // of the list of findings
    std::set<std::string> open;  // what has been unfolded
    std::set<std::string> shut;  // what has been folded though it starts open
    // Causes ticked for handing back, the main one first; nothing: as suggested, nobody has ticked yet.
    std::optional<std::vector<std::string>> hand_back_causes;
    std::map<std::string, bool> hand_back_seen;  // by cause: said to be seen, or only assumed
    std::string trouble;                         // an action was refused that belongs to no field
    std::string notice;                          // something to know that was done by itself
    SheetWritten sheet;

    bool is_open(const std::string& id, bool at_first = false) const {
        return at_first ? !shut.contains(id) : open.contains(id);
    }
    void fold(const std::string& id, bool at_first = false) {
        std::set<std::string>& set = at_first ? shut : open;
        if (!set.erase(id)) set.insert(id);
    }
};

enum class BoatTab { drawing, gauges, faults, place, rig };

struct BoatView {
    BoatTab tab = BoatTab::drawing;
    int drawing = 0;     // where only one has room: 0 from above, 1 from behind, 2 from the side
    std::string filter;  // of the faults
    double grip = 0;     // angle at which the wheel was last held
};

struct SettingsView {
    Drafts drafts;
    std::string trouble;         // a setting could not be kept
    std::string backup;          // path of the copy made last
    std::string backup_trouble;  // why there is none
    std::string folder_trouble;  // why the folder cannot be shown
};

struct BenchView {
    std::string boat;
    std::string words;
    std::string search;
    std::string complaint;  // id of the one chosen for the boat that comes in
    std::string complaint_name;
    bool handed_back_open = false;
    std::string trouble;
    std::string notice;  // something to know that was done by itself
};

}  // namespace hardover::window
