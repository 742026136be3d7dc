// What comes in from another records file: nothing twice, nothing joined that went apart.
#include "app/records/arriving.hpp"
#include "app/records/backups.hpp"
#include "faulty_disk.hpp"
#include "records_support.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

StoredEvent opened(const std::string& boat) {
    return {1, "2026-11-25T15:03:13Z", "opened", R"({"boat":")" + boat + "\"}"};
}

StoredEvent note(int sequence, const std::string& text) {
    return {sequence, "2026-11-25T16:00:00Z", "noted", R"({"text":")" + text + "\"}"};
}

JobSummary boat(const std::string& name) {
    return {name, "in hand", "wander"};
}

Store opened_store(const std::string& path) {
    auto store = Store::open(path);
    REQUIRE_OK(store);
    return std::move(store.value());
}

// A job of this boat with these notes.
JobNumber add(Store& store, const std::string& name, const std::vector<std::string>& notes) {
    const auto job = store.start_job(opened(name), boat(name));
    REQUIRE_OK(job);
    int sequence = 1;
    for (const std::string& text : notes) {
        REQUIRE_OK(store.append(job.value(), note(++sequence, text), boat(name)));
    }
    return job.value();
}

ArrivedAll take(Store& into, const Store& from) {
    const auto arriving = arriving_from(from);
    REQUIRE_OK(arriving);
    auto all = into.take_in(arriving.value());
    REQUIRE_OK(all);
    return std::move(all.value());
}

// Every job's bodies as one text, in an order that does not depend on numbers.
std::vector<std::string> histories(const Store& store) {
    std::vector<std::string> all;
    const auto rows = store.jobs();
    REQUIRE_OK(rows);
    for (const JobRow& row : rows.value()) {
        std::string text = row.summary.boat + "|" + row.summary.state + "|" + row.changed_at;
        const auto events = store.events(row.number);
        REQUIRE_OK(events);
        for (const StoredEvent& event : events.value()) text += "|" + event.body;
        all.push_back(text);
    }
    std::sort(all.begin(), all.end());
    return all;
}

}  // namespace

TEST_CASE("Jobs of another records file come in once, however often it is merged") {
    const TemporaryFolder folder;
    Store ours = opened_store(folder.file("ours.db"));
    Store theirs = opened_store(folder.file("theirs.db"));
    add(ours, "Grey Heron", {"a"});
    add(theirs, "Little Auk", {"b", "c"});
    add(theirs, "Marsh Hen", {});
    const ArrivedAll first = take(ours, theirs);
    REQUIRE(first.jobs.size() == 2);
    CHECK(first.jobs[0].what == Arrival::added);
    CHECK(first.jobs[0].events == 3);
    CHECK(first.jobs[0].here == 2);
    const auto before = histories(ours);
    const ArrivedAll again = take(ours, theirs);
    CHECK(again.jobs[0].what == Arrival::known);
    CHECK(again.jobs[1].what == Arrival::known);
    CHECK(histories(ours) == before);
    REQUIRE_OK(ours.check());
}

TEST_CASE("Merging into an empty file keeps the numbers of the jobs") {
    const TemporaryFolder folder;
    Store ours = opened_store(folder.file("ours.db"));
    Store theirs = opened_store(folder.file("theirs.db"));
    add(theirs, "Grey Heron", {});
    add(theirs, "Little Auk", {});
    const ArrivedAll all = take(ours, theirs);
    for (const ArrivedJob& job : all.jobs) CHECK(job.here == job.there);
    CHECK(ours.job(2).value().summary.boat == "Little Auk");
}

