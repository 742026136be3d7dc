// Merging is a union: the same file twice, or files in any order and in any parts, come to the same; what is
// disputed is kept and marked, what is foreign is refused.
#include "app/classroom/merge.hpp"

#include <sqlite3.h>

#include <catch2/catch.hpp>

#include "app/study/chance.hpp"
#include "classroom_support.hpp"

using namespace hardover;
using namespace hardover::classroom;
using namespace hardover_tests;

namespace {

const std::string first_attempt = "0123456789abcdef0123456789abcdef";
const std::string other_attempt = "fedcba9876543210fedcba9876543210";

NamedText file_of(const ClassSet& set, const std::string& seat, const std::string& attempt,
                  const std::vector<std::string>& answers, int key) {
    return {set.id + "_" + seat, hand_in_file(answers_of(set, seat, attempt, answers), key_numbered(key))};
}

// Files of three seats: some handed in twice with more answers, one disputed, one from another PC.
std::vector<NamedText> drawn_files(const ClassSet& set, study::Chance& chance) {
    std::vector<NamedText> files;
    const char* letters[] = {"a", "b", "c", "d"};
    for (const char* seat : {"A01", "A02", "A03"}) {
        std::vector<std::string> answers;
        const std::string attempt =
            seat[2] == '2' ? other_attempt : first_attempt.substr(0, 30) + seat[2] + "0";
        const std::size_t times = 1 + chance.below(3);
        for (std::size_t i = 0; i < times; ++i) {
            for (std::size_t n = 1 + chance.below(3); n > 0; --n) answers.push_back(letters[chance.below(4)]);
            files.push_back(file_of(set, seat, attempt, answers, 1 + static_cast<int>(chance.below(2))));
            if (chance.below(3) == 0) answers.back() = "?";  // the same place once more, otherwise
        }
    }
    chance.shuffle(files);
    return files;
}

int run_sql(const std::string& path, const char* sql) {
    sqlite3* handle = nullptr;
    REQUIRE(sqlite3_open(path.c_str(), &handle) == SQLITE_OK);
    const int code = sqlite3_exec(handle, sql, nullptr, nullptr, nullptr);
    sqlite3_close(handle);
    return code;
}

}  // namespace

TEST_CASE("Hand-ins merged in any order, in any parts and any number of times come to the same") {
    study::Chance chance(7);
    for (int round = 0; round < 8; ++round) {
        ClassOfOwn all_at_once;
        const MadeSet set = all_at_once.make_set({quiz_task(10, 1)});
        const std::vector<NamedText> files = drawn_files(set.set, chance);
        all_at_once.merge(files);
        const std::string merged = all_at_once.merged();
        CHECK(merged.size() > 500);

        // Idempotent.
        all_at_once.merge(files);
        CHECK(all_at_once.merged() == merged);

        // Commutative and associative: the same class once more, one file at a time in another order, some
        // twice.
        ClassOfOwn one_by_one;
        REQUIRE_OK(one_by_one.class_store.add_set(one_by_one.of.number, {set.set.sitting, "S1", class_day,
                                                                         set_file(
                                                                             [&] {
                                                                                 ClassSet own = set.set;
                                                                                 own.public_key =
                                                                                     one_by_one.of.public_key;
                                                                                 return own;
                                                                             }(),
                                                                             one_by_one.keys.secret_key)}));
        std::vector<NamedText> shuffled = files;
        chance.shuffle(shuffled);
        for (const NamedText& file : shuffled) {
            one_by_one.merge({file});
            if (chance.below(2) == 0) one_by_one.merge({shuffled[chance.below(shuffled.size())]});
        }
        CHECK(one_by_one.merged() == merged);
        CHECK(check_collected(one_by_one.class_store, one_by_one.of).value().empty());
    }
}

TEST_CASE("The report of a merge says what is new for which seat and set, and who is missing") {
    ClassOfOwn own;
    const MadeSet set = own.make_set({quiz_task(10, 1)});
    const NamedText early = file_of(set.set, "A01", first_attempt, {"a"}, 1);
    const NamedText later = file_of(set.set, "A01", first_attempt, {"a", "b", "c"}, 1);
    MergeReport report = own.merge({early});
    REQUIRE(report.files.size() == 1);
    CHECK(report.files[0].seat == "A01");
    CHECK(report.files[0].set == "S1");
    CHECK(report.files[0].fresh == 2);
    CHECK(report.missing == std::vector<std::string>{"S1: A02, A03"});
    report = own.merge({later});
    CHECK(report.files[0].records == 4);
    CHECK(report.files[0].fresh == 2);
    CHECK_FALSE(report.files[0].other_pc);
    report = own.merge({early, later});
    CHECK(report.files[0].seen_before);
    CHECK(report.files[0].fresh == 0);
    CHECK(merge_text(report)[0] == "S1_A01: seat A01, set S1: nothing new, all 2 records are known.");
}

TEST_CASE("Two different records for one place are both kept, and the attempt is disputed") {
    ClassOfOwn own;
    const MadeSet set = own.make_set({quiz_task(10, 1)});
    own.merge({file_of(set.set, "A01", first_attempt, {"a", "b"}, 1)});
    const MergeReport report = own.merge({file_of(set.set, "A01", first_attempt, {"a", "c"}, 2)});
    CHECK(report.files[0].disputed);
    CHECK(report.files[0].other_pc);
    CHECK(merge_text(report)[0].find("DISPUTED") != std::string::npos);
    CHECK(own.class_store.records(own.of.number).value().size() == 4);
    CHECK(check_collected(own.class_store, own.of).value().empty());
}

