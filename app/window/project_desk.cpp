#include "app/window/project_desk.hpp"

#include <fmt/format.h>

#include "app/study/known_learner.hpp"
#include "app/window/seed_typed.hpp"

namespace hardover::window {

using namespace classroom;
using namespace study::practice;

ProjectDesk::ProjectDesk(const PreparedKnowledge& prepared, Store& store, std::function<std::string()> now)
    : prepared_(prepared), store_(store), now_(std::move(now)), sound_(prepared), faulty_(prepared) {}

void ProjectDesk::show(UnitSystem units) {
    units_ = units;
    page_.levels = make_start_page(nullptr).levels;
    page_.unfinished.clear();
    const auto record = HandsRecord::open(store_);
    if (!record) {
        refused(record.error());
        return;
    }
    const RecordedClassBoat* open = record.value().unfinished();
    if (open == nullptr) return;
    page_.unfinished = fmt::format("Class boat {}, level {}", open->begun.seed, open->begun.level);
}

void ProjectDesk::use(const PreparedKnowledge& prepared) {
    prepared_ = prepared;
    boat_.reset();
    sound_.use(prepared);
    faulty_.use(prepared);
    fault_drawn_ = false;
    page_ = {};
    show(units_);
}

void ProjectDesk::carry_out(const ProjectAction& action) {
    page_.trouble.clear();
    std::visit([this](const auto& what) { apply(what); }, action);
}

std::string ProjectDesk::count_text(const std::vector<int>& hands) const {
    return classroom::count_text(ballot_, hands);
}

void ProjectDesk::apply(const BeginClassBoat& begin) {
    const Result<std::uint64_t> seed = seed_typed(begin.seed, now_());
    if (!seed) return refused(seed.error());
    Begun begun;
    begun.seed = seed.value();
    begun.level = begin.level;
    begun.knowledge = prepared_.knowledge().fingerprint;
    begun.day = study::study_day(now_());
    Result<ClassBoat> boat = ClassBoat::begin(prepared_, store_, begun, now_());
    if (!boat) return refused(boat.error());
    take_in_hand(std::move(boat.value()));
}

void ProjectDesk::apply(const GoOnClassBoat&) {
    auto open = ClassBoat::go_on(prepared_, store_);
    if (!open) return refused(open.error());
    if (open.value()) take_in_hand(std::move(*open.value()));
}

void ProjectDesk::take_in_hand(ClassBoat boat) {
    boat_ = std::move(boat);
    fault_drawn_ = false;
    page_.debrief.reset();
    sound_.show(nullptr, units_);
    sound_.open(boat_->boat().session().boat().told, {});
    page_.boat = hands_page(boat_->boat(), units_);
    look_at_boat();
    if (boat_->boat().ended()) {
        tell_debrief();
    } else if (boat_->boat().agreed()) {
        page_.scene = Scene::agreed;
    } else {
        put_question(Asks::step);
    }
}

void ProjectDesk::put_question(Asks asks) {
    asks_ = asks;
    added_.clear();
    ballot_ = asks == Asks::step ? step_ballot(boat_->boat()) : cause_ballot(boat_->boat());
    page_.ballot = ballot_page(boat_->boat(), ballot_);
    ++page_.number;
    page_.scene = Scene::vote;
    list_ideas();
}

// Everything that can be done on this rig, or all that could be wrong with it.
void ProjectDesk::list_ideas() {
    page_.ideas.clear();
    if (page_.boat.right) return;
    const Page practice = make_page(boat_->boat().session(), units_);
    if (asks_ == Asks::cause) {
        for (const NamedItem& cause : practice.causes)
            page_.ideas.push_back({"cause." + cause.id, cause.name, cause.part, Suspected{cause.id, 0}});
        return;
    }
    for (const FindingGroup& group : practice.parts) {
        for (const FindingItem& item : group.items)
            page_.ideas.push_back({"finding." + item.id, item.name, group.name + ", " + item.minutes,
                                   PracticeEvent(Asked{item.id})});
    }
    for (const NamedItem& remedy : practice.remedies)
        page_.ideas.push_back({"remedy." + remedy.id, remedy.name, remedy.about, Remedied{remedy.id}});
    page_.ideas.push_back({"call", "Call for help", "Somebody else finds it", GaveUp{}});
}

void ProjectDesk::apply(const PutToClass& put) {
    if (page_.scene == Scene::vote || page_.scene == Scene::outcome) put_question(put.asks);
}

void ProjectDesk::apply(const AddToBallot& add) {
    if (page_.scene != Scene::vote) return;
    added_.push_back(add.idea);
    const std::size_t before = ballot_.choices.size();
    ballot_ = asks_ == Asks::step ? step_ballot(boat_->boat(), added_) : cause_ballot(boat_->boat(), added_);
    page_.ballot = ballot_page(boat_->boat(), ballot_);
    if (ballot_.choices.size() == before) {
        added_.pop_back();
        page_.trouble = before >= most_choices ? "More choices than these cannot be read: take one of them."
                                               : "That is among the choices already.";
    }
}

void ProjectDesk::apply(const SettleVote& settle) {
    if (page_.scene != Scene::vote) return;
    const std::optional<std::size_t> taken = settle.taken ? settle.taken : majority(settle.hands);
    if (!taken) {
        page_.trouble = classroom::count_text(ballot_, settle.hands);
        return;
    }
    const bool counted = all_hands(settle.hands) > 0;
    if (!keep(Voted{ballot_, counted ? settle.hands : std::vector<int>{}, *taken})) return;
    if (!page_.boat.agreed) {
        put_question(Asks::step);  // what was wrong has been said; it took no time
        return;
    }
    page_.scene = Scene::agreed;
    // A look or a question needs no reading out.
    if (page_.boat.agreed->cautions.empty() && page_.boat.agreed->card.steps.empty()) apply(DoAgreed{});
}

void ProjectDesk::apply(const DoAgreed&) {
    if (page_.scene != Scene::agreed || !page_.boat.agreed) return;
    const std::vector<CautionQuestion> cautions = page_.boat.agreed->cautions;
    for (const CautionQuestion& question : cautions) {
        Precautions said{question.work, {}, false};
        for (const CautionText& caution : question.cautions) said.named.push_back(caution.id);
        if (!keep(PracticeEvent(said))) return;
    }
    const PracticeEvent step = *boat_->boat().agreed();
    if (!keep(step)) return;
    look_at_boat();
    page_.scene = Scene::outcome;
    if (boat_->boat().ended()) tell_debrief();
}

void ProjectDesk::apply(const NextQuestion&) {
    if (page_.scene == Scene::outcome) put_question(Asks::step);
}

void ProjectDesk::apply(const ShowTheFault&) {
    if (!boat_) return;
    if (page_.boat.faults.empty() && !keep(FaultRevealed{})) return;
    look_at_boat();
}

void ProjectDesk::apply(const SteerProjected& steer) {
    sound_.carry_out(TurnTo{steer.steer});
    if (fault_drawn_) faulty_.carry_out(TurnTo{steer.steer});
}

void ProjectDesk::apply(const LeaveProjector&) {
    boat_.reset();
    page_.scene = Scene::none;
    page_.debrief.reset();
    show(units_);
}

bool ProjectDesk::keep(const ClassEvent& event) {
    if (!boat_) return false;
    if (const Result<void> taken = boat_->take(event, now_()); !taken) {
        refused(taken.error());
        return false;
    }
    page_.boat = hands_page(boat_->boat(), units_);
    return true;
}

// The boat with its fault is surveyed only once it may be seen.
void ProjectDesk::look_at_boat() {
    if (page_.boat.faults.empty() || fault_drawn_) return;
    const Session& session = boat_->boat().session();
    std::vector<std::string> faults;
    for (const Index fault : session.boat().faults)
        faults.push_back(prepared_.knowledge().causes[static_cast<std::size_t>(fault)].id);
    faulty_.show(nullptr, units_);
    faulty_.open(session.boat().told, faults);
    fault_drawn_ = true;
}

void ProjectDesk::tell_debrief() {
    page_.scene = Scene::debrief;
    Result<Debrief> told = boat_->debrief(now_(), units_);
    if (!told) return refused(told.error());
    page_.debrief = std::move(told.value());
    page_.votes = votes_told(boat_->boat());
    page_.cause_votes = cause_votes_text(boat_->boat());
}

}  // namespace hardover::window
