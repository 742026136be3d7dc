#include "app/classroom/hands_record.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "app/study/practice_begin.hpp"

namespace hardover::classroom {

using namespace study::practice;

namespace {

using nlohmann::json;

Error not_a_vote(const std::string& what) {
    return {Error::Kind::bad_input, "this is not a vote of a class: " + what, "", ""};
}

// The learner's own events are those of practice, so that their words stand in one place.
json json_of(int boat, const PracticeEvent& event) {
    return json::parse(practice::body_of(boat, event));
}

Result<ShowOfHands> replayed(const PreparedKnowledge& prepared, const RecordedClassBoat& recorded) {
    Result<Session> session = session_of(prepared, recorded.begun, {});
    if (!session) return session.error();
    ShowOfHands boat(std::move(session).value());
    for (std::size_t i = 0; i < recorded.events.size(); ++i) {
        const Result<void> taken = boat.take(recorded.events[i]);
        if (taken) continue;
        Error error = taken.error();
        error.where = "event " + std::to_string(i + 1) + " of the class's boat";
        return error;
    }
    return boat;
}

}  // namespace

std::string body_of(int boat, const Voted& voted) {
    json choices = json::array();
    for (const PracticeEvent& choice : voted.ballot.choices) choices.push_back(json_of(boat, choice));
    return json{{"boat", boat},
                {"asks", voted.ballot.asks == Asks::step ? "step" : "cause"},
                {"choices", choices},
                {"hands", voted.hands},
                {"taken", voted.taken}}
        .dump();
}

Result<OfPractice<Voted>> read_voted(const std::string& body) {
    const json from = json::parse(body, nullptr, false);
    if (!from.is_object()) return not_a_vote("no JSON object");
    try {
        Voted voted;
        const std::string asks = from.at("asks").get<std::string>();
        if (asks != "step" && asks != "cause") return not_a_vote("'" + asks + "'");
        voted.ballot.asks = asks == "step" ? Asks::step : Asks::cause;
        for (const json& choice : from.at("choices")) {
            const auto event = read_did(choice.dump());
            if (!event) return event.error();
            voted.ballot.choices.push_back(event.value().what);
        }
        voted.hands = from.at("hands").get<std::vector<int>>();
        voted.taken = from.at("taken").get<std::size_t>();
        return OfPractice<Voted>{from.at("boat").get<int>(), voted};
    } catch (const json::exception& error) {
        return not_a_vote(error.what());
    }
}

Result<HandsRecord> HandsRecord::open(Store& store) {
    HandsRecord record(store);
    const auto learners = store.learners();
    if (!learners) return learners.error();
    for (const LearnerRow& row : learners.value()) {
        if (row.name == together_name) record.learner_ = row.number;
    }
    if (record.learner_ == 0) return record;
    const auto events = store.study_events(record.learner_);
    if (!events) return events.error();
    for (const StoredEvent& event : events.value()) {
        record.last_ = event.sequence;
        if (Result<void> read = record.read(event); !read) return read.error();
    }
    return record;
}

Result<void> HandsRecord::read(const StoredEvent& event) {
    if (event.kind == class_begun_kind) {
        const Result<Begun> begun = read_begun(event.body);
        if (!begun) return begun.error();
        boats_.push_back({event.sequence, event.at, begun.value(), {}, {}});
    } else if (event.kind == class_voted_kind) {
        const auto voted = read_voted(event.body);
        if (!voted) return voted.error();
        if (auto* of = boat(voted.value().practice)) of->events.emplace_back(voted.value().what);
    } else if (event.kind == class_did_kind) {
        const auto did = read_did(event.body);
        if (!did) return did.error();
        if (auto* of = boat(did.value().practice)) of->events.emplace_back(did.value().what);
    } else if (event.kind == class_shown_kind) {
        if (!boats_.empty()) boats_.back().events.emplace_back(FaultRevealed{});
    } else if (event.kind == class_ended_kind) {
        const auto ended = read_ended(event.body);
        if (!ended) return ended.error();
        if (auto* of = boat(ended.value().practice)) of->ended = ended.value().what;
    }
    return {};
}

RecordedClassBoat* HandsRecord::boat(int number) {
    const auto found = std::find_if(boats_.begin(), boats_.end(),
                                    [&](const RecordedClassBoat& one) { return one.number == number; });
    return found == boats_.end() ? nullptr : &*found;
}

const RecordedClassBoat* HandsRecord::unfinished() const {
    // Only the last one: a boat that another was begun after has been left.
    return boats_.empty() || boats_.back().ended ? nullptr : &boats_.back();
}

Result<void> HandsRecord::append(const char* kind, const std::string& body, const std::string& at) {
    const Result<void> written = store_->append_study(learner_, {last_ + 1, at, kind, body});
    if (written) ++last_;
    return written;
}

Result<int> HandsRecord::begin(const Begun& begun, const std::string& at) {
    if (learner_ == 0) {
        const Result<LearnerNumber> added = store_->add_learner(together_name, at);
        if (!added) return added.error();
        learner_ = added.value();
    }
    const Result<void> written = append(class_begun_kind, practice::body_of(begun), at);
    if (!written) return written.error();
    boats_.push_back({last_, at, begun, {}, {}});
    return last_;
}

Result<void> HandsRecord::add(int number, const ClassEvent& event, const std::string& at) {
    Result<void> written;
    if (const auto* voted = std::get_if<Voted>(&event)) {
        written = append(class_voted_kind, body_of(number, *voted), at);
    } else if (std::holds_alternative<FaultRevealed>(event)) {
        written = append(class_shown_kind, json{{"boat", number}}.dump(), at);
    } else {
        written = append(class_did_kind, practice::body_of(number, std::get<PracticeEvent>(event)), at);
    }
    if (!written) return written;
    if (auto* of = boat(number)) of->events.push_back(event);
    return {};
}

Result<void> HandsRecord::end(int number, const Ended& ended, const std::string& at) {
    Result<void> written = append(class_ended_kind, practice::body_of(number, ended), at);
    if (!written) return written;
    if (auto* of = boat(number)) of->ended = ended;
    return {};
}

Result<ClassBoat> ClassBoat::begin(const PreparedKnowledge& prepared, Store& store, const Begun& begun,
                                   const std::string& at) {
    Result<Session> session = session_of(prepared, begun, {});
    if (!session) return session.error();
    Result<HandsRecord> record = HandsRecord::open(store);
    if (!record) return record.error();
    const Result<int> number = record.value().begin(begun, at);
    if (!number) return number.error();
    return ClassBoat(std::move(record).value(), number.value(), ShowOfHands(std::move(session).value()));
}

Result<std::optional<ClassBoat>> ClassBoat::go_on(const PreparedKnowledge& prepared, Store& store) {
    Result<HandsRecord> record = HandsRecord::open(store);
    if (!record) return record.error();
    const RecordedClassBoat* open = record.value().unfinished();
    if (open == nullptr) return std::optional<ClassBoat>();
    Result<ShowOfHands> boat = replayed(prepared, *open);
    if (!boat) return boat.error();
    const int number = open->number;
    return std::optional<ClassBoat>(ClassBoat(std::move(record).value(), number, std::move(boat).value()));
}

Result<void> ClassBoat::take(const ClassEvent& event, const std::string& at) {
    ShowOfHands after = boat_;
    if (Result<void> taken = after.take(event); !taken) return taken;
    if (Result<void> written = record_.add(number_, event, at); !written) return written;
    boat_ = std::move(after);
    return {};
}

Result<Debrief> ClassBoat::debrief(const std::string& at, UnitSystem units) {
    if (debrief_) return *debrief_;
    const Debrief told = practice::debrief(boat_.session(), mark(boat_.session()), units);
    if (Result<void> written = record_.end(number_, told.ended, at); !written) return written.error();
    debrief_ = told;
    return told;
}

}  // namespace hardover::classroom
