#include "app/study/practice_record.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>

#include "app/study/practice_boat.hpp"

namespace hardover::study::practice {

namespace {

bool done_well(const Ended& ended) {
    return ended.cured && ended.avoidable <= share_done_well * ended.expected;
}

bool done_badly(const Ended& ended) {
    return !ended.cured || ended.avoidable > share_done_badly * ended.expected;
}

// Up after enough boats in a row that were done well.
int level_reached(const std::vector<RecordedBoat>& boats) {
    int level = least_level;
    int in_a_row = 0;
    for (const RecordedBoat& boat : boats) {
        if (!boat.ended || boat.ended->guidance == Guidance::worked || boat.ended->level < level) continue;
        in_a_row = done_well(*boat.ended) ? in_a_row + 1 : 0;
        if (in_a_row < boats_to_go_up) continue;
        level = std::min(most_level, boat.ended->level + 1);
        in_a_row = 0;
    }
    return level;
}

// What was worked through once need not be worked through again at the next level.
Guidance faded(const std::vector<RecordedBoat>& boats, int level) {
    int step = level > least_level ? 1 : 0;
    bool badly = false;
    for (const RecordedBoat& boat : boats) {
        if (!boat.ended || boat.ended->level < level) continue;
        badly = done_badly(*boat.ended);
        step += badly ? -1 : 1;
        step = std::clamp(step, 0, 3);
    }
    return static_cast<Guidance>(step);
}

Guidance by_level(int level) {
    return level <= 1 ? Guidance::half : level == 2 ? Guidance::nudged : Guidance::unaided;
}

}  // namespace

std::string practice_id(LearnerNumber learner, int number) {
    return fmt::format("{}-{}", learner, number);
}

Result<PracticeId> read_practice_id(const std::string& text) {
    const Error refused{Error::Kind::bad_input, "'" + text + "' is not the number of a practice boat", "",
                        "see them with: hardover practice list"};
    PracticeId id;
    const std::size_t dash = text.find('-');
    if (dash == std::string::npos) return refused;
    const char* start = text.data();
    const char* middle = start + dash;
    const char* end = start + text.size();
    const auto first = std::from_chars(start, middle, id.learner);
    const auto second = std::from_chars(middle + 1, end, id.number);
    if (first.ec != std::errc() || first.ptr != middle) return refused;
    if (second.ec != std::errc() || second.ptr != end) return refused;
    return id;
}

Result<Record> Record::open(Store& store, LearnerNumber learner) {
    Record record(store, learner);
    const auto events = store.study_events(learner);
    if (!events) return events.error();
    const auto boat_of = [&](int number) {
        return std::find_if(record.boats_.begin(), record.boats_.end(),
                            [&](const RecordedBoat& boat) { return boat.number == number; });
    };
    for (const StoredEvent& event : events.value()) {
        record.last_ = event.sequence;
        if (event.kind == begun_kind) {
            const Result<Begun> begun = read_begun(event.body);
            if (!begun) return begun.error();
            record.boats_.push_back({event.sequence, event.at, begun.value(), {}, {}});
        } else if (event.kind == did_kind) {
            const auto did = read_did(event.body);
            if (!did) return did.error();
            const auto boat = boat_of(did.value().practice);
            if (boat != record.boats_.end()) boat->events.push_back(did.value().what);
        } else if (event.kind == ended_kind) {
            const auto ended = read_ended(event.body);
            if (!ended) return ended.error();
            const auto boat = boat_of(ended.value().practice);
            if (boat != record.boats_.end()) boat->ended = ended.value().what;
        }
    }
    return record;
}

const RecordedBoat* Record::boat(int number) const {
    for (const RecordedBoat& boat : boats_) {
        if (boat.number == number) return &boat;
    }
    return nullptr;
}

const RecordedBoat* Record::unfinished() const {
    const auto last = std::find_if(boats_.rbegin(), boats_.rend(),
                                   [](const RecordedBoat& boat) { return !boat.ended.has_value(); });
    return last == boats_.rend() ? nullptr : &*last;
}

Result<void> Record::append(const char* kind, const std::string& body, const std::string& at) {
    const Result<void> written = store_->append_study(learner_, {last_ + 1, at, kind, body});
    if (written) ++last_;
    return written;
}

Result<int> Record::begin(const Begun& begun, const std::string& at) {
    const Result<void> written = append(begun_kind, body_of(begun), at);
    if (!written) return written.error();
    boats_.push_back({last_, at, begun, {}, {}});
    return last_;
}

Result<void> Record::add(int number, const PracticeEvent& event, const std::string& at) {
    const Result<void> written = append(did_kind, body_of(number, event), at);
    if (!written) return written;
    for (RecordedBoat& boat : boats_) {
        if (boat.number == number) boat.events.push_back(event);
    }
    return {};
}

Result<void> Record::end(int number, const Ended& ended, const std::string& at) {
    const Result<void> written = append(ended_kind, body_of(number, ended), at);
    if (!written) return written;
    for (RecordedBoat& boat : boats_) {
        if (boat.number == number) boat.ended = ended;
    }
    return {};
}

Plan plan_next(const std::vector<RecordedBoat>* boats, std::optional<int> level) {
    Plan plan;
    if (boats == nullptr) {
        plan.level = level.value_or(least_level);
        plan.guidance = by_level(plan.level);
        plan.why = "Without a learner's record the level says how much help stands on the page.";
        return plan;
    }
    const int reached = level_reached(*boats);
    plan.level = level.value_or(reached);
    plan.guidance = faded(*boats, plan.level);
    plan.why = plan.guidance == Guidance::worked ? "The first boat of a level is worked through with you."
               : plan.guidance == Guidance::unaided
                   ? "You have done boats of this level well: this one is yours alone."
                   : "Help fades from boat to boat as they go well.";
    return plan;
}

}  // namespace hardover::study::practice
