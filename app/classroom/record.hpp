// The records of an attempt: what one seat did on one set, line by line, each with the bytes it was written
// with. A record is never changed; kinds and versions that are not known here are kept whole. Names of fields
// and kinds, once written, stay. Knows no files and no keys.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "app/study/learner.hpp"
#include "app/study/practice_event.hpp"

namespace hardover::classroom {

// Goes before every record in the chain of an attempt.
inline constexpr const char* record_domain = "hardover.record.v1";
inline constexpr int record_version = 1;

// Whose records: a seat's attempt at a set. `sitting` is the set's own random number, which keeps an old
// hand-in from passing for today's.
struct AttemptOf {
    std::string set;
    std::string sitting;  // 128 bits in hex
    std::string seat;
    std::string attempt;  // 128 bits in hex
};

struct Began {
    std::string knowledge;  // fingerprint
};
// Number `number` of the quiz that is task `task`, both from 1.
struct Answered {
    int task = 0;
    int number = 0;
    std::string answer;  // as typed
    std::optional<double> sure;
    double seconds = 0;
    std::optional<study::Review> review;  // as the student's PC marked it; not in graded sets
};
struct Did {  // on the practice boat that is task `task`
    int task = 0;
    study::practice::PracticeEvent event;
};
struct TaskDone {
    int task = 0;
    std::optional<study::practice::Ended> ended;  // of a boat, as the student's PC marked it
};
// monostate: of a kind or version that is not known here.
using RecordContent = std::variant<std::monostate, Began, Answered, Did, TaskDone>;

struct Record {
    std::string line;  // as written, without a line end
    std::string id;    // BLAKE2b-128 of it, in hex
    AttemptOf of;
    int sequence = 0;  // 1, 2, 3 ... within the attempt
    std::string at;    // UTC, by the clock of the student's PC; never trusted for the order
    int day = 0;       // calendar day there, counted from 1970-01-01
    RecordContent content;
};

// A record as one line of canonical JSON.
Record make_record(const AttemptOf& of, int sequence, const std::string& at, const RecordContent& content);
// Error bad_input: not a record.
Result<Record> read_record(const std::string& line);

// The end of the chain over these records.
std::string chain_over(const std::vector<Record>& records);

}  // namespace hardover::classroom
