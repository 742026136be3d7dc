// The boat that is looked at in the window: which rig, which faults, how it is steered, and its page. Worked
// out anew only when something changed. Knows no drawing library.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "app/jobs/boat_view.hpp"
#include "app/jobs/entry_key.hpp"

namespace hardover::window {

// What a person does to the boat.
struct TurnTo {
    double steer = 0;  // rad; which way the wheel goes follows from where it was
};
struct TurnWheel {
    double wheel = 0;  // rad from straight
};
struct TrimTo {
    double trim = 0;
};
struct GoAt {
    double speed = 0;  // m/s
};
struct HoldWheel {};  // the wheel is held still where it is
struct PutFaultIn {
    std::string cause;
};
struct TakeFaultOut {
    std::string cause;  // "" for all
};
struct SetStrength {
    std::string cause;
    double strength = 1;
};
struct LookAtPart {
    std::string part;  // of the drawing; "" for none
};
struct LookAtEntry {
    EntryKey entry;  // a cause or a finding: the first of its parts that is drawn
};
// A choice of the rig; only where no job is in hand, whose rig it would be.
struct ChooseRig {
    std::string field;
    std::string choice;  // id of a choice, or a number
};
using BoatAction = std::variant<TurnTo, TurnWheel, TrimTo, GoAt, HoldWheel, PutFaultIn, TakeFaultOut,
                                SetStrength, LookAtPart, LookAtEntry, ChooseRig>;

// A field of the rig that a person may choose while there is no job.
struct RigChoice {
    std::string field;
    std::string name;
    struct Way {
        std::string id;
        std::string text;
        bool chosen = false;
    };
    std::vector<Way> ways;
};

class BoatDesk {
  public:
    explicit BoatDesk(const PreparedKnowledge& prepared);

    // The rig of the job in hand, or none: then the boat's own choices hold. Works out what has changed.
    void show(const Facts* job_facts, UnitSystem units);
    // After the knowledge was read anew.
    void use(const PreparedKnowledge& prepared);
    void carry_out(const BoatAction& action);
    // Another boat with its faults, until show() is told of a job.
    void open(const Facts& facts, const std::vector<std::string>& faults);

    const BoatPage& page() const { return page_; }
    bool of_job() const { return of_job_; }
    const std::vector<PossibleFault>& possible() const { return possible_; }
    const std::vector<FaultIn>& faults() const { return faults_; }
    const std::vector<RigChoice>& choices() const { return choices_; }  // empty with a job in hand
    const PartPlace& place() const { return place_; }                   // of the part looked at

    // The first view in which parts of a cause or a finding are drawn. No parts: in none of them.
    struct Where {
        const drawing::Drawing* drawing = nullptr;  // of the page
        std::vector<std::string> parts;
    };
    Where where_is(const EntryKey& entry) const;

  private:
    void apply(const TurnTo& turn);
    void apply(const TurnWheel& turn);
    void apply(const TrimTo& to);
    void apply(const GoAt& at);
    void apply(const HoldWheel& hold);
    void apply(const PutFaultIn& in);
    void apply(const TakeFaultOut& out);
    void apply(const SetStrength& set);
    void apply(const LookAtPart& look);
    void apply(const LookAtEntry& look);
    void apply(const ChooseRig& choose);
    void survey();
    void draw();
    void list_choices();

    PreparedKnowledge prepared_;
    Facts facts_;      // what the page rests on
    Facts own_facts_;  // chosen here, without a job
    bool of_job_ = false;
    bool shown_ = false;
    std::vector<FaultIn> faults_;
    BoatSetting setting_;
    SurveyedBoat surveyed_;
    BoatPage page_;
    std::vector<PossibleFault> possible_;
    std::vector<RigChoice> choices_;
    std::string part_;
    PartPlace place_;
};

}  // namespace hardover::window
