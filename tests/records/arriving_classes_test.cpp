// Classes of another records file: each set, hand-in and record once, and no name brought back that was taken
// out.
#include "app/records/arriving.hpp"
#include "app/records/class_store.hpp"
#include "records_support.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

const std::string day = "2026-11-25T18:00:00Z";

Store opened(const std::string& path) {
    auto store = Store::open(path);
    REQUIRE_OK(store);
    return std::move(store.value());
}

ClassNumber add_class(Store& store, const std::string& name, const std::string& key) {
    const auto number = ClassStore(store).add_class({0, name, day, key, "sealed " + key});
    REQUIRE_OK(number);
    return number.value();
}

void collect(Store& store, const std::string& sitting, const std::string& attempt, int records) {
    StoredHandIn hand_in{attempt, "last", "key", sitting, "A01", {}, "signed", "countersigned", day};
    std::vector<StoredClassRecord> lines;
    for (int i = 1; i <= records; ++i) {
        const std::string id = attempt + "-" + std::to_string(i);
        hand_in.records.push_back(id);
        lines.push_back({id, sitting, attempt, i, "line"});
    }
    REQUIRE_OK(ClassStore(store).collect(hand_in, lines));
}

ArrivedAll take(Store& into, const Store& from) {
    const auto arriving = arriving_from(from);
    REQUIRE_OK(arriving);
    auto all = into.take_in(arriving.value());
    REQUIRE_OK(all);
    return std::move(all.value());
}

}  // namespace

TEST_CASE("A class of another computer comes in with its roster, sets and hand-ins, once") {
    const TemporaryFolder folder;
    Store ours = opened(folder.file("ours.db")), theirs = opened(folder.file("theirs.db"));
    add_class(ours, "Other", "key-0");
    const ClassNumber there = add_class(theirs, "Autumn", "key-1");
    REQUIRE_OK(ClassStore(theirs).keep_seats(there, {{"A01", "Ann", ""}, {"A02", "Ben", "late"}}));
    REQUIRE_OK(ClassStore(theirs).add_set(there, {"sitting-1", "week-1", day, "file"}));
    collect(theirs, "sitting-1", "attempt-1", 3);
    ArrivedAll all = take(ours, theirs);
    CHECK(all.classes == 1);
    CHECK(all.class_records == 3);
    const auto classes = ClassStore(ours).classes();
    REQUIRE_OK(classes);
    REQUIRE(classes.value().size() == 2);
    const ClassNumber here = classes.value().front().number;
    CHECK(ClassStore(ours).seats(here).value().size() == 2);
    CHECK(ClassStore(ours).records(here).value().size() == 3);
    CHECK(ClassStore(ours).hand_ins(here).value().front().records.size() == 3);

    // Ben is taken out here, and more is handed in there.
    REQUIRE_OK(ClassStore(ours).keep_seats(here, {{"A01", "Ann", ""}}));
    collect(theirs, "sitting-1", "attempt-2", 2);
    all = take(ours, theirs);
    CHECK(all.classes == 0);
    CHECK(all.class_records == 2);
    CHECK(ClassStore(ours).seats(here).value().size() == 1);
    CHECK(take(ours, theirs).class_records == 0);
    REQUIRE_OK(ours.check());
}

TEST_CASE("Another class of the same name is kept apart, and so is another set of the same id") {
    const TemporaryFolder folder;
    Store ours = opened(folder.file("ours.db")), theirs = opened(folder.file("theirs.db"));
    const ClassNumber same_here = add_class(ours, "Spring", "key-2");
    const ClassNumber same_there = add_class(theirs, "Spring", "key-2");
    add_class(ours, "Autumn", "key-0");
    add_class(theirs, "autumn", "key-1");
    REQUIRE_OK(ClassStore(ours).add_set(same_here, {"sitting-here", "week-1", day, "file"}));
    REQUIRE_OK(ClassStore(theirs).add_set(same_there, {"sitting-there", "week-1", day, "file"}));
    collect(theirs, "sitting-there", "attempt-1", 1);
    for (int times = 0; times < 2; ++times) take(ours, theirs);
    const auto classes = ClassStore(ours).classes();
    REQUIRE_OK(classes);
    REQUIRE(classes.value().size() == 3);
    CHECK(classes.value()[1].name == "autumn (2)");
    CHECK(ClassStore(ours).sets(same_here).value().size() == 2);
    CHECK(ClassStore(ours).records(same_here).value().size() == 1);
}
