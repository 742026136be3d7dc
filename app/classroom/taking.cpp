#include "app/classroom/taking.hpp"

#include <fmt/format.h>
#include <algorithm>

#include "app/classroom/roster.hpp"
#include "app/study/practice_begin.hpp"
#include "rules/result/nearest.hpp"

namespace hardover::classroom {

namespace {

Result<std::string> seat_in(const ClassSet& set, const std::string& typed) {
    std::vector<Seat> seats;
    for (const std::string& code : set.seats) seats.push_back({code, "", ""});
    const Roster known(seats);
    if (const Seat* seat = known.find(typed)) return seat->code;
    return Error{Error::Kind::not_found, "seat '" + typed + "' is not in set " + set.id, "",
                 did_you_mean(typed, set.seats)};
}

Result<void> fits(const ClassSet& set, const Knowledge& knowledge) {
    if (set.knowledge == knowledge.fingerprint) return {};
    return Error{Error::Kind::unsupported,
                 "set " + set.id + " was made with other knowledge than this PC has: it would ask otherwise",
                 "", "use the same version and the same knowledge folder as the instructor"};
}

// The seeds of a graded set, once the room has the start code.
Result<void> open_with(ClassSet& set, const std::string& start_code) {
    if (set.open) return {};
    if (start_code.empty()) {
        return Error{Error::Kind::bad_input, "set " + set.id + " is graded", "",
                     "type the four words of the start code"};
    }
    return open_seeds(set, start_code);
}

}  // namespace

Result<std::vector<TakenSet>> taken_sets(const ClassStore& store) {
    const auto attempts = store.attempts();
    if (!attempts) return attempts.error();
    std::vector<TakenSet> taken;
    for (const StoredAttempt& attempt : attempts.value()) {
        const auto set = read_set_file(attempt.file, "the set of " + attempt.seat);
        if (!set) return set.error();
        taken.push_back({attempt.attempt, set.value().id, set.value().title, attempt.seat, set.value().graded,
                         attempt.records, attempt.handed_in, attempt.handed_in_at,
                         !attempt.purged_at.empty()});
    }
    return taken;
}

Result<Taking> Taking::begin(ClassStore& store, const std::string& file_text, const std::string& file_name,
                             const std::string& seat, const std::string& start_code,
                             const Knowledge& knowledge, const std::string& at) {
    auto set = read_set_file(file_text, file_name);
    if (!set) return set.error();
    if (auto right = fits(set.value(), knowledge); !right) return right.error();
    const auto code = seat_in(set.value(), seat);
    if (!code) return code.error();
    const auto attempts = store.attempts();
    if (!attempts) return attempts.error();
    for (const StoredAttempt& attempt : attempts.value()) {
        if (attempt.sitting == set.value().sitting && attempt.seat == code.value()) {
            return go_on(store, attempt.attempt, start_code, knowledge);
        }
    }
    if (auto open = open_with(set.value(), start_code); !open) return open.error();
    const AttemptOf of{set.value().id, set.value().sitting, code.value(), random_id()};
    const Record began = make_record(of, 1, at, Began{knowledge.fingerprint});
    StoredAttempt attempt;
    attempt.attempt = of.attempt;
    attempt.sitting = of.sitting;
    attempt.seat = of.seat;
    attempt.began_at = at;
    attempt.file = file_text;
    if (auto begun = store.begin_attempt(attempt, began.line); !begun) return begun.error();
    return from_records(store, std::move(set).value(), of, {began.line});
}

Result<Taking> Taking::go_on(ClassStore& store, const std::string& attempt, const std::string& start_code,
                             const Knowledge& knowledge) {
    const auto attempts = store.attempts();
    if (!attempts) return attempts.error();
    for (const StoredAttempt& stored : attempts.value()) {
        if (stored.attempt != attempt) continue;
        if (!stored.purged_at.empty()) {
            return Error{
                Error::Kind::not_found,
                "seat " + stored.seat + " handed this set in, and its answers were taken off this PC", "",
                "nothing is left to do here"};
        }
        auto set = read_set_file(stored.file, "the set of " + stored.seat);
        if (!set) return set.error();
        if (auto right = fits(set.value(), knowledge); !right) return right.error();
        if (auto open = open_with(set.value(), start_code); !open) return open.error();
        const auto lines = store.attempt_lines(attempt);
        if (!lines) return lines.error();
        const AttemptOf of{set.value().id, set.value().sitting, stored.seat, attempt};
        return from_records(store, std::move(set).value(), of, lines.value());
    }
    return Error{Error::Kind::not_found, "there is no such attempt on this PC", "", ""};
}

Result<Taking> Taking::from_records(ClassStore& store, ClassSet set, AttemptOf of,
                                    const std::vector<std::string>& lines) {
    Taking taking(store, std::move(set), std::move(of));
    for (const std::string& line : lines) {
        auto record = read_record(line);
        if (!record) return record.error();
        if (std::holds_alternative<TaskDone>(record.value().content)) ++taking.done_;
        taking.records_.push_back(std::move(record).value());
    }
    taking.done_ = std::min(taking.done_, taking.set_.tasks.size());
    return taking;
}

Result<study::QuizInHand> Taking::quiz(const study::Portraits& portraits, int day) const {
    auto items = items_of(task(), portraits, day, set_.units);
    if (!items) return items.error();
    study::QuizInHand quiz(portraits.knowledge(), std::move(items).value(), study::LearnerState(),
                           wish_of(task(), day, set_.units));
    for (const Record& record : records_) {
        const auto* answered = std::get_if<Answered>(&record.content);
        if (answered == nullptr || answered->task != task_number() || quiz.at_end()) continue;
        const auto answer = quiz.weigh(answered->answer, answered->sure);
        if (!answer) return answer.error();
        quiz.take(answer.value());
        quiz.go_on();
    }
    return quiz;
}

Result<study::practice::Session> Taking::boat(const PreparedKnowledge& prepared, int day) const {
    study::practice::Begun begun{task().seed, task().level, task().guidance, set_.knowledge, day, true};
    std::vector<study::practice::PracticeEvent> events;
    for (const Record& record : records_) {
        const auto* did = std::get_if<Did>(&record.content);
        if (did == nullptr || did->task != task_number()) continue;
        if (events.empty()) begun.day = record.day;
        events.push_back(did->event);
    }
    return study::practice::session_of(prepared, begun, events);
}

Result<void> Taking::append(const RecordContent& content, const std::string& at) {
    Record record = make_record(of_, static_cast<int>(records_.size()) + 1, at, content);
    const Result<void> written = store_->append(of_.attempt, record.sequence, record.line);
    if (written) records_.push_back(std::move(record));
    return written;
}

Result<void> Taking::keep(std::size_t number, const study::QuizInHand::Answer& answer, double seconds,
                          const std::string& at) {
    Answered answered;
    answered.task = task_number();
    answered.number = static_cast<int>(number);
    answered.answer = answer.typed;
    answered.sure = answer.sure;
    answered.seconds = std::max(0.0, seconds);
    // A mark and an item's id tell the key: a graded set keeps the bare answer.
    if (tells_marks()) answered.review = answer.review;
    return append(answered, at);
}

Result<void> Taking::keep(const study::practice::PracticeEvent& event, const std::string& at) {
    return append(Did{task_number(), event}, at);
}

Result<void> Taking::finish_task(const std::optional<study::practice::Ended>& ended, const std::string& at) {
    const auto told = tells_marks() ? ended : std::nullopt;
    const Result<void> written = append(TaskDone{task_number(), told}, at);
    if (written) ++done_;
    return written;
}

std::string Taking::heading() const {
    const std::string title = set_.title.empty() ? set_.id : set_.id + ": " + set_.title;
    if (at_end()) return fmt::format("Set {}. All {} tasks are done.", title, set_.tasks.size());
    return fmt::format("Set {}. Task {} of {}. {}.", title, number(), set_.tasks.size(), task_text(task()));
}

}  // namespace hardover::classroom
