// What the projected screen remembers while the class works on it: hands being counted, the choice pointed
// at, what is unfolded. Nothing here is on record.
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace hardover::window {

struct ProjectView {
    int ballot = 0;                      // the one that the hands below belong to
    std::vector<std::string> hands;      // as typed, by choice
    std::optional<std::size_t> current;  // the choice that hands are added to, or that is to be taken
    bool ideas = false;                  // the list of what may be added to the ballot
    std::string filter;                  // of that list
    bool boat = false;                   // the boat has the screen
    bool ranking = false;                // where one column has room: the ranking instead of the question
    std::string ranked;                  // the moment the bars below moved to
    float moved = 1;                     // share of their way

    // Hands by choice, none typed counting as none. Nothing where one of them is no count; `wrong` says
    // which.
    std::optional<std::vector<int>> counted(std::size_t& wrong) const;
    // A new ballot begins without hands.
    void follow(int number, std::size_t choices);
    void add_hands(std::size_t choice, int more);
};

}  // namespace hardover::window
