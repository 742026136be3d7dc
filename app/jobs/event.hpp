// What happens to a job, one event at a time, and how an event is written to and read from the records.
// Ids are the knowledge's; texts are as the person gave them. Knows no database and no screen.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "app/records/store.hpp"
#include "rules/result/result.hpp"

namespace hardover {

struct Opened {
    std::string boat;
    std::string words;      // the complaint in the customer's words
    std::string knowledge;  // fingerprint of the knowledge the job was started with
    std::string job = "";   // drawn at random, so that no two jobs start alike; "" in older records
};
struct RigSet {
    std::string field;
    std::string value;  // as typed ("1 1/2 in", "manual_pump"); "" = unknown again
};
struct HistorySet {
    std::string history;  // "" = unknown again
};
struct ComplaintsSet {
    std::vector<std::string> complaints;
};
struct Answered {
    std::string finding;
    std::string answer;  // reading id, quantity text, or "cannot_tell"
};
struct TakenBack {
    std::string finding;
};
struct NeedMarked {
    std::string need;
    bool available = true;
};
struct Tried {
    std::string remedy;
    std::string outcome;  // "cured", "better" or "not_cured"
};
struct Noted {
    std::string text;
};
// What the program made of a job, as digests to compare with later. "" in older records.
struct AssessedMark {
    std::string knowledge;  // fingerprint
    std::string odds;       // of the knowledge, shipped or learned
    std::string found;      // what was told and what rules and worksheets made of it, without odds
    std::string ranked;     // the causes with their probabilities
    friend bool operator==(const AssessedMark&, const AssessedMark&) = default;
};
// A cause as a hand-back names it.
struct RecordedCause {
    std::string cause;       // id, or "not_listed"
    bool confirmed = false;  // seen and proved, not only assumed
    friend bool operator==(const RecordedCause&, const RecordedCause&) = default;
};
struct HandedBack {
    std::string cause;  // the main one, as in RecordedCause
    bool confirmed = false;
    std::string note;
    AssessedMark assessed = {};
    std::vector<RecordedCause> further = {};  // that were there as well; none in older records
};
struct Reopened {
    std::string why = "";
};
struct Attached {      // a photo or another file
    std::string file;  // as the records keep it (app/records/photos.hpp)
    std::string name;  // as it was called
    std::string caption;
    int bytes = 0;
};
struct Undone {
    int sequence = 0;  // of the event that no longer counts; an Undone can be undone too
};

using Event = std::variant<Opened, RigSet, HistorySet, ComplaintsSet, Answered, TakenBack, NeedMarked, Tried,
                           Noted, HandedBack, Reopened, Undone, Attached>;

// The main cause and then the further ones.
std::vector<RecordedCause> causes_of(const HandedBack& back);

// A cause that the hand-back names more than once; "" where there is none.
std::string named_twice(const HandedBack& back);

// Kind and body for the records; sequence and time are left to the caller.
StoredEvent to_stored(const Event& event);

// Error: unknown kind (a newer program wrote it), or a body that lacks something.
Result<Event> from_stored(const StoredEvent& stored);

// One line for people: "Answered: Feel of the wheel, springy" needs the knowledge, so see jobs/page.hpp; this
// one names ids only and is used by `hardover job events`.
std::string plain_text(const Event& event);

}  // namespace hardover
