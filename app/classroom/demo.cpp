#include "app/classroom/demo.hpp"

#include <fmt/format.h>

#include <atomic>

#include "app/classroom/demo_learner.hpp"
#include "app/classroom/in_parallel.hpp"
#include "app/study/practice_players.hpp"
#include "app/study/quiz_in_hand.hpp"

namespace hardover::classroom {

namespace {

using study::Chance;
using study::Item;

constexpr double learned_between_sets = 0.35;  // logits

// The evenings of the invented term, and what is set for each.
struct Evening {
    const char* title;
    const char* day;
    int questions;
    int level;
    bool graded;
};
constexpr Evening evenings[] = {{"Signs and causes (invented)", "2026-09-14", 12, 1, false},
                                {"Proving it (invented)", "2026-10-12", 12, 1, false},
                                {"End of term (invented)", "2026-11-16", 15, 2, true}};
constexpr std::size_t evening_count = std::size(evenings);
constexpr int evening_minutes = 180;

// Seat and evening, from 0, that handed nothing in.
constexpr std::pair<int, std::size_t> absent[] = {{6, 1}, {12, 2}};

bool was_absent(int seat, std::size_t evening) {
    for (const auto& [who, when] : absent) {
        if (who == seat && when == evening) return true;
    }
    return false;
}

std::string at_evening(const Evening& evening, int minute) {
    const int hour = 17 + minute / 60;
    return fmt::format("{}T{:02}:{:02}:00Z", evening.day, hour % 24, minute % 60);
}

Roster invented_roster() {
    Roster roster;
    for (int seat = 1; seat <= demo_seats; ++seat) {
        (void)roster.add({fmt::format("A{:02}", seat), fmt::format("Invented learner {}", seat),
                          seat % 2 == 1 ? "Port" : "Starboard"});  // such a seat is always right
    }
    return roster;
}

std::string csv_of(const Roster& roster) {
    std::string text = "seat,name,group\r\n";
    for (const Seat& seat : roster.seats()) {
        text += fmt::format("{},{},{}\r\n", seat.code, seat.name, seat.group);
    }
    return text;
}

SetWish wish_of(const Evening& evening, Chance& chance) {
    const int due = read_day(evening.day).value();
    Task quiz;
    quiz.count = evening.questions;
    quiz.seed = chance.below(1000000);
    quiz.due = due;
    Task boat;
    boat.kind = Task::Kind::boat;
    boat.level = evening.level;
    boat.seed = chance.below(1000000);
    boat.due = due;
    return {"", evening.title, evening.graded, {quiz, boat}, {}};
}

// What one seat does on one set, record by record.
class SeatAtWork {
  public:
    SeatAtWork(const study::Portraits& portraits, const ClassSet& set, const Evening& evening, AttemptOf of)
        : portraits_(portraits), set_(set), evening_(evening), of_(std::move(of)) {
        add(Began{set.knowledge});
    }

    void answer(int task, const std::vector<Item>& items, const DemoLearner& learner, Chance& chance) {
        const Task& quiz = set_.tasks[static_cast<std::size_t>(task) - 1];
        for (std::size_t i = 0; i < items.size(); ++i) {
            const DemoAnswer given = answer_of(learner, items[i], chance);
            Answered answered{task, static_cast<int>(i) + 1, given.typed, given.sure, given.seconds, {}};
            if (!set_.graded) {
                const study::QuizInHand one(
                    portraits_.knowledge(), {items[i]}, study::LearnerState(),
                    classroom::wish_of(quiz, read_day(evening_.day).value(), set_.units));
                if (const auto weighed = one.weigh(given.typed, given.sure)) {
                    answered.review = weighed.value().review;
                }
            }
            add(answered);
        }
        add(TaskDone{task, {}});
    }

    void work_on(int task, const std::shared_ptr<const study::PracticeBoat>& boat, const DemoLearner& learner,
                 std::uint64_t seed) {
        const auto session = study::practice::learner_on(portraits_.prepared(), boat, care_of(learner), seed);
        for (const study::practice::PracticeEvent& event : session.events()) add(Did{task, event});
        add(TaskDone{task, {}});
    }

    const std::vector<Record>& records() const { return records_; }

  private:
    void add(const RecordContent& content) {
        const int number = static_cast<int>(records_.size()) + 1;
        records_.push_back(make_record(of_, number, at_evening(evening_, number), content));
    }

