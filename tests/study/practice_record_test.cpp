// Practice boats in a learner's record, and what comes next for a learner.
#include "app/study/practice_record.hpp"

#include "scratch_folder.hpp"
#include "support.hpp"

using namespace hardover;
using namespace hardover::study::practice;
using namespace hardover_tests;

namespace {

RecordedBoat finished(int level, double avoidable, Guidance guidance = Guidance::unaided, bool cured = true) {
    RecordedBoat boat;
    boat.begun.level = level;
    boat.begun.guidance = guidance;
    Ended ended;
    ended.cured = cured;
    ended.level = level;
    ended.guidance = guidance;
    ended.expected = 100;
    ended.avoidable = avoidable;
    boat.ended = ended;
    return boat;
}

}  // namespace

TEST_CASE("Without a record the level says how much help there is") {
    CHECK(plan_next(nullptr, std::nullopt).level == 1);
    CHECK(plan_next(nullptr, 1).guidance == Guidance::half);
    CHECK(plan_next(nullptr, 2).guidance == Guidance::nudged);
    CHECK(plan_next(nullptr, 5).guidance == Guidance::unaided);
}

TEST_CASE("Help fades boat by boat, and comes back after a boat that went badly") {
    std::vector<RecordedBoat> boats;
    CHECK(plan_next(&boats, std::nullopt).guidance == Guidance::worked);
    boats.push_back(finished(1, 0, Guidance::worked));
    CHECK(plan_next(&boats, std::nullopt).guidance == Guidance::half);
    boats.push_back(finished(1, 20, Guidance::half));
    CHECK(plan_next(&boats, std::nullopt).guidance == Guidance::nudged);
    boats.push_back(finished(1, 20, Guidance::nudged));
    CHECK(plan_next(&boats, std::nullopt).guidance == Guidance::unaided);
    boats.push_back(finished(1, 90));
    CHECK(plan_next(&boats, std::nullopt).guidance == Guidance::nudged);
    boats.push_back(finished(1, 0, Guidance::nudged, false));
    CHECK(plan_next(&boats, std::nullopt).guidance == Guidance::half);
}

TEST_CASE("Three boats in a row done well lead up a level, worked ones do not count") {
    std::vector<RecordedBoat> boats{finished(1, 0, Guidance::worked), finished(1, 14), finished(1, 15)};
    CHECK(plan_next(&boats, std::nullopt).level == 1);
    boats.push_back(finished(1, 3));
    CHECK(plan_next(&boats, std::nullopt).level == 2);
    CHECK(plan_next(&boats, std::nullopt).guidance == Guidance::half);
    std::vector<RecordedBoat> broken{finished(1, 0), finished(1, 0), finished(1, 16), finished(1, 0)};
    CHECK(plan_next(&broken, std::nullopt).level == 1);
    CHECK(plan_next(&broken, 4).level == 4);
}

TEST_CASE("A boat is kept as it happens and read back, other events of the learner passed over") {
    const ScratchFolder folder;
    {
        Result<Store> store = Store::open(folder.file("records.db"));
        REQUIRE_OK(store);
        const auto learner = store.value().add_learner("A07", "2026-01-02T03:04:05Z");
        REQUIRE_OK(learner);
        REQUIRE_OK(store.value().append_study(learner.value(), {1, "2026-01-02T03:04:05Z", "other", "{}"}));
        auto record = Record::open(store.value(), learner.value());
        REQUIRE_OK(record);
        CHECK(record.value().unfinished() == nullptr);
        const auto number = record.value().begin({7, 2, Guidance::half, "print", 1}, "2026-01-02T03:04:05Z");
        REQUIRE_OK(number);
        CHECK(number.value() == 2);
        REQUIRE_OK(record.value().add(number.value(), Asked{"wheel_feel"}, "2026-01-02T03:04:06Z"));
        auto again = Record::open(store.value(), learner.value());
        REQUIRE_OK(again);
        REQUIRE(again.value().unfinished() != nullptr);
        CHECK(again.value().unfinished()->events.size() == 1);
        CHECK(again.value().unfinished()->begun.seed == 7);
        // The first one does not know of what the second writes: refused, nothing lost.
        REQUIRE_OK(again.value().end(number.value(), Ended{}, "2026-01-02T03:04:07Z"));
        CHECK_FALSE(record.value().add(number.value(), GaveUp{}, "2026-01-02T03:04:08Z").ok());
        const auto last = Record::open(store.value(), learner.value());
        REQUIRE_OK(last);
        CHECK(last.value().unfinished() == nullptr);
    }
}

TEST_CASE("The number of a practice boat is read back, and nothing else passes for one") {
    CHECK(read_practice_id(practice_id(2, 14)).value().number == 14);
    CHECK(read_practice_id(practice_id(2, 14)).value().learner == 2);
    for (const char* wrong : {"", "14", "2-", "-14", "2-14x", "a-b"})
        CHECK_FALSE(read_practice_id(wrong).ok());
}