TEST_CASE("A job that went on at the other computer goes on here, and one that is shorter there stays") {
    const TemporaryFolder folder;
    Store ours = opened_store(folder.file("ours.db"));
    Store theirs = opened_store(folder.file("theirs.db"));
    const JobNumber longer_there = add(ours, "Grey Heron", {"a"});
    add(theirs, "Grey Heron", {"a", "b", "c"});
    const JobNumber longer_here = add(ours, "Little Auk", {"d", "e"});
    add(theirs, "Little Auk", {"d"});
    const ArrivedAll all = take(ours, theirs);
    CHECK(all.jobs[0].what == Arrival::went_on);
    CHECK(all.jobs[0].events == 2);
    CHECK(all.jobs[1].what == Arrival::known);
    CHECK(ours.events(longer_there).value().size() == 4);
    CHECK(ours.events(longer_here).value().size() == 3);
    CHECK(ours.jobs().value().size() == 2);
}

TEST_CASE("A job that went on differently on two computers is kept twice, and never a third time") {
    const TemporaryFolder folder;
    Store ours = opened_store(folder.file("ours.db"));
    Store theirs = opened_store(folder.file("theirs.db"));
    add(ours, "Grey Heron", {"a", "ours"});
    add(theirs, "Grey Heron", {"a", "theirs"});
    CHECK(take(ours, theirs).jobs[0].what == Arrival::added_apart);
    CHECK(ours.jobs().value().size() == 2);
    CHECK(ours.jobs_started_by(opened("Grey Heron")).value() == std::vector<JobNumber>{1, 2});
    CHECK(take(ours, theirs).jobs[0].what == Arrival::known);
    // The other way round, and round again.
    take(theirs, ours);
    take(ours, theirs);
    CHECK(ours.jobs().value().size() == 2);
    CHECK(theirs.jobs().value().size() == 2);
    // It goes on over there: the copy here follows.
    REQUIRE_OK(theirs.append(1, note(4, "later"), boat("Grey Heron")));
    CHECK(take(ours, theirs).jobs[0].what == Arrival::went_on);
    CHECK(histories(ours) == histories(theirs));
}

TEST_CASE("In which order files are merged makes no difference but to the numbers") {
    const TemporaryFolder folder;
    const auto fill = [](Store& store, int which) {
        add(store, "Grey Heron",
            which == 0 ? std::vector<std::string>{"a"} : std::vector<std::string>{"a", "b"});
        add(store, "Little Auk", {which == 2 ? "other" : "same"});
        add(store, "Boat " + std::to_string(which), {"x"});
        const auto learner = store.add_learner("Ann", "2026-01-01T00:00:00Z");
        REQUIRE_OK(learner);
        REQUIRE_OK(store.append_study(learner.value(), note(1, "first")));
        if (which > 0) REQUIRE_OK(store.append_study(learner.value(), note(2, std::to_string(which))));
        REQUIRE_OK(store.keep({{}, false, {{"s", which + 1, "{}"}}}));
    };
    std::vector<std::vector<std::string>> results;
    std::vector<std::size_t> learners;
    for (const std::vector<int>& order : {std::vector<int>{0, 1, 2}, {2, 1, 0}, {1, 0, 2}, {1, 2, 0, 1, 2}}) {
        const std::string name = "into-" + std::to_string(results.size());
        Store into = opened_store(folder.file(name));
        for (const int which : order) {
            Store from = opened_store(folder.file(name + "-" + std::to_string(which) + "-" +
                                                  std::to_string(results.size()) + ".db"));
            if (from.jobs().value().empty()) fill(from, which);
            take(into, from);
        }
        results.push_back(histories(into));
        learners.push_back(into.learners().value().size());
        CHECK(into.counts().value().front().number == 3);
        REQUIRE_OK(into.check());
    }
    for (const auto& result : results) CHECK(result == results.front());
    for (const std::size_t count : learners) CHECK(count == learners.front());
}

TEST_CASE("Two old jobs that start alike stay two") {
    const TemporaryFolder folder;
    Store ours = opened_store(folder.file("ours.db"));
    Store theirs = opened_store(folder.file("theirs.db"));
    add(theirs, "Boat not named", {});
    add(theirs, "Boat not named", {"a"});
    for (int times = 0; times < 3; ++times) take(ours, theirs);
    CHECK(histories(ours) == histories(theirs));
}

