// What is done to the job in hand: recorded in its events, or refused in the view.
#include "app/jobs/proved.hpp"
#include "app/reports/sheet_file.hpp"
#include "app/window/app_state.hpp"
#include "app/window/hand_back.hpp"

namespace hardover::window {

namespace {

void show_step(AppState& state) {
    state.view.showing = Showing::step;
    state.view.finding.clear();
}

// Records an event. On an error the job is as before; one of the records is answered by reading the job
// again, because another program may have gone on with it.
Result<void> put(AppState& state, const Event& event) {
    Result<void> done = record(state.store, state.prepared, *state.job, event, state.now());
    if (!done && done.error().kind == Error::Kind::storage) {
        auto again = load_job(state.store, state.prepared, state.job->number);
        if (again) state.job = std::move(again.value());
    }
    state.view.trouble = done ? "" : done.error().text();
    return done;
}

// The finding whose check is in hand, if any.
std::string in_hand(const AppState& state) {
    const StepCard& card = state.looked_at ? *state.looked_at : state.page.card;
    const bool at_step = state.view.showing == Showing::step || state.view.showing == Showing::finding;
    return at_step && !card.questions.empty() ? card.questions.front().finding : "";
}

// A check in hand stays until its own question has its answer, though other findings came in on the way.
void stay_or_go_on(AppState& state, const std::string& finding) {
    const Index index = find(state.knowledge.findings, finding);
    show_step(state);
    if (index == none) return;
    const StepCard card = question_card(state.prepared, *state.job, index);
    if (card.questions.empty() || !card.questions.front().answer.empty()) return;
    const JobPage page = make_job_page(state.prepared, *state.job);
    if (!page.card.questions.empty() && page.card.questions.front().finding == finding) return;
    state.view.showing = Showing::finding;
    state.view.finding = finding;
}

TurningSketch sketch_turning(const PreparedKnowledge& prepared, const Facts& facts) {
    return turning_sketch(prepared.knowledge(), what_would_turn(prepared, facts));
}

struct Apply {
    AppState& state;

    void operator()(const GiveAnswer& action) const {
        const std::string finding = in_hand(state);
        if (!put(state, Answered{action.finding, action.answer})) return;
        state.view.drafts.drop(action.finding);
        if (finding == action.finding || finding.empty()) {
            show_step(state);
        } else {
            stay_or_go_on(state, finding);
        }
    }
    void operator()(const GiveNumber& action) const {
        const std::string finding = in_hand(state);
        const Event event =
            action.of_rig ? Event{RigSet{action.id, action.text}} : Event{Answered{action.id, action.text}};
        const Result<void> done = put(state, event);
        if (!done) {
            state.view.drafts.refuse(action.id, action.text, done.error().text());
            state.view.trouble.clear();  // it stands in the field
            return;
        }
        state.view.drafts.drop(action.id);
        if (!finding.empty()) stay_or_go_on(state, finding);
    }
    void operator()(const TakeBack& action) const {
        if (put(state, TakenBack{action.finding})) show_step(state);
    }
    void operator()(const SetRig& action) const {
        static_cast<void>(put(state, RigSet{action.field, action.value}));
    }
    void operator()(const SetHistory& action) const {
        static_cast<void>(put(state, HistorySet{action.history}));
    }
    void operator()(const SwitchComplaint& action) const {
        ComplaintsSet set;
        for (const ChoiceText& complaint : state.page.complaints) {
            if (complaint.chosen != (complaint.id == action.complaint))
                set.complaints.push_back(complaint.id);
        }
        static_cast<void>(put(state, set));
    }
    void operator()(const SwitchNeed& action) const {
        for (const ChoiceText& need : state.page.needs) {
            if (need.id == action.need) static_cast<void>(put(state, NeedMarked{need.id, !need.chosen}));
        }
    }
    void operator()(const Try& action) const {
        if (put(state, Tried{action.remedy, action.outcome})) show_step(state);
    }
    void operator()(const HandBack&) const {
        JobView& view = state.view;
        if (!why_not_handed_back(view, state.page).empty()) return;
        const std::string note = view.drafts.of("hand_back.note", "").text;
        const std::vector<RecordedCause> told = causes_told(view, state.page);
        if (!put(state, hand_back_with(state.prepared, *state.job, told, note))) return;
        view.drafts.drop("hand_back.note");
        view.hand_back_causes.reset();
        view.hand_back_seen.clear();
        show_step(state);
    }
    void operator()(const Reopen&) const {
        if (put(state, Reopened{})) show_step(state);
    }
    void operator()(const AddNote& action) const {
        if (put(state, Noted{action.text})) state.view.drafts.drop("note");
    }
    void operator()(const UndoLast&) const {
        const Result<void> done = undo(state.store, state.prepared, *state.job, state.now());
        state.view.trouble = done ? "" : done.error().text();
        if (state.view.showing == Showing::finding) show_step(state);
    }
    void operator()(const ReturnTo& action) const {
        const Result<void> done =
            return_to(state.store, state.prepared, *state.job, action.sequence, state.now());
        state.view.trouble = done ? "" : done.error().text();
    }
    void operator()(const WorkOutTurning&) const {
        if (state.turning) return;
        if (state.background == nullptr) {
            state.turning = sketch_turning(state.prepared, state.job->facts);
            return;
        }
        if (state.background->working_on(turning_work)) return;
        state.background->start(turning_work, [&state = state, prepared = state.prepared,
                                               facts = state.job->facts](Background::Watch&) {
            return Background::Outcome(
                [&state, turning = sketch_turning(prepared, facts)] { state.turning = turning; });
        });
    }
    void operator()(const WriteSheet&) const {
        const auto written = write_job_sheet(state.store, state.knowledge, *state.job, state.fonts_folder);
        state.view.sheet = written ? SheetWritten{written.value().path, written.value().remark, ""}
                                   : SheetWritten{"", "", written.error().text()};
    }
    void operator()(const OpenOutside& action) const {
        if (!state.open_outside) return;
        const Result<void> opened = state.open_outside(action.path);
        state.view.sheet.trouble = opened ? "" : opened.error().text();
    }
    void operator()(const Show& action) const {
        state.view.showing = action.showing;
        state.view.finding = action.finding;
        state.view.tab = JobTab::now;
        state.view.trouble.clear();
        if (action.showing == Showing::look_up) state.view.filter.clear();
    }
};

}  // namespace

void forget_turning(AppState& state) {
    state.turning.reset();
    if (state.background != nullptr) state.background->drop(turning_work);
}

void show_job(AppState& state) {
    if (!state.job) return;
    state.page = make_job_page(state.prepared, *state.job);
    state.look_up = make_look_up(state.knowledge, *state.job);
    state.looked_at.reset();
    if (state.view.showing == Showing::finding) {
        const Index finding = find(state.knowledge.findings, state.view.finding);
        if (finding == none) {
            state.view.showing = Showing::step;
        } else {
            state.looked_at = question_card(state.prepared, *state.job, finding);
        }
    }
    state.outlook =
        question_outlook(state.prepared, *state.job, find(state.knowledge.findings, in_hand(state)));
}

void carry_out_on_job(AppState& state, const JobAction& action) {
    const std::size_t events = state.job->events.size();
    std::visit(Apply{state}, action);
    if (state.job->events.size() != events) {
        forget_turning(state);
        state.view.sheet = {};
    }
    show_job(state);
}

}  // namespace hardover::window
