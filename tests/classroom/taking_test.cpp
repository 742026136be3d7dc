// A set at a student's PC: each answer is written before it is taken in, a closed lid loses nothing, and a
// graded set keeps nothing that tells the key.
#include "app/classroom/taking.hpp"

#include <catch2/catch.hpp>

#include "app/classroom/class_results.hpp"
#include "app/study/practice_players.hpp"
#include "classroom_support.hpp"
#include "study/study_support.hpp"

using namespace hardover;
using namespace hardover::classroom;
using namespace hardover_tests;
using study::practice::Session;

namespace {

// The instructor's PC, and a student's.
struct Room {
    Room() : pc(Store::open(folder.file("student.db")).value()), student(pc) {}

    Result<Taking> take(const MadeSet& set, const std::string& seat) {
        return Taking::begin(student, set.file, set.file_name, seat, set.start_code, shipped(), class_day);
    }

    // Answers every item right up to `most`.
    void answer(Taking& taking, std::size_t most) {
        study::QuizInHand quiz = taking.quiz(portraits(), 20000).value();
        for (std::size_t done = 0; done < most && !quiz.at_end(); ++done) {
            const auto answer = quiz.weigh(study::right_answer(quiz.item()), 0.8);
            REQUIRE_OK(answer);
            REQUIRE_OK(taking.keep(quiz.number(), answer.value(), 3, class_day));
            quiz.take(answer.value());
            quiz.go_on();
        }
    }

    NamedText handed_in(const Taking& taking) {
        const auto file = hand_in(
            student, taking.of().attempt, [](const HandedIn&) { return Result<void>(); }, class_day);
        REQUIRE_OK(file);
        return {file.value().file_name, file.value().text};
    }

    ScratchFolder folder;
    Store pc;
    ClassStore student;
    ClassOfOwn own;
};

std::string all_of(const ClassStore& store, const std::string& attempt) {
    std::string text;
    const auto lines = store.attempt_lines(attempt);
    REQUIRE_OK(lines);
    for (const std::string& line : lines.value()) text += line + "\n";
    return text;
}

}  // namespace

