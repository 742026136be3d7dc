// The boat that is projected to the class: the question in hand, the page that shows it, the boat's drawing
// sound and with its fault. Everything is on disk before it shows. Knows no drawing library.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "app/classroom/hands_page.hpp"
#include "app/classroom/hands_record.hpp"
#include "app/study/practice_begin.hpp"
#include "app/window/boat_desk.hpp"
#include "app/window/project_actions.hpp"

namespace hardover::window {

// Something that can be added to a ballot.
struct Idea {
    std::string id;  // of its row
    std::string name;
    std::string note;
    study::practice::PracticeEvent event;
};

struct ProjectPage {
    enum class Scene {
        none,     // nothing is projected
        vote,     // a question is put to the class
        agreed,   // a step is about to be done
        outcome,  // what came of it
        debrief   // the boat is handed over, or help was called
    };
    Scene scene = Scene::none;
    std::vector<study::practice::LevelText> levels;
    std::string unfinished;  // "Class boat 7, level 2"; empty: none
    classroom::HandsPage boat;
    classroom::BallotPage ballot;
    int number = 0;           // of the ballot, so that a new one begins without hands
    std::vector<Idea> ideas;  // for the ballot in hand
    std::optional<study::practice::Debrief> debrief;
    std::vector<classroom::VoteTold> votes;
    std::string cause_votes;
    std::string trouble;  // what was refused, and what would be right
};

class ProjectDesk {
  public:
    ProjectDesk(const PreparedKnowledge& prepared, Store& store, std::function<std::string()> now);

    // On coming to the place: whether a boat waits to be gone on with.
    void show(UnitSystem units);
    void carry_out(const ProjectAction& action);
    // Knowledge read anew: the boat was made with the old one, so it is put away. It stays on record.
    void use(const PreparedKnowledge& prepared);

    const ProjectPage& page() const { return page_; }
    bool projecting() const { return page_.scene != ProjectPage::Scene::none; }
    // How the count of the ballot in hand stands, in words.
    std::string count_text(const std::vector<int>& hands) const;
    // The boat as the class may see it: sound, and beside it, once that may be told, with its fault.
    const BoatDesk& sound_boat() const { return sound_; }
    const BoatDesk* faulty_boat() const { return fault_drawn_ ? &faulty_ : nullptr; }

  private:
    using Scene = ProjectPage::Scene;
    void apply(const BeginClassBoat& begin);
    void apply(const GoOnClassBoat& go_on);
    void apply(const PutToClass& put);
    void apply(const AddToBallot& add);
    void apply(const SettleVote& settle);
    void apply(const DoAgreed& done);
    void apply(const NextQuestion& next);
    void apply(const ShowTheFault& shown);
    void apply(const SteerProjected& steer);
    void apply(const LeaveProjector& leave);

    void refused(const Error& error) { page_.trouble = error.text(); }
    bool keep(const classroom::ClassEvent& event);
    void take_in_hand(classroom::ClassBoat boat);
    void put_question(classroom::Asks asks);
    void list_ideas();
    void look_at_boat();
    void tell_debrief();

    PreparedKnowledge prepared_;
    Store& store_;
    std::function<std::string()> now_;
    std::optional<classroom::ClassBoat> boat_;
    classroom::Asks asks_ = classroom::Asks::step;
    std::vector<study::practice::PracticeEvent> added_;
    classroom::Ballot ballot_;
    BoatDesk sound_;
    BoatDesk faulty_;
    bool fault_drawn_ = false;
    UnitSystem units_ = UnitSystem::us;
    ProjectPage page_;
};

}  // namespace hardover::window
