// The practice boats that the class worked together, as the records keep them: events of kinds of their own
// in the record of one learner that stands for the class, which readers of quizzes and practice pass over.
// Each event is on disk before it counts. Knows no screen.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/classroom/show_of_hands.hpp"
#include "app/records/store.hpp"
#include "app/study/practice_debrief.hpp"

namespace hardover::classroom {

// The learner that stands for everybody together.
inline constexpr const char* together_name = "The class together";

// Kinds and bodies; `boat` is the sequence number of the begun event. Names, once written, stay.
inline constexpr const char* class_begun_kind = "class_boat_begun";
inline constexpr const char* class_voted_kind = "class_boat_voted";
inline constexpr const char* class_did_kind = "class_boat_did";
inline constexpr const char* class_shown_kind = "class_boat_fault_shown";
inline constexpr const char* class_ended_kind = "class_boat_ended";
std::string body_of(int boat, const Voted& voted);
// Error bad_input: not such a body.
Result<practice::OfPractice<Voted>> read_voted(const std::string& body);

struct RecordedClassBoat {
    int number = 0;  // sequence number of its begun event
    std::string at;  // when it was begun, UTC
    practice::Begun begun;
    std::vector<ClassEvent> events;
    std::optional<practice::Ended> ended;
};

class HandsRecord {
  public:
    // Errors: those of the store; an event that cannot be read.
    static Result<HandsRecord> open(Store& store);

    const std::vector<RecordedClassBoat>& boats() const { return boats_; }
    // The last one that is not finished; nullptr: none.
    const RecordedClassBoat* unfinished() const;

    // Each is on disk before it returns. Errors: those of the store; nothing is written then. `at` is UTC.
    // The first boat adds the learner that stands for the class.
    Result<int> begin(const practice::Begun& begun, const std::string& at);
    Result<void> add(int number, const ClassEvent& event, const std::string& at);
    Result<void> end(int number, const practice::Ended& ended, const std::string& at);

  private:
    explicit HandsRecord(Store& store) : store_(&store) {}
    Result<void> read(const StoredEvent& event);
    Result<void> append(const char* kind, const std::string& body, const std::string& at);
    RecordedClassBoat* boat(int number);

    Store* store_;
    LearnerNumber learner_ = 0;  // 0: nothing is on record yet
    int last_ = 0;               // sequence number
    std::vector<RecordedClassBoat> boats_;
};

// A boat in the class's hands with its place in the records: what both front ends hold.
class ClassBoat {
  public:
    // A new boat. Errors: those of make_practice_boat and of the store.
    static Result<ClassBoat> begin(const PreparedKnowledge& prepared, Store& store,
                                   const practice::Begun& begun, const std::string& at);
    // The one that is not finished; nothing where there is none. Errors: the knowledge is another than the
    // boat was made with; those of the store.
    static Result<std::optional<ClassBoat>> go_on(const PreparedKnowledge& prepared, Store& store);

    const ShowOfHands& boat() const { return boat_; }
    // What is refused is not kept; what cannot be kept does not count.
    Result<void> take(const ClassEvent& event, const std::string& at);
    // The debrief of the practice boat once it has ended; kept when it is first asked for. `units`: in which
    // figures are shown.
    Result<practice::Debrief> debrief(const std::string& at, UnitSystem units);

  private:
    ClassBoat(HandsRecord record, int number, ShowOfHands boat)
        : record_(std::move(record)), number_(number), boat_(std::move(boat)) {}

    HandsRecord record_;
    int number_;
    ShowOfHands boat_;
    std::optional<practice::Debrief> debrief_;
};

}  // namespace hardover::classroom
