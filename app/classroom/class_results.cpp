#include "app/classroom/class_results.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <atomic>
#include <map>

#include "app/classroom/in_parallel.hpp"
#include "app/classroom/record.hpp"
#include "app/study/marking.hpp"
#include "app/study/practice_begin.hpp"
#include "app/study/practice_debrief.hpp"
#include "app/study/practice_players.hpp"
#include "app/study/quiz_in_hand.hpp"

namespace hardover::classroom {

namespace {

using namespace study::practice;
using study::Form;
using study::Item;

// The records of one attempt, and whether any place of it is claimed twice.
struct Attempt {
    std::vector<Record> records;
    bool disputed = false;
};

// A boat that was worked on to its end, to be marked.
struct WorkedBoat {
    BoatResult result;
    std::vector<PracticeEvent> events;
    std::string of;  // what its marks are of
    bool marked = false;
    bool odd = false;  // its events cannot be worked through on this boat
};

Origin origin_of(const Record& record, bool disputed) {
    return {record.of.seat, record.of.set, record.of.attempt, record.sequence, record.day, disputed};
}

// Of items that ask for a cause: the one chosen, if one was.
std::string chosen_cause(const Knowledge& knowledge, const Item& item, const std::string& typed,
                         std::string& right) {
    if (item.stem.form != Form::signs && item.stem.form != Form::speaks) return "";
    const auto id_of = [&](const study::Option& option) {
        return option.of == none ? "" : knowledge.causes[static_cast<std::size_t>(option.of)].id;
    };
    for (const study::Option& option : item.options) {
        if (option.right) right = id_of(option);
    }
    const auto choices = study::read_choices(item, typed);
    if (!choices || choices.value().size() != 1) return "";
    return id_of(item.options[static_cast<std::size_t>(choices.value().front())]);
}

class ResultsMaker {
  public:
    ResultsMaker(ClassStore& store, const study::Portraits& portraits, const ClassKeys* keys,
                 const Watched& watched)
        : store_(store),
          portraits_(portraits),
          knowledge_(portraits.knowledge()),
          keys_(keys),
          watched_(watched) {}

    Result<MarkedClass> make(const StoredClass& of, int threads) {
        const auto roster = roster_of(store_, of);
        if (!roster) return roster.error();
        auto sets = sets_of(store_, of);
        if (!sets) return sets.error();
        marked_.results.name = of.name;
        marked_.results.seats = roster.value().seats();
        if (auto read = read_records(of); !read) return read.error();
        for (const ClassSet& set : sets.value()) count_pieces(set);
        for (ClassSet& set : sets.value()) take_set(set);
        if (auto marked = mark_boats(threads); !marked) return marked.error();
        for (WorkedBoat& boat : boats_) {
            if (boat.marked) marked_.results.boats.push_back(std::move(boat.result));
        }
        return std::move(marked_);
    }

  private:
    // A piece of work is the questions of a quiz, or the boat of one learner.
    void count_pieces(const ClassSet& set) {
        const auto attempts = by_sitting_.find(set.sitting);
        if (attempts == by_sitting_.end()) return;
        for (const Task& task : set.tasks)
            pieces_ += task.kind == Task::Kind::quiz ? 1 : attempts->second.size();
    }
    // From any thread. False: the result is no longer wanted.
    bool goes_on_after(std::size_t more) { return goes_on(watched_, done_ += more, pieces_); }

    Result<void> read_records(const StoredClass& of) {
        const auto stored = store_.records(of.number);
        if (!stored) return stored.error();
        for (const StoredClassRecord& each : stored.value()) {
            auto record = read_record(each.line);
            if (!record) {
                return Error{Error::Kind::storage, record.error().what, "record " + each.id + " of the class",
                             "see: hardover class check"};
            }
            Attempt& attempt = by_sitting_[each.sitting][each.attempt];
            const bool twice =
                !attempt.records.empty() && attempt.records.back().sequence == record.value().sequence;
            attempt.disputed = attempt.disputed || twice;
            attempt.records.push_back(std::move(record).value());
        }
        return {};
    }

