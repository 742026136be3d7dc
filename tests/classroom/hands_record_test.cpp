// Boats that a class works together, in the records: kept as they happen, gone on with after the program was
// ended, and no trouble to whoever reads the same records for quizzes and practice.
#include "app/classroom/hands_record.hpp"

#include "app/study/known_learner.hpp"
#include "app/study/practice_record.hpp"
#include "classroom/hands_support.hpp"
#include "scratch_folder.hpp"

using namespace hardover;
using namespace hardover::classroom;
using namespace hardover::study::practice;
using namespace hardover_tests;

namespace {

constexpr const char* now = "2026-11-25T15:03:13Z";

struct Records {
    Records() { open(); }
    void open() {
        store.reset();
        auto opened = Store::open(folder.file("records.db"));
        REQUIRE_OK(opened);
        store = std::make_unique<Store>(std::move(opened.value()));
    }
    ScratchFolder folder;
    std::unique_ptr<Store> store;
};

ClassBoat begun(Records& records, std::uint64_t seed = 7) {
    auto boat = ClassBoat::begin(prepared_shipped(), *records.store, class_begun(seed, 2), now);
    REQUIRE_OK(boat);
    return std::move(boat.value());
}

// First choice of the steps, until what was agreed on is done.
void vote_and_do(ClassBoat& boat) {
    const Ballot ballot = step_ballot(boat.boat());
    std::vector<int> hands(ballot.choices.size(), 1);
    hands[0] = 12;
    REQUIRE_OK(boat.take(Voted{ballot, hands, 0}, now));
    for (const ClassEvent& event : events_to_do(boat.boat())) REQUIRE_OK(boat.take(event, now));
}

}  // namespace

TEST_CASE("A vote reads back as it was written, and what is no vote is refused") {
    const Voted voted{{Asks::cause, {Suspected{"air_in_oil", 0}, Suspected{"", 0}}}, {7, 3}, 0};
    const auto read = read_voted(body_of(4, voted));
    REQUIRE_OK(read);
    CHECK(read.value().practice == 4);
    CHECK(body_of(4, read.value().what) == body_of(4, voted));
    CHECK(read.value().what.hands == std::vector<int>{7, 3});
    CHECK_FALSE(read_voted("{}"));
    CHECK_FALSE(read_voted("nothing"));
    CHECK_FALSE(read_voted(R"({"boat":1,"asks":"hats","choices":[],"hands":[],"taken":0})"));
}

TEST_CASE("A class's boat goes on where it was when the program was ended, also between vote and step") {
    Records records;
    {
        ClassBoat boat = begun(records);
        vote_and_do(boat);
        REQUIRE_OK(boat.take(FaultRevealed{}, now));
        const Ballot ballot = step_ballot(boat.boat());
        REQUIRE_OK(boat.take(Voted{ballot, {}, 1}, now));
    }
    records.open();
    auto again = ClassBoat::go_on(prepared_shipped(), *records.store);
    REQUIRE_OK(again);
    REQUIRE(again.value().has_value());
    const ShowOfHands& boat = again.value()->boat();
    CHECK(boat.session().work().size() == 1);
    CHECK(boat.votes().size() == 2);
    CHECK(boat.votes().front().voted.hands.front() == 12);
    CHECK(boat.fault_shown());
    CHECK(boat.agreed().has_value());
}

TEST_CASE("What is refused is not kept") {
    Records records;
    ClassBoat boat = begun(records);
    CHECK_FALSE(boat.take(Voted{{Asks::step, {HandedOver{true}}}, {}, 0}, now));
    const auto record = HandsRecord::open(*records.store);
    REQUIRE_OK(record);
    CHECK(record.value().boats().front().events.empty());
}

TEST_CASE("A boat that was given up is debriefed, kept, and not gone on with") {
    Records records;
    ClassBoat boat = begun(records);
    vote_and_do(boat);
    REQUIRE_OK(boat.take(Voted{{Asks::step, {GaveUp{}}}, {9}, 0}, now));
    REQUIRE_OK(boat.take(PracticeEvent(GaveUp{}), now));
    CHECK(boat.boat().ended());
    const auto debrief = boat.debrief(now, UnitSystem::us);
    REQUIRE_OK(debrief);
    CHECK(debrief.value().ended.minutes == Approx(boat.boat().session().minutes()));
    const auto record = HandsRecord::open(*records.store);
    REQUIRE_OK(record);
    REQUIRE(record.value().boats().front().ended.has_value());
    CHECK(record.value().unfinished() == nullptr);
    const auto again = ClassBoat::go_on(prepared_shipped(), *records.store);
    REQUIRE_OK(again);
    CHECK_FALSE(again.value().has_value());
}

TEST_CASE("A boat that another was begun after is left, and the later one goes on") {
    Records records;
    begun(records, 7);
    begun(records, 8);
    const auto record = HandsRecord::open(*records.store);
    REQUIRE_OK(record);
    CHECK(record.value().boats().size() == 2);
    REQUIRE(record.value().unfinished() != nullptr);
    CHECK(record.value().unfinished()->begun.seed == 8);
}

TEST_CASE("Readers of quizzes and of practice boats pass over what the class did together") {
    Records records;
    {
        ClassBoat boat = begun(records);
        vote_and_do(boat);
    }
    const auto learners = records.store->learners();
    REQUIRE_OK(learners);
    REQUIRE(learners.value().size() == 1);
    CHECK(learners.value().front().name == together_name);
    const LearnerNumber number = learners.value().front().number;
    const auto practice = Record::open(*records.store, number);
    REQUIRE_OK(practice);
    CHECK(practice.value().boats().empty());
    const auto state = study::learner_state(*records.store, number);
    REQUIRE_OK(state);
}

TEST_CASE("Looking whether there is a boat to go on with writes nothing") {
    Records records;
    const auto none = ClassBoat::go_on(prepared_shipped(), *records.store);
    REQUIRE_OK(none);
    CHECK_FALSE(none.value().has_value());
    CHECK(records.store->learners().value().empty());
}
