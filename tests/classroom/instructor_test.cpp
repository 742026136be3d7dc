// The class's keys stand behind the passphrase and behind nothing else.
#include "app/classroom/instructor.hpp"

#include <catch2/catch.hpp>

#include "classroom_support.hpp"

using namespace hardover;
using namespace hardover::classroom;
using namespace hardover_tests;

TEST_CASE("The passphrase opens the class, a wrong one gives one message, a new one takes its place") {
    ClassOfOwn own;
    const auto wrong = open_class(own.of, "six words somebody would guess");
    REQUIRE_FALSE(wrong.ok());
    CHECK(wrong.error().text() ==
          "these words do not open the class '" + own.of.name +
              "': they are not its passphrase (small and capital letters differ; where it is lost, the words "
              "of the recovery sheet set another: hardover class passphrase --recovery)");
    const auto other = find_class(own.class_store, "Foo");
    REQUIRE_FALSE(other.ok());
    CHECK(other.error().cure == "list them with: hardover class list");
    CHECK(to_hex(own.keys.public_key) == own.of.public_key);
    CHECK_FALSE(change_passphrase(own.class_store, own.of, "six words somebody would guess",
                                  "another passphrase", quick_cost)
                    .ok());
    REQUIRE_OK(
        change_passphrase(own.class_store, own.of, class_passphrase, "another passphrase", quick_cost));
    const auto again = find_class(own.class_store, "");
    REQUIRE_OK(again);
    CHECK_FALSE(open_class(again.value(), class_passphrase).ok());
    const auto keys = open_class(again.value(), "another passphrase");
    REQUIRE_OK(keys);
    CHECK(keys.value().public_key == own.keys.public_key);
    CHECK(keys.value().of_seeds.bytes() == own.keys.of_seeds.bytes());
}

TEST_CASE(
    "The words of the recovery sheet open a class whose passphrase is lost, also after it was changed") {
    ClassOfOwn own;
    const auto none = recover_class(own.class_store, own.of, "acorn actor", "another passphrase", quick_cost);
    REQUIRE_FALSE(none.ok());
    CHECK(none.error().kind == Error::Kind::not_found);
    CHECK_FALSE(draw_recovery(own.of, "six words somebody would guess", quick_cost).ok());
    const auto first = draw_recovery(own.of, class_passphrase, quick_cost);
    REQUIRE_OK(first);
    REQUIRE_OK(keep_recovery(own.class_store, own.of, first.value()));
    const auto as_kept = [&] {
        const auto found = find_class(own.class_store, "");
        REQUIRE_OK(found);
        return found.value();
    };
    REQUIRE_OK(open_class(as_kept(), class_passphrase));
    REQUIRE_OK(
        change_passphrase(own.class_store, as_kept(), class_passphrase, "lost the next day", quick_cost));
    const auto wrong =
        recover_class(own.class_store, as_kept(), first.value().words + "s", "found again today", quick_cost);
    REQUIRE_FALSE(wrong.ok());
    CHECK(wrong.error().what.find("those of its newest recovery sheet") != std::string::npos);
    REQUIRE_OK(
        recover_class(own.class_store, as_kept(), first.value().words, "found again today", quick_cost));
    const auto keys = open_class(as_kept(), "found again today");
    REQUIRE_OK(keys);
    CHECK(keys.value().public_key == own.keys.public_key);
    CHECK(keys.value().of_seeds.bytes() == own.keys.of_seeds.bytes());
    CHECK_FALSE(open_class(as_kept(), "lost the next day").ok());

    const auto second = draw_recovery(as_kept(), "found again today", quick_cost);
    REQUIRE_OK(second);
    REQUIRE_OK(keep_recovery(own.class_store, as_kept(), second.value()));
    CHECK_FALSE(
        recover_class(own.class_store, as_kept(), first.value().words, "an old sheet's one", quick_cost)
            .ok());
    REQUIRE_OK(
        recover_class(own.class_store, as_kept(), second.value().words, "a new sheet's one", quick_cost));
}

TEST_CASE("A class needs a name of its own and a passphrase of some length") {
    ClassOfOwn own;
    CHECK_FALSE(make_class(own.class_store, "evening", class_passphrase, class_day, quick_cost).ok());
    CHECK_FALSE(make_class(own.class_store, " ", class_passphrase, class_day, quick_cost).ok());
    CHECK_FALSE(make_class(own.class_store, "Morning", "short", class_day, quick_cost).ok());
    REQUIRE_OK(make_class(own.class_store, "Morning", class_passphrase, class_day, quick_cost));
    CHECK(find_class(own.class_store, "").error().text() ==
          "there are several classes on this PC (say which with --class NAME)");
    CHECK(find_class(own.class_store, "Morning").value().public_key != own.of.public_key);
    CHECK(find_class(own.class_store, "Mornin").error().cure == "did you mean 'Morning'?");
}

TEST_CASE("A seat taken off the roster leaves no name in the records file") {
    ClassOfOwn own;
    Roster roster = roster_of(own.class_store, own.of).value();
    REQUIRE_OK(roster.rename("A02", "Quincy Invented-Nobody"));
    REQUIRE_OK(keep_roster(own.class_store, own.of, roster));
    CHECK(roster_of(own.class_store, own.of).value().find("A02")->name == "Quincy Invented-Nobody");
    REQUIRE_OK(roster.remove("A02"));
    REQUIRE_OK(keep_roster(own.class_store, own.of, roster));
    CHECK(roster_of(own.class_store, own.of).value().seats().size() == 2);
    CHECK(file_text(own.records_file()).find("Quincy") == std::string::npos);
    CHECK(file_text(own.records_file() + "-wal").find("Quincy") == std::string::npos);
}