    void take_set(ClassSet& set) {
        const auto attempts = by_sitting_.find(set.sitting);
        if (attempts == by_sitting_.end()) return;
        if (set.graded && keys_ == nullptr) {
            marked_.notes.push_back("Set " + set.id +
                                    " is graded: its answers are marked once the passphrase is given.");
            return;
        }
        if (keys_ != nullptr) put_seeds(set, *keys_);
        const bool same = set.knowledge == knowledge_.fingerprint;
        if (!same) {
            marked_.notes.push_back(
                "Set " + set.id + " was made with other knowledge than today's: " +
                (set.graded ? "its answers cannot be marked." : "the marks are those of the students' PCs."));
        }
        for (std::size_t i = 0; i < set.tasks.size(); ++i) {
            const int task = static_cast<int>(i) + 1;
            if (set.tasks[i].kind == Task::Kind::quiz) {
                take_quiz(set, task, attempts->second, same);
            } else {
                take_boat(set, task, attempts->second, same);
            }
        }
    }

    void take_quiz(const ClassSet& set, int task, const std::map<std::string, Attempt>& attempts, bool same) {
        std::vector<Item> items;
        if (!goes_on_after(0)) return;
        marked_.results.topics.insert(set.tasks[static_cast<std::size_t>(task) - 1].topic);
        if (same) {
            const study::QuizWish wish = wish_of(set.tasks[static_cast<std::size_t>(task) - 1], 0, set.units);
            auto made = study::choose_items(portraits_, study::LearnerState(), wish,
                                            [this](std::size_t, std::size_t) { return goes_on_after(0); });
            if (made) items = std::move(made).value();
        }
        for (const auto& [id, attempt] : attempts) {
            for (const Record& record : attempt.records) {
                const auto* answered = std::get_if<Answered>(&record.content);
                if (answered == nullptr || answered->task != task) continue;
                take_answer(set, record, *answered, attempt.disputed, items, same);
            }
        }
        done_ += 1;
    }

    void take_answer(const ClassSet& set, const Record& record, const Answered& answered, bool disputed,
                     const std::vector<Item>& items, bool same) {
        ItemResult result;
        result.origin = origin_of(record, disputed);
        result.seconds = answered.seconds;
        const bool is_there =
            answered.number >= 1 && static_cast<std::size_t>(answered.number) <= items.size();
        if (is_there) {
            const Item& item = items[static_cast<std::size_t>(answered.number) - 1];
            const study::QuizInHand one(
                knowledge_, {item}, study::LearnerState(),
                wish_of(set.tasks[static_cast<std::size_t>(answered.task) - 1], record.day, set.units));
            const auto answer = one.weigh(answered.answer, answered.sure);
            if (!answer) return note_odd(set, record);
            result.review = answer.value().review;
            result.chosen_cause = chosen_cause(knowledge_, item, answered.answer, result.right_cause);
        } else if (!same && answered.review) {
            result.review = *answered.review;
        } else {
            if (same) note_odd(set, record);
            return;
        }
        marked_.results.items.push_back(std::move(result));
    }

    void note_odd(const Origin& origin) {
        marked_.notes.push_back(
            fmt::format("Set {}, seat {}: what was done on a practice boat (up to record {}) "
                        "cannot be done on it and is left out.",
                        origin.set, origin.seat, origin.sequence));
    }

    void note_odd(const ClassSet& set, const Record& record) {
        marked_.notes.push_back(
            fmt::format("Set {}, seat {}: record {} answers no question of the set and is "
                        "left out.",
                        set.id, record.of.seat, record.sequence));
    }

    void take_boat(const ClassSet& set, int task, const std::map<std::string, Attempt>& attempts, bool same) {
        const Task& wished = set.tasks[static_cast<std::size_t>(task) - 1];
        for (const auto& [id, attempt] : attempts) {
            WorkedBoat boat;
            boat.result.begun = {wished.seed, wished.level, wished.guidance, set.knowledge, 0};
            std::optional<Ended> told;
            int last = 0;
            for (const Record& record : attempt.records) {
                if (record.sequence == last) continue;  // disputed: the first by id is worked through
                last = record.sequence;
                const auto* did = std::get_if<Did>(&record.content);
                const auto* done = std::get_if<TaskDone>(&record.content);
                if (done != nullptr && done->task == task) told = done->ended;
                if (did == nullptr || did->task != task) continue;
                if (boat.events.empty()) boat.result.begun.day = record.day;
                boat.result.origin = origin_of(record, attempt.disputed);
                boat.events.push_back(did->event);
                if (const auto* named = std::get_if<Named>(&did->event)) boat.result.named = named->cause;
            }
            if (boat.events.empty()) continue;
            if (!same && !told) continue;
            if (!same) {
                boat.result.ended = *told;
                boat.marked = true;
            }
            boats_.push_back(std::move(boat));
        }
    }