TEST_CASE("A learner who went on elsewhere goes on here, another of the same name is kept apart") {
    const TemporaryFolder folder;
    Store ours = opened_store(folder.file("ours.db"));
    Store theirs = opened_store(folder.file("theirs.db"));
    const auto ann = ours.add_learner("Ann", "2026-01-01T00:00:00Z");
    REQUIRE_OK(ours.append_study(ann.value(), note(1, "first")));
    const auto ann_there = theirs.add_learner("ann", "2026-01-01T00:00:00Z");
    REQUIRE_OK(theirs.append_study(ann_there.value(), note(1, "first")));
    REQUIRE_OK(theirs.append_study(ann_there.value(), note(2, "second")));
    CHECK(take(ours, theirs).learners[0].what == Arrival::went_on);
    CHECK(ours.study_events(ann.value()).value().size() == 2);

    REQUIRE_OK(ours.append_study(ann.value(), note(3, "here")));
    REQUIRE_OK(theirs.append_study(ann_there.value(), note(3, "there")));
    CHECK(take(ours, theirs).learners[0].here == "ann (2)");
    CHECK(take(ours, theirs).learners[0].what == Arrival::known);
    CHECK(ours.learners().value().size() == 2);
}

TEST_CASE("When the disk fills while records come in, all is as before, and room makes it go") {
    FaultyDisk disk;
    bool refused = true;
    int n = 1;
    for (; refused; n += 3) {
        INFO("full from write " << n);
        REQUIRE(n < 2000);
        const TemporaryFolder folder;
        Store theirs = opened_store(folder.file("theirs.db"));
        for (int i = 0; i < 20; ++i) add(theirs, "Boat " + std::to_string(i), {"a", "b"});
        Store ours = opened_store(folder.file("ours.db"));
        add(ours, "Grey Heron", {"a"});
        const auto before = histories(ours);
        const auto arriving = arriving_from(theirs);
        REQUIRE_OK(arriving);
        disk.full_from_write(n);
        const auto all = ours.take_in(arriving.value());
        refused = disk.refused_any();
        disk.mend();
        if (!all.ok()) {
            CHECK(all.error().what == "the disk is full; this step was not written");
            CHECK(histories(ours) == before);
        }
        take(ours, theirs);
        CHECK(ours.jobs().value().size() == 21);
        REQUIRE_OK(ours.check());
    }
    CHECK(n > 4);
}

TEST_CASE("What is merged from keeps every byte, in use or not") {
    const TemporaryFolder folder;
    const std::string path = folder.file("theirs.db");
    make_records(path, 3);
    const auto before = folder.content();
    {
        const auto copy = BorrowedCopy::of(path);
        REQUIRE_OK(copy);
        CHECK(copy.value().store().events(1).value().size() == 3);
    }
    CHECK(folder.content() == before);
    Store in_use = opened_store(path);
    REQUIRE_OK(in_use.append(1, event(4), summary()));
    const std::string bytes = file_text(path);
    const auto copy = BorrowedCopy::of(path);
    REQUIRE_OK(copy);
    CHECK(copy.value().store().events(1).value().size() == 4);
    CHECK(file_text(path) == bytes);
    REQUIRE_OK(in_use.append(1, event(5), summary()));
}

TEST_CASE("What is no records file is not merged from, and says so") {
    const TemporaryFolder folder;
    write_file(folder.file("text.db"), std::string(5000, 'x'));
    write_file(folder.file("empty.db"), "");
    CHECK(BorrowedCopy::of(folder.file("text.db")).error().what == "this is not a records file of Hardover");
    CHECK(BorrowedCopy::of(folder.file("empty.db")).error().what == "this file is empty");
    CHECK(BorrowedCopy::of(folder.file("gone.db")).error().what == "there is no such file");
}
