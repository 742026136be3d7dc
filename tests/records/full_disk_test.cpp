// A disk that runs full at any write: what was confirmed stays, and the message says what happened.
#include "faulty_disk.hpp"
#include "records_support.hpp"

using namespace hardover;
using namespace hardover_tests;

TEST_CASE("When the disk runs full at any write, every confirmed event is there after reopening") {
    FaultyDisk disk;
    int n = 1;
    for (bool refused = true; refused; ++n) {
        INFO("full from write " << n);
        REQUIRE(n < 500);
        const TemporaryFolder folder;
        const std::string path = folder.file("jobs.db");
        make_records(path, 2);
        int confirmed = 2;

        disk.full_from_write(n);
        {
            auto store = Store::open(path);
            for (int i = 3; store.ok() && i <= 6; ++i) {
                const auto appended = store.value().append(1, event(i), summary());
                if (!appended.ok()) {
                    CHECK(appended.error().what == "the disk is full; this step was not written");
                    CHECK(appended.error().where == path);
                    break;
                }
                confirmed = i;
            }
        }
        refused = disk.refused_any();
        disk.mend();

        auto store = Store::open(path);
        REQUIRE_OK(store);
        const auto events = store.value().events(1);
        REQUIRE_OK(events);
        CHECK(events.value().size() == static_cast<std::size_t>(confirmed));
        CHECK(in_order(events.value()));
        REQUIRE_OK(store.value().check());
    }
    CHECK(n > 10);
}

TEST_CASE("After room is made, the same window goes on writing") {
    FaultyDisk disk;
    const TemporaryFolder folder;
    auto store = Store::open(folder.file("jobs.db"));
    REQUIRE_OK(store);
    REQUIRE_OK(store.value().start_job(event(1), summary()));
    disk.full_from_write(1);
    CHECK_FALSE(store.value().append(1, event(2), summary()).ok());
    CHECK_FALSE(store.value().start_job(event(1), summary()).ok());
    CHECK(store.value().jobs().value().size() == 1);
    disk.mend();
    REQUIRE_OK(store.value().append(1, event(2), summary()));
    CHECK(store.value().events(1).value().size() == 2);
}

TEST_CASE("A records file that could not be made for want of room can be made later") {
    FaultyDisk disk;
    bool refused = true;
    int n = 1;
    for (; refused; ++n) {
        INFO("full from write " << n);
        REQUIRE(n < 200);
        const TemporaryFolder folder;
        const std::string path = folder.file("jobs.db");
        disk.full_from_write(n);
        {
            const auto store = Store::open(path);
            if (!store.ok()) CHECK(store.error().what == "the disk is full; this step was not written");
        }
        refused = disk.refused_any();
        disk.mend();
        auto store = Store::open(path);
        REQUIRE_OK(store);
        REQUIRE_OK(store.value().start_job(event(1), summary()));
        REQUIRE_OK(store.value().check());
    }
    CHECK(n > 5);
}
