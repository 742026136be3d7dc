// What an apprentice does on a practice boat, one event at a time, and how it is written to the learner's
// record. Ids are the knowledge's. Knows no boat: what the boat answers follows from its seed.
#pragma once

#include <cstdint>
#include <string>
#include <variant>
#include <vector>

#include "rules/result/result.hpp"

namespace hardover::study::practice {

struct Asked {  // asked, looked at, felt or measured
    std::string finding;
};
struct WorkedOut {  // ran a worksheet
    std::string worksheet;
};
struct Suspected {  // said what is wrong, for now
    std::string cause;
    double sure = 0;  // chance of being right, 0 to 1
};
struct Named {  // said what is wrong, for good
    std::string cause;
    double sure = 0;
};
struct Hinted {  // took help: 1 a nudge, 2 what to compare, 3 the expert's step
    int level = 1;
};
struct Precautions {                 // said which cautions belong before a piece of work
    std::string work;                // id of the check or remedy
    std::vector<std::string> named;  // cautions
    bool skipped = false;            // went on without
};
struct Proved {  // did the check that proves a cause
    std::string cause;
};
struct Remedied {
    std::string remedy;
};
struct HandedOver {        // gave the boat back
    bool checked = false;  // after the checks that belong to the remedy
};
struct GaveUp {};   // called for help
struct Reflected {  // what to do differently next time
    std::string text;
};

using PracticeEvent = std::variant<Asked, WorkedOut, Suspected, Named, Hinted, Precautions, Proved, Remedied,
                                   HandedOver, GaveUp, Reflected>;

// How much help stands on the page unasked, the most first.
enum class Guidance {
    worked,  // every step is the expert's, with its reason
    half,    // the expert finds the cause; proving it and putting it right are the apprentice's
    nudged,  // a nudge before every step
    unaided
};
// "worked", "half", "nudged", "unaided".
std::string guidance_id(Guidance guidance);
Result<Guidance> read_guidance(const std::string& id);

// How a practice boat was begun.
struct Begun {
    std::uint64_t seed = 0;
    int level = 1;
    Guidance guidance = Guidance::unaided;
    std::string knowledge;  // fingerprint: with other knowledge the boat would be another
    int day = 0;            // calendar day, counted from 1970-01-01
    bool of_a_set = false;  // of a class set: its seed is not shown. Not written: the set says so
};

// What a finished boat came to, so that progress can be told without the boat.
struct Ended {
    bool cured = false;
    double minutes = 0;
    double expected = 0;  // minutes expected at the start by the expert's way
    double expert = 0;    // minutes of the expert on the same boat
    double avoidable = 0;
    double luck = 0;
    int hints[3] = {0, 0, 0};
    int unproved = 0;  // remedies without proof
    int cautions_skipped = 0;
    int told_nothing = 0;  // questions that could not have changed what was done
    int statements = 0;    // of sureness
    double brier = 0;      // mean over them
    int level = 1;
    Guidance guidance = Guidance::unaided;
};

// Kinds of the learner's record, and bodies. `practice` is the sequence number of the boat's begun event in
// the record, which says whose the event is. Names, once written, stay.
inline constexpr const char* begun_kind = "practice_begun";
inline constexpr const char* did_kind = "practice_did";
inline constexpr const char* ended_kind = "practice_ended";
std::string body_of(const Begun& begun);
std::string body_of(int practice, const PracticeEvent& event);
std::string body_of(int practice, const Ended& ended);

template <typename T>
struct OfPractice {
    int practice = 0;
    T what;
};
// Errors bad_input: not such a body.
Result<Begun> read_begun(const std::string& body);
Result<OfPractice<PracticeEvent>> read_did(const std::string& body);
Result<OfPractice<Ended>> read_ended(const std::string& body);

}  // namespace hardover::study::practice
