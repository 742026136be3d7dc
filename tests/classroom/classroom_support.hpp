// A class on a records file of its own, with a set and hand-ins made for it, for the tests of this box.
#pragma once

#include <string>
#include <vector>

#include "app/classroom/hand_in.hpp"
#include "app/classroom/instructor.hpp"
#include "app/classroom/merge.hpp"
#include "scratch_folder.hpp"
#include "support.hpp"

namespace hardover_tests {

inline constexpr const char* class_passphrase = "six words nobody would guess";
inline constexpr const char* class_day = "2026-11-25T18:00:00Z";
inline const hardover::classroom::Cost quick_cost{1, 64 * 1024};

// A class with seats A01 to A03.
class ClassOfOwn {
  public:
    ClassOfOwn() : store_(opened(folder_.file("records.db"))), class_store(store_) {
        using namespace hardover::classroom;
        auto made = make_class(class_store, "Evening", class_passphrase, class_day, quick_cost);
        REQUIRE_OK(made);
        of = made.value();
        Roster roster;
        for (const char* code : {"A01", "A02", "A03"}) REQUIRE_OK(roster.add({code, "", ""}));
        REQUIRE_OK(keep_roster(class_store, of, roster));
        auto opened_keys = open_class(of, class_passphrase);
        REQUIRE_OK(opened_keys);
        keys = std::move(opened_keys).value();
    }

    hardover::classroom::MadeSet make_set(std::vector<hardover::classroom::Task> tasks, bool graded = false,
                                          const std::string& knowledge = "k") {
        auto made = hardover::classroom::make_set(class_store, of, keys, {"", "Test", graded, tasks, {}},
                                                  knowledge, class_day, quick_cost);
        REQUIRE_OK(made);
        return std::move(made).value();
    }

    hardover::classroom::MergeReport merge(const std::vector<hardover::classroom::NamedText>& files) {
        auto report = hardover::classroom::merge_hand_ins(class_store, of, keys, files, class_day);
        REQUIRE_OK(report);
        return std::move(report).value();
    }

    // Everything merged, as text; when it was collected is left out.
    std::string merged() const {
        std::string text;
        const auto records = class_store.records(of.number);
        const auto hand_ins = class_store.hand_ins(of.number);
        REQUIRE_OK(records);
        REQUIRE_OK(hand_ins);
        for (const auto& record : records.value()) text += record.line + "\n";
        for (const auto& each : hand_ins.value()) {
            text += each.attempt + each.last + each.key + each.seat + each.signature + "\n";
        }
        return text;
    }

    std::string records_file() const { return folder_.file("records.db"); }

  private:
    static hardover::Store opened(const std::string& path) {
        auto store = hardover::Store::open(path);
        REQUIRE_OK(store);
        return std::move(store).value();
    }
    ScratchFolder folder_;
    hardover::Store store_;

  public:
    hardover::ClassStore class_store;
    hardover::StoredClass of;
    hardover::classroom::ClassKeys keys;
};

inline hardover::classroom::Task quiz_task(int count, std::uint64_t seed, const std::string& topic = "") {
    hardover::classroom::Task task;
    task.count = count;
    task.seed = seed;
    task.topic = topic;
    return task;
}

inline hardover::classroom::Task boat_task(int level, std::uint64_t seed) {
    hardover::classroom::Task task;
    task.kind = hardover::classroom::Task::Kind::boat;
    task.level = level;
    task.seed = seed;
    return task;
}

// The records of an attempt: begun, then these answers to task 1.
inline std::vector<hardover::classroom::Record> answers_of(const hardover::classroom::ClassSet& set,
                                                           const std::string& seat,
                                                           const std::string& attempt,
                                                           const std::vector<std::string>& answers) {
    using namespace hardover::classroom;
    const AttemptOf of{set.id, set.sitting, seat, attempt};
    std::vector<Record> records{make_record(of, 1, class_day, Began{set.knowledge})};
    for (std::size_t i = 0; i < answers.size(); ++i) {
        Answered answered{1, static_cast<int>(i) + 1, answers[i], 0.7, 12.5, {}};
        records.push_back(make_record(of, static_cast<int>(i) + 2, class_day, answered));
    }
    return records;
}

inline hardover::classroom::KeyPair key_numbered(int number) {
    using namespace hardover::classroom;
    return key_pair_of(Secret(Bytes(seed_size, static_cast<char>(number))));
}

}  // namespace hardover_tests
