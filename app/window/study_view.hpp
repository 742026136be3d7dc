// What the place Study remembers while a person works on it: texts being typed, what is ticked, which list
// is open. Nothing here is on record.
#pragma once

#include <optional>
#include <set>
#include <string>
#include <vector>

namespace hardover::window {

enum class PracticeTab { look, suspect, remedy, sheets, help };

struct StudyView {
    std::string name;   // of a learner to be added
    std::string topic;  // of the next quiz, by id
    std::string seed;   // of the next boat, as typed

    std::string item;                 // the quiz item that the answer below belongs to
    std::vector<std::size_t> chosen;  // options ticked, or all of them in their order
    std::optional<std::size_t> held;  // order: the place that is moved up and down
    std::string figure;
    std::optional<double> sure;

    PracticeTab tab = PracticeTab::look;
    bool known = false;  // where only one column has room: what is known of the boat
    std::string filter;  // of the list that is open
    std::string cause;   // being weighed, by id
    std::optional<double> cause_sure;
    std::string caution_of;        // the work that the ticks below belong to
    std::set<std::string> ticked;  // cautions
    std::set<std::string> open;    // what has been unfolded

    bool is_open(const std::string& id) const { return open.contains(id); }
    void fold(const std::string& id) {
        if (open.erase(id) == 0) open.insert(id);
    }
};

}  // namespace hardover::window
