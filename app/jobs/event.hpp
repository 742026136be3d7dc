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
struct HandedBack {
    std::string cause;       // id, or "not_listed"
    bool confirmed = false;  // seen and proved, not only assumed
    std::string note;
};
struct Reopened {};
struct Undone {
    int sequence = 0;  // of the event that no longer counts; an Undone can be undone too
};

using Event = std::variant<Opened, RigSet, HistorySet, ComplaintsSet, Answered, TakenBack, NeedMarked, Tried,
                           Noted, HandedBack, Reopened, Undone>;

// Kind and body for the records; sequence and time are left to the caller.
StoredEvent to_stored(const Event& event);

// Error: unknown kind (a newer program wrote it), or a body that lacks something.
Result<Event> from_stored(const StoredEvent& stored);

// One line for people: "Answered: Feel of the wheel, springy" needs the knowledge, so see jobs/page.hpp; this
// one names ids only and is used by `hardover job events`.
std::string plain_text(const Event& event);

}  // namespace hardover