    // Marks are worked out in parallel; whoever is quicker, they are the same.
    Result<void> mark_boats(int threads) {
        std::vector<WorkedBoat*> open;
        for (WorkedBoat& boat : boats_) {
            if (boat.marked) continue;
            boat.of = what_is_marked(boat);
            const auto kept = store_.marks(boat.of);
            if (!kept) return kept.error();
            const auto ended = kept.value() ? read_ended(*kept.value()) : Result<OfPractice<Ended>>(Error{});
            if (ended) {
                boat.result.ended = ended.value().what;
                boat.marked = true;
            }
            if (!find_boat(boat.result)) continue;
            boat.result.faults = faults_of(*made_[key_of(boat.result)]);
            if (!boat.marked) open.push_back(&boat);
        }
        done_ += boats_.size() - open.size();
        work_out(open, threads);
        std::vector<std::pair<std::string, std::string>> fresh;
        for (const WorkedBoat* boat : open) {
            if (boat->odd) note_odd(boat->result.origin);
            if (boat->marked) fresh.emplace_back(boat->of, body_of(0, boat->result.ended));
        }
        return fresh.empty() ? Result<void>() : store_.keep_marks(fresh);
    }

    using BoatKey = std::pair<std::uint64_t, int>;
    static BoatKey key_of(const BoatResult& result) { return {result.begun.seed, result.begun.level}; }

    bool find_boat(const BoatResult& result) {
        const auto [entry, is_new] = made_.try_emplace(key_of(result));
        if (is_new) {
            const auto made =
                study::make_practice_boat(portraits_.prepared(), result.begun.seed, result.begun.level);
            if (made) entry->second = made.value();
        }
        return entry->second != nullptr;
    }

    std::vector<std::string> faults_of(const study::PracticeBoat& boat) const {
        std::vector<std::string> ids;
        for (const Index cause : boat.faults) {
            ids.push_back(knowledge_.causes[static_cast<std::size_t>(cause)].id);
        }
        return ids;
    }

    // Equal for equal work on the same boat with the same knowledge.
    static std::string what_is_marked(const WorkedBoat& boat) {
        Begun begun = boat.result.begun;
        begun.day = 0;
        std::string text = body_of(begun);
        for (const PracticeEvent& event : boat.events) text += "\n" + body_of(0, event);
        return record_id(text);
    }

    // The expert's minutes are the same for everyone on the same boat.
    void work_out(const std::vector<WorkedBoat*>& open, int threads) {
        std::vector<BoatKey> keys;
        std::map<BoatKey, double> expert;
        for (const WorkedBoat* boat : open) {
            if (expert.emplace(key_of(boat->result), 0.0).second) keys.push_back(key_of(boat->result));
        }
        in_parallel(keys.size(), threads, [&](std::size_t i) {
            if (!goes_on_after(0)) return;
            expert.at(keys[i]) = expert_on(portraits_.prepared(), made_.at(keys[i])).minutes();
        });
        in_parallel(open.size(), threads, [&](std::size_t i) {
            if (!goes_on_after(0)) return;
            WorkedBoat& boat = *open[i];
            const auto session =
                replay(portraits_.prepared(), made_.at(key_of(boat.result)), boat.result.begun, boat.events);
            boat.odd = !session;
            if (boat.odd || session.value().phase() != Session::Phase::ended) return;
            Marks marks = marks_alone(session.value());
            marks.expert = expert.at(key_of(boat.result));
            boat.result.ended = ended_of(session.value(), marks);
            boat.marked = true;
            goes_on_after(1);
        });
    }

    ClassStore& store_;
    const study::Portraits& portraits_;
    const Knowledge& knowledge_;
    const ClassKeys* keys_;
    const Watched& watched_;
    std::size_t pieces_ = 0;
    std::atomic<std::size_t> done_{0};
    std::map<std::string, std::map<std::string, Attempt>> by_sitting_;
    std::map<BoatKey, std::shared_ptr<const study::PracticeBoat>> made_;
    std::vector<WorkedBoat> boats_;
    MarkedClass marked_;
};

}  // namespace

Result<MarkedClass> class_results(ClassStore& store, const StoredClass& of, const study::Portraits& portraits,
                                  const ClassKeys* keys, int threads, const Watched& watched) {
    return ResultsMaker(store, portraits, keys, watched).make(of, threads);
}

}  // namespace hardover::classroom