    const study::Portraits& portraits_;
    const ClassSet& set_;
    const Evening& evening_;
    AttemptOf of_;
    std::vector<Record> records_;
};

// A seat with its learner and the key of its PC.
struct DemoSeat {
    std::string code;
    DemoLearner learner;
    KeyPair key;
    std::uint64_t seed = 0;
};

std::vector<DemoSeat> draw_seats(const Roster& roster, Chance& chance) {
    std::vector<DemoSeat> seats;
    for (const Seat& seat : roster.seats()) {
        seats.push_back({seat.code, draw_learner(chance), make_key_pair(), chance.next()});
    }
    return seats;
}

// The hand-ins of one evening, by seat; "" where a seat was absent.
Result<std::vector<std::string>> hand_ins_of(const study::Portraits& portraits, const ClassSet& set,
                                             std::size_t evening, const std::vector<DemoSeat>& seats,
                                             const Watched& watched) {
    const auto items = items_of(set.tasks[0], portraits, 0, set.units);
    if (!items) return items.error();
    const auto boat = study::make_practice_boat(portraits.prepared(), set.tasks[1].seed, set.tasks[1].level);
    if (!boat) return boat.error();
    std::vector<std::string> files(seats.size());
    std::atomic<std::size_t> done{evening * seats.size()};
    in_parallel(seats.size(), 0, [&](std::size_t s) {
        if (!goes_on(watched, done++, evening_count * seats.size())) return;
        if (was_absent(static_cast<int>(s), evening)) return;
        const DemoSeat& seat = seats[s];
        DemoLearner learner = seat.learner;
        learner.ability += learned_between_sets * static_cast<double>(evening);
        Chance chance(seat.seed, evenings[evening].day);
        SeatAtWork work(portraits, set, evenings[evening], {set.id, set.sitting, seat.code, random_id()});
        work.answer(1, items.value(), learner, chance);
        work.work_on(2, boat.value(), learner, chance.next());
        files[s] = hand_in_file(work.records(), seat.key);
    });
    return files;
}

}  // namespace

Result<DemoClass> make_demo(ClassStore& store, const study::Portraits& portraits, std::uint64_t seed,
                            const Watched& watched) {
    DemoClass demo;
    const std::string began = at_evening(evenings[0], 0);
    auto of = make_class(store, "Invented class, autumn term", demo_passphrase, began, interactive_cost());
    if (!of) return of.error();
    demo.of = of.value();
    const Roster roster = invented_roster();
    demo.roster_csv = csv_of(roster);
    if (const auto kept = keep_roster(store, demo.of, roster); !kept) return kept.error();
    const auto keys = open_class(demo.of, demo_passphrase);
    if (!keys) return keys.error();
    Chance chance(seed, "demo class");
    const std::vector<DemoSeat> seats = draw_seats(roster, chance);
    for (std::size_t evening = 0; evening < evening_count; ++evening) {
        const auto made =
            make_set(store, demo.of, keys.value(), wish_of(evenings[evening], chance),
                     portraits.knowledge().fingerprint, at_evening(evenings[evening], 0), interactive_cost());
        if (!made) return made.error();
        demo.sets.push_back({made.value().file_name, made.value().file});
        const auto files = hand_ins_of(portraits, made.value().set, evening, seats, watched);
        if (!files) return files.error();
        for (std::size_t s = 0; s < seats.size(); ++s) {
            if (files.value()[s].empty()) continue;
            demo.hand_ins.push_back(
                {made.value().set.id + "_" + seats[s].code + ".hardover-hand-in", files.value()[s]});
        }
    }
    return demo;
}

Result<MarkedClass> demo_results(ClassStore& store, const DemoClass& demo, const study::Portraits& portraits,
                                 int threads, const Watched& watched) {
    const auto keys = open_class(demo.of, demo_passphrase);
    if (!keys) return keys.error();
    const std::string at = at_evening(evenings[evening_count - 1], evening_minutes);
    if (const auto merged = merge_hand_ins(store, demo.of, keys.value(), demo.hand_ins, at, watched); !merged)
        return merged.error();
    return class_results(store, demo.of, portraits, &keys.value(), threads, watched);
}

}  // namespace hardover::classroom