TEST_CASE("A hand-in of another sitting or of a seat the set is not for is refused and nothing of it kept") {
    ClassOfOwn own;
    const MadeSet set = own.make_set({quiz_task(10, 1)});
    ClassSet last_year = set.set;
    last_year.sitting = "00000000000000000000000000000000";
    const MergeReport report = own.merge({file_of(last_year, "A01", first_attempt, {"a"}, 1),
                                          file_of(set.set, "B99", first_attempt, {"a"}, 1),
                                          {"torn", "x"},
                                          file_of(set.set, "A02", other_attempt, {"a"}, 1)});
    REQUIRE(report.files.size() == 4);
    CHECK(report.files[0].refused.has_value());
    CHECK(report.files[1].refused->text() ==
          "S1_B99: this hand-in is of seat B99, which set S1 is not for (ask who made it)");
    CHECK(report.files[2].refused.has_value());
    CHECK_FALSE(report.files[3].refused.has_value());
    CHECK(own.class_store.records(own.of.number).value().size() == 2);
}

TEST_CASE("A record of a newer version is merged and kept with every byte") {
    ClassOfOwn own;
    const MadeSet set = own.make_set({quiz_task(10, 1)});
    std::vector<Record> records = answers_of(set.set, "A01", first_attempt, {"a"});
    std::string newer = records[1].line;
    newer.replace(newer.find("\"v\":1"), 5, "\"v\":9");
    records[1] = read_record(newer).value();
    const MergeReport report = own.merge({{"x", hand_in_file(records, key_numbered(1))}});
    CHECK(report.files[0].unknown == 1);
    CHECK(own.class_store.records(own.of.number).value()[1].line == newer);
}

TEST_CASE("Work done after the last due day is told") {
    ClassOfOwn own;
    Task quiz = quiz_task(10, 1);
    quiz.due = read_day("2026-11-22").value();
    const MadeSet set = own.make_set({quiz});
    const MergeReport report = own.merge({file_of(set.set, "A01", first_attempt, {"a"}, 1)});
    CHECK(report.files[0].days_late == 3);
}

TEST_CASE("What is changed in the records behind the program's back shows in the check") {
    ClassOfOwn own;
    const MadeSet set = own.make_set({quiz_task(10, 1)});
    own.merge({file_of(set.set, "A01", first_attempt, {"a", "b"}, 1)});
    REQUIRE(check_collected(own.class_store, own.of).value().empty());
    CHECK(run_sql(own.records_file(), "UPDATE class_records SET line = ''") != SQLITE_OK);
    CHECK(run_sql(own.records_file(), "DELETE FROM class_records") != SQLITE_OK);
    CHECK(run_sql(own.records_file(), "DELETE FROM class_hand_ins") != SQLITE_OK);
    SECTION("a better answer") {
        REQUIRE(run_sql(own.records_file(),
                        "DROP TRIGGER class_records_are_never_changed;"
                        "UPDATE class_records SET line = replace(line, '\"b\"', '\"a\"')") == SQLITE_OK);
    }
    SECTION("a record gone") {
        REQUIRE(run_sql(own.records_file(),
                        "DROP TRIGGER class_records_are_never_deleted;"
                        "DELETE FROM class_records WHERE sequence = 3") == SQLITE_OK);
    }
    SECTION("a countersignature of someone without the passphrase") {
        REQUIRE(run_sql(own.records_file(),
                        "DROP TRIGGER class_hand_ins_are_never_changed;"
                        "UPDATE class_hand_ins SET countersignature = signature") == SQLITE_OK);
    }
    CHECK(check_collected(own.class_store, own.of).value().size() == 1);
}

TEST_CASE("Merging that is stopped leaves every file whole: in, or not looked at") {
    ClassOfOwn own;
    const MadeSet set = own.make_set({quiz_task(10, 1)});
    std::vector<NamedText> files;
    for (const char* seat : {"A01", "A02", "A03"})
        files.push_back(file_of(set.set, seat, first_attempt.substr(0, 30) + seat[2] + "0", {"a", "b"}, 1));
    std::vector<std::size_t> told;
    const auto report = merge_hand_ins(own.class_store, own.of, own.keys, files, class_day,
                                       [&](std::size_t done, std::size_t of) {
                                           told.push_back(done);
                                           CHECK(of == 3);
                                           return done < 2;
                                       });
    REQUIRE_OK(report);
    CHECK(told == std::vector<std::size_t>{0, 1, 2});
    CHECK(report.value().files.size() == 2);
    CHECK(report.value().left == 1);
    CHECK(own.class_store.hand_ins(own.of.number).value().size() == 2);
    CHECK(check_collected(own.class_store, own.of).value().empty());
    // The rest comes in the same way as all of it.
    const MergeReport rest = own.merge(files);
    CHECK(rest.left == 0);
    CHECK(own.class_store.hand_ins(own.of.number).value().size() == 3);
    CHECK(rest.files[0].fresh == 0);
    CHECK(rest.files[2].fresh > 0);
}
