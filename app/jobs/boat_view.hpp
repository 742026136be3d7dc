// The boat to be looked at, already in words: the rig drawn at a steering angle, a trim and a speed, its
// gauges as it is when sound and with faults put in side by side, and where on the drawing findings and
// causes are. Pure: made from knowledge, facts and what a person has set; knows no screen and records
// nothing.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/drawing/rig_sketch.hpp"
#include "app/rig/survey.hpp"
#include "rules/model/facts.hpp"
#include "rules/reasoning/prepared_knowledge.hpp"

namespace hardover {

// A cause put into the boat; `strength` 1 is as the knowledge has it, 0 none of it.
struct FaultIn {
    std::string cause;
    double strength = 1;
    friend bool operator==(const FaultIn&, const FaultIn&) = default;
};

// What a person has set beside the rig. Held to what the rig can do when the page is made.
struct BoatSetting {
    double steer = 0;  // rad
    double trim = 0;   // rad
    double speed = 0;  // m/s
    rig::Way way = rig::Way::held;
    UnitSystem units = UnitSystem::us;
};

// One boat rigged and surveyed, sound and with its faults: made anew when the rig or the faults change.
struct SurveyedBoat {
    std::string trouble;  // why this rig, or this fault on it, cannot be; a whole sentence
    std::vector<FaultIn> faults;
    std::optional<rig::BoatAtWork> sound;   // empty only with trouble
    std::optional<rig::BoatAtWork> faulty;  // empty without faults, or with trouble
    rig::Readings sound_readings;
    rig::Readings faulty_readings;
    std::vector<std::string> warnings;    // over centre; empty: nothing to warn of
    std::vector<std::string> trim_locks;  // how the locks move with trim

    const rig::BoatAtWork* shown() const { return faulty ? &*faulty : sound ? &*sound : nullptr; }
};

// Causes that the knowledge does not have, or that name nothing of the numeric boat, are passed over.
SurveyedBoat survey_boat(const Knowledge& knowledge, const Facts& facts, const std::vector<FaultIn>& faults);

// One gauge, sound and with the fault.
struct BoatGauge {
    std::string id;  // "turns_port"
    std::string name;
    std::string sound;
    std::string faulty;      // "" without a fault
    std::string difference;  // "1 1/2 turns more"; "the same"; "" where `faulty` says it
    bool differs = false;
};

struct GaugeGroup {
    std::string title;
    std::vector<BoatGauge> gauges;
};

struct FaultShown {
    std::string id;
    std::string name;
    std::string strength;            // "as usual", "half of it"
    std::vector<std::string> parts;  // of the drawings
};

struct BoatPage {
    std::string rig;      // "Stern drive, 2 single-rod rams, manual helm pump"
    std::string title;    // "20° to starboard, trim 3° up, at 12 kn"
    std::string doing;    // "Turning to starboard"
    std::string trouble;  // see SurveyedBoat; then there may be no drawing
    std::optional<drawing::RigSketch> sketch;
    BoatSetting setting;  // as held to what the rig can do
    double wheel = 0;     // rad from straight
    std::string wheel_text, steer_text, trim_text, speed_text;
    std::string trim_short, speed_short;  // where there is little room: "8° up", "16 kn"
    double least_steer = 0, most_steer = 0;
    double least_trim = 0, most_trim = 0;  // equal: it does not trim
    double most_speed = 0;
    std::vector<FaultShown> faults;
    std::vector<GaugeGroup> groups;
    std::vector<std::string> warnings;  // as the surveyed boat's
    std::vector<std::string> trim_locks;
    std::vector<std::string> assumptions;  // what was taken as usual or left out
};
BoatPage make_boat_page(const PreparedKnowledge& prepared, const Facts& facts, const SurveyedBoat& boat,
                        const BoatSetting& setting);

// A cause that can be put into this boat.
struct PossibleFault {
    std::string id;
    std::string name;
    std::string part;   // "Hoses and fittings"
    std::string about;  // how it comes about
};
// By part, in the knowledge's order of parts. Causes that cannot be on this rig are left out.
std::vector<PossibleFault> possible_faults(const PreparedKnowledge& prepared, const Facts& facts);

// What the knowledge has at one part of a drawing.
struct PlaceEntry {
    std::string id;
    std::string name;
};
struct PartPlace {
    std::string part;   // id in the drawing
    std::string words;  // what it is
    std::string place;  // "Rams"
    std::vector<PlaceEntry> findings;
    std::vector<PlaceEntry> causes;
};
// Error-free: an unknown part gives an empty place.
PartPlace place_of_part(const PreparedKnowledge& prepared, const Facts& facts,
                        const drawing::Drawing& drawing, const std::string& part);
// Parts of a drawing that a cause or a finding is about; of both sides where it names none.
std::vector<std::string> parts_of_cause(const Knowledge& knowledge, const drawing::Drawing& drawing,
                                        const std::string& cause);
std::vector<std::string> parts_of_finding(const Knowledge& knowledge, const drawing::Drawing& drawing,
                                          const std::string& finding);

}  // namespace hardover
