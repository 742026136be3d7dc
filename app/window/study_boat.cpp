// The practice boat in hand: begun, worked on step by step, handed over.
#include "app/study/practice_marks.hpp"
#include "app/window/seed_typed.hpp"
#include "app/window/study_desk.hpp"

namespace hardover::window {

void StudyDesk::put_away_work() {
    page_.work.reset();
    page_.told.clear();
    page_.hint.clear();
}

void StudyDesk::take_in_hand(practice::BoatInHand boat) {
    stop_working();
    session_ = std::move(boat.session);
    boat_number_ = boat.number;
    put_away_work();
    page_.debrief.reset();
    page_.suspected.clear();
    for (const practice::Statement& said : session_->statements()) {
        page_.suspected = prepared_.knowledge().causes[static_cast<std::size_t>(said.cause)].id;
    }
    page_.boat = practice::make_page(*session_, units_);
    page_.right = session_->boat_is_right();
    page_.done = session_->phase() == practice::Session::Phase::ended;
    page_.showing = StudyShowing::practice;
    end_boat();  // it was handed over, but the window was closed before it was marked
}

void StudyDesk::apply(const BeginBoat& begin) {
    if (taking_) return apply(TakeTask{});
    const Result<std::uint64_t> seed = seed_typed(begin.seed, now_());
    if (!seed) {
        refused(seed.error());
        return;
    }
    const practice::BoatWish wish{seed.value(), begin.level, std::nullopt, study::study_day(now_())};
    auto kept = record();
    if (!kept) {
        refused(kept.error());
        return;
    }
    auto begun = practice::begin_boat(prepared_, wish, kept.value() ? &*kept.value() : nullptr, now_());
    if (!begun) {
        refused(begun.error());
        return;
    }
    take_in_hand(std::move(begun.value()));
}

// The one in hand, else the one in the record that is not finished.
void StudyDesk::apply(const GoOnWithBoat&) {
    if (taking_) return apply(TakeTask{});
    if (session_ && !page_.debrief) {
        page_.showing = StudyShowing::practice;
        if (!page_.working) end_boat();
        return;
    }
    const auto kept = record();
    if (!kept) {
        refused(kept.error());
        return;
    }
    const practice::RecordedBoat* open = kept.value() ? kept.value()->unfinished() : nullptr;
    if (open == nullptr) return;
    auto session = practice::session_of(prepared_, open->begun, open->events);
    if (!session) {
        refused(session.error());
        return;
    }
    take_in_hand({std::move(session.value()), open->number});
}

void StudyDesk::apply(const TakeUpWork& take_up) {
    if (!session_) return;
    put_away_work();
    page_.work = WorkInHand{take_up.event, practice::work_card(*session_, take_up.event),
                            practice::caution_questions(*session_, take_up.event)};
    // A remedy takes parts and minutes: its card is read first. Looking takes nothing but minutes.
    const bool remedy = std::holds_alternative<practice::Remedied>(take_up.event);
    if (page_.work->questions.empty() && !remedy) do_work();
}

void StudyDesk::apply(const MindCautions& mind) {
    if (!session_ || !page_.work || page_.work->questions.empty()) return;
    const practice::CautionQuestion question = page_.work->questions.front();
    const practice::Precautions said{question.work, mind.named, mind.skipped};
    if (!keep(said)) return;
    const std::string left_out = practice::caution_feedback(question, said);
    if (!left_out.empty()) page_.told.push_back(left_out);
    page_.work->questions.erase(page_.work->questions.begin());
    if (page_.work->questions.empty()) do_work();
}

void StudyDesk::apply(const DoWork&) {
    if (session_ && page_.work && page_.work->questions.empty()) do_work();
}

void StudyDesk::apply(const DropWork&) {
    page_.work.reset();
}

void StudyDesk::apply(const Tell& tell) {
    if (!session_) return;
    page_.work.reset();
    if (!keep(tell.event)) return;
    page_.told.clear();
    if (const auto* hinted = std::get_if<practice::Hinted>(&tell.event)) {
        page_.hint = practice::hint_text(*session_, hinted->level);
    } else if (std::holds_alternative<practice::Suspected>(tell.event) ||
               std::holds_alternative<practice::Named>(tell.event)) {
        page_.told.push_back("Noted: " + page_.boat->statements.back() + ".");
    }
    end_boat();
}

// What is refused is not kept.
bool StudyDesk::keep(const practice::PracticeEvent& event) {
    practice::Session after = *session_;
    const Result<void> taken = after.take(event);
    if (!taken) return !refused(taken.error());
    if (taking_) {
        const Result<void> written = taking_->keep(event, now_());
        if (!written) return !refused(written.error());
    }
    auto kept = record();
    if (!kept) return !refused(kept.error());
    if (kept.value()) {
        const Result<void> written = kept.value()->add(boat_number_, event, now_());
        if (!written) return !refused(written.error());
    }
    session_ = std::move(after);
    if (const auto* suspected = std::get_if<practice::Suspected>(&event)) page_.suspected = suspected->cause;
    if (const auto* named = std::get_if<practice::Named>(&event)) page_.suspected = named->cause;
    page_.boat = practice::make_page(*session_, units_);
    page_.right = session_->boat_is_right();
    page_.done = session_->phase() == practice::Session::Phase::ended;
    return true;
}

void StudyDesk::do_work() {
    const practice::PracticeEvent event = page_.work->event;
    page_.work.reset();
    page_.hint.clear();
    if (!keep(event)) return;
    for (std::string& line : practice::what_happened(*session_, units_))
        page_.told.push_back(std::move(line));
    end_boat();
}

void StudyDesk::end_boat() {
    if (session_->phase() != practice::Session::Phase::ended || page_.debrief) return;
    if (taking_ && !taking_->tells_marks()) {
        session_.reset();
        page_.boat.reset();
        finish_task(std::nullopt);
        return;
    }
    work("Marking the boat", StudyShowing::practice,
         [this, session = *session_, boat = boat_number_,
          units = units_](Background::Watch& watch) -> Background::Outcome {
             const auto told = practice::marked_debrief(
                 session, units,
                 [&watch](std::size_t done, std::size_t of) { return watch.go_on(done, of); });
             if (!told) return {};
             return [this, told, boat] { take_debrief(*told, boat); };
         });
}

void StudyDesk::take_debrief(const practice::Debrief& debrief, int boat) {
    page_.working.reset();
    page_.debrief = debrief;
    if (taking_) finish_task(debrief.ended);
    auto kept = record();
    if (!kept) {
        refused(kept.error());
        return;
    }
    if (!kept.value()) return;
    const Result<void> written = kept.value()->end(boat, debrief.ended, now_());
    if (!written) refused(written.error());
}

std::optional<StudyDesk::FinishedBoat> StudyDesk::finished_boat() const {
    if (!session_ || session_->phase() != practice::Session::Phase::ended) return std::nullopt;
    FinishedBoat boat{session_->boat().told, {}};
    for (const Index fault : session_->boat().faults) {
        boat.faults.push_back(prepared_.knowledge().causes[static_cast<std::size_t>(fault)].id);
    }
    return boat;
}

}  // namespace hardover::window