TEST_CASE(
    "A set is taken task by task, goes on where it was left, and is marked by the instructor's program") {
    Room room;
    const MadeSet set = room.own.make_set({quiz_task(3, 5), boat_task(1, 3)}, false, shipped().fingerprint);
    std::string attempt;
    {
        auto taking = room.take(set, "a02");
        REQUIRE_OK(taking);
        CHECK(taking.value().of().seat == "A02");
        room.answer(taking.value(), 2);
        attempt = taking.value().of().attempt;
    }
    auto taking = room.take(set, "A02");
    REQUIRE_OK(taking);
    CHECK(taking.value().of().attempt == attempt);
    CHECK(taking.value().heading() == "Set S1: Test. Task 1 of 2. Quiz: everything, 3 questions.");
    CHECK(taking.value().quiz(portraits(), 20000).value().number() == 3);
    room.answer(taking.value(), 9);
    CHECK(taking.value().quiz(portraits(), 20000).value().at_end());
    REQUIRE_OK(taking.value().finish_task({}, class_day));

    auto session = taking.value().boat(portraits().prepared(), 20000);
    REQUIRE_OK(session);
    const Session expert = study::practice::expert_on(portraits().prepared(), session.value().boat_shared());
    const std::size_t half = expert.events().size() / 2;
    for (std::size_t i = 0; i < half; ++i) REQUIRE_OK(taking.value().keep(expert.events()[i], class_day));
    auto again = Taking::go_on(room.student, attempt, "", shipped());
    REQUIRE_OK(again);
    session = again.value().boat(portraits().prepared(), 20000);
    REQUIRE_OK(session);
    CHECK(session.value().events().size() == half);
    for (std::size_t i = half; i < expert.events().size(); ++i) {
        REQUIRE_OK(again.value().keep(expert.events()[i], class_day));
    }
    REQUIRE_OK(again.value().finish_task({}, class_day));
    CHECK(again.value().at_end());
    // The first window did not see the second: it may not write any more.
    CHECK(taking.value().finish_task({}, class_day).error().kind == Error::Kind::storage);

    room.own.merge({room.handed_in(again.value())});
    const auto marked = class_results(room.own.class_store, room.own.of, portraits(), nullptr);
    REQUIRE_OK(marked);
    CHECK(marked.value().notes.empty());
    REQUIRE(marked.value().results.items.size() == 3);
    for (const ItemResult& item : marked.value().results.items) {
        CHECK(item.review.mark == 1);
        CHECK(item.review.sure == 0.8);
        CHECK(item.seconds == 3);
        CHECK(item.right_cause == item.chosen_cause);
        CHECK(item.origin.seat == "A02");
        CHECK(item.origin.day == 20782);  // the day of class_day
    }
    REQUIRE(marked.value().results.boats.size() == 1);
    const BoatResult& boat = marked.value().results.boats[0];
    CHECK(boat.ended.cured == expert.boat_is_right());
    CHECK(boat.ended.minutes == expert.minutes());
    CHECK(boat.ended.expert == expert.minutes());
    CHECK_FALSE(boat.faults.empty());
    CHECK(learners_with_results(marked.value().results) == 1);
    // Stopped before a boat is marked, nothing of it is kept; how far it has come is told up to the end.
    ClassStore& store = room.own.class_store;
    const auto stopped = class_results(store, room.own.of, portraits(), nullptr, 1,
                                       [](std::size_t, std::size_t) { return false; });
    REQUIRE_OK(stopped);
    CHECK(stopped.value().results.items.empty());
    std::size_t last = 0, whole = 0;
    REQUIRE_OK(
        class_results(store, room.own.of, portraits(), nullptr, 1, [&](std::size_t done, std::size_t of) {
            last = done;
            whole = of;
            return true;
        }));
    CHECK(whole == 2);  // the questions, and one boat
    CHECK(last <= whole);
    // The second time the marks come from the records, and are the same.
    const auto kept = class_results(room.own.class_store, room.own.of, portraits(), nullptr);
    REQUIRE_OK(kept);
    CHECK(kept.value().results.boats[0].ended.avoidable == boat.ended.avoidable);
    CHECK(kept.value().results.boats[0].ended.luck == boat.ended.luck);
}

TEST_CASE("A graded set keeps the bare answers, and only the class's keys mark them") {
    Room room;
    const MadeSet set = room.own.make_set({quiz_task(2, 5)}, true, shipped().fingerprint);
    CHECK(Taking::begin(room.student, set.file, "S1", "A01", "", shipped(), class_day).error().cure ==
          "type the four words of the start code");
    CHECK_FALSE(
        Taking::begin(room.student, set.file, "S1", "A01", "acorn actor agent album", shipped(), class_day)
            .ok());
    CHECK(room.student.attempts().value().empty());
    auto taking = room.take(set, "A01");
    REQUIRE_OK(taking);
    CHECK_FALSE(taking.value().tells_marks());
    const study::QuizInHand quiz = taking.value().quiz(portraits(), 20000).value();
    room.answer(taking.value(), 2);
    const std::string lines = all_of(room.student, taking.value().of().attempt);
    CHECK(lines.find("\"answer\"") != std::string::npos);
    for (const std::string& telling : {std::string("mark"), std::string("review"), std::string("seed"),
                                       quiz.item().stem.id, quiz.item().stem.statement}) {
        CHECK(lines.find(telling) == std::string::npos);
    }
    room.own.merge({room.handed_in(taking.value())});
    const auto closed = class_results(room.own.class_store, room.own.of, portraits(), nullptr);
    REQUIRE_OK(closed);
    CHECK(closed.value().results.items.empty());
    CHECK(closed.value().notes ==
          std::vector<std::string>{"Set S1 is graded: its answers are marked once the passphrase is given."});
    const auto opened = class_results(room.own.class_store, room.own.of, portraits(), &room.own.keys);
    REQUIRE_OK(opened);
    REQUIRE(opened.value().results.items.size() == 2);
    CHECK(opened.value().results.items[0].review.mark == 1);
}

