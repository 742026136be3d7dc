// Beginning a practice boat, going on with it from the record, and its minutes as one bar.
#include "app/study/practice_begin.hpp"

#include "app/study/practice_debrief.hpp"
#include "app/study/practice_page.hpp"
#include "scratch_folder.hpp"
#include "study/practice_support.hpp"

using namespace hardover;
using namespace hardover::study;
using namespace hardover::study::practice;
using namespace hardover_tests;

namespace {

double sum_of(const std::vector<MinutesPart>& parts, bool with_spared) {
    double sum = 0;
    for (const MinutesPart& part : parts) {
        if (with_spared || part.kind != MinutesPart::Kind::spared) sum += part.minutes;
    }
    return sum;
}

}  // namespace

TEST_CASE("A boat begun in a record goes on from there as it was left") {
    const ScratchFolder folder;
    auto store = Store::open(folder.file("records.db"));
    REQUIRE_OK(store);
    const auto learner = store.value().add_learner("Ann", "2026-11-25T15:03:13Z");
    REQUIRE_OK(learner);
    auto record = Record::open(store.value(), learner.value());
    REQUIRE_OK(record);
    CHECK(make_start_page(&record.value()).unfinished.empty());
    auto begun =
        begin_boat(prepared(), {7, 2, Guidance::unaided, 20782}, &record.value(), "2026-11-25T15:03:13Z");
    REQUIRE_OK(begun);
    CHECK(make_start_page(&record.value()).unfinished == "Practice boat 7, level 2");
    const Page page = make_page(begun.value().session);
    REQUIRE_OK(begun.value().session.take(Asked{page.near.front().id}));
    REQUIRE_OK(record.value().add(begun.value().number, Asked{page.near.front().id}, "2026-11-25T15:04:13Z"));

    const auto again = Record::open(store.value(), learner.value());
    REQUIRE_OK(again);
    const RecordedBoat* open = again.value().unfinished();
    REQUIRE(open != nullptr);
    const auto session = session_of(prepared(), open->begun, open->events);
    REQUIRE_OK(session);
    CHECK(session.value().minutes() == begun.value().session.minutes());
    CHECK(make_page(session.value()).work.front().found ==
          make_page(begun.value().session).work.front().found);
}

TEST_CASE("A boat made with other knowledge is not gone on with, and says why") {
    Begun begun;
    begun.knowledge = "another";
    const auto session = session_of(prepared(), begun, {});
    REQUIRE_FALSE(session.ok());
    CHECK(session.error().text().find("other knowledge") != std::string::npos);
}

TEST_CASE(
    "The parts of the bar add up to the minutes taken, and with what luck spared to what was expected") {
    Ended unlucky;
    unlucky.expected = 40;
    unlucky.avoidable = 12;
    unlucky.luck = 8;
    unlucky.minutes = 60;
    CHECK(sum_of(minutes_bar(unlucky), true) == Approx(60));
    CHECK(minutes_bar(unlucky).back().kind == MinutesPart::Kind::bad_luck);
    Ended lucky = unlucky;
    lucky.luck = -25;
    lucky.minutes = 27;
    CHECK(sum_of(minutes_bar(lucky), false) == Approx(27));
    CHECK(sum_of(minutes_bar(lucky), true) == Approx(52));
}

TEST_CASE("A boat is the same in every shop, only its figures are shown otherwise, as one would say them") {
    auto session = session_on(practice_boat(7, 2));
    const Page us = make_page(session, UnitSystem::us);
    const Page metric = make_page(session, UnitSystem::metric);
    CHECK(us.customer == metric.customer);
    REQUIRE(us.rig.size() == metric.rig.size());
    const auto value = [](const Page& page, const std::string& name) {
        for (const SheetLine& line : page.rig) {
            if (line.name == name) return line.value;
        }
        return std::string();
    };
    const std::string length = value(us, "Length of one hose");
    INFO(length);
    CHECK(length.find("ft") != std::string::npos);
    CHECK(length.find('/') == std::string::npos);
    CHECK(value(metric, "Length of one hose").find(" m") != std::string::npos);
    for (const SheetLine& line : metric.rig) {
        INFO(line.name << ": " << line.value);
        CHECK(line.value.find(" ft") == std::string::npos);
        CHECK(line.value.find(" psi") == std::string::npos);
    }
}
