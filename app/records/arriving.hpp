// What comes in from another records file or from an export, and what became of it. A job is known again by
// its first event: nothing else of it is the same on two computers. Knows nothing of what an event means.
#pragma once

#include <cstddef>
#include <functional>
#include <string>
#include <vector>

#include "app/records/store.hpp"

namespace hardover {

struct ArrivingJob {
    JobSummary summary;
    std::vector<StoredEvent> events;
};

struct ArrivingLearner {
    std::string name;
    std::string added_at;
    std::vector<StoredEvent> events;
};

// Where a job stands in what arrives, and how it starts.
struct ArrivingHead {
    JobNumber number = 0;
    StoredEvent first;
};

struct Arriving {
    std::vector<ArrivingHead> heads;
    std::function<Result<ArrivingJob>(const ArrivingHead&)>
        job;  // loads one; many may be too large for memory
    std::vector<ArrivingLearner> learners;
    std::vector<StoredCounts> counts;  // of each shop the newer export stays
    const Store* classes =
        nullptr;  // whose classes, sets, hand-ins and their records come in; none: no classes
};

// What became of something that arrived.
enum class Arrival {
    known,       // all of it was here already
    went_on,     // it was here, and went on there: its later events were appended
    added,       // it was not here
    added_apart  // it is here, but went on differently: kept beside it
};

struct ArrivedJob {
    JobNumber there = 0;
    JobNumber here = 0;
    Arrival what = Arrival::known;
    int events = 0;  // how many are new
};

struct ArrivedLearner {
    std::string there;  // name
    std::string here;
    Arrival what = Arrival::known;
    int events = 0;
};

struct ArrivedAll {
    std::vector<ArrivedJob> jobs;  // in the order they were opened
    std::vector<ArrivedLearner> learners;
    int counts = 0;  // shops whose counts are new or newer
    int classes = 0;
    int class_records = 0;  // of attempts that were handed in
};

// What becomes of each list of events of `theirs`, given `ours`: the place of the one it is the same as, a
// part of, or goes on from (Arrival::known, known, went_on), or none. Each of ours is taken once, so that
// twins stay twins.
struct Pairing {
    Arrival what = Arrival::added;
    std::size_t ours = 0;  // with known and went_on
};
std::vector<Pairing> pair_histories(const std::vector<std::vector<StoredEvent>>& ours,
                                    const std::vector<std::vector<StoredEvent>>& theirs);

// Everything of an open records file. Only `job` reads it later on.
Result<Arriving> arriving_from(const Store& store);

// SHA-256 over a job's first event: the same on every computer the job has been on.
std::string identity_of(const StoredEvent& first);

// A name without the " (2)" that keeps a learner of the same name apart.
std::string plain_name(const std::string& name);

}  // namespace hardover