TEST_CASE("A set for other seats or made with other knowledge is not begun") {
    Room room;
    const MadeSet other = room.own.make_set({quiz_task(2, 5)});
    CHECK(room.take(other, "A01").error().kind == Error::Kind::unsupported);
    const MadeSet set = room.own.make_set({quiz_task(2, 5)}, false, shipped().fingerprint);
    CHECK(room.take(set, "A10").error().text() == "seat 'A10' is not in set S2 (did you mean 'A01'?)");
    CHECK(room.student.attempts().value().empty());
}

TEST_CASE("An attempt is taken off the PC only when all of it was handed in, and does not begin anew") {
    Room room;
    const MadeSet set = room.own.make_set({quiz_task(2, 5)}, false, shipped().fingerprint);
    auto taking = room.take(set, "A01");
    REQUIRE_OK(taking);
    const std::string attempt = taking.value().of().attempt;
    room.answer(taking.value(), 1);
    CHECK_FALSE(room.student.purge(attempt, class_day).ok());
    room.handed_in(taking.value());
    room.answer(taking.value(), 1);  // one more, not handed in
    CHECK_FALSE(room.student.purge(attempt, class_day).ok());
    CHECK(taken_sets(room.student).value()[0].handed_in == 2);
    const NamedText file = room.handed_in(taking.value());
    REQUIRE_OK(room.student.purge(attempt, class_day));
    CHECK(room.student.attempt_lines(attempt).value().empty());
    CHECK(taken_sets(room.student).value()[0].purged);
    CHECK(room.take(set, "A01").error().kind == Error::Kind::not_found);
    CHECK(file_text(room.folder.file("student.db")).find("\"kind\":\"answered\"") == std::string::npos);
    CHECK(room.own.merge({file}).files[0].fresh == 3);
}

TEST_CASE("Answers to no question of the set are left out with a note, and disputed attempts are marked so") {
    ClassOfOwn own;
    const MadeSet set = own.make_set({quiz_task(1, 5)}, false, shipped().fingerprint);
    const std::string attempt = "0123456789abcdef0123456789abcdef";
    const auto file = [&](const std::vector<std::string>& answers) {
        return NamedText{"x", hand_in_file(answers_of(set.set, "A01", attempt, answers), key_numbered(1))};
    };
    own.merge({file({"?", "a"})});  // the quiz has one item: the second answers nothing
    auto marked = class_results(own.class_store, own.of, portraits(), nullptr);
    REQUIRE_OK(marked);
    REQUIRE(marked.value().results.items.size() == 1);
    CHECK_FALSE(marked.value().results.items[0].origin.disputed);
    CHECK(marked.value().notes ==
          std::vector<std::string>{
              "Set S1, seat A01: record 3 answers no question of the set and is left out."});
    own.merge({file({"a"})});
    marked = class_results(own.class_store, own.of, portraits(), nullptr);
    REQUIRE(marked.value().results.items.size() == 2);
    CHECK(marked.value().results.items[0].origin.disputed);
    CHECK(marked.value().results.items[1].origin.disputed);
}

TEST_CASE("Figures of a metric set are asked in metric units at the seat, and marked so by the class") {
    Room room;
    const auto made = make_set(room.own.class_store, room.own.of, room.own.keys,
                               {"", "Test", false, {quiz_task(4, 5, "figure")}, {}, UnitSystem::metric},
                               shipped().fingerprint, class_day, quick_cost);
    REQUIRE_OK(made);
    auto taking = room.take(made.value(), "A01");
    REQUIRE_OK(taking);
    const auto quiz = taking.value().quiz(portraits(), 20000);
    REQUIRE_OK(quiz);
    CHECK(quiz.value().item().units == UnitSystem::metric);
    for (const std::string& line : quiz.value().item().given) {
        INFO(line);
        CHECK(line.find(" in,") == std::string::npos);
        CHECK(line.find(" psi") == std::string::npos);
    }
    room.answer(taking.value(), 4);
    room.own.merge({room.handed_in(taking.value())});
    const auto marked = class_results(room.own.class_store, room.own.of, portraits(), nullptr);
    REQUIRE_OK(marked);
    REQUIRE(marked.value().results.items.size() == 4);
    for (const ItemResult& item : marked.value().results.items) CHECK(item.review.mark == 1);
}
